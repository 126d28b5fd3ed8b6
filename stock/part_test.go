package stock

import "testing"

func TestBlankAddsOneAllowancePerEdgeFaceAndEnd(t *testing.T) {
	part := Part{
		Name: "shelf", Material: "oak", Length: 900, Width: 300, Thickness: 20,
		Allowance: Allowance{Edge: 3, Face: 2, End: 10, Edges: 2, Faces: 2, Ends: 2},
	}
	for _, test := range []struct {
		reason                   string
		from                     Kind
		edges, faces, ends       int
		length, width, thickness Length
	}{
		{"board, all of them", Board, 2, 2, 2, 920, 306, 24},
		{"board, one of each", Board, 1, 1, 1, 910, 303, 22},
		{"board, none", Board, 0, 0, 0, 900, 300, 20},
		{"a sheet's faces are not planed", Sheet, 2, 2, 2, 920, 306, 20},
	} {
		p := part
		p.Allowance.Edges, p.Allowance.Faces, p.Allowance.Ends = test.edges, test.faces, test.ends
		b := p.Blank(test.from)
		if b.Length != test.length || b.Width != test.width || b.Thickness != test.thickness {
			t.Errorf("%s: %d x %d x %d, want %d x %d x %d", test.reason, b.Length, b.Width, b.Thickness, test.length, test.width, test.thickness)
		}
		if b.Part.Name != "shelf" || b.Part.Length != 900 || b.Part.Width != 300 || b.Part.Thickness != 20 {
			t.Errorf("%s: the blank has lost its part: %+v", test.reason, b.Part)
		}
	}
}

func TestGrainDecidesHowAPartLies(t *testing.T) {
	for _, test := range []struct {
		part, stock     Grain
		upright, turned bool
	}{
		{GrainLength, GrainLength, true, false},
		{GrainWidth, GrainLength, false, true},
		{GrainLength, GrainWidth, false, true},
		{GrainWidth, GrainWidth, true, false}, // both crossed: not turned
		{GrainAny, GrainLength, true, true},
		{GrainAny, GrainWidth, true, true},
		{GrainLength, GrainAny, true, true},
		{GrainWidth, GrainAny, true, true},
		{GrainAny, GrainAny, true, true},
	} {
		if upright, turned := test.part.Lies(test.stock); upright != test.upright || turned != test.turned {
			t.Errorf("%v in %v: upright %v, turned %v", test.part, test.stock, upright, turned)
		}
	}
}

func TestWordsOfTheJobFile(t *testing.T) {
	for _, test := range []struct{ got, want string }{
		{GrainLength.String(), "length"}, {GrainWidth.String(), "width"}, {GrainAny.String(), "any"},
		{Sheet.String(), "sheet"}, {Board.String(), "board"},
		{Millimeters.String(), "mm"}, {Inches.String(), "in"},
	} {
		if test.got != test.want {
			t.Errorf("got %q, want %q", test.got, test.want)
		}
	}
}
