package report

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// golden compares with a file below testdata.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got)\n%s", file, diff)
	}
}

// bench is the hand-made plan of the goldens.
func bench() *cutplan.Plan {
	p := samples.Bench()
	return &p
}

var inches = stock.Ruler{Units: stock.Inches}

// incomplete is the bench without its second board layout.
func incomplete() *cutplan.Plan {
	p := bench()
	p.Layouts = p.Layouts[:4]
	p.Unplaced = []cutplan.Unplaced{
		{Blank: 4, Count: 1, Reason: "not enough spruce: offer more of it"},
		{Blank: 5, Count: 4, Reason: "not enough spruce: offer more of it"},
	}
	return p
}

func TestSummary(t *testing.T) {
	for name, tt := range map[string]struct {
		plan  *cutplan.Plan
		ruler stock.Ruler
	}{
		"summary-mm.txt":         {bench(), stock.Ruler{}},
		"summary-in.txt":         {bench(), inches},
		"summary-incomplete.txt": {incomplete(), stock.Ruler{}},
	} {
		var b bytes.Buffer
		if err := Summary(&b, tt.plan, Options{Ruler: tt.ruler}); err != nil {
			t.Fatal(err)
		}
		golden(t, name, b.Bytes())
	}
}

func TestCuttingBill(t *testing.T) { golden(t, "cutting-bill.csv", CuttingBill(bench())) }

func TestJSON(t *testing.T) { golden(t, "plan.json", JSON(bench())) }

func TestProof(t *testing.T) {
	priced := func(cost, bound stock.Money) *cutplan.Plan {
		p := bench()
		p.Cost, p.Bound = cost, bound
		return p
	}
	free := bench()
	free.Cost, free.Bound = 0, 0
	for i := range free.Buy {
		free.Buy[i].Stock.Price = 0
	}
	partly := bench()
	partly.Buy[1].Stock.Price = 0
	rack := bench()
	rack.Buy = nil
	tests := []struct {
		reason string
		plan   *cutplan.Plan
		want   string
	}{
		{"cost equals bound", priced(15896, 15896), "The cost is 158.96, and no plan can cost less."},
		{"a gap is told as one", priced(15896, 14900), "The cost is 158.96. Bound: a plan for 149.00 may be possible, none for less."},
		{"an incomplete plan proves nothing of its cost", incomplete(), "The cost is 158.96 for the blanks that are cut. The whole job costs 158.96 at least."},
		{"no price at all", free, "No prices are given, so nothing is said about the cost."},
		{"one price is missing", partly, "The cost is 158.96 without 2x4 x 8 ft, for which no price is given."},
		{"all from the rack", rack, "Nothing has to be bought: what is on hand is enough for this plan."},
		{"nothing to do", &cutplan.Plan{}, "Nothing can be cut."},
	}
	for _, tt := range tests {
		if got := proof(tt.plan); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.reason, got, tt.want)
		}
	}
}

func TestLayoutSVGNamesItsStock(t *testing.T) {
	p := bench()
	for i, l := range p.Layouts {
		got := LayoutSVG(p, i, Options{})
		if !bytes.Contains(got, []byte(": "+l.Stock.Name+"</title>")) || !bytes.HasSuffix(got, []byte("</svg>\n")) {
			t.Errorf("layout %d: %.200s", i, got)
		}
	}
}
