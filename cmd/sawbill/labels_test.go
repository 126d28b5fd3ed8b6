package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/ledongthuc/pdf"
)

// gridJob is a job whose labels lie two by three on a sheet of A4: (210 - 2 x 20 - 10) / 2 =
// 80 mm wide and (297 - 2 x 30 - 2 x 6) / 3 = 75 mm high.
const gridJob = `
[[sheet]]
name = "birch 18, half"
material = "birch"
thickness = 18
length = 1220
width = 1220

[[part]]
name = "shelf"
material = "birch"
length = 764
width = 280
count = 7

[labels]
columns = 2
rows = 3
side_margin = 20
top_margin = 30
column_gap = 10
row_gap = 6
`

// The labels of a plan and of its rest lie on the sheets that the job tells, though the job
// file is gone: six on the first sheet, each within its own.
func TestLabelsOfARestLieOnTheSheetsOfTheJob(t *testing.T) {
	dir := t.TempDir()
	job, plan, rest := filepath.Join(dir, "hall.toml"), filepath.Join(dir, "hall-plan"), filepath.Join(dir, "hall-plan-2")
	if err := os.WriteFile(job, []byte(gridJob), 0o644); err != nil {
		t.Fatal(err)
	}
	said(t, "plan", job, "-o", plan, "--pages", "labels", "--iterations", "100", "--quiet")
	if err := os.Remove(job); err != nil {
		t.Fatal(err)
	}
	said(t, "progress", plan, "--cut", "all", "--lost", "shelf", "--date", "2026-03-05")
	said(t, "recut", plan, "-o", rest, "--pages", "labels", "--iterations", "100", "--quiet", "--date", "2026-03-05")
	for folder, wanted := range map[string]int{plan: 6, rest: 1} {
		marks := make(map[[2]int]int) // by column and row
		for _, w := range firstPage(t, filepath.Join(folder, "plan.pdf")) {
			x, y := w.X*25.4/72, 297-w.Y*25.4/72 // of the base line's left end, from the upper left corner
			column, row := int((x-20)/90), int((y-30)/81)
			if x < 20 || y < 30 || x-20-90*float64(column) > 80 || y-30-81*float64(row) > 75 {
				t.Fatalf("%s: %q at %.1f, %.1f is on no label", folder, w.S, x, y)
			}
			if w.S == "A" && w.FontSize > 20 {
				marks[[2]int{column, row}]++
			}
		}
		for place, n := range marks {
			if n != 1 {
				t.Errorf("%s: %d marks at %v", folder, n, place)
			}
		}
		if len(marks) < wanted || len(marks) > 6 {
			t.Errorf("%s: %d labels on the first sheet, want %d", folder, len(marks), wanted)
		}
	}
}

// firstPage is all that is written on the first page of a file, read by a reader that shares
// no code with the writer.
func firstPage(t *testing.T, name string) []pdf.Text {
	t.Helper()
	file, r, err := pdf.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	return r.Page(1).Content().Text
}
