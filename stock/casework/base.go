package casework

import (
	"fmt"

	"sawbill/stock"
)

// base is what the case stands on, or hangs by; its height is 0 where it lifts nothing.
type base struct {
	panel
	kind    string
	height  stock.Length
	setBack stock.Length // of a plinth
	depth   stock.Length // of a foot
	forward stock.Length // of the front feet
	// of a hung case
	rails     int
	railWidth stock.Length
}

func (r *reckoner) buildBase() {
	d := r.design.Base
	a := r.place.under(d.Line, "base")
	kind := or(d.Kind, "none")
	switch kind {
	case "none":
		if r.doubtful(a.path + ".kind") {
			return
		}
		r.unusedByBase(a, kind)
		return
	case "hung":
		r.unusedByBase(a, kind)
		b := base{kind: kind}
		r.buildHanging(a, &b)
		r.made.base = b
		return
	case "plinth", "feet":
		r.unusedByBase(a, kind)
	default: // has its own fault
		return
	}
	b := base{
		kind:    kind,
		panel:   r.panel(a, "", d.Material, d.Thickness, &r.made.carcass),
		height:  r.required(a, "height", d.Height, "how high it lifts the case"),
		setBack: d.SetBack.Value,
		forward: d.Forward.Value,
	}
	if kind == "feet" {
		b.depth = r.required(a, "depth", d.Depth, "the size of a foot, front to back")
	}
	r.made.base = b
}

// unusedByBase refuses sizes that a base of this kind has no use for.
func (r *reckoner) unusedByBase(a at, kind string) {
	d := r.design.Base
	for _, s := range []struct {
		key  string
		size Length
		of   []string // kinds that use it
	}{
		{"height", d.Height, []string{"plinth", "feet"}},
		{"set_back", d.SetBack, []string{"plinth"}},
		{"depth", d.Depth, []string{"feet"}},
		{"forward", d.Forward, []string{"feet"}},
		{"rail_width", d.RailWidth, []string{"hung"}},
	} {
		if s.size.Set && kind != s.of[0] && kind != s.of[len(s.of)-1] {
			r.fault(a.under(s.size.Line, s.key), fmt.Sprintf("it has no use, since kind is %q", kind),
				"leave it out, or set kind = "+oneOf(s.of))
		}
	}
	if d.Rails.Set && kind != "hung" {
		r.fault(a.under(d.Rails.Line, "rails"), fmt.Sprintf("it has no use, since kind is %q", kind), `leave it out, or set kind = "hung"`)
	}
}

// aboveBase is the height of the case without its base.
func (r *reckoner) aboveBase() stock.Sum {
	return plus(given(r.height.outside, "outside height"), stock.Term{Times: -1, Value: r.made.base.height, Label: "base"})
}

// basePieces are those of a plinth or the feet, flush with the sides and, but
// for an applied back, with the back of the case.
//
//	plinth front, back   outside width; set back in front
//	plinth cross piece   depth - set back - 2 thicknesses, between the two
//	back foot            depth as given, height of the base
//	front foot           depth + forward, height of the base
//
// The grain of a foot runs the longer way, for short grain would split.
func (r *reckoner) basePieces() {
	b := r.made.base
	height, right, behind := given(b.height, "base height"), r.width.outside, r.behindFrame()
	deep := given(r.depth.outside, "outside depth")
	if back := r.made.back; back.fit == "applied" {
		deep = plus(deep, stock.Term{Times: -1, Value: back.thickness, Label: "back"})
	}
	switch b.kind {
	case "plinth":
		r.add(piece{role: "plinth front and back", panel: b.panel, count: 2, length: given(right, "outside width"), width: height,
			way: across, stands: stands(Point{Y: b.setBack}, Point{Y: behind - b.thickness})})
		r.add(piece{role: "plinth cross piece", panel: b.panel, count: 2, width: height,
			length: plus(deep, stock.Term{Times: -1, Value: b.setBack, Label: "set back"},
				stock.Term{Times: -2, Value: b.thickness, Label: "plinth front and back"}),
			way: endwise, stands: stands(Point{Y: b.setBack + b.thickness}, Point{right - b.thickness, b.setBack + b.thickness, 0})})
	case "feet":
		if 2*b.thickness > right {
			d := r.design.Base
			r.fault(r.place.under(d.Line, "base").under(d.Thickness.Line, "thickness"), fmt.Sprintf("two feet %s thick do not stand in %s",
				r.print(b.thickness), r.print(right)), "make them at most "+r.print(right/2)+" thick")
			return
		}
		if 2*b.depth > deep.Total() {
			d := r.design.Base
			r.fault(r.place.under(d.Line, "base").under(d.Depth.Line, "depth"), fmt.Sprintf("two feet %s deep do not stand in %s",
				r.print(b.depth), r.reckoned(deep)), "make them at most "+r.print(deep.Total()/2)+" deep")
			return
		}
		if b.forward > deep.Total() {
			d := r.design.Base
			r.fault(r.place.under(d.Line, "base").under(d.Forward.Line, "forward"), fmt.Sprintf("feet that reach %s forward stand farther before the case than it is deep, %s",
				r.print(b.forward), r.reckoned(deep)), "make it less; what the check of tipping asks for is enough")
			return
		}
		front := plus(given(b.depth, "depth"), stock.Term{Times: 1, Value: b.forward, Label: "forward"})
		ahead, rear := Point{Y: -b.forward}, Point{Y: behind - b.depth}
		fronts := stands(ahead, Point{right - b.thickness, ahead[Y], 0})
		backs := stands(rear, Point{right - b.thickness, rear[Y], 0})
		if b.forward == 0 {
			r.foot("foot", front, height, append(fronts, backs...))
			return
		}
		r.foot("front foot", front, height, fronts)
		r.foot("back foot", given(b.depth, "depth"), height, backs)
	}
}

func (r *reckoner) foot(role Role, deep, height stock.Sum, at []Solid) {
	p := piece{role: role, panel: r.made.base.panel, count: len(at), length: height, width: deep, way: upright, stands: at}
	if deep.Total() > height.Total() {
		p.length, p.width, p.way = deep, height, endwise
	}
	r.add(p)
}
