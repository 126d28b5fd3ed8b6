package checks

import (
	"regexp"
	"testing"

	"sawbill/stock"
)

// decimal is what another program can read as a number.
var decimal = regexp.MustCompile(`^-?\d+(\.\d+)?$`)

// The pieces where they stand weigh what the parts do, their center of gravity
// lies within the case, and every figure is a number.
func TestTakeoffOfRandomCases(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, d Design, _ *derived) {
		from := workshop(stock.Millimeters)
		for name, m := range from.Materials {
			m.Properties = Wood("birch plywood")
			if m.Kind == stock.Board {
				m.Properties = Wood("cherry")
			}
			from.Materials[name] = m
		}
		c := derive(t, d, from)
		got := c.TakeOff()
		stands := make([]bool, len(c.Parts))
		for _, s := range c.Solids {
			if s.Part >= 0 {
				stands[s.Part] = true
			}
		}
		want := got.Weight
		for _, w := range got.Weights {
			if !stands[w.Part] { // glue blocks and the like: their places are the maker's
				want -= w.All
			}
		}
		if sum := together(loads(&c.Standing)).weight; sum != want || sum == 0 {
			t.Errorf("the solids weigh %d g, the parts %d g", sum, want)
		}
		outside := Point{sizeNamed(t, c, "outside width"), sizeNamed(t, c, "outside depth"), sizeNamed(t, c, "outside height")}
		for a, at := range got.Center {
			if at <= 0 || at >= outside[a] {
				t.Errorf("the center of gravity %v is not in the case, %v", *got.Center, outside)
			}
		}
		checkOn(t, c, "tipping") // all are 1500 or more high
		for _, k := range c.Checks {
			for _, f := range append(k.Inputs, k.Results...) {
				if !decimal.MatchString(f.Value) {
					t.Errorf("%s of %s: %s is %q", k.Subject, k.Of, f.Name, f.Value)
				}
			}
			if k.Text == "" || k.Source == "" || len(k.Assumptions) == 0 {
				t.Errorf("%+v says too little", k)
			}
		}
	})
}

// A bookcase, drawn in either units, weighs and takes the same, and stands as
// firmly.
func TestTakeoffIsTheSameInInches(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(2)}}}}
	d.Shelf.Clearance = metric("3")
	var areas, figures [2]any
	for i, units := range []stock.Units{stock.Millimeters, stock.Inches} {
		from := stiff(7000)
		from.Ruler.Units = units
		m := from.Materials["carcass"]
		m.Density = Property{Value: 700, Source: "test"}
		from.Materials["carcass"] = m
		c := derive(t, d, from)
		got := c.TakeOff()
		areas[i] = [5]float64{got.Surfaces.Outside.SquareMeters(), got.Surfaces.Inside.SquareMeters(), got.Surfaces.Wear.SquareMeters(),
			float64(got.Weight), float64(got.Edging)}
		var all [16]Figure
		n := 0
		for _, k := range c.Checks {
			n += copy(all[n:], append(k.Inputs, k.Results...))
		}
		figures[i] = all
	}
	if areas[0] != areas[1] || figures[0] != figures[1] {
		t.Errorf("mm %v %v, in %v %v", areas[0], figures[0], areas[1], figures[1])
	}
}
