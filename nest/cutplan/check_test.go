package cutplan_test

import (
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock/job"
)

// The plans of the example jobs pass Check, and Recompute changes nothing.
func TestPlansOfTheExamplesHoldWhenChecked(t *testing.T) {
	paths, _ := filepath.Glob("../../testdata/jobs/*.toml")
	for _, path := range paths {
		file, err := job.Read(path)
		if err != nil {
			t.Fatal(err)
		}
		p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 200})
		if err != nil {
			t.Fatal(path, err)
		}
		if err := p.Check(); err != nil {
			t.Errorf("%s: %v", path, err)
		}
		before := *p
		p.Recompute()
		if p.Totals != before.Totals || p.Cover.Covered < before.Cover.Covered || p.Cover.Parts != before.Cover.Parts {
			t.Errorf("%s: %+v %+v, was %+v %+v", path, p.Totals, p.Cover, before.Totals, before.Cover)
		}
	}
}
