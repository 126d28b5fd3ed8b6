package knapsack1d

// List calls yield with every row that is worth more than above and to which no
// item can be added, as how often it holds each item, until yield returns false;
// the row is good until then. It looks at most many rows and reports whether it
// went through all.
func (s *Search) List(values []int64, above, most int64, yield func(times []int) bool) (looked int64, all bool) {
	s.sortItems(values)
	for i, it := range s.items { // what is worth nothing fills rows up all the same
		if it.Count > 0 && it.Size <= s.length && values[i] == 0 {
			s.order = append(s.order, i)
		}
	}
	s.prepare()
	times := make([]int, len(s.items))
	at := s.start()
	for {
		for at.n < len(s.order) && at.value+s.upperBound(at.n, at.room) > above {
			s.fill(&at)
			looked++
		}
		if at.n == len(s.order) && at.value > above && s.isMaximal(at.room) {
			clear(times)
			for m, i := range s.order {
				times[i] = s.row[m]
			}
			if !yield(times) {
				return looked, false
			}
		}
		if !s.backtrack(&at) {
			return looked, true
		}
		if looked++; looked > most {
			return looked, false
		}
	}
}

// isMaximal reports whether the row looked at, which leaves so much room, has none for
// a further item.
func (s *Search) isMaximal(room int64) bool {
	for n, i := range s.order {
		if s.row[n] < s.items[i].Count && s.items[i].Size <= room {
			return false
		}
	}
	return true
}
