// Package sample makes designs for tests: small ones whose sizes are easy to check by hand, and random
// ones.
package sample

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// Metric reads a length as a job file in mm would.
func Metric(text string) design.Length { return Length(text, stock.Millimeters) }

// Imperial reads one as a job file in inches would.
func Imperial(text string) design.Length { return Length(text, stock.Inches) }

// Length reads one in units.
func Length(text string, units stock.Units) design.Length {
	l, err := stock.ParseLength(text, units)
	if err != nil {
		panic("casework: test data: " + err.Error())
	}
	return design.Length{Value: l, Set: true}
}

// Word is a word that was written.
func Word(text string) design.Word { return design.Word{Value: text, Set: true} }

// Count is a number that was written.
func Count(n int) design.Count { return design.Count{Value: n, Set: true} }

// Workshop offers the materials of the examples.
func Workshop(units stock.Units) design.Context {
	sheet := func(thickness ...string) design.Material { return offered(stock.Sheet, units, thickness) }
	board := func(thickness ...string) design.Material { return offered(stock.Board, units, thickness) }
	c := design.Context{Ruler: stock.Ruler{Units: units}, Kerf: Length("1/8 in", units).Value}
	if units == stock.Inches {
		c.Materials = map[string]design.Material{
			"ply": sheet("1/4", "1/2", "3/4"), "back": sheet("1/4"), "carcass": sheet("3/4"), "box": sheet("1/2"), "spruce": board("1 1/2"),
		}
		return c
	}
	c.Materials = map[string]design.Material{
		"ply": sheet("6", "12", "18"), "back": sheet("6"), "carcass": sheet("18"), "box": sheet("12"), "spruce": board("38"),
	}
	return c
}

func offered(kind stock.Kind, units stock.Units, thicknesses []string) design.Material {
	m := design.Material{Kind: kind}
	for _, t := range thicknesses {
		m.Thicknesses = append(m.Thicknesses, Length(t, units).Value)
	}
	return m
}

// Plain is a case that can be built: 900 x 720 x 300 of 18 mm panels. Tests
// change what they are about.
func Plain() design.Design {
	return design.Design{
		Line:         10,
		OutsideWidth: Metric("900"), OutsideHeight: Metric("720"), OutsideDepth: Metric("300"),
		Carcass: design.Carcass{Line: 15, Material: Word("carcass")},
	}
}

// Framed is the same with frames of 50 x 38 mm members.
func Framed() design.Design {
	d := Plain()
	d.Construction = Word("framed")
	d.Frame = design.Frame{Material: Word("spruce"), StileWidth: Metric("50"), RailWidth: Metric("50")}
	return d
}

// Measured is a bay of so many finished drawers.
func Measured(n int, width, height, depth string) design.Bay {
	return design.Bay{Openings: []design.Opening{{Drawers: []design.DrawerBox{
		{Count: Count(n), Width: Metric(width), Height: Metric(height), Depth: Metric(depth)}}}}}
}

// Made is a bay of drawers to be made, with what they need.
func Made(d *design.Design, front string, drawers ...design.DrawerBox) {
	d.Drawer.Front, d.Drawer.Material = Word(front), Word("box")
	d.Drawer.BottomMaterial, d.Drawer.GrooveDepth = Word("back"), Metric("6")
	d.Bays = []design.Bay{{Openings: []design.Opening{{Drawers: drawers}}}}
}

// Edged is 900 x 720 x 300 of 18 mm with a shelf and strips of 5 mm.
func Edged(on, fit string) (design.Design, design.Context) {
	d := Plain()
	d.Bays = []design.Bay{{Openings: []design.Opening{{Shelves: Count(1)}}}}
	d.Edgings = []design.Edging{{On: Word(on), Fit: Word(fit), Material: Word("oak")}}
	from := Workshop(stock.Millimeters)
	from.Materials["oak"] = design.Material{Kind: stock.Board, Thicknesses: []stock.Length{Metric("5").Value}}
	return d, from
}

// BehindTwoDoors is plain with two inset doors, and two drawers with inset fronts
// behind them.
func BehindTwoDoors() design.Design {
	d := Plain()
	Made(&d, "inset", design.DrawerBox{Count: Count(2)})
	d.Bays[0].Openings[0].Doors = Count(2)
	return d
}

// TwoDoors is a framed case of 900 x 720 x 300 with two openings above one another
// that inset doors close.
func TwoDoors() design.Design {
	d := Framed()
	d.Bays = []design.Bay{{Openings: []design.Opening{{Doors: Count(1)}, {Doors: Count(1)}}}}
	return d
}

// WithOak is the workshop with boards of oak.
func WithOak(units stock.Units) design.Context {
	from := Workshop(units)
	from.Materials["oak"] = design.Material{Kind: stock.Board, Thicknesses: []stock.Length{Length("1 in", units).Value}}
	return from
}

// Weighed is the workshop with the density of some of its materials.
func Weighed(densities map[string]float64) design.Context {
	from := Workshop(stock.Millimeters)
	for name, density := range densities {
		m := from.Materials[name]
		m.Density = design.Property{Value: density, Source: "test"}
		from.Materials[name] = m
	}
	return from
}
