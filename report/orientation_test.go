package report

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

// across counts the pages of a document that lie on their side, by what is said at
// their head.
func across(p *cutplan.Plan, o Options) map[string]int {
	found := make(map[string]int)
	for _, page := range lay(p, o).Pages {
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
	m.Plan.Job.Stock[0].Width = 500 * stock.Millimetre
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
		b.Part.Note = "rehearse assembly beforehand"
	}
	if found := across(p, Options{Ruler: stock.Ruler{Units: stock.Inches, Denominator: 64}}); found["cutting bill"] != 1 {
		t.Errorf("across lie %v, though the bill does not fit upright", found)
	}
	p.Bill[0].Part.Note = "aWordThatNoPageCanHoldHoweverItLiesSinceItHasMoreThanAHundredAndSixtyLettersAndNotASingleSpaceOrAnyOtherPlaceAtWhichOneCouldPartItIntoTwoLinesWithoutAsking"
	if found := across(p, Options{Ruler: inches}); found["cutting bill"] != 0 {
		t.Errorf("across lie %v, though the bill fits neither way", found)
	}
}
