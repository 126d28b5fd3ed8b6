package diagram

import (
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// cut is a step as it is drawn: a line from where it starts. Cuts at one setting
// that lie too close for a number each are one: side by side, where they also
// follow one another, and end to end.
type cut struct {
	text     string
	from, to drawing.Point // of all where they lie end to end, else of the first
	rip      bool
	zone     zone
	starts   []drawing.Point // of each, where they are several side by side
	middles  []drawing.Point // of each, where they are several
	steps    []cutplan.Step
	bare     bool // there is no room for the setting

	lastFrom, lastTo drawing.Point
}

// zone is where a cut is numbered.
type zone int

const (
	within zone = iota
	onLeft
	underneath
)

// middle is where a number would stand at the start of all the cuts.
func (c cut) middle() drawing.Point {
	if c.starts == nil {
		return c.from
	}
	last := c.starts[len(c.starts)-1]
	return drawing.Point{X: (c.from.X + last.X) / 2, Y: (c.from.Y + last.Y) / 2}
}

// centers are the middles of the cuts.
func (c cut) centers() []drawing.Point {
	if c.middles != nil {
		return c.middles
	}
	return []drawing.Point{{X: (c.from.X + c.to.X) / 2, Y: (c.from.Y + c.to.Y) / 2}}
}

// cuts are the steps as they are drawn, in their order.
func (f frame) cuts(v View) []cut {
	var all []cut
	trims := v.Layout.Stock.Trims()
	for _, s := range v.Steps {
		from, to := f.cutLine(s, v.Kerf)
		c := cut{text: strconv.Itoa(s.Number), from: from, to: to, rip: s.Cut == cutplan.Rip,
			steps: []cutplan.Step{s}, lastFrom: from, lastTo: to}
		switch {
		case c.rip && s.X <= trims.NearEnd:
			c.zone = onLeft
		case !c.rip && s.Y <= trims.NearEdge:
			c.zone = underneath
		}
		at := slices.IndexFunc(all, func(of cut) bool { return of.relation(c) != apart })
		if at < 0 {
			all = append(all, c)
		} else {
			all[at].take(c, all[at].relation(c))
		}
	}
	return all
}

// Paper between two cuts below which they share a number, mm beyond what the
// number takes: crosscuts leave room for a mark between. A rip has its mark above or
// below its line, so that its number needs no more than a little of the line to show.
const (
	markRoom = 3.2
	lineRoom = 1.0
	touching = 0.8 // ends of cuts in one line are at most so far apart
)

// relation of two cuts.
type relation int

const (
	apart relation = iota
	sideBySide
	endToEnd
)

// relation tells how next lies to c, where both share a number.
func (c *cut) relation(next cut) relation {
	a, b := c.steps[len(c.steps)-1], next.steps[0]
	if a.Trim || b.Trim || a.Cut != b.Cut || a.Setting != b.Setting || c.zone != next.zone {
		return apart
	}
	box := drawing.NumberBox(drawing.Point{}, next.text)
	// Of rips: how far they are apart, and how far one starts behind the other.
	side, behind := abs(next.from.Y-c.lastFrom.Y), abs(next.from.X-c.lastFrom.X)
	gap, short := abs(next.from.X-c.lastTo.X), c.lastTo.X-c.lastFrom.X < box.W+lineRoom
	room := box.H + numberGap
	if !c.rip {
		side, behind = behind, side
		gap, short = abs(next.from.Y-c.lastTo.Y), c.lastFrom.Y-c.lastTo.Y < box.H+markRoom
		room = box.W + numberGap
		if c.zone == within {
			room = box.W + markRoom
		}
	}
	const exact = 0.05 // mm
	switch {
	case b.Number == a.Number+1 && behind < exact && side < room && (c.starts != nil || c.middles == nil):
		return sideBySide
	case side < exact && gap < touching && short && c.starts == nil:
		return endToEnd
	}
	return apart
}

// take joins next to c, with which it shares a number.
func (c *cut) take(next cut, how relation) {
	if c.middles == nil {
		c.middles = c.centers()
	}
	if how == endToEnd {
		c.to = next.to
	} else if c.starts == nil {
		c.starts = []drawing.Point{c.from}
	}
	if how == sideBySide {
		c.starts = append(c.starts, next.from)
	}
	c.middles = append(c.middles, next.centers()...)
	c.steps = append(c.steps, next.steps...)
	c.lastFrom, c.lastTo = next.lastFrom, next.lastTo
	numbers := make([]int, len(c.steps))
	for i, s := range c.steps {
		numbers[i] = s.Number
	}
	c.text = ranges(numbers, 2)
}
