package job

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/stock"
)

const running = `
[saw]
kerf = 3

[[sheet]]
name = "birch 18"
material = "birch ply 18"
thickness = 18
length = 2440
width = 1220

[[part]]
name = "shelf"
material = "birch ply 18"
length = 600
width = 300
count = 2
`

func rereadAs(as Changes) (*File, error) {
	return Reread([]Source{{"shelves.toml", running}}, as)
}

// A part is added as it would stand in a part list.
func TestAPartIsAdded(t *testing.T) {
	tests := []struct{ written, want string }{
		{"rail: 600 x 80, birch ply 18", "rail 600 x 80 x 18, birch ply 18, 1, length"},
		{"rail: 600 x 80, birch ply 18, 3", "rail 600 x 80 x 18, birch ply 18, 3, length"},
		{"rail: front: 24 × 4 in, birch ply 18, 3, grain any", "rail: front 609.6 x 101.6 x 18, birch ply 18, 3, any"},
		{"rail: 600 x 80 x 18, birch ply 18, grain width, 2", "rail 600 x 80 x 18, birch ply 18, 2, width"},
	}
	for _, test := range tests {
		file, err := rereadAs(Changes{Added: []string{test.written}})
		if err != nil {
			t.Errorf("%s: %v", test.written, err)
			continue
		}
		p := file.Parts[len(file.Parts)-1]
		got := fmt.Sprintf("%s %s x %s x %s, %s, %d, %s", p.Name, p.Length.Decimal(), p.Width.Decimal(), p.Thickness.Decimal(), p.Material, p.Count, p.Grain)
		if got != test.want || p.From != "added" {
			t.Errorf("%s:\n got %s from %s\nwant %s", test.written, got, p.From, test.want)
		}
	}
}

func TestSecondThoughtsThatCannotBe(t *testing.T) {
	tests := []struct {
		as            Changes
		cause, remedy string
	}{
		{Changes{Added: []string{"rail"}}, "--add rail: a name, a size and a material are wanted", `"shelf: 600 x 300, birch ply 18, 2"`},
		{Changes{Added: []string{"rail: 600 x 80, brich ply 18"}}, `unknown material "brich ply 18"`, `did you mean "birch ply 18"?`},
		{Changes{Added: []string{"rail: 600 x eighty, birch ply 18"}}, `--add rail: 600 x eighty, birch ply 18: part "rail"`, ""},
		{Changes{Added: []string{"shelf: 500 x 80, birch ply 18"}}, `has a part "shelf" already`, "--count"},
		{Changes{Added: []string{"rail: 6000 x 80, birch ply 18"}}, "longer than any sheet", ""},
		{Changes{Without: []string{"shelf"}, Counts: []string{"shelf=2"}}, `--count shelf=2: there is no part "shelf"`, "take one that the job has"},
		{Changes{Sizes: []string{"shelf=620"}}, `"620" is no length and width`, "620 x 300"},
		{Changes{Sizes: []string{"shelf=0 x 300"}}, "0 mm is no size", "above 0"},
		{Changes{Sizes: []string{"shelve=620 x 300"}}, `no part "shelve"`, `did you mean "shelf"?`},
		{Changes{Kerf: "wide"}, "--kerf wide", ""},
		{Changes{Kerf: "90"}, "90 mm is no kerf", "measure a slot"},
	}
	for _, test := range tests {
		_, err := rereadAs(test.as)
		if err == nil || !strings.Contains(err.Error(), test.cause) || !strings.Contains(err.Error(), test.remedy) {
			t.Errorf("%+v: %v", test.as, err)
		}
	}
	file, err := rereadAs(Changes{Sizes: []string{"shelf=24 x 12 in"}, Kerf: "2.4"})
	if err != nil || file.Parts[0].Length != 24*stock.Inch || file.Parts[0].Width != 12*stock.Inch || file.Saw.Kerf != 2_400*stock.Millimeter/1000 {
		t.Errorf("%+v, %v", file, err)
	}
}

// A part of a board is added as the remedy says.
func TestAPartOfABoardIsAdded(t *testing.T) {
	const text = "[saw]\nkerf = 3\n[[board]]\nname = \"pine\"\nmaterial = \"pine\"\nlength = 2400\nwidth = 95\nthickness = 20\n" +
		"[[part]]\nname = \"slat\"\nmaterial = \"pine\"\nlength = 800\nwidth = 95\nthickness = 20\n"
	added := func(written string) error {
		_, err := Reread([]Source{{"slats.toml", text}}, Changes{Added: []string{written}})
		return err
	}
	if err := added("rail: 300 x 90, pine"); err == nil || !strings.Contains(err.Error(), `thickness is missing; write it behind the width: the boards of pine are 20 mm`) {
		t.Error(err)
	}
	if err := added("rail: 300 x 90 x 20, pine"); err != nil {
		t.Error(err)
	}
}
