package nest

import (
	"fmt"

	"sawbill/nest/internal/instance"
)

// item is what the search cuts as one rectangle: a blank, or a run.
type item struct {
	Blank     // of a run: its size, kerfs included, and the stock that serves all of it
	blank int // index; of a run -1
	group int // index; of a blank -1
}

// items lists the blanks that are in no group, then the runs.
func (p *Problem) items() (items []item) {
	grouped := make([]bool, len(p.Blanks))
	for _, g := range p.Groups {
		for _, b := range g.Blanks {
			grouped[b] = true
		}
	}
	for i, b := range p.Blanks {
		if !grouped[i] {
			items = append(items, item{b, i, -1})
		}
	}
	for i, g := range p.Groups {
		items = append(items, item{p.runBlank(g), -1, i})
	}
	return items
}

// runBlank returns a run as one blank.
func (p *Problem) runBlank(g Group) Blank {
	first := p.Blanks[g.Blanks[0]]
	run := Blank{Length: first.Length, Width: first.Width, Count: g.Count}
	for _, f := range first.From {
		for _, b := range g.Blanks[1:] {
			serves := Source{}
			for _, o := range p.Blanks[b].From {
				if o.Stock == f.Stock {
					serves.Upright, serves.Turned = serves.Upright || o.Upright, serves.Turned || o.Turned
				}
			}
			f.Upright, f.Turned = f.Upright && serves.Upright, f.Turned && serves.Turned
		}
		run.From = append(run.From, f)
	}
	for _, b := range g.Blanks[1:] {
		if g.Lengthwise {
			run.Length += p.Kerf + p.Blanks[b].Length
		} else {
			run.Width += p.Kerf + p.Blanks[b].Width
		}
	}
	return run
}

// checkGroup refuses a group that no plan could cut.
func (p *Problem) checkGroup(i int, g Group) error {
	if len(g.Blanks) < 2 || g.Count < 0 {
		return fmt.Errorf("nest: group %d: %d blanks, %d times, are no run", i, len(g.Blanks), g.Count)
	}
	times := map[int]int{}
	for _, b := range g.Blanks {
		if b < 0 || b >= len(p.Blanks) {
			return fmt.Errorf("nest: group %d: there is no blank %d", i, b)
		}
		times[b]++
	}
	first := p.Blanks[g.Blanks[0]]
	for b, n := range times {
		bl := p.Blanks[b]
		if bl.Count != n*g.Count {
			return fmt.Errorf("nest: group %d: blank %d is wanted %d times, %d runs have %d", i, b, bl.Count, g.Count, n*g.Count)
		}
		if g.Lengthwise && bl.Width != first.Width || !g.Lengthwise && bl.Length != first.Length {
			return fmt.Errorf("nest: group %d: blank %d, %d x %d, does not go on from %d x %d", i, b, bl.Length, bl.Width, first.Length, first.Width)
		}
		for j, o := range p.Groups[:i] {
			for _, c := range o.Blanks {
				if c == b {
					return fmt.Errorf("nest: group %d: blank %d is in group %d too", i, b, j)
				}
			}
		}
	}
	return nil
}

// runDir returns the direction of the cuts within an upright run; None for a blank.
func (p *Problem) runDir(it item) instance.Dir {
	switch {
	case it.group < 0:
		return instance.None
	case p.Groups[it.group].Lengthwise:
		return instance.Crosscut
	}
	return instance.Rip
}

// itemOrientations returns the ways in which an item can be cut from whole pieces of source f.
func (p *Problem) itemOrientations(it item, f Source) instance.Orientation {
	s := p.Stock[f.Stock]
	may := p.orientations(it.Blank, f, s.Usable())
	if it.group < 0 {
		return may
	}
	var orientations instance.Orientation
	if may&instance.Upright != 0 && p.canCutRun(it, s, it.Length, it.Width, false) {
		orientations |= instance.Upright
	}
	if may&instance.Turned != 0 && p.canCutRun(it, s, it.Width, it.Length, true) {
		orientations |= instance.Turned
	}
	return orientations
}

// canCutRun reports whether a run that takes l x w, and can be cut out as one blank, can be
// divided as well. Its blanks must not be too narrow. A cut in the direction of the last cut
// before is of the same level.
func (p *Problem) canCutRun(it item, s Stock, l, w int64, turned bool) bool {
	g := p.Groups[it.group]
	cut := Rip
	if g.Lengthwise != turned {
		cut = Crosscut
	}
	if cut == Rip {
		for _, b := range g.Blanks {
			across := p.Blanks[b].Width
			if turned {
				across = p.Blanks[b].Length
			}
			if across < s.NarrowestRip {
				return false
			}
		}
	}
	u := s.Usable()
	rip, cross := w < u.Width, l < u.Length
	levels, first := 1, cut // of a run that is the whole piece, or is freed by cuts in its own direction
	switch {
	case rip && cross && s.FirstCut == cut:
		levels, first = 3, cut
	case rip && cross:
		levels, first = 2, Rip+Crosscut-cut
	case rip && cut == Crosscut, cross && cut == Rip:
		levels, first = 2, Rip+Crosscut-cut
	}
	return (p.Stages == 0 || levels <= p.Stages) && (s.FirstCut == AnyCut || s.FirstCut == first)
}

// leaveOut lists an item as unplaced n times.
func (p *Problem) leaveOut(unplaced []Unplaced, it item, n int, why Reason) []Unplaced {
	if it.group < 0 {
		return append(unplaced, Unplaced{Blank: it.blank, Count: n, Reason: why})
	}
	at := map[int]int{}
	for _, b := range p.Groups[it.group].Blanks {
		if i, ok := at[b]; ok {
			unplaced[i].Count += n
			continue
		}
		at[b] = len(unplaced)
		unplaced = append(unplaced, Unplaced{Blank: b, Count: n, Reason: why})
	}
	return unplaced
}

// run divides node n, a run, into the blanks of its group.
func (p *Problem) run(n Node, group int) Node {
	g := p.Groups[group]
	n.Use, n.Cut = Split, Rip
	if g.Lengthwise != n.Turned {
		n.Cut = Crosscut
	}
	for _, b := range g.Blanks {
		part := Node{Length: p.Blanks[b].Length, Width: p.Blanks[b].Width, Use: Part, Blank: b, Turned: n.Turned}
		if n.Turned {
			part.Length, part.Width = part.Width, part.Length
		}
		n.Children = append(n.Children, part)
	}
	n.Turned = false
	return n
}
