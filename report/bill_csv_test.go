package report

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"sawbill/stock"
	"sawbill/stock/job"
)

// The cutting bill is a part list: a job that names it has the same parts.
func TestCuttingBillReadsBackAsAPartList(t *testing.T) {
	p := bench()
	p.Job.Parts[0].Note = "front edge, rounded"
	p.Bill[0].Part.Note = p.Job.Parts[0].Note
	// What a job allows for every face does not count for a sheet.
	p.Bill[1].Part.Allowance = stock.Allowance{Face: 2 * stock.Millimeter, Faces: 2}
	p.Job.Parts[1].Allowance.Faces = 2
	dir := t.TempDir()
	files := map[string]string{
		"bill.csv": string(CuttingBill(p)),
		"job.toml": `title = "again"
units = "in"
parts = "bill.csv"
[[sheet]]
name = "birch"
material = "birch ply 18"
thickness = "18 mm"
length = "2440 mm"
width = "1220 mm"
[[board]]
name = "2x4"
material = "spruce"
thickness = "38 mm"
width = "89 mm"
length = "8 ft"
`,
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	f, err := job.Read(filepath.Join(dir, "job.toml"))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p.Job.Parts, f.Job.Parts, cmpopts.IgnoreFields(stock.Part{}, "From")); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if len(f.Warnings) != 1 || !strings.Contains(f.Warnings[0].Error(), `"mark"`) {
		t.Errorf("warnings %v, want one of the columns that are passed over", f.Warnings)
	}
}
