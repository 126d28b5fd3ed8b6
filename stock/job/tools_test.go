package job

import (
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"

	"github.com/google/go-cmp/cmp"
)

// framed is a case with a frame, to which tables are added.
const framed = `
[[sheet]]
name = "ply"
material = "ply"
thickness = 18
length = 2440
width = 1220
[[board]]
name = "oak"
material = "oak"
thickness = 38
width = 150
length = 2400
[case]
construction = "framed"
outside_width = 664
outside_height = 720
outside_depth = 300
[case.carcass]
material = "ply"
[case.frame]
material = "oak"
stile_width = 50
rail_width = 50
corner = "mortise-and-tenon"
tenon_length = 30
[[case.bay]]
[[case.bay.opening]]
shelves = 1
`

// A third of a frame 38 mm thick is 12.67: tenons of 12 without [tools], of 10 where chisels of 10 and
// 16 are all there are, 12.67 where none are listed. Shelves of 564 - 3 lie on a step of 5.
func TestToolsOfAJobSetItsSizes(t *testing.T) {
	ruler := stock.Ruler{}
	for _, test := range []struct{ tools, cheeks, shelf string }{
		{"", "13 25", "625"},
		{"[tools]\nchisels = [16, \"10 mm\", 10]\nstep = 5", "10 20", "625"},
		{"[tools]\nchisels = 10\nstep = 0", "14 24", "625"},
		{"[tools]\nchisels = []", "≈12.65 ≈25.3", "625"},
	} {
		file, err := read("job.toml", func(name string) string { return name }, func(string) ([]byte, error) {
			return []byte(test.tools + framed), nil
		}, nil, Changes{})
		if err != nil {
			t.Fatal(err)
		}
		var cheeks []string
		for _, k := range file.Case.Marks {
			if k.What == "tenon cheeks" {
				for _, at := range k.At {
					cheeks = append(cheeks, ruler.Print(at))
				}
				break
			}
		}
		if got := strings.Join(cheeks, " "); got != test.cheeks {
			t.Errorf("%q: cheeks at %s, want %s", test.tools, got, test.cheeks)
		}
		for _, p := range file.Parts {
			if p.Name == "shelf" && ruler.Print(p.Length) != test.shelf {
				t.Errorf("%q: the shelf is %s long, want %s", test.tools, ruler.Print(p.Length), test.shelf)
			}
		}
	}
}

func TestToolsThatMakeNoSense(t *testing.T) {
	for _, test := range []struct{ tools, want string }{
		{"bits = [6, 0]", "bits: 0 is no size; router bits are 3 to 20 mm (1/8 to 3/4 in) wide"},
		{"bits = [6, true]", "bits"},
		{"step = 50", "step: 50 mm is more than can be meant (at most 5 mm)"},
	} {
		_, err := read("job.toml", func(name string) string { return name }, func(string) ([]byte, error) {
			return []byte("[tools]\n" + test.tools + "\n[case]\noutside_width = 600\n"), nil
		}, nil, Changes{})
		if err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v", test.tools, err)
		}
	}
}

// The defaults of the keys are those of the usual tools.
func TestStepOfAJobIsTheUsualOne(t *testing.T) {
	for _, units := range []stock.Units{stock.Millimeters, stock.Inches} {
		r := &reader{layout: fileKeys, ruler: stock.Ruler{Units: units}}
		if diff := cmp.Diff(casework.UsualTools(units), r.tools(&table{}, place{})); diff != "" {
			t.Errorf("(-want +got):\n%s", diff)
		}
	}
}

// Dowels are listed diameter first, and come out by diameter, of each the longest first. What
// cannot be meant is refused with the way to write it.
func TestDowelsOfAJob(t *testing.T) {
	dowelKey := toolKeys[slices.IndexFunc(toolKeys, func(k key) bool { return k.name == "dowels" })]
	words := func(all ...string) value {
		v := value{kind: list}
		for _, w := range all {
			v.list = append(v.list, value{kind: text, text: w})
		}
		return v
	}
	for _, test := range []struct {
		written value
		want    string
	}{
		{value{kind: text, text: "8 x 40"}, "8x40"},
		{words("10 x 60", "8x30", "8 x 40 mm", "8 x 40"), "8x40 8x30 10x60"},
		{words("40 x 8"), "thicker than it is long"},
		{value{kind: number, text: "8"}, `write diameter and length, such as "8 x 40"`},
		{words("8"), "no size of a dowel"},
		{words("8 x"), "there is no number"},
		{words("8 x 400"), "more than can be meant"},
	} {
		all, found := dowelKey.dowels(test.written, stock.Ruler{})
		got := found.Error()
		if !found.Found() {
			var said []string
			for _, d := range all {
				said = append(said, d.Diameter.Decimal()+"x"+d.Length.Decimal())
			}
			got = strings.Join(said, " ")
		}
		if got != test.want && !(found.Found() && strings.Contains(got, test.want)) {
			t.Errorf("%v: %s, want %s", test.written, got, test.want)
		}
	}
}
