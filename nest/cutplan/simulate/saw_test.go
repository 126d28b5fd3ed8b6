package simulate_test

import (
	"context"
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/cutplan/simulate"
	"sawbill/stock/job"
)

var plans = map[string]*cutplan.Plan{}

// planned plans a job file quickly, and once.
func planned(t testing.TB, name string) *cutplan.Plan {
	t.Helper()
	if p := plans[name]; p != nil {
		return p
	}
	file, err := job.Read(name)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(context.Background(), file.Job, cutplan.Options{Seed: 1, Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	plans[name] = p
	return p
}

func TestTheExamplesAreSawnByTheirRows(t *testing.T) {
	names, err := filepath.Glob("../../../testdata/jobs/*.toml")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d example jobs, error %v", len(names), err)
	}
	for _, name := range names {
		if err := simulate.Check(planned(t, name)); err != nil {
			t.Errorf("%s: %v", filepath.Base(name), err)
		}
	}
}

// Jobs in which rows of the setups once stood ahead of those that make their pieces, or a
// blank that was free once it was trimmed had no row.
func TestJobsThatWereToldWrongAreSawnByTheirRows(t *testing.T) {
	names, err := filepath.Glob("testdata/*.toml")
	if err != nil || len(names) < 9 {
		t.Fatalf("%d jobs, error %v", len(names), err)
	}
	trimmedFree := 0
	for _, name := range names {
		p := planned(t, name)
		if err := simulate.Check(p); err != nil {
			t.Errorf("%s: %v", filepath.Base(name), err)
		}
		for i, l := range p.Layouts {
			rows := p.StepRows(i)
			if n := len(rows); n > 0 && l.Root.Use == cutplan.Part {
				trimmedFree++
				if of := rows[n-1].Off.Node; of == nil || of.Use != cutplan.Part || of.Blank != l.Root.Blank {
					t.Errorf("%s, layout %d: the last trim cut does not name blank %s", filepath.Base(name), i+1, p.Bill[l.Root.Blank].Mark)
				}
			}
		}
	}
	if trimmedFree < 4 {
		t.Errorf("%d blanks are free once trimmed", trimmedFree)
	}
}
