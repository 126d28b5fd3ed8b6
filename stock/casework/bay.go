package casework

import (
	"fmt"

	"sawbill/stock"
)

// bay is one upright division, as it is reckoned.
type bay struct {
	at       at
	name     string // "bay 1"
	given    Length // width
	width    stock.Length
	panels   stock.Length // width between the panels; framed: more than is clear
	left     stock.Length // where what is clear begins
	behind   stock.Length // where what lies between the panels does
	openings []opening
}

// opening is a space of a bay.
type opening struct {
	at      at
	name    string // "opening 1"
	given   Length // height
	height  stock.Length
	floor   stock.Length // above the case's own
	shelves int
	doors   int
	// doorsLine is the line of doors in the job file.
	doorsLine int
	hinged    string // side of a single door's hinges
	stack     []box  // drawers, from the top
	graded    Length // what each front is higher than the one above
	// contents is what must go in; nil if nothing was said of it.
	contents *contents
}

// box is one drawer.
type box struct {
	at       at
	measured bool
	// width, height and depth are the outside of a box: measured, or reckoned.
	width, height, depth stock.Length
	front                Length      // height of the front, as given
	boxHeight            Length      // as given
	weight               stock.Grams // of a measured one; 0 if it was not given
	load                 stock.Grams // of what is in it; 0 if it was not given
}

// layOut numbers bays, openings and drawers, and refuses what cannot stand
// together.
func (r *reckoner) layOut() {
	bays := r.design.Bays
	if len(bays) == 0 {
		bays = []Bay{{}}
	}
	for i, d := range bays {
		b := bay{at: r.place.nth(d.Line, "bay", i+1), name: fmt.Sprint("bay ", i+1), given: d.Width}
		openings := d.Openings
		if len(openings) == 0 {
			openings = []Opening{{}}
		}
		for k, o := range openings {
			b.openings = append(b.openings, r.opening(b.at.nth(o.Line, "opening", k+1), k+1, o))
		}
		r.bays = append(r.bays, b)
	}
}

func (r *reckoner) opening(a at, number int, d Opening) opening {
	o := opening{at: a, name: fmt.Sprint("opening ", number), given: d.Height, shelves: d.Shelves.Value, doors: d.Doors.Value, doorsLine: d.Doors.Line, hinged: or(d.Hinged, "left"), graded: d.Graded,
		contents: r.contents(a, d)}
	measured := 0
	for i, b := range d.Drawers {
		one := r.drawer(a.nth(b.Line, "drawer", i+1), b)
		count := 1
		if b.Count.Set {
			count = min(b.Count.Value, most) // a greater one has its own fault
		}
		for range count {
			o.stack = append(o.stack, one)
		}
		if one.measured {
			measured++
		}
	}
	if o.shelves > 0 && len(o.stack) > 0 {
		r.fault(a, "an opening holds shelves or drawers, and both are given", "make two openings of it")
	}
	if measured > 0 && measured < len(d.Drawers) && or(r.design.Drawer.Front, "none") != "none" && !r.doubtful(r.place.path+".drawer.front") {
		r.fault(a, "measured drawers stand in one stack with drawers that get a false front", "make two openings of it")
	}
	if doorsAt := a.under(d.Doors.Line, "doors"); o.doors > 2 {
		r.fault(doorsAt, fmt.Sprintf("an opening has one door or two, and %d are given", o.doors), "give 1 or 2, or make more bays of it")
	} else if d.Hinged.Set && o.doors != 1 && !r.doubtful(doorsAt.path) {
		r.fault(a.under(d.Hinged.Line, "hinged"), "hinged has no use but for a single door", "leave it out, or set doors = 1")
	}
	r.checkGraded(o, measured)
	return o
}

func (r *reckoner) drawer(a at, d DrawerBox) box {
	b := box{at: a, front: d.FrontHeight, boxHeight: d.BoxHeight, load: r.grams(d.Load)}
	sizes := []struct {
		key string
		Length
	}{{"width", d.Width}, {"height", d.Height}, {"depth", d.Depth}}
	for _, s := range sizes {
		b.measured = b.measured || s.Set || r.unread(a.path+"."+s.key)
	}
	if !b.measured {
		if d.Weight.Set {
			r.fault(a.under(d.Weight.Line, "weight"), "the weight of a drawer that is to be made follows from its parts",
				"leave it out, or give width, height and depth of a finished drawer")
		}
		return b
	}
	b.weight = r.grams(d.Weight)
	for _, s := range sizes {
		if !s.Set {
			r.doubt(a.under(0, s.key))
			r.fault(a.under(0, s.key), "a measured drawer needs width, height and depth, and one is missing",
				"measure it, or leave all three out of a drawer that is to be made")
		}
	}
	if d.FrontHeight.Set {
		r.fault(a.under(d.FrontHeight.Line, "front_height"), "a measured drawer has its front already",
			"leave it out, or leave out width, height and depth")
	}
	if d.BoxHeight.Set {
		r.fault(a.under(d.BoxHeight.Line, "box_height"), "a measured drawer has its height already",
			"leave it out, or leave out width, height and depth")
	}
	b.width, b.height, b.depth = d.Width.Value, d.Height.Value, d.Depth.Value
	return b
}

// drawers is how many a bay has.
func (b bay) drawers() (n int) {
	for _, o := range b.openings {
		n += len(o.stack)
	}
	return n
}

func (r *reckoner) anyBay(is func(bay) bool) bool {
	for _, b := range r.bays {
		if is(b) {
			return true
		}
	}
	return false
}

func (r *reckoner) anyOpening(is func(opening) bool) bool {
	return r.anyBay(func(b bay) bool {
		for _, o := range b.openings {
			if is(o) {
				return true
			}
		}
		return false
	})
}

// anyDrawer looks at measured drawers, or at those to be made.
func (r *reckoner) anyDrawer(measured bool) bool {
	return r.anyOpening(func(o opening) bool {
		for _, b := range o.stack {
			if b.measured == measured {
				return true
			}
		}
		return false
	})
}
