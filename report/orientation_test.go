package report

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

// across counts the pages of a document that lie on their side, by what is said at
// their head.
func across(p *cutplan.Plan, o Options) map[string]int {
	found := make(map[string]int)
	for _, page := range lay(p, whole(o)).Pages {
		if page.Width > page.Height {
			found[page.Texts()[0].String]++
		}
	}
	return found
}

// A sheet with few cuts lies across: its diagram is larger there.
func TestASheetLiesAcrossWhereThatIsLarger(t *testing.T) {
	m := samples.New(bench().Job)
	m.Plan.Bill = append(m.Plan.Bill, bench().Bill[1])
	m.Plan.Job.Stock[0].Width = 500 * stock.Millimeter
	m.Layout(0, 1, m.Rips(0, m.Part(len(m.Plan.Bill)-1), m.Rest()))
	p := m.Finished(0)
	if found := across(&p, Options{}); len(found) != 1 || found["layout 1 of 1"] != 1 {
		t.Errorf("across lie %v, want the sheet", found)
	}
}

// The cutting bill lies across only where it would part its words and sizes upright.
func TestTheCuttingBillLiesAcrossWhereItIsTooWide(t *testing.T) {
	p := bench()
	if found := across(p, Options{Ruler: inches}); found["cutting bill"] != 0 {
		t.Errorf("across lie %v, though the bill fits upright", found)
	}
	for i := range p.Bill {
		b := &p.Bill[i]
		b.Part.Length, b.Part.Width = b.Part.Length-stock.Inch/64, b.Part.Width-stock.Inch/64
		b.Part.Material = "weatherproof construction plywood"
		b.Part.Note = "rehearse assembly beforehand, label"
	}
	if found := across(p, Options{Ruler: stock.Ruler{Units: stock.Inches, Denominator: 64}}); found["cutting bill"] != 1 {
		t.Errorf("across lie %v, though the bill does not fit upright", found)
	}
	p.Bill[0].Part.Note = "aWordThatNoPageCanHoldHoweverItLiesSinceItHasMoreThanAHundredAndSixtyLettersAndNotASingleSpaceOrAnyOtherPlaceAtWhichOneCouldPartItIntoTwoLinesWithoutAsking"
	if found := across(p, Options{Ruler: inches}); found["cutting bill"] != 0 {
		t.Errorf("across lie %v, though the bill fits neither way", found)
	}
}

// A square sheet whose steps run on anyhow is drawn as wide as there is room for, and once
// more at the head of each page that goes on: steps without their diagram are of no use.
func TestTheDiagramOfASquareSheetGrowsWhereItsStepsRunOn(t *testing.T) {
	const mm, strips, each = stock.Millimeter, 10, 3
	job := stock.Job{Saw: stock.Saw{Kerf: 3 * mm}, Stock: []stock.Stock{{Name: "birch 12", Material: "birch ply",
		Length: 1525 * mm, Width: 1525 * mm, Thickness: 12 * mm}}}
	for i := range strips * each {
		job.Parts = append(job.Parts, stock.Part{Name: fmt.Sprint("drawer side ", i), Material: "birch ply", Count: 1, Thickness: 12 * mm,
			Length: 400*mm + stock.Length(i)*mm, Width: 140*mm + stock.Length(i/each)*mm})
	}
	m := samples.New(job)
	var rips []samples.Piece
	for strip := range strips {
		var pieces []samples.Piece
		for i := range each {
			pieces = append(pieces, m.Part(strip*each+i))
		}
		rips = append(rips, m.Crosscuts(job.Parts[strip*each].Width, append(pieces, m.Rest())...))
	}
	m.Layout(0, 1, m.Rips(0, append(rips, m.Rest())...))
	p := m.Finished(0)
	pages, drawn, scale := 0, 0, 0
	for _, page := range lay(&p, Options{Pages: AllPages}).Pages {
		texts := page.Texts()
		if texts[0].String == "layout 1 of 1" {
			pages++
		}
		for _, text := range texts {
			said, isScale := strings.CutPrefix(text.String, "scale 1:")
			if isScale {
				drawn++
			}
			if isScale && scale == 0 {
				scale, _ = strconv.Atoi(said)
			}
		}
	}
	if pages < 2 || drawn != pages {
		t.Errorf("the sheet takes %d pages and is drawn on %d, want 2 or more of both", pages, drawn)
	}
	if scale == 0 || scale > 12 {
		t.Errorf("the sheet is drawn 1:%d, want 1:12 or larger: 127 mm of a page 180 mm wide", scale)
	}
}
