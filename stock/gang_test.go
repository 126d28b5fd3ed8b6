package stock

import (
	"fmt"
	"slices"
	"testing"
)

// told is the cutting bill of p in short: "2 x gang 3: 303.2", in mm.
func told(j Job, p Part) []string {
	var all []string
	for _, b := range j.BlanksOf(p) {
		line := fmt.Sprintf("%d x gang %d: %s", b.Count, b.Gang, b.Length.Decimal())
		if b.Spare > 0 {
			line += fmt.Sprintf(", %d spare", b.Spare)
		}
		all = append(all, line)
	}
	return all
}

func TestShortBlanksAreGanged(t *testing.T) {
	const mm = Millimeter
	job := func(longest Length) Job {
		return Job{
			Saw: Saw{Kerf: 3 * mm}, Shortest: 300 * mm,
			Stock: []Stock{
				{Kind: Board, Material: "ash", Length: longest, Width: 100 * mm, Thickness: 27 * mm},
				{Kind: Board, Material: "ash", Length: 90 * mm, Width: 100 * mm, Thickness: 27 * mm},
				{Kind: Board, Material: "ash", Length: 4000 * mm, Width: 50 * mm, Thickness: 27 * mm}, // too narrow
				{Kind: Sheet, Material: "ply", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm},
			},
		}
	}
	part := func(length Length, count int) Part {
		return Part{Material: "ash", Length: length, Width: 60 * mm, Thickness: 24 * mm, Count: count,
			Allowance: Allowance{Face: mm, Faces: 2, End: 5 * mm, Ends: 2}}
	}
	alone, asBoard, crossed, sheet := part(96*mm, 4), part(96*mm, 4), part(96*mm, 4), part(96*mm, 4)
	asBoard.Allowance.Faces, asBoard.Thickness, asBoard.Width = 0, 27*mm, 100*mm
	thinner, narrower, trued, resawn, anyWay := asBoard, asBoard, asBoard, asBoard, asBoard
	thinner.Thickness, narrower.Width = 24*mm, 60*mm
	trued.Width, trued.Allowance.Edge, trued.Allowance.Edges = 98*mm, 2*mm, 1
	resawn.Thickness, resawn.Resaw = 13*mm, true
	anyWay.Grain, anyWay.Width = GrainAny, 60*mm
	alone.Alone, crossed.Grain, sheet.Material = true, GrainWidth, "ply"
	for _, test := range []struct {
		reason  string
		longest Length
		part    Part
		want    []string
	}{
		{"as few as are long enough", 2400 * mm, part(96*mm, 3), []string{"1 x gang 3: 304"}},
		{"one more where it does not divide", 2400 * mm, part(96*mm, 4), []string{"1 x gang 4: 403"}},
		{"gangs as even as can be", 2400 * mm, part(96*mm, 11), []string{"2 x gang 4: 403", "1 x gang 3: 304"}},
		{"just long enough", 2400 * mm, part(290*mm, 2), []string{"2 x gang 1: 300"}},
		{"by a hair too short", 2400 * mm, part(290*mm-1, 2), []string{"1 x gang 2: 592.99995"}},
		{"all of them are too short", 2400 * mm, part(96*mm, 2), []string{"1 x gang 2: 300"}},
		{"a single one", 2400 * mm, part(96*mm, 1), []string{"1 x gang 1: 300"}},
		{"no board is long enough for five", 404 * mm, part(96*mm, 5), []string{"1 x gang 3: 304", "1 x gang 2: 300"}},
		{"nor for three", 300 * mm, part(96*mm, 5), []string{"2 x gang 2: 300", "1 x gang 1: 300"}},
		{"nor as long as the planer needs", 250 * mm, part(96*mm, 5), []string{"2 x gang 2: 205", "1 x gang 1: 106"}},
		{"may not be ganged", 2400 * mm, alone, []string{"4 x gang 1: 106"}},
		{"as thick and as wide as the board: not milled", 2400 * mm, asBoard, []string{"4 x gang 1: 106"}},
		{"to be ripped", 2400 * mm, narrower, []string{"1 x gang 4: 403"}},
		{"an edge to be trued", 2400 * mm, trued, []string{"1 x gang 4: 403"}},
		{"to be resawn", 2400 * mm, resawn, []string{"1 x gang 2: 300"}},
		{"its grain may run either way", 2400 * mm, anyWay, []string{"1 x gang 4: 403"}},
		{"thinner than the board, no face counted", 2400 * mm, thinner, []string{"1 x gang 4: 403"}},
		{"ends against the grain", 2400 * mm, crossed, []string{"4 x gang 1: 106"}},
		{"a sheet", 2400 * mm, sheet, []string{"4 x gang 1: 106"}},
		{"none wanted", 2400 * mm, part(96*mm, 0), nil},
	} {
		if got := told(job(test.longest), test.part); !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.reason, got, test.want)
		}
	}
}

func TestBlanksSayHowTheirSizesCameAbout(t *testing.T) {
	const mm = Millimeter
	p := Part{Length: 96 * mm, Width: 60 * mm, Thickness: 8 * mm, Allowance: Allowance{
		Edge: mm, Edges: 1, Face: mm, Faces: 2, End: 5 * mm, Ends: 2, Miter: 2 * mm, Miters: 1}}
	b := p.inOne(Board, 2, 2, Saw{Kerf: 3 * mm, ResawKerf: 2 * mm}, 300*mm)
	want := []string{
		"width: 61 = 60 (part) + 1 (edge)",
		"length: 300 = 2 x 96 (part) + 2 x 2 (miter) + 3 (kerf) + 2 x 5 (end) + 91 (extra length)",
		"thickness: 22 = 2 x 8 (part) + 4 x 1 (face) + 2 (resaw kerf)",
	}
	var got []string
	for _, d := range b.How {
		got = append(got, d.Dimension+": "+d.Sum.Print(Ruler{}))
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	if b.Length != 300*mm || b.Width != 61*mm || b.Thickness != 22*mm {
		t.Errorf("%d x %d x %d", b.Length, b.Width, b.Thickness)
	}
}

// Rough lumber for sale is ripped and planed like boards, and long enough.
func TestShortBlanksOfRoughLumberAreGanged(t *testing.T) {
	const mm = Millimeter
	p := Part{Material: "oak", Length: 96 * mm, Width: 60 * mm, Thickness: Inch, Count: 4}
	thin := p
	thin.Thickness, thin.Resaw = 10*mm, true
	long := p
	long.Length = 300 * mm
	short := Stock{Kind: Board, Material: "oak", Length: 150 * mm, Width: 60 * mm, Thickness: Inch, OnHand: true, Count: 1}
	for _, test := range []struct {
		reason string
		part   Part
		stock  []Stock
		want   []string
	}{
		{"as thick as it is sawn, but to be ripped", p, nil, []string{"1 x gang 4: 393"}},
		{"to be resawn", thin, nil, []string{"1 x gang 2: 300"}},
		{"long enough", long, nil, []string{"4 x gang 1: 300"}},
		{"what is on hand is too short, what is for sale is not", p, []Stock{short}, []string{"1 x gang 4: 393"}},
	} {
		j := Job{Saw: Saw{Kerf: 3 * mm, ResawKerf: 2 * mm}, Shortest: 300 * mm, Rough: []Rough{rough("4/4", "FAS", 0, 0)}, Stock: test.stock}
		if got := told(j, test.part); !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.reason, got, test.want)
		}
	}
}
