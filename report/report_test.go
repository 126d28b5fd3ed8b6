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

func TestJSON(t *testing.T) { golden(t, "plan.json", JSON(bench(), Options{})) }

func TestLayoutSVGNamesItsStock(t *testing.T) {
	p := bench()
	for i, l := range p.Layouts {
		got := LayoutSVGs(p, Options{})[i]
		if !bytes.Contains(got, []byte(": "+l.Stock.Name+"</title>")) || !bytes.HasSuffix(got, []byte("</svg>\n")) {
			t.Errorf("layout %d: %.200s", i, got)
		}
	}
}
