package progress

import (
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
	"sawbill/stock/fault"
)

// origin holds the facts about a blank's source that still matter: kind, material,
// thickness and grain of the stock, and how the blank lay in it. If it is not known, from
// holds only certain facts, along the blank's own length.
type origin struct {
	from   stock.Stock
	turned bool
	known  bool
}

// lot counts pieces of one line of the bill and of one origin.
type lot struct {
	line int
	origin
	count int
}

// losses counts pieces that were spoiled or lost. If the report fits several origins, the
// loss is of unknown origin, and each remaining piece may have any of them.
type losses struct {
	known   []map[origin]int // by line of the bill
	unknown map[string]int   // by mark
}

func originIn(s stock.Stock, turned bool) origin {
	return origin{stock.Stock{Kind: s.Kind, Material: s.Material, Thickness: s.Thickness, Grain: s.Grain}, turned, true}
}

// unknownOrigin returns the origin of a good blank from an unknown source. Its grain runs
// as its part wants it; if the part may lie any way, the grain is not known. Material
// without grain has none.
func unknownOrigin(b cutplan.Blank, job stock.Job) origin {
	grain := stock.GrainUnknown
	if b.Part.Grain != stock.GrainAny {
		grain = b.Part.Grain
	}
	if grainless(job.Stock, b.Part.Material) {
		grain = stock.GrainAny
	}
	return origin{from: stock.Stock{Kind: job.KindOf(b.Part.Material), Material: b.Part.Material, Thickness: b.Thickness, Grain: grain}}
}

// grainless reports whether a material has stock and none of it has grain.
func grainless(all []stock.Stock, material string) bool {
	some := false
	for _, s := range all {
		if s.Material == material {
			if s.Grain != stock.GrainAny {
				return false
			}
			some = true
		}
	}
	return some
}

// grain returns the grain along the blank's own length.
func (o origin) grain() stock.Grain {
	if o.turned {
		return o.from.Grain.Quarter()
	}
	return o.from.Grain
}

// mayRun reports whether the blank's grain may be as seen; nil means that nobody looked. A
// blank of uncertain origin may have no grain.
func (o origin) mayRun(seen *stock.Grain) bool {
	return seen == nil || o.grain() == *seen || o.grain() == stock.GrainUnknown || !o.known && *seen == stock.GrainAny
}

// same reports whether pieces of two origins are alike in hand.
func (o origin) same(p origin) bool {
	return o.grain() == p.grain() && o.from.Kind == p.from.Kind && o.from.Material == p.from.Material && o.from.Thickness == p.from.Thickness
}

// doubtful returns o as uncertain, with its grain along the blank's own length.
func (o origin) doubtful() origin {
	o.from.Grain = o.grain()
	o.turned, o.known = false, false
	return o
}

// either returns the facts certain for a piece of one of two origins. A piece without
// grain may pass for one with grain, since any cut from it is right as well.
func (o origin) either(p origin) origin {
	if o.same(p) {
		return o
	}
	both := origin{from: o.from}
	both.from.Thickness = min(o.from.Thickness, p.from.Thickness)
	switch a, b := o.grain(), p.grain(); {
	case a == b || b == stock.GrainAny:
		both.from.Grain = a
	case a == stock.GrainAny:
		both.from.Grain = b
	default:
		both.from.Grain = stock.GrainUnknown
	}
	return both
}

// lots counts the good pieces of some lines of the bill by origin. Spoiled and lost pieces
// are subtracted only if their origin is known.
func (s *State) lots(of []int) []lot {
	var all []lot
	add := func(line int, o origin, count int) {
		for i := range all {
			if all[i].line == line && all[i].origin == o {
				all[i].count += count
				return
			}
		}
		all = append(all, lot{line, o, count})
	}
	for _, i := range of {
		if n := i - len(s.plan.Bill); n >= 0 {
			m := s.before[n]
			add(i, m.origin(), m.Count)
			continue
		}
		s.eachCopy(func(layout, copy int) {
			for _, p := range s.remnants(layout, copy) {
				if p.Freed && p.Root.Use == cutplan.Part && p.Root.Blank == i {
					add(i, originIn(s.plan.Layouts[layout].Stock, p.Root.Turned), 1)
				}
			}
		})
	}
	for _, i := range of {
		if n := s.blanks[i].good; n > 0 {
			add(i, unknownOrigin(s.bill[i], s.plan.Job), n)
		}
		for o, n := range s.losses.known[i] {
			add(i, o, -n)
		}
	}
	return all
}

