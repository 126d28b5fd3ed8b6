package progress_test

import (
	"context"
	"fmt"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// Any event is refused or leaves a state that adds up. No blank is present more often than
// it was cut or reported good, and none is lost that was not present.
func FuzzTell(f *testing.F) {
	file, err := job.Read("../../testdata/jobs/keepsake-boxes.toml")
	if err != nil {
		f.Fatal(err)
	}
	p, err := cutplan.Make(context.Background(), file.Job, cutplan.Options{Iterations: 100})
	if err != nil {
		f.Fatal(err)
	}
	for _, said := range []string{"cut 1", "cut 1/1:2-3", "spoiled A=300 x 100 mm", "spoiled A:1", "lost B=2", "good C", "missing birch 4=1", "cut 2:", "spoiled A=1x2x3x4", "lost =", "missing ="} {
		f.Add("cut 1", said)
	}
	f.Fuzz(func(t *testing.T, first, then string) {
		s := progress.Begin(p)
		for _, said := range []string{first, then, first} {
			e, err := progress.ParseEvent(said)
			if err != nil {
				continue
			}
			before := fmt.Sprint(s.Blanks(), s.Layouts(), s.Pieces(""))
			if err := s.Apply(e); err != nil {
				if _, told := err.(fault.Fault); !told {
					t.Errorf("%q: %v", said, err)
				}
				if after := fmt.Sprint(s.Blanks(), s.Layouts(), s.Pieces("")); after != before {
					t.Errorf("%q was refused (%v) and changed the state", said, err)
				}
			}
			for _, b := range s.Blanks() {
				if b.Good < 0 || b.Open < 0 || b.Good+b.Open < b.Count || b.Parts < 0 {
					t.Errorf("after %q: %+v", said, b)
				}
			}
			for _, piece := range s.Pieces("") {
				if piece.Stock.Count < 1 || piece.Stock.Length <= 0 || piece.Stock.Width <= 0 {
					t.Errorf("after %q: %+v", said, piece.Stock)
				}
			}
		}
	})
}
