package row

// List calls yield with every row that is worth more than above and to which no
// item can be added, as how often it holds each item, until yield returns false;
// the row is good until then. It looks at most many rows and reports whether it
// went through all.
func (s *Search) List(values []int64, above, most int64, yield func(times []int) bool) (looked int64, all bool) {
	s.sort(values)
	for i, it := range s.items { // what is worth nothing fills rows up all the same
		if it.Count > 0 && it.Size <= s.length && values[i] == 0 {
			s.order = append(s.order, i)
		}
	}
	s.measure()
	times := make([]int, len(s.items))
	value, room, n := int64(0), s.length, 0
	for {
		for n < len(s.order) && value+s.most(n, room) > above {
			i := s.order[n]
			it := s.items[i]
			s.row[n] = int(min(int64(it.Count), room/it.Size))
			room -= int64(s.row[n]) * it.Size
			value += int64(s.row[n]) * s.values[i]
			n++
			looked++
		}
		if n == len(s.order) && value > above && s.full(room) {
			clear(times)
			for m, i := range s.order {
				times[i] = s.row[m]
			}
			if !yield(times) {
				return looked, false
			}
		}
		for n--; n >= 0 && s.row[n] == 0; n-- {
		}
		if n < 0 {
			return looked, true
		}
		if looked > most {
			return looked, false
		}
		i := s.order[n]
		s.row[n]--
		room += s.items[i].Size
		value -= s.values[i]
		n++
		looked++
	}
}

// full reports whether the row looked at, which leaves so much room, has none for
// a further item.
func (s *Search) full(room int64) bool {
	for n, i := range s.order {
		if s.row[n] < s.items[i].Count && s.items[i].Size <= room {
			return false
		}
	}
	return true
}
