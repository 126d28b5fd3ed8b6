package job_test

import (
	"strings"
	"testing"
)

func TestReadDerivesTheCase(t *testing.T) {
	file := mustRead(t, "[allowance]\nedge = 1\nend = 5\n[[material]]\nname = \"birch ply 18\"\nend = 2\n"+sheet18+`
[[part]]
name = "top"
material = "birch ply 18"
length = 100
width = 100
[case]
outside_width = 900
outside_height = 700
outside_depth = 300
[case.carcass]
material = "birch ply 18"
[[case.bay]]
[[case.bay.opening]]
shelves = 1
`)
	if file.Case == nil || len(file.Case.Parts) == 0 {
		t.Fatal("no case was derived")
	}
	names := make(map[string]bool)
	for _, p := range file.Parts {
		if names[p.Name] {
			t.Errorf("two parts are called %q", p.Name)
		}
		names[p.Name] = true
		if p.From == "case" && (p.Allowance.End != 2*mm || p.Allowance.Edge != mm || p.Allowance.Ends != 2) {
			t.Errorf("part %q of the case has the allowance %v, want that of its material and the job", p.Name, p.Allowance)
		}
	}
	if got, want := len(file.Parts), 1+len(file.Case.Parts); got != want {
		t.Errorf("%d parts, want %d: the one written and those of the case", got, want)
	}
}

func TestReadTellsWhereACaseIsWrong(t *testing.T) {
	_, err := read(t, sheet18+"[case]\noutside_width = 900\noutside_height = -5\n")
	if err == nil || !strings.Contains(err.Error(), "bench.toml:10: case.outside_height: ") {
		t.Errorf("error is %v, want one of line 10", err)
	}
	_, err = read(t, sheet18+"[case]\noutside_width = 20\noutside_height = 700\noutside_depth = 300\n[case.carcass]\nmaterial = \"birch ply 18\"\n")
	if err == nil || !strings.HasPrefix(err.Error(), "bench.toml:") {
		t.Errorf("error is %v, want that 20 mm hold no two sides", err)
	}
}
