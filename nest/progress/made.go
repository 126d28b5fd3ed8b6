package progress

import (
	"maps"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Made is a good blank of an earlier plan: Count of them, alike and of one origin.
type Made struct {
	cutplan.Blank
	// From is the stock that the blank came from, reduced to kind, material, thickness and
	// grain. Turned: the blank's length lies along the width of that stock.
	From   stock.Stock
	Turned bool
	// Known is false if the origin was not recorded or may be one of several. From then
	// holds only certain facts, with the grain along the blank's own length.
	Known bool
}

// OfUnknownOrigin returns a good blank whose source was not recorded. It may be any stock
// of the job in the blank's material.
func OfUnknownOrigin(b cutplan.Blank, job stock.Job) Made {
	return Made{Blank: b, From: unknownOrigin(b, job).from}
}

// Good lists all good blanks, however many are wanted. A blank with bad parts holds fewer.
func (s *State) Good() []Made {
	var all []Made
	pools := map[string][]lot{} // by mark
	for i, b := range s.Blanks() {
		if _, found := pools[b.Mark]; !found {
			pools[b.Mark] = s.lots(s.lines(b.Mark))
		}
		for n := range b.Good {
			one := Made{Blank: b.Blank}
			o := s.next(pools[b.Mark], i)
			one.From, one.Turned, one.Known = o.from, o.turned, o.known
			bad := (b.Bad + b.Good - 1 - n) / b.Good // shared out
			one.Count, one.Spare = 1, max(one.Spare, bad)
			if one.Holds() > 0 {
				all = gathered(all, one)
			}
		}
	}
	return all
}

// Allocate divides blanks into those used for the wanted parts, by name, and the surplus.
// A used blank holds no more parts than are wanted. Blanks of one mark may end up on both
// sides. Nobody can tell them apart then, so each keeps only facts certain for all.
func Allocate(all []Made, wanted map[string]int) (used, surplus []Made) {
	left, parts := maps.Clone(wanted), map[string]int{}
	for _, m := range all {
		parts[m.Part.Name] += m.Count * m.Holds()
	}
	parted := func(m Made) bool { return parts[m.Part.Name] > wanted[m.Part.Name] }
	for _, m := range Indistinct(all, parted) {
		for range m.Count {
			one := m
			one.Count = 1
			if left[m.Part.Name] <= 0 {
				surplus = gathered(surplus, one)
				continue
			}
			one.Spare = max(one.Spare, one.Gang*one.Layers-left[m.Part.Name])
			left[m.Part.Name] -= one.Holds()
			used = gathered(used, one)
		}
	}
	return used, surplus
}

// Indistinct reduces blanks of one mark to the facts certain for each of them, if they can
// be mistaken for one another.
func Indistinct(all []Made, are func(Made) bool) []Made {
	claimed := slices.Clone(all)
	for i, m := range all {
		o := m.origin()
		for _, other := range all {
			if other.Mark == m.Mark && are(m) {
				o = o.either(other.origin())
			}
		}
		claimed[i].From, claimed[i].Turned, claimed[i].Known = o.from, o.turned, o.known
	}
	return claimed
}

// gathered returns all with one more blank.
func gathered(all []Made, one Made) []Made {
	alike := func(m Made) bool {
		return m.Mark == one.Mark && m.Spare == one.Spare && m.Length == one.Length && m.Width == one.Width && m.origin() == one.origin()
	}
	if at := slices.IndexFunc(all, alike); at >= 0 {
		all[at].Count++
		return all
	}
	return append(all, one)
}

func (m Made) origin() origin { return origin{m.From, m.Turned, m.Known} }

// next returns the origin of the next good piece of a line and removes it from the lots,
// which hold all lines with the line's mark.
func (s *State) next(lots []lot, line int) origin {
	if s.losses.unknown[s.bill[line].Mark] > 0 {
		claim, _ := certainOrigin(lots, nil)
		return claim
	}
	at := slices.IndexFunc(lots, func(l lot) bool { return l.line == line && l.count > 0 })
	if at < 0 {
		at = slices.IndexFunc(lots, func(l lot) bool { return l.count > 0 })
	}
	lots[at].count--
	return lots[at].origin
}
