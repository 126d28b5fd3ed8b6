package recut_test

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
	"sawbill/stock/job"
)

// Two sheets hold two shelves each; a rail may lie any way.
const shelves = `
[saw]
kerf = 3

[[sheet]]
name = "birch 18"
material = "birch ply"
thickness = 18
length = 610
width = 610
price = 20

[[part]]
name = "shelf"
material = "birch ply"
length = 600
width = 300
count = 4
`

// afterChange plans a job, reports events, and plans the rest of the job as changed.
func afterChange(t *testing.T, text string, as job.Changes, happened ...string) *recut.Result {
	t.Helper()
	sources := []job.Source{{Name: "shelves.toml", Text: text}}
	was, err := job.Reread(sources, job.Changes{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := cutplan.Make(t.Context(), was.Job, cutplan.Options{Iterations: 300})
	if err != nil {
		t.Fatal(err)
	}
	s := &story{t, progress.Begin(p)}
	s.happens(happened...)
	is, err := job.Reread(sources, as)
	if err != nil {
		t.Fatal(err)
	}
	made, err := recut.Make(t.Context(), s.state, recut.Options{Code: "K7F2M", Options: cutplan.Options{Iterations: 300}, Was: &was.Job, Is: &is.Job})
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// inWords describes the effect of a change: "3 made, 1 to come ...".
func inWords(made *recut.Result) string {
	var said []string
	there, coming := 0, 0
	for _, m := range made.Made {
		there += m.Count * m.Holds()
	}
	for _, p := range made.Plan.Job.Parts {
		coming += p.Count
	}
	said = append(said, fmt.Sprintf("%d there, %d to come", there, coming))
	for _, c := range made.Trim {
		said = append(said, fmt.Sprintf("trim %d %s to %s x %s", c.Good, c.Is.Name, c.Is.Length.Decimal(), c.Is.Width.Decimal()))
	}
	for _, u := range made.Unfit {
		said = append(said, fmt.Sprintf("%d %s unfit", u.Count, u.Mark))
	}
	for _, s := range made.Unused {
		said = append(said, fmt.Sprintf("%d %s of %s x %s x %s", s.Count, s.Name, s.Length.Decimal(), s.Width.Decimal(), s.Thickness.Decimal()))
	}
	for _, b := range made.Plan.Bill {
		said = append(said, fmt.Sprintf("%s %s", b.Mark, b.Part.Name))
	}
	return strings.Join(append(said, made.Plan.Cost.String()), "; ")
}

// Uncut stock is planned by the new job; finished blanks are trimmed or become wood on
// hand.
func TestSecondThoughts(t *testing.T) {
	tests := []struct {
		reason   string
		job      string
		as       job.Changes
		happened []string
		want     string
	}{
		{"a part more comes from what is bought, and costs what it needs", shelves, job.Changes{Added: []string{"rail: 590 x 290, birch ply"}}, []string{"cut 1"},
			"4 there, 1 to come; B rail; 20.00"},
		{"one shelf more", shelves, job.Changes{Counts: []string{"shelf=5"}}, []string{"cut 1/1"}, "2 there, 3 to come; A shelf; 20.00"},
		{"one shelf less: the other of its sheet is still cut", shelves, job.Changes{Counts: []string{"shelf=3"}}, []string{"cut 1/1"}, "2 there, 1 to come; A shelf; 0.00"},
		{"fewer than are cut: their wood is on hand", shelves, job.Changes{Counts: []string{"shelf=3"}}, []string{"cut 1"},
			"3 there, 0 to come; 1 K7F2M A unused (1) of 600 x 300 x 18; 0.00"},
		{"dropped, and another takes the wood", shelves, job.Changes{Without: []string{"shelf"}, Added: []string{"rail: 590 x 290, birch ply, 5"}}, []string{"cut 1"},
			"0 there, 5 to come; 4 K7F2M A unused (1) of 600 x 300 x 18; B rail; 20.00"},
		{"shorter: what is cut is trimmed", shelves, job.Changes{Sizes: []string{"shelf=590 x 300"}}, []string{"cut 1/1"},
			"2 there, 2 to come; trim 2 shelf to 590 x 300; A shelf; 0.00"},
		{"longer: what is cut is no longer good, and keeps its mark", shelves, job.Changes{Sizes: []string{"shelf=605 x 300"}}, []string{"cut 1/1"},
			"0 there, 4 to come; 2 A unfit; 2 K7F2M A unused (1) of 600 x 300 x 18; B shelf; 20.00"},
		{"a wider kerf leaves no room for two: what is uncut is planned anew", strings.ReplaceAll(shelves, "width = 610", "width = 604"), job.Changes{Kerf: "5"}, []string{"cut 1/1"},
			"2 there, 2 to come; A shelf; 20.00"},
		{"a narrower kerf", shelves, job.Changes{Kerf: "2"}, []string{"cut 1/1"}, "2 there, 2 to come; A shelf; 0.00"},
		{"the sheets measure otherwise, those that are cut too", shelves, job.Changes{Thicknesses: []string{"birch ply=17.6"}}, []string{"cut 1/1"},
			"2 there, 2 to come; A shelf; 0.00"},
	}
	for _, test := range tests {
		if got := inWords(afterChange(t, test.job, test.as, test.happened...)); got != test.want {
			t.Errorf("%s:\n got %s\nwant %s", test.reason, got, test.want)
		}
	}
}

// A part that gets a grain is good only if its grain is known to run that way.
func TestAPartThatGetsAGrainIsLookedAt(t *testing.T) {
	any := strings.ReplaceAll(shelves, "width = 610", "width = 310") + `grain = "any"

[[sheet]]
name = "birch 18, wide"
material = "birch ply"
thickness = 18
length = 310
width = 610
price = 90
`
	for grain, unfit := range map[string]int{"length": 0, "width": 1} {
		sources := []job.Source{{Name: "shelves.toml", Text: strings.Replace(any, `grain = "any"`, fmt.Sprintf("grain = %q", grain), 1)}}
		is, err := job.Reread(sources, job.Changes{})
		if err != nil {
			t.Fatal(err)
		}
		s := begin(t, any)
		s.happens("cut 1")
		was := s.state.Plan().Job
		made, err := recut.Make(t.Context(), s.state, recut.Options{Code: "K7F2M", Options: cutplan.Options{Iterations: 300}, Was: &was, Is: &is.Job})
		if err != nil {
			t.Fatal(err)
		}
		if len(made.Unfit) != unfit {
			t.Errorf("grain along the %s: %d kinds are unfit, want %d", grain, len(made.Unfit), unfit)
		}
	}
}

// A changed thickness applies to finished blanks of the material too.
func TestTheThicknessOfWhatIsCutGoesAlong(t *testing.T) {
	made := afterChange(t, shelves, job.Changes{Thicknesses: []string{"birch ply=17.6"}}, "cut 1/1")
	want := 17_600 * stock.Millimeter / 1000
	for _, m := range made.Made {
		if m.From.Thickness != want || m.Thickness != want || m.Part.Thickness != want {
			t.Errorf("%+v", m)
		}
	}
	for _, l := range made.Plan.Layouts {
		if l.Stock.Thickness != want {
			t.Errorf("%+v", l.Stock)
		}
	}
	if len(made.ThicknessChanges) != 1 || made.ThicknessChanges[0].Is != want {
		t.Errorf("%+v", made.ThicknessChanges)
	}
}
