package recut_test

import (
	"slices"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
	"sawbill/stock/job"
)

// A program that derives other sizes from the same case plans the rest of a plan under way.
// Parts that the change leaves alone keep the sizes that were printed.
func TestWhatDidNotChangeKeepsItsPrintedSizes(t *testing.T) {
	sources := []job.Source{{Name: "box.toml", Text: box + "\n[[case.bay.opening]]\nshelves = 2\n\n[[part]]\nname = \"rail\"\nmaterial = \"birch ply\"\nlength = 500\nwidth = 90\ncount = 2\n"}}
	const former = 3 * stock.Millimeter / 10 // what the former program made each part longer
	for _, c := range []struct {
		reason  string
		as      job.Changes
		changed string
		kerf    bool
	}{
		{"one rail less", job.Changes{Counts: []string{"rail=1"}}, "rail", false},
		{"no rail", job.Changes{Without: []string{"rail"}}, "rail", false},
		{"a longer rail", job.Changes{Sizes: []string{"rail=560 x 90"}}, "rail", false},
		{"a part more", job.Changes{Added: []string{"cleat: 300 x 60, birch ply"}}, "", false},
		{"another blade", job.Changes{Kerf: "2.8"}, "", true},
	} {
		was, err := job.Reread(sources, job.Changes{})
		if err != nil {
			t.Fatal(err)
		}
		is, err := job.Reread(sources, c.as)
		if err != nil {
			t.Fatal(err)
		}
		printed := was.Job
		printed.Parts = slices.Clone(was.Parts)
		printed.Saw.NarrowestRip = 4 * stock.Millimeter // its default was another
		for i := range printed.Parts {
			printed.Parts[i].Length += former
		}
		p, err := cutplan.Make(t.Context(), printed, cutplan.Options{Iterations: 100})
		if err != nil {
			t.Fatal(err)
		}
		s := &story{t, progress.Begin(p)}
		s.happens("cut 1:1-3")
		made, err := recut.Make(t.Context(), s.state, recut.Options{Code: "K7F2M", Options: cutplan.Options{Iterations: 100}, Was: &was.Job, Is: &is.Job})
		if err != nil {
			t.Fatal(c.reason, err)
		}
		for _, b := range made.Plan.Bill {
			i := slices.IndexFunc(p.Bill, func(old cutplan.Blank) bool { return old.Part.Name == b.Part.Name })
			if i < 0 || b.Part.Name == c.changed {
				continue
			}
			if b.Length != p.Bill[i].Length || b.Width != p.Bill[i].Width || b.Part.Length != p.Bill[i].Part.Length || b.Mark != p.Bill[i].Mark {
				t.Errorf("%s: %s %s is %v long, printed was %s %v", c.reason, b.Mark, b.Part.Name, b.Length.Decimal(), p.Bill[i].Mark, p.Bill[i].Length.Decimal())
			}
		}
		for _, u := range made.Unfit {
			t.Errorf("%s: %s %s does not fit any more", c.reason, u.Mark, u.Part.Name)
		}
		if is := made.Plan.Job.Saw.NarrowestRip; !c.kerf && is != printed.Saw.NarrowestRip {
			t.Errorf("%s: the saw's limit is %v, printed was another", c.reason, is.Decimal())
		}
		if !c.kerf && c.changed == "" && len(made.Replanned) > 0 {
			t.Errorf("%s: %d pieces are planned anew", c.reason, len(made.Replanned))
		}
		for _, ch := range made.Changed {
			if n := ch.Was.Name + ch.Is.Name; c.changed != "" && ch.Is.Name != c.changed && ch.Was.Name != c.changed {
				t.Errorf("%s: %s counts as changed", c.reason, n)
			}
		}
	}
}
