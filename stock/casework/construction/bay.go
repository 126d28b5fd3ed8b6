package construction

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// Bay is one upright division with its sizes.
type Bay struct {
	At       design.Place
	Name     string        // "bay 1"
	Given    design.Length // width
	Width    stock.Length
	Panels   stock.Length // width between the panels; framed: more than is clear
	Left     stock.Length // where what is clear begins
	Behind   stock.Length // where what lies between the panels does
	Openings []Opening
}

// Opening is a space of a bay.
type Opening struct {
	At     design.Place
	Name   string        // "opening 1"
	Given  design.Length // height
	Height stock.Length
	// Shared is the height that fronts and doors are cut for: of openings that share, the least, so
	// that theirs are alike.
	Shared  stock.Length
	Floor   stock.Length // above the case's own
	Shelves int
	Doors   int
	// doorsLine is the line of doors in the job file.
	doorsLine int
	Hinged    string        // side of a single door's hinges
	Stack     []Box         // drawers, from the top
	Graded    design.Length // what each front is higher than the one above
	// Contents must go in; nil if none are given.
	Contents *Contents
}

// Box is one drawer.
type Box struct {
	At       design.Place
	Measured bool
	// Width, height and depth measure the outside of a box, finished or derived.
	Width, Height, Depth stock.Length
	Front                design.Length // height of the front, as given
	BoxHeight            design.Length // as given
	Weight               stock.Grams   // of a measured one; 0 if it was not given
	Load                 stock.Grams   // of what is in it; 0 if it was not given
}

// layOut numbers bays, openings and drawers, and refuses what cannot stand
// together.
func (r *Construction) layOut() {
	bays := r.In.Design.Bays
	if len(bays) == 0 {
		bays = []design.Bay{{}}
	}
	for i, d := range bays {
		b := Bay{At: r.In.Root.Nth(d.Line, "bay", i+1), Name: fmt.Sprint("bay ", i+1), Given: d.Width}
		openings := d.Openings
		if len(openings) == 0 {
			openings = []design.Opening{{}}
		}
		for k, o := range openings {
			b.Openings = append(b.Openings, r.opening(b.At.Nth(o.Line, "opening", k+1), k+1, o))
		}
		r.Bays = append(r.Bays, b)
	}
}

func (r *Construction) opening(a design.Place, number int, d design.Opening) Opening {
	o := Opening{At: a, Name: fmt.Sprint("opening ", number), Given: d.Height, Shelves: d.Shelves.Value, Doors: d.Doors.Value, doorsLine: d.Doors.Line, Hinged: design.Or(d.Hinged, "left"), Graded: d.Graded,
		Contents: r.contents(a, d)}
	measured := 0
	for i, b := range d.Drawers {
		one := r.drawer(a.Nth(b.Line, "drawer", i+1), b)
		count := 1
		if b.Count.Set {
			count = min(b.Count.Value, design.Most) // a greater one has its own fault
		}
		for range count {
			o.Stack = append(o.Stack, one)
		}
		if one.Measured {
			measured++
		}
	}
	if o.Shelves > 0 && len(o.Stack) > 0 {
		r.In.Fault(a, "an opening holds shelves or drawers, and both are given", "make two openings of it")
	}
	if measured > 0 && measured < len(d.Drawers) && design.Or(r.In.Design.Drawer.Front, "none") != "none" && !r.In.Doubtful(r.In.Root.Path+".drawer.front") {
		r.In.Fault(a, "measured drawers stand in one stack with drawers that get a false front", "make two openings of it")
	}
	if doorsAt := a.Under(d.Doors.Line, "doors"); o.Doors > 2 {
		r.In.Fault(doorsAt, fmt.Sprintf("an opening has one door or two, and %d are given", o.Doors), "give 1 or 2, or make more bays of it")
	} else if d.Hinged.Set && o.Doors != 1 && !r.In.Doubtful(doorsAt.Path) {
		r.In.Fault(a.Under(d.Hinged.Line, "hinged"), "hinged has no use but for a single door", "leave it out, or set doors = 1")
	}
	r.checkGraded(o, measured)
	return o
}

func (r *Construction) drawer(a design.Place, d design.DrawerBox) Box {
	b := Box{At: a, Front: d.FrontHeight, BoxHeight: d.BoxHeight, Load: r.In.Grams(d.Load)}
	sizes := []struct {
		key string
		design.Length
	}{{"width", d.Width}, {"height", d.Height}, {"depth", d.Depth}}
	for _, s := range sizes {
		b.Measured = b.Measured || s.Set || r.In.Unread(a.Path+"."+s.key)
	}
	if !b.Measured {
		if d.Weight.Set {
			r.In.Fault(a.Under(d.Weight.Line, "weight"), "the weight of a drawer that is to be made follows from its parts",
				"leave it out, or give width, height and depth of a finished drawer")
		}
		return b
	}
	b.Weight = r.In.Grams(d.Weight)
	for _, s := range sizes {
		if !s.Set {
			r.In.Doubt(a.Under(0, s.key))
			r.In.Fault(a.Under(0, s.key), "a measured drawer needs width, height and depth, and one is missing",
				"measure it, or leave all three out of a drawer that is to be made")
		}
	}
	if d.FrontHeight.Set {
		r.In.Fault(a.Under(d.FrontHeight.Line, "front_height"), "a measured drawer has its front already",
			"leave it out, or leave out width, height and depth")
	}
	if d.BoxHeight.Set {
		r.In.Fault(a.Under(d.BoxHeight.Line, "box_height"), "a measured drawer has its height already",
			"leave it out, or leave out width, height and depth")
	}
	b.Width, b.Height, b.Depth = d.Width.Value, d.Height.Value, d.Depth.Value
	return b
}

// Drawers is how many a bay has.
func (b Bay) Drawers() (n int) {
	for _, o := range b.Openings {
		n += len(o.Stack)
	}
	return n
}

// AnyBay reports whether any bay is so.
func (r *Construction) AnyBay(is func(Bay) bool) bool { return slices.ContainsFunc(r.Bays, is) }

// AnyOpening reports whether any opening is so.
func (r *Construction) AnyOpening(is func(Opening) bool) bool {
	return r.AnyBay(func(b Bay) bool { return slices.ContainsFunc(b.Openings, is) })
}

// AnyDrawer looks at measured drawers, or at those to be made.
func (r *Construction) AnyDrawer(measured bool) bool {
	return r.AnyOpening(func(o Opening) bool {
		return slices.ContainsFunc(o.Stack, func(b Box) bool { return b.Measured == measured })
	})
}
