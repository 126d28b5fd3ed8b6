package report

import (
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock/job"
)

// restOf plans an example, cuts it all, and has what happened then planned anew.
func restOf(t *testing.T, path string, happened ...string) (*cutplan.Plan, Options) {
	t.Helper()
	file, err := job.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := cutplan.Make(t.Context(), file.Job, cutplan.Options{Iterations: 400})
	if err != nil {
		t.Fatal(err)
	}
	s := progress.Begin(p)
	for _, said := range append([]string{"cut 1", "cut 2", "cut 3"}, happened...) {
		e, err := progress.ParseEvent(said)
		if err == nil {
			err = s.Apply(e)
		}
		if err != nil {
			t.Fatal(said, err)
		}
	}
	made, err := recut.Make(t.Context(), s, recut.Options{Code: "K7F2M", Options: cutplan.Options{Iterations: 400}})
	if err != nil {
		t.Fatal(err)
	}
	return made.Plan, Options{Case: file.Case, Rest: &Rest{Of: "K7F2M", Result: made}}
}

// Only what remains is shown, on paper and on the screen, and by its old marks.
func TestOnlyTheRestIsShown(t *testing.T) {
	p, o := restOf(t, "../testdata/jobs/wall-cabinet.toml", "spoiled side", "lost back")
	page := string(HTML(p, o))
	var paper strings.Builder
	for _, sheet := range lay(p, whole(o)).Pages {
		for _, text := range sheet.Texts() {
			paper.WriteString(text.String + "\n")
		}
	}
	for name, text := range map[string]string{"plan.html": page, "plan.pdf": paper.String()} {
		for _, there := range []string{"The rest of plan K7F2M", "Cutting bill", "Layout 1"} {
			if !strings.Contains(text, there) {
				t.Errorf("%s does not say %q", name, there)
			}
		}
		for _, gone := range []string{"Elevations", "Sub-assemblies", "loose tenon strip", takeoffHeading} {
			if strings.Contains(text, gone) {
				t.Errorf("%s says %q", name, gone)
			}
		}
	}
	var marks []string
	for _, b := range p.Bill {
		marks = append(marks, b.Mark)
	}
	if strings.Join(marks, "") != "AD" {
		t.Errorf("the marks are %v", marks)
	}
}

// Of two sides one is there: the label of the other does not claim to know which it is.
func TestALabelClaimsNoPlaceThatMayBeTaken(t *testing.T) {
	p, o := restOf(t, "../testdata/jobs/wall-cabinet.toml", "spoiled side")
	for _, l := range labels(p, namesOf(p, ""), o) {
		if l.Mark != "A" {
			continue
		}
		said := strings.Join(l.Lines, "\n")
		if !strings.Contains(said, "carcass, left or carcass, right") || strings.Contains(said, "label on the") || l.Piece.Edge != "" {
			t.Errorf("the label says %q, edge %q", said, l.Piece.Edge)
		}
		return
	}
	t.Error("there is no label of the side")
}
