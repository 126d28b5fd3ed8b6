package sellercuts_test

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock/job"
)

// The seller shortens a board, and a piece stays uncut that is too small to keep: no part
// can be replaced from it.
func TestCoverCountsOnlyWhatIsKept(t *testing.T) {
	file, err := job.Read("../simulate/testdata/short-ends.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 300})
	if err != nil {
		t.Fatal(err)
	}
	waste, covered := false, 0
	for _, b := range p.Bill {
		found := false
		for _, l := range p.Layouts {
			waste = waste || l.Root.Use == cutplan.Waste
			for _, n := range l.Leaves() {
				fits := n.Length >= b.Length && n.Width >= b.Width || b.Turnable && n.Length >= b.Width && n.Width >= b.Length
				found = found || n.Use == cutplan.Offcut && l.Stock.Material == b.Part.Material && fits
			}
		}
		if found {
			covered += b.Count * b.Holds()
		}
	}
	if !waste || p.Cover.Covered > covered || p.Cover.Rack {
		t.Errorf("a piece is waste: %v; %d parts are covered, %d fit what is kept; from the rack: %v", waste, p.Cover.Covered, covered, p.Cover.Rack)
	}
}
