package recut_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/nest/shop/planfile"
	"sawbill/stock/job"
)

// waysOf plans a job, cuts all of it, spoils a blank, and lists the alternatives: "smaller
// height 720 714: side, back; splice 150 of 560".
func waysOf(t *testing.T, source string, happened ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "job.toml")
	if err := os.WriteFile(path, []byte(source), 0o666); err != nil {
		t.Fatal(err)
	}
	file, err := job.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := cutplan.Make(t.Context(), file.Job, cutplan.Options{Iterations: 300})
	if err != nil {
		t.Fatal(err)
	}
	s := progress.Begin(p)
	for _, said := range happened {
		e, err := progress.ParseEvent(said)
		if err == nil {
			err = s.Apply(e)
		}
		if err != nil {
			t.Fatal(said, err)
		}
	}
	k := &planfile.Plan{Plan: p, File: file}
	var all []string
	for _, w := range recut.WaysToSave(s, "K7F2M", recut.Design{Job: file.Job, Case: file.Case}, k.Smaller) {
		if w.Enough {
			all = append(all, "enough")
		}
		for _, b := range w.Others {
			all = append(all, "gives "+b.Part.Name)
		}
		for _, m := range w.SizeChanges {
			said := fmt.Sprintf("smaller %s %s %s:", m.Size, m.Was.Decimal(), m.Is.Decimal())
			for _, c := range m.Parts {
				said += fmt.Sprintf(" %s %s x %s", c.Was.Name, c.Is.Length.Decimal(), c.Is.Width.Decimal())
				if c.Good > 0 {
					said += fmt.Sprintf(" (%d cut)", c.Good)
				}
			}
			all = append(all, said)
		}
		if w.Splice != nil {
			said := fmt.Sprintf("splice %s and %s x %s", w.Splice.Back.Decimal(), w.Splice.Length.Decimal(), w.Splice.Width.Decimal())
			if w.Splice.Overlap > 0 {
				said += " over " + w.Splice.Overlap.Decimal()
			}
			if w.Splice.From == "" {
				said += " from nothing here"
			}
			if w.Splice.Unknown {
				said += ", if hidden"
			}
			all = append(all, said)
		}
	}
	return strings.Join(all, "; ")
}

const ply = `
[[sheet]]
name = "birch 15"
material = "birch ply"
thickness = 15
length = 2440
width = 1220

[[sheet]]
name = "birch 6"
material = "back ply"
thickness = 6
length = 1220
width = 1220
`

// A case 600 wide, 720 high and 300 deep, of 15 mm: sides 720 x 300, top and bottom
// between them 570 x 300, a back on it 720 x 600.
const box = ply + `
[case]
outside_width = 600
outside_height = 720
outside_depth = 306

[case.carcass]
material = "birch ply"

[case.back]
fit = "applied"
material = "back ply"

[[case.bay]]
`

const doors = `
[[case.bay.opening]]
doors = 1

[case.door]
material = "birch ply"
fit = "overlay"
overlay = 13
gap = 3
`

// The sizes are computed by hand.
func TestWhatElseCouldSaveIt(t *testing.T) {
	const list = ply + `
[[part]]
name = "rail"
material = "birch ply"
length = 900
width = 80
count = 3

[[part]]
name = "block"
material = "birch ply"
length = 200
width = 80
count = 2
`
	const boards = `
[[board]]
name = "spruce 45 x 95"
material = "spruce"
thickness = 45
width = 95
length = 2400

[[part]]
name = "brace"
material = "spruce"
length = 1100
width = 95
thickness = 45
count = 2
`
	tests := []struct {
		reason, job string
		happened    []string
		want        string
	}{
		{"nothing is left of it", box, []string{"cut 1", "cut 2", "spoiled side"}, ""},
		{"the case loses what the side lacks", box, []string{"cut 1", "spoiled side=714 x 300"},
			"smaller height 720 714: side 714 x 300 (1 cut) back 714 x 600"},
		{"up to the next millimeter", box, []string{"cut 1", "spoiled side=713.4 x 300"},
			"smaller height 720 713: side 713 x 300 (1 cut) back 713 x 600"},
		{"what is cut already is trimmed", box, []string{"cut 1", "cut 2", "spoiled side=714 x 300"},
			"smaller height 720 714: side 714 x 300 (1 cut) back 714 x 600 (1 cut)"},
		{"a bottom that is too short makes it narrower", box, []string{"cut 1", "spoiled bottom=565 x 300"},
			"smaller width 600 595: bottom 565 x 300 top 565 x 300 (1 cut) back 720 x 595"},
		{"a bottom that is too narrow makes it less deep", box, []string{"cut 1", "spoiled bottom=570 x 296"},
			"smaller depth 306 302: bottom 570 x 296 side 720 x 296 (2 cut) top 570 x 296 (1 cut)"},
		{"more than a twentieth is another design", box, []string{"cut 1", "spoiled side=680 x 300"}, ""},
		{"through an open case the back is seen", box, []string{"cut 2", "spoiled back=640 x 600"}, ""},
		{"behind a door it may be spliced, of two pieces 150 long at least", box + doors, []string{"cut 2", "spoiled back=640 x 600"},
			"splice 570 and 150 x 600"},
		{"without a case the maker must know what it meets", list, []string{"cut 1", "spoiled rail=890 x 80"},
			"smaller  0 0: rail 890 x 80 (2 cut); splice 750 and 150 x 80, if hidden"},
		{"what is left gives others that are wanted", list, []string{"cut 1", "lost block", "spoiled rail=500 x 80"},
			"gives block; splice 500 and 400 x 80, if hidden"},
		{"less than half is not worth it", list, []string{"cut 1", "spoiled rail=400 x 80"}, ""},
		{"a board is joined by a scarf of 8 thicknesses", boards, []string{"cut 1", "spoiled brace=1000 x 95"},
			"splice 950 and 510 x 95 over 360 from nothing here, if hidden"},
	}
	for _, test := range tests {
		if got := waysOf(t, test.job, test.happened...); got != test.want {
			t.Errorf("%s:\n got %s\nwant %s", test.reason, got, test.want)
		}
	}
}

// Without its full allowances, the blank may still hold the part.
func TestAPieceWithLessToTrimIsEnough(t *testing.T) {
	const list = ply + `
[allowance]
end = 10

[[part]]
name = "shelf"
material = "birch ply"
length = 800
width = 250
count = 2
ends = 2
`
	if got := waysOf(t, list, "cut 1", "spoiled shelf=812 x 250"); !strings.HasPrefix(got, "enough; ") {
		t.Error(got)
	}
	if got := waysOf(t, list, "cut 1", "spoiled shelf=799 x 250"); strings.Contains(got, "enough") {
		t.Error(got)
	}
}