// certainOrigin returns the facts certain for a piece of any lot whose grain may be as
// seen. sure reports that all such pieces are alike.
func certainOrigin(lots []lot, seen *stock.Grain) (claim origin, sure bool) {
	first, known := true, true
	for _, l := range lots {
		switch {
		case l.count <= 0 || !l.mayRun(seen):
			continue
		case first:
			claim, first, sure = l.origin, false, true
		default:
			sure = sure && claim.same(l.origin)
			claim = claim.either(l.origin)
		}
		known = known && l.known
	}
	if !known {
		claim = claim.doubtful()
	}
	return claim, sure
}

// checkGrain checks that count good pieces may have the grain seen.
func (s *State) checkGrain(of []int, count int, seen *stock.Grain) error {
	if seen == nil {
		return nil
	}
	n := 0
	for _, l := range s.lots(of) {
		if l.count > 0 && l.mayRun(seen) {
			n += l.count
		}
	}
	if n < count {
		b := s.bill[of[0]]
		return fault.New(fmt.Sprintf("of blank %s (%s) %d have that grain", b.Mark, b.Part.Name, n), "look which way it runs, or leave it out")
	}
	return nil
}

// recordLoss records that a piece of these lines is spoiled or lost. If all candidates are
// alike in hand, it takes the first; else the loss is of unknown origin. It returns the
// line that loses a piece, and the certain facts about the piece.
func (s *State) recordLoss(of []int, seen *stock.Grain) (line int, is origin) {
	lots, all := s.lots(of), s.Blanks()
	is, sure := certainOrigin(lots, seen)
	line = -1
	if sure {
		for _, l := range lots {
			if l.count > 0 && l.mayRun(seen) {
				s.losses.known[l.line][l.origin]++
				if all[l.line].Good > 0 {
					line = l.line
				}
				if is.known {
					is = l.origin
				}
				break
			}
		}
	} else {
		s.losses.unknown[s.bill[of[0]].Mark]++
	}
	if seen != nil && !is.known {
		is.from.Grain = *seen
	}
	for i := 0; line < 0; i++ {
		if all[of[i]].Good > 0 {
			line = of[i]
		}
	}
	return line, is
}

// resolveLosses clears the losses of unknown origin once no good piece is left.
func (s *State) resolveLosses(of []int) {
	mark, all := s.bill[of[0]].Mark, s.Blanks()
	if s.losses.unknown[mark] == 0 {
		return
	}
	for _, i := range of {
		if all[i].Good > 0 {
			return
		}
	}
	for _, l := range s.lots(of) {
		s.losses.known[l.line][l.origin] += l.count
	}
	delete(s.losses.unknown, mark)
}

// grained splits "C=590 x 300 mm, grain width" into a report about a blank and the grain
// seen along its own length. The grain is nil if it is left out.
func (s *State) grained(text string) (before string, seen *stock.Grain, err error) {
	before, word, some := cutLast(text, ",")
	kind, grain, two := strings.Cut(strings.TrimSpace(word), " ")
	if !some || !two || !strings.EqualFold(kind, "grain") || s.isName(strings.TrimSpace(text)) {
		return text, nil, nil
	}
	known := map[string]stock.Grain{"length": stock.GrainLength, "width": stock.GrainWidth, "none": stock.GrainAny}
	g, ok := known[strings.ToLower(strings.TrimSpace(grain))]
	if !ok {
		return "", nil, fault.New(fmt.Sprintf("%q is no grain", strings.TrimSpace(grain)), "say grain length, grain width or grain none, as the blank's own length runs")
	}
	return before, &g, nil
}
