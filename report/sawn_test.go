package report

import (
	"testing"

	"sawbill/nest/cutplan/simulate"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

// Layouts that no solver would choose, cut at random down to slivers, come out by their
// rows too, and by the figures of every ruler.
func TestRandomLayoutsAreSawnByTheirRows(t *testing.T) {
	for seed := range uint64(300) {
		p := samples.Random(seed)
		if err := simulate.Check(&p); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		for _, r := range []stock.Ruler{{}, inches} {
			if _, err := simulate.Figures(&p, r); err != nil {
				t.Errorf("seed %d in %s: %v", seed, r.Units, err)
			}
		}
	}
}
