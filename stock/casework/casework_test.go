package casework

import (
	"fmt"
	"testing"

	"sawbill/stock"

	"github.com/google/go-cmp/cmp"
)

// metric and imperial read lengths as a job file in those units would.
func metric(text string) Length   { return length(text, stock.Millimetres) }
func imperial(text string) Length { return length(text, stock.Inches) }

func length(text string, units stock.Units) Length {
	l, err := stock.ParseLength(text, units)
	if err != nil {
		panic("casework: test data: " + err.Error())
	}
	return Length{Value: l, Set: true}
}

func word(text string) Word { return Word{Value: text, Set: true} }
func count(n int) Count     { return Count{Value: n, Set: true} }

// workshop offers the materials of the examples.
func workshop(units stock.Units) Context {
	sheet := func(thickness ...string) Material { return offered(stock.Sheet, units, thickness) }
	board := func(thickness ...string) Material { return offered(stock.Board, units, thickness) }
	c := Context{Ruler: stock.Ruler{Units: units}, Kerf: length("1/8 in", units).Value}
	if units == stock.Inches {
		c.Materials = map[string]Material{
			"ply": sheet("1/4", "1/2", "3/4"), "back": sheet("1/4"), "carcass": sheet("3/4"), "box": sheet("1/2"), "spruce": board("1 1/2"),
		}
		return c
	}
	c.Materials = map[string]Material{
		"ply": sheet("6", "12", "18"), "back": sheet("6"), "carcass": sheet("18"), "box": sheet("12"), "spruce": board("38"),
	}
	return c
}

func offered(kind stock.Kind, units stock.Units, thicknesses []string) Material {
	m := Material{Kind: kind}
	for _, t := range thicknesses {
		m.Thicknesses = append(m.Thicknesses, length(t, units).Value)
	}
	return m
}

// derive wants a case.
func derive(t *testing.T, d Design, from Context) *Case {
	t.Helper()
	c, faults := Derive(d, from)
	for _, f := range faults {
		t.Errorf("fault: %s: %s; %s", f.Key, f.Cause, f.Remedy)
	}
	if c == nil {
		t.FailNow()
	}
	return c
}

// cut writes each part in one line: "2 side 720 x 300 x 18 carcass".
func cut(c *Case, r stock.Ruler) []string {
	var lines []string
	for _, p := range c.Parts {
		lines = append(lines, fmt.Sprintf("%d %s %s x %s %s", p.Count, p.Name, r.Size(p.Length, p.Width), r.Print(p.Thickness), p.Material))
	}
	return lines
}

// sizes writes the derivation of each size of the case.
func sizes(c *Case, r stock.Ruler) []string {
	var lines []string
	for _, d := range c.Sizes {
		lines = append(lines, d.Dimension+" "+d.Sum.Print(r))
	}
	return lines
}

func wantLines(t *testing.T, want, got []string) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
