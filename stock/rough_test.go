package stock

import (
	"math/rand/v2"
	"testing"
)

// Source: rules of the National Hardwood Lumber Association, standard grades:
// basic yields, which of SM x 12 cutting units promise SM x 10, 8, 6, 4 and 3,
// and least boards. FAS and No. 1 Common as in "Hardwood Lumber - Dimensions",
// engineeringtoolbox.com, the others as in a company's chart. Usual yields are
// what 20 to 30 %, or 40 %, of waste leaves: common practice, no source.
func TestGradesFollowTheRules(t *testing.T) {
	tests := []struct {
		name         string
		units        int64 // of twelve
		usual        string
		inches, feet Length
	}{
		{"FAS", 10, "70 %", 6, 8},
		{"FAS one face", 8, "60 %", 6, 8},
		{"Selects", 8, "60 %", 4, 6},
		{"No. 1 Common", 8, "60 %", 3, 4},
		{"No. 2A Common", 6, "50 %", 3, 4},
		{"No. 3A Common", 4, "33 1/3 %", 3, 4},
		{"No. 3B Common", 3, "25 %", 3, 4},
	}
	if len(tests) != len(Grades()) {
		t.Errorf("there are %d grades, want %d", len(Grades()), len(tests))
	}
	for i, test := range tests {
		g := GradeOf(Grades()[i])
		if least := g.Least(); g.String() != test.name || least.part*12 != test.units*least.whole {
			t.Errorf("%v yields %v, want %s and %d of 12", g, least, test.name, test.units)
		}
		if got := g.Usual().String(); got != test.usual {
			t.Errorf("%v usually yields %s, want %s", g, got, test.usual)
		}
		if length, width := g.LeastBoard(); length != test.feet*Foot || width != test.inches*Inch {
			t.Errorf("%v: least board %d x %d", g, length, width)
		}
		if u, l := g.Usual(), g.Least(); u.part*l.whole > l.part*u.whole {
			t.Errorf("%v usually yields %v, more than the %v that it promises", g, u, l)
		}
	}
}

func rough(quarter, grade string, price Money, yield int) Rough {
	q, err := ParseQuarter(quarter)
	if err != nil {
		panic(err)
	}
	r := Rough{Material: "oak", Quarter: q, Grade: GradeOf(grade), Price: price}
	if yield > 0 {
		r.Yield = Percent(yield)
	}
	return r
}

func oak(length, width, thickness Length, count int) Blank {
	return Blank{Part: Part{Material: "oak"}, Count: count, Length: length, Width: width, Thickness: thickness}
}

func TestEstimateAsksForBlanksOverYield(t *testing.T) {
	foot := oak(Foot, Foot, 3*Inch/4, 10) // each a board foot of 4/4
	long, wide := oak(5*Foot, 3*Inch, Inch/2, 4), oak(Foot, 9*Inch, Inch/2, 4)
	for _, test := range []struct {
		rough        Rough
		blanks       []Blank
		net          string
		least, usual int
		reason       string
	}{
		{rough("4/4", "FAS", 0, 0), []Blank{foot}, "10.00", 12, 15, "10 / (5/6), 10 / 0.7 = 14.3"},
		{rough("4/4", "No. 1 Common", 0, 0), []Blank{foot}, "10.00", 15, 17, "10 / (2/3), 10 / 0.6 = 16.7"},
		{rough("4/4", "No. 2A Common", 0, 0), []Blank{foot}, "10.00", 20, 20, "10 / (1/2)"},
		{rough("4/4", "No. 3A Common", 0, 0), []Blank{foot}, "10.00", 30, 30, "10 / (1/3)"},
		{rough("4/4", "FAS", 0, 55), []Blank{foot}, "10.00", 19, 19, "10 / 0.55 = 18.2: what was given counts"},
		{rough("4/4", "FAS", 0, 100), []Blank{foot}, "10.00", 10, 10, "all of it"},
		{rough("8/4", "FAS", 0, 0), []Blank{foot}, "20.00", 24, 29, "twice as thick: 20 / 0.7 = 28.6"},
		{rough("3/4", "FAS", 0, 0), []Blank{foot}, "10.00", 12, 15, "under an inch counts as an inch"},
		{rough("4/4", "FAS", 0, 0), []Blank{long, wide}, "8.00", 10, 12, "4 x 1.25 + 4 x 0.75 = 8; 9.6, 11.4"},
		{rough("4/4", "FAS", 0, 0), []Blank{oak(Foot, Foot, Inch, 1), oak(25, 25, Inch, 1)}, "1.00", 2, 2, "a hair more than 1.2 needs 2"},
	} {
		e := test.rough.Estimate(test.blanks)
		if e.Net.String() != test.net || e.Least != test.least || e.Usual != test.usual {
			t.Errorf("%v %v: net %v, least %d, usual %d, want %s, %d, %d: %s",
				test.rough.Quarter, test.rough.Grade, e.Net, e.Least, e.Usual, test.net, test.least, test.usual, test.reason)
		}
	}
	if e := rough("4/4", "FAS", 0, 0).Estimate([]Blank{long, wide}); e.Longest != 5*Foot || e.Widest != 9*Inch {
		t.Errorf("longest %d, widest %d", e.Longest, e.Widest)
	}
}

// What is asked for yields the blanks, and a board foot less would not.
func TestEstimateIsTheLeastWholeNumber(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 2000 {
		yield := int64(1 + r.IntN(100))
		eighths := int64(1 + r.IntN(400)) // of an inch, wide; 12 ft long and 1 in thick are 1 board foot an inch
		e := rough("4/4", "FAS", 0, int(yield)).Estimate([]Blank{oak(12*Foot, Length(eighths)*Inch/8, Inch, 1)})
		if n := int64(e.Least) * yield * 8; n < 100*eighths || n-yield*8 >= 100*eighths {
			t.Fatalf("%d/8 board feet at %d %%: ask for %d", eighths, yield, e.Least)
		}
	}
}

func TestBlankComesFromTheThinnestRoughThatGivesIt(t *testing.T) {
	j := Job{Rough: []Rough{rough("8/4", "FAS", 0, 0), rough("4/4", "FAS", 0, 0), rough("5/4", "FAS", 0, 0)}}
	j.Rough = append(j.Rough, Rough{Material: "ash", Quarter: rough("6/4", "FAS", 0, 0).Quarter})
	for thickness, want := range map[Length]string{
		3 * Inch / 4: "4/4", Inch: "4/4", Inch + 1: "5/4", 3 * Inch / 2: "8/4", 2 * Inch: "8/4", 2*Inch + 1: "",
	} {
		r, found := j.RoughFor(oak(Foot, Foot, thickness, 1))
		if found != (want != "") || r.Quarter.String() != want {
			t.Errorf("%s mm: %q, want %q", thickness.Decimal(), r.Quarter, want)
		}
	}
	planed := Part{Name: "top", Material: "oak", Count: 1, Thickness: 3 * Inch / 4, Allowance: Allowance{Face: Inch / 8, Faces: 2}}
	j.Parts = []Part{planed}
	if b := j.Blanks()[0]; b.Thickness != Inch {
		t.Errorf("the faces of rough lumber are planed, but the blank is %s mm thick", b.Thickness.Decimal())
	}
}
