package job

import (
	"path/filepath"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// Parts of a case that differ by less than a step would be cut at two settings that nobody can
// tell apart: such parts are alike, or a gap takes the difference.
func TestPartsOfTheExamplesAreAlikeOrAStepApart(t *testing.T) {
	files, err := filepath.Glob("../../testdata/jobs/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	pairs := 0
	for _, name := range files {
		f, err := Read(name)
		if err != nil {
			t.Fatal(err)
		}
		if f.Case == nil {
			continue
		}
		step, ruler := casework.UsualTools(f.Units).Step, stock.Ruler{Units: f.Units}
		for i, a := range f.Job.Parts {
			for _, b := range f.Job.Parts[:i] {
				if a.Material != b.Material || a.Thickness != b.Thickness {
					continue
				}
				for _, of := range [][2]stock.Length{{a.Length, b.Length}, {a.Width, b.Width}} {
					pairs++
					if apart := max(of[0]-of[1], of[1]-of[0]); apart > 0 && apart < step {
						t.Errorf("%s: %s is %s, %s is %s", filepath.Base(name), a.Name, ruler.Print(of[0]), b.Name, ruler.Print(of[1]))
					}
				}
			}
		}
	}
	if pairs < 200 {
		t.Errorf("only %d pairs of sides were looked at", pairs)
	}
}
