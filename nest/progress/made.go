package progress

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Made is a blank that an earlier plan made and that is good: Count of them, alike and of
// one origin.
type Made struct {
	cutplan.Blank
	// From is the stock that it came from: kind, material, thickness and grain, and
	// nothing else. Turned tells that the blank's length lies along the width of that.
	From   stock.Stock
	Turned bool
	// Known: false where the origin was not noted, or may be one of several. From then
	// claims only what is certain, with the grain as the blank's own length runs. A zero
	// From is filled in by Begin.
	Known bool
}

// Made are the blanks that are good, for a plan of the rest to begin with, and none more
// than the job wants. One of which parts are no good holds fewer.
func (s *State) Made() []Made {
	wanted := map[string]int{}
	for _, p := range s.Parts() {
		wanted[p.Name] = p.Count
	}
	var all []Made
	pools := map[string][]lot{} // by mark
	for i, b := range s.Blanks() {
		if _, there := pools[b.Mark]; !there {
			pools[b.Mark] = s.lots(s.lines(b.Mark))
		}
		for n := range b.Good {
			one := Made{Blank: b.Blank}
			o := s.next(pools[b.Mark], i)
			one.From, one.Turned, one.Known = o.from, o.turned, o.known
			one.Count = 1
			bad := (b.Bad + b.Good - 1 - n) / b.Good // shared out
			one.Spare = max(one.Spare, bad, one.Gang*one.Layers-wanted[b.Part.Name])
			if one.Holds() <= 0 {
				continue
			}
			wanted[b.Part.Name] -= one.Holds()
			if at := slices.IndexFunc(all, func(m Made) bool { return m.Mark == one.Mark && m.Spare == one.Spare && m.origin() == o }); at >= 0 {
				all[at].Count++
				continue
			}
			all = append(all, one)
		}
	}
	return all
}

func (m Made) origin() origin { return origin{m.From, m.Turned, m.Known} }

// next is the origin of the next good piece of a line, of those that share its mark; it is
// then out of the lots.
func (s *State) next(lots []lot, line int) origin {
	if s.taken.unsaid[s.bill[line].Mark] > 0 {
		claim, _ := oneOf(lots, nil)
		return claim
	}
	at := slices.IndexFunc(lots, func(l lot) bool { return l.line == line && l.count > 0 })
	if at < 0 {
		at = slices.IndexFunc(lots, func(l lot) bool { return l.count > 0 })
	}
	lots[at].count--
	return lots[at].origin
}
