package job_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The same job in the ways TOML lets it be written: TOML 1.0.0, sections Keys,
// Table, Inline Table and Array of Tables.
func TestReadTakesEveryNotationOfTOML(t *testing.T) {
	want := mustRead(t, "[saw]\nkerf = 3\n"+sheet18+oneShelf).Job
	tests := []struct{ name, text string }{
		{"dotted key", "saw.kerf = 3\n" + sheet18 + oneShelf},
		{"quoted keys", "[\"saw\"]\n'kerf' = 3\n" + sheet18 + oneShelf},
		{"inline table", "saw = {kerf = 3}\n" + sheet18 + oneShelf},
		{"array of inline tables", `saw = {kerf = +3.0}
sheet = [{name = "full sheet", material = "birch ply 18", thickness = 18, length = 2440, width = 1220}]
part = [
  {name = "shelf", material = "birch ply 18", length = 900, width = 300}, # the only one
]`},
		{"line ends of Windows", strings.ReplaceAll("[saw]\nkerf = 3\n"+sheet18+oneShelf, "\n", "\r\n")},
		{"byte order mark", "\ufeff[saw]\nkerf = 3\n" + sheet18 + oneShelf},
		{"UTF-16", string(utf16LE("[saw]\nkerf = 3\n" + sheet18 + oneShelf))},
		{"long text", strings.Replace("[saw]\nkerf = 3\n"+sheet18+oneShelf, `"shelf"`, "\"\"\"\nshelf\\\n  \"\"\"", 1)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := mustRead(t, tt.text).Job
			got.Parts[0].From = want.Parts[0].From
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("job (-want +got):\n%s", diff)
			}
		})
	}
}

// What TOML 1.0.0 forbids about defining a table or an array again, sections
// Table, Inline Table and Array of Tables; the examples are of their kind.
func TestReadRefusesTablesDefinedAgain(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"a header twice", "[saw]\n[saw]\n", "bench.toml:2: saw: is given twice, first in line 1; delete one of them"},
		{"a header after dotted keys", "saw.kerf = 3\n[saw]\n", "bench.toml:2: saw: is given twice, first in line 1; delete one of them"},
		{"a header after a table in braces", "saw = {kerf = 3}\n[saw]\n", "bench.toml:2: saw: is given twice, first in line 1; delete one of them"},
		{"dotted keys after a table in braces", "saw = {kerf = 3}\nsaw.stages = 2\n", "bench.toml:2: saw: is given twice, first in line 1; delete one of them"},
		{"a table under one in braces", "case = {outside_width = 3}\n[case.carcass]\n", "bench.toml:2: case: is given twice, first in line 1; delete one of them"},
		{"dotted keys into a table with a header", "[case.carcass]\n[case]\ncarcass.joint = \"butt\"\n", "bench.toml:3: case.carcass: is given twice, first in line 1; delete one of them"},
		{"a table added to a list in brackets", "part = []\n[[part]]\n", "bench.toml:2: part: is given twice, first in line 1; delete one of them"},
		{"a key twice", "saw.kerf = 3\nsaw.kerf = 3\n", "bench.toml:2: saw.kerf: is given twice, first in line 1; delete one of them"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := read(t, tt.text)
			if err == nil || !strings.Contains("\n"+err.Error()+"\n", "\n"+tt.want+"\n") {
				t.Errorf("faults are\n%v\nwant among them\n%s", err, tt.want)
			}
		})
	}
}

// What the same section allows.
func TestReadAllowsTablesInAnyOrder(t *testing.T) {
	for _, text := range []string{
		"[case.carcass]\nmaterial = \"birch ply 18\"\n[case]\noutside_width = 900\noutside_height = 700\noutside_depth = 300\n" + sheet18,
		"case.outside_width = 900\ncase.outside_height = 700\ncase.outside_depth = 300\n[case.carcass]\nmaterial = \"birch ply 18\"\n" + sheet18,
	} {
		mustRead(t, text)
	}
}
