package report_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
	"sawbill/report"
	"sawbill/stock/job"
)

// pagesOf is all that is made of a plan, by the names of the files.
func pagesOf(t *testing.T, p *cutplan.Plan, o report.Options) map[string][]byte {
	t.Helper()
	pdf, _, err := report.PDF(p, o)
	if err != nil {
		t.Fatal(err)
	}
	var summary bytes.Buffer
	if err := report.Summary(&summary, p, o); err != nil {
		t.Fatal(err)
	}
	all := map[string][]byte{"plan.pdf": pdf, "plan.html": report.HTML(p, o), "plan.json": report.JSON(p, o), "cutting-bill.csv": report.CuttingBill(p), "summary": summary.Bytes()}
	for i, svg := range report.LayoutSVGs(p, o) {
		all[fmt.Sprintf("layout %d", i+1)] = svg
	}
	for _, e := range report.Elevations(p, o) {
		all["elevation "+e.View] = e.SVG
	}
	return all
}

func plannedAs(t *testing.T, name string) (*planfile.Plan, report.Options) {
	t.Helper()
	file, err := job.Read("../testdata/plans/v1/" + name)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	o := report.Options{Case: file.Case}
	return &planfile.Plan{Plan: p, Code: report.Identity(p, o), Number: 1, File: file}, o
}

func readBack(t *testing.T, p *planfile.Plan) (*planfile.Plan, report.Options) {
	t.Helper()
	again, err := planfile.Parse("plan.sawbill", p.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return again, report.Options{Case: again.File.Case, Code: again.Code}
}

// A plan that is read back prints the same pages as when it was made.
func TestAPlanReadBackPrintsTheSamePages(t *testing.T) {
	for _, name := range []string{"cabinet/cabinet.toml", "bench/bench.toml", "shelf/shelf.toml", "crate/crate.toml", "stool/stool.toml", "rails/rails.toml"} {
		p, o := plannedAs(t, name)
		before := pagesOf(t, p.Plan, o)
		p, o = readBack(t, p)
		after := pagesOf(t, p.Plan, o)
		for page, data := range before {
			if !bytes.Equal(after[page], data) {
				t.Errorf("%s: %s is printed otherwise", name, page)
			}
		}
		if len(before) != len(after) {
			t.Errorf("%s: there were %d pages, there are %d", name, len(before), len(after))
		}
	}
}

// Pages and progress follow what is in the file, not what the program would make of the
// plan now: its code, the order and numbers of its cuts, the numbers of its offcuts.
func TestPagesAndProgressFollowTheFile(t *testing.T) {
	p, _ := plannedAs(t, "cabinet/cabinet.toml")
	p.Code = "AAAAA"
	cuts := p.Plan.Steps(p.Plan.Layouts[0])
	to := slices.IndexFunc(cuts, func(s cutplan.Step) bool { return s.Level == 2 })
	from := slices.IndexFunc(cuts, func(s cutplan.Step) bool {
		return s.Number > to+1 && s.InHand <= to && s.Level == 2 && s.Setting != cuts[to].Setting && s.OffNode.Use == cutplan.Part
	})
	if from < 0 {
		t.Fatal("no cut can be made earlier")
	}
	p.Plan.Layouts[0].Printed = earlier(cuts, from, to)
	for _, k := range p.Plan.Offcuts() {
		k.First += 40
		p.Plan.Numbered = append(p.Plan.Numbered, k)
	}
	p, o := readBack(t, p)

	pages := pagesOf(t, p.Plan, o)
	for _, page := range []string{"plan.html", "plan.json", "summary", "layout 1"} {
		if !bytes.Contains(pages[page], []byte("AAAAA")) {
			t.Errorf("%s has another code", page)
		}
	}
	if !bytes.Contains(pages["plan.json"], []byte(`"AAAAA-41"`)) || bytes.Contains(pages["plan.json"], []byte(`"AAAAA-1"`)) {
		t.Error("plan.json numbers the offcuts anew")
	}
	anew := *p.Plan
	anew.Layouts = slices.Clone(anew.Layouts)
	anew.Layouts[0].Printed = nil
	for _, page := range []string{"plan.html", "layout 1"} {
		if bytes.Equal(pagesOf(t, &anew, o)[page], pages[page]) {
			t.Errorf("%s numbers the cuts anew", page)
		}
	}

	s := progress.Begin(p.Plan)
	if err := s.Apply(progress.Event{Word: "cut", Value: fmt.Sprintf("1:%d", to+1)}); err != nil {
		t.Fatal(err)
	}
	for i, b := range s.Blanks() {
		if want := i == cuts[from].OffNode.Blank; (b.Good > 0) != want {
			t.Errorf("cut %d, as it is printed, gives %d of blank %s", to+1, b.Good, b.Mark)
		}
	}
	if err := s.Apply(progress.Event{Word: "cut", Value: "2"}); err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, piece := range s.Pieces(p.Code) {
		names = append(names, piece.Stock.Name)
	}
	if !slices.ContainsFunc(names, func(name string) bool { return strings.HasPrefix(name, "AAAAA-4") }) {
		t.Errorf("the offcuts are not called as they were printed: %s", strings.Join(names, "; "))
	}
}

// earlier are cuts of which one is made before others, with numbers to match.
func earlier(cuts []cutplan.Step, from, to int) []cutplan.Step {
	all := slices.Insert(slices.Delete(slices.Clone(cuts), from, from+1), to, cuts[from])
	is := map[int]int{0: 0}
	for i, s := range all {
		is[s.Number] = i + 1
	}
	for i := range all {
		all[i].Number, all[i].InHand = is[all[i].Number], is[all[i].InHand]
	}
	return all
}
