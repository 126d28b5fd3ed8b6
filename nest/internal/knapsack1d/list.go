package knapsack1d

// List calls yield with every maximal row that is worth more than above, until yield returns
// false or at Halt. Its times are per item, and valid during the call. List tries at most most rows, and
// reports whether it tried all.
func (s *Search) List(values []int64, above, most int64, yield func(times []int) bool) (looked int64, all bool) {
	s.sortItems(values)
	for i, it := range s.items { // items worth nothing fill rows as well
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
		if looked++; looked > most || s.halted() {
			return looked, false
		}
	}
}

// isMaximal reports whether no further item fits in the present row's room.
func (s *Search) isMaximal(room int64) bool {
	for n, i := range s.order {
		if s.row[n] < s.items[i].Count && s.items[i].Size <= room {
			return false
		}
	}
	return true
}
