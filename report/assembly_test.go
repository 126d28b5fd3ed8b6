package report

import (
	"bytes"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// chest has two drawers alike, one that stands on the bench, and a step.
func chest() *casework.Case {
	const mm = stock.Millimeter
	part := func(name string, count int, length, width stock.Length) stock.Part {
		return stock.Part{Name: name, Count: count, Length: length, Width: width, Thickness: 18 * mm, From: "case"}
	}
	return &casework.Case{
		Parts: []stock.Part{part("side", 2, 700*mm, 400*mm), part("drawer side", 4, 380*mm, 90*mm)},
		Solids: []casework.Solid{
			{Part: 0, Role: "side", Size: casework.Point{18 * mm, 400 * mm, 700 * mm}}, {Part: 0, Role: "side"},
			{Part: 1, Role: "drawer side", Drawer: 1}, {Part: 1, Role: "drawer side", Drawer: 1},
			{Part: 1, Role: "drawer side", Drawer: 2}, {Part: 1, Role: "drawer side", Drawer: 2},
			{Part: -1, Role: "drawer", Drawer: 3, Size: casework.Point{500 * mm, 380 * mm, 110 * mm}},
		},
		Assembly: []casework.Step{{Unit: "carcass", Text: "Glue the sides."}},
	}
}

func TestSubAssembliesTellMarksCountsAndSizes(t *testing.T) {
	c := chest()
	bill := []cutplan.Blank{
		{Blank: stock.Blank{Part: stock.Part{Name: "side"}}, Mark: "A"}, // of the part list, not the case
		{Blank: stock.Blank{Part: c.Parts[0]}, Mark: "B"},
		{Blank: stock.Blank{Part: c.Parts[1]}, Mark: "C"},
	}
	var got []string
	for _, row := range units(c, bill, stock.Ruler{}).rows {
		got = append(got, strings.Join(row, "|"))
	}
	want := []string{
		"carcass|B|side|2|700 x 400 x 18",
		"drawers 1, 2 (x 2)|C|drawer side|2|380 x 90 x 18",
		"drawer 3||finished, width x depth x height|1|500 x 380 x 110",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAssemblyIsInThePartListAndOnPaper(t *testing.T) {
	p, o := bench(), Options{Case: chest()}
	var text bytes.Buffer
	if err := PartList(&text, p.Job, o); err != nil {
		t.Fatal(err)
	}
	var paper strings.Builder
	for _, page := range lay(p, whole(o)).Pages {
		if err := drawing.CheckWriting(page); err != nil {
			t.Error(err)
		}
		for _, text := range page.Texts() {
			paper.WriteString(text.String + "\n")
		}
	}
	for _, want := range append([]string{unitsHeading, "drawers 1, 2 (x 2)", "carcass: Glue the sides."}, assemblyCautions...) {
		for where, said := range map[string]string{"part list": text.String(), "paper": paper.String()} {
			if !strings.Contains(strings.ReplaceAll(said, "\n", " "), want) {
				t.Errorf("the %s lacks %q", where, want)
			}
		}
	}
}
