package progress

import (
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// origin is the stock that a blank came from, as far as that still matters: its kind,
// material, thickness and grain; and how the blank lay in it. Where it is not known,
// from claims only what is certain, as the blank itself lies.
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

// losses counts pieces that were spoiled or lost. One of several of different origins may
// be meant, and nobody said which: then each that is left may be of any of them.
type losses struct {
	known   []map[origin]int // by line of the bill
	unknown map[string]int   // by mark
}

func originIn(s stock.Stock, turned bool) origin {
	return origin{stock.Stock{Kind: s.Kind, Material: s.Material, Thickness: s.Thickness, Grain: s.Grain}, turned, true}
}

// unknownOrigin is the origin of a good blank from an unknown source: its grain runs as its
// part wants it, or it has none. If the part may lie any way, its grain is not known.
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

// grainless reports whether there is stock of a material, and all of it without grain.
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

// grain returns how the grain runs along the blank's own length.
func (o origin) grain() stock.Grain {
	if o.turned {
		return o.from.Grain.Quarter()
	}
	return o.from.Grain
}

// mayRun reports whether the grain of a blank may be as somebody sees it; nil: nobody
// looked. One that is not known to have grain may have none.
func (o origin) mayRun(seen *stock.Grain) bool {
	return seen == nil || o.grain() == *seen || o.grain() == stock.GrainUnknown || !o.known && *seen == stock.GrainAny
}

// same reports whether the pieces of two origins are the same in hand.
func (o origin) same(p origin) bool {
	return o.grain() == p.grain() && o.from.Kind == p.from.Kind && o.from.Material == p.from.Material && o.from.Thickness == p.from.Thickness
}

// doubtful is o with its grain as the blank itself lies, and not known for certain.
func (o origin) doubtful() origin {
	o.from.Grain = o.grain()
	o.turned, o.known = false, false
	return o
}

// either claims what is certain of a piece that is of one of two origins. A piece without
// grain may be taken for one with grain: what is cut from it then is right as well.
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

// lots counts the good pieces of some lines of the bill by origin. Pieces that were spoiled
// or lost are subtracted only if their origin is known.
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

// certainOrigin claims what is certain of a piece of any of the lots whose grain may be as it is
// seen; sure tells that they are all the same.
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

// checkGrain checks that so many good pieces have their grain as it is seen.
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
		return Wrong{fmt.Sprintf("of blank %s (%s) %d have that grain", b.Mark, b.Part.Name, n), "look which way it runs, or leave it out"}
	}
	return nil
}

// recordLoss notes that a piece of these lines of the bill is spoiled or lost. If all pieces with
// the grain that is seen are the same in hand, the first is taken; else it may be any of
// them. It returns a line that loses one, and the certain facts about the piece.
func (s *State) recordLoss(of []int, seen *stock.Grain) (line int, is origin) {
	lots, all := s.lots(of), s.Blanks()
	is, sure := certainOrigin(lots, seen)
	line = -1
	if sure {
		for _, l := range lots {
			if l.count > 0 && l.mayRun(seen) {
				if s.losses.known[l.line] == nil {
					s.losses.known[l.line] = map[origin]int{}
				}
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

// resolveLosses forgets which pieces were not named once none is left.
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
		if s.losses.known[l.line] == nil {
			s.losses.known[l.line] = map[origin]int{}
		}
		s.losses.known[l.line][l.origin] += l.count
	}
	delete(s.losses.unknown, mark)
}

// grained splits "C=590 x 300 mm, grain width" into a report about a blank and the grain
// that somebody sees, as the blank's own length runs. The grain is nil if it is left out.
func (s *State) grained(text string) (rest string, seen *stock.Grain, err error) {
	rest, word, some := cutLast(text, ",")
	kind, grain, two := strings.Cut(strings.TrimSpace(word), " ")
	if !some || !two || !strings.EqualFold(kind, "grain") || s.isName(strings.TrimSpace(text)) {
		return text, nil, nil
	}
	known := map[string]stock.Grain{"length": stock.GrainLength, "width": stock.GrainWidth, "none": stock.GrainAny}
	g, ok := known[strings.ToLower(strings.TrimSpace(grain))]
	if !ok {
		return "", nil, Wrong{fmt.Sprintf("%q is no grain", strings.TrimSpace(grain)), "say grain length, grain width or grain none, as the blank's own length runs"}
	}
	return rest, &g, nil
}
