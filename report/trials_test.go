package report

import (
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/report/internal/drawing"
	"sawbill/stock/job"
)

// trial is the quick plan of a job that tries the pages: testdata/trials.
func trial(t *testing.T, name string) example {
	t.Helper()
	file, err := job.Read(filepath.Join("../testdata/trials", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Seed: 1, Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	return example{name, p, file.Case, file.Units}
}

// A long list, boards with defects and names in four scripts are legible on every page.
func TestWritingOfTheTrialsStaysApart(t *testing.T) {
	for _, name := range []string{"kitchen-run", "boards-bench", "four-scripts"} {
		e := trial(t, name)
		for _, o := range papers {
			for n, page := range lay(e.plan, whole(o)).Pages {
				if err := drawing.CheckLegible(page); err != nil {
					t.Errorf("%s on %v in %s, page %d: %v", e.name, o.Paper, o.Ruler.Units, n+1, err)
				}
			}
		}
	}
}
