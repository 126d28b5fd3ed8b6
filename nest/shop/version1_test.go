package shop_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/shop"
	"sawbill/nest/shop/planfile"
	"sawbill/stock/rack"
)

// kept1 is a copy of the folders that version 1 wrote.
func kept1(t *testing.T) workshop {
	t.Helper()
	w := workshop{t, filepath.Join(t.TempDir(), "shop")}
	w.must(os.CopyFS(w.root, os.DirFS("../../testdata/plans/v1")))
	return w
}

// Every plan that version 1 left under way is opened, reported, replanned, taken back and
// booked.
func TestPlansOfVersion1GoOn(t *testing.T) {
	for _, folder := range []string{"bench/bench-plan", "cabinet/cabinet-plan", "crate/crate-plan", "rails/rails-plan-3", "shelf/hall-plan-2", "stool/stool-plan"} {
		t.Run(folder, func(t *testing.T) {
			w := kept1(t)
			before := w.files()
			f := w.open(folder)
			if !same(before, w.files()) {
				t.Error("a look changes the folder")
			}
			n := len(f.Plan().Continues) + 1
			if f.Plan().Number != n {
				t.Errorf("number %d, want %d", f.Plan().Number, n)
			}
			w.must(w.report(folder, "cut 1"))
			w.must(w.undo(folder))
			w.must(w.undo(folder)) // which version 1 wrote
			again, err := w.recut(folder, "", "H4XYZ")
			w.must(err)
			if want := strings.TrimSuffix(folder, "-"+string(rune('0'+n))) + "-" + string(rune('1'+n)); again != want {
				t.Errorf("the rest is in %s, want %s", again, want)
			}
			w.refused(w.report(folder, "cut 1"), "goes on as plan H4XYZ")
			w.must(w.withdraw(again))
			w.must(w.report(folder, "cut 1"))
			g := w.open(folder)
			on := g.RackPath()
			if on == "" {
				on = w.at("rack.toml")
			}
			done, err := g.Book(t.Context(), shop.Booking{Rack: rack.At(on), GiveUp: true, Date: "2026-05-01"})
			if err != nil || len(done.Put) == 0 {
				t.Error(done, err)
			}
			w.refused(w.report(folder, "cut 1"), "is booked on the rack")
		})
	}
}

// The record of version 1 does not say that a plan goes on: the folder of its rest does.
func TestARestOfVersion1IsFound(t *testing.T) {
	for folder, next := range map[string]string{"rails/rails-plan": "rails-plan-2", "rails/rails-plan-2": "rails-plan-3", "shelf/hall-plan": "hall-plan-2"} {
		w := kept1(t)
		before := w.files()
		w.refused(w.report(folder, "good 1"), "goes on as plan", next)
		w.refused(w.undo(folder), "goes on as plan", next)
		_, err := w.recut(folder, "", "H4XYZ")
		w.refused(err, "goes on as plan", next)
		if !same(before, w.files()) {
			t.Error("what was refused changed something")
		}
	}
	w := kept1(t)
	w.must(w.undo("rails/rails-plan-3"))
	w.must(w.withdraw("rails/rails-plan-3"))
	w.refused(w.report("rails/rails-plan-3", "cut 1"), "plan E3CHQ was withdrawn, plan L6EQ6 in", "rails-plan-2 goes on in its place")
	where, err := w.recut("rails/rails-plan-2", "", "H4XYZ")
	if err != nil || where != "rails/rails-plan-4" {
		t.Error(where, err)
	}
}

// A plan of version 1 is replaced by one of its job, with the pages that version 1 wrote and
// what it left when it was stopped.
func TestAPlanOfVersion1IsReplaced(t *testing.T) {
	w := kept1(t)
	w.must(os.Remove(w.at("crate/crate-plan/progress.jsonl")))
	for _, name := range []string{"plan.pdf", "plan.html", "layout-01.svg", "layout-12.svg", "elevation-front.svg", ".plan.pdf-4711", ".progress.jsonl.lock"} {
		w.write("crate/crate-plan/"+name, "of version 1")
	}
	w.write("crate/crate-plan/photo.jpg", "mine")
	w.write("other/crate.toml", w.files()["crate/crate.toml"])
	w.refused(w.plan("other/crate.toml", "crate/crate-plan", "K7F2M"), "the folder holds plan LYA4M of", "crate/crate.toml, which would be replaced by one of", "other/crate.toml")
	w.must(w.plan("crate/crate.toml", "crate/crate-plan", "K7F2M"))
	var names []string
	entries, err := os.ReadDir(w.at("crate/crate-plan"))
	w.must(err)
	for _, e := range entries {
		names = append(names, e.Name())
	}
	if got := strings.Join(names, " "); got != ".sawbill-files layout-01.svg photo.jpg plan.pdf "+planfile.Name {
		t.Error(got)
	}
}

// A chain of which version 1 booked the first plan though it went on: its pieces are on the
// rack already.
func TestAChainThatVersion1BookedInBetween(t *testing.T) {
	w := kept1(t)
	r := rack.At(w.at("shelf/rack.toml"))
	piece, err := r.Read()
	w.must(err)
	_, err = r.Change(t.Context(), rack.Change{Put: piece.Pieces[:1], Plan: "PTLMK", What: "plan PTLMK carried out", Date: "2026-04-09"})
	w.must(err)
	_, err = w.open("shelf/hall-plan-2").Book(t.Context(), shop.Booking{Rack: r, GiveUp: true, Date: "2026-05-01"})
	w.refused(err, "plan PTLMK, which plan NWE3Q continues, is booked already", "sawbill rack undo")
	_, _, err = r.Undo(t.Context(), "2026-05-01")
	w.must(err)
	_, err = w.open("shelf/hall-plan-2").Book(t.Context(), shop.Booking{Rack: r, GiveUp: true, Date: "2026-05-01"})
	w.must(err)
}
