package report

import (
	"context"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/label"
	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/job"
)

// example is an example job with a quick plan.
type example struct {
	name   string
	plan   *cutplan.Plan
	design *casework.Case
	units  stock.Units
}

func examples(t *testing.T) []example {
	t.Helper()
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d example jobs, error %v", len(files), err)
	}
	var all []example
	for _, name := range files {
		file, err := job.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := sellercuts.Make(context.Background(), file.Job, cutplan.Options{Seed: 1, Iterations: 200})
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, example{filepath.Base(name), p, file.Case, file.Units})
	}
	return all
}

// papers are the ways a plan may be printed.
var papers = []Options{
	{Paper: A4}, {Paper: A4, Ruler: inches}, {Paper: Letter}, {Paper: Letter, Ruler: inches},
}

func TestWritingOfTheExamplesStaysApart(t *testing.T) {
	for _, e := range examples(t) {
		for _, o := range papers {
			o.Case = e.design
			for n, page := range lay(e.plan, whole(o)).Pages {
				if err := drawing.CheckLegible(page); err != nil {
					t.Errorf("%s on %v in %s, page %d: %v", e.name, o.Paper, o.Ruler.Units, n+1, err)
				}
			}
		}
	}
}

// What there is to buy, with all that goes with it, is on the first page.
func TestTheFirstPageHoldsAllThatBuyingTakes(t *testing.T) {
	for _, e := range examples(t) {
		for _, o := range papers {
			o.Case = e.design
			heads := 0
			for _, page := range lay(e.plan, whole(o)).Pages {
				for _, text := range page.Texts() {
					if strings.HasPrefix(text.String, "what to buy") {
						heads++
					}
				}
			}
			if heads != 1 {
				t.Errorf("%s on %v in %s: %d pages on what to buy", e.name, o.Paper, o.Ruler.Units, heads)
			}
		}
	}
}

// The labels hold each blank as often as it is cut, or is to come from rough
// lumber, counted from 1.
func TestTheExamplesHaveALabelForEachBlank(t *testing.T) {
	for _, e := range examples(t) {
		count := make(map[string]int)
		for _, l := range labels(e.plan, namesOf(e.plan, ""), Options{Case: e.design}) {
			if l.Piece.Grain == label.NoGrain && l.Where == "" {
				t.Errorf("%s: %s comes from nowhere", e.name, l.Name)
			}
			count[l.Mark]++
		}
		for i, b := range e.plan.Bill {
			want := b.Count
			for _, u := range e.plan.Unplaced {
				if u.Blank == i {
					want -= u.Count
				}
			}
			if count[b.Mark] != want {
				t.Errorf("%s: %d labels of %s, want %d", e.name, count[b.Mark], b.Mark, want)
			}
		}
	}
}
