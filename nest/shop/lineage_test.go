package shop_test

import (
	"os"
	"testing"

	"sawbill/stock/rack"
)

// What has a successor, and what was withdrawn, refuses everything and names the folder to
// go on with. Nothing is changed by it.
func TestWhatAPlanThatHasEndedRefuses(t *testing.T) {
	goesOn := []string{"p: plan K7F2M goes on as plan H4XYZ in", "p-2; name that folder; if nothing was cut by it, sawbill recut", "p-2 --withdraw takes it back"}
	withdrawn := []string{"p-2: plan H4XYZ was withdrawn, plan K7F2M in", "p goes on in its place; name that folder"}
	booked := []string{"p: plan K7F2M is booked on the rack", "(change 1 of 2026-03-05)", "take the booking back with sawbill rack undo"}
	acts := map[string]func(w workshop, folder string) error{
		"report":   func(w workshop, folder string) error { return w.report(folder, "cut 1") },
		"undo":     func(w workshop, folder string) error { return w.undo(folder) },
		"recut":    func(w workshop, folder string) error { _, err := w.recut(folder, "", "X7Y4F"); return err },
		"recut -o": func(w workshop, folder string) error { _, err := w.recut(folder, "elsewhere", "X7Y4F"); return err },
		"book":     func(w workshop, folder string) error { _, err := w.book(folder, false); return err },
		"give up":  func(w workshop, folder string) error { _, err := w.book(folder, true); return err },
	}
	tests := []struct {
		name, folder string
		before       func(w workshop)
		want         []string
	}{
		{"goes on", "p", func(w workshop) { w.recut("p", "", "H4XYZ") }, goesOn},
		{"withdrawn", "p-2", func(w workshop) { w.recut("p", "", "H4XYZ"); w.must(w.withdraw("p-2")) }, withdrawn},
		{"booked", "p", func(w workshop) { w.book("p", true) }, booked},
	}
	for _, test := range tests {
		for name, act := range acts {
			t.Run(test.name+"/"+name, func(t *testing.T) {
				w := in(t)
				w.must(w.plan("bench.toml", "p", "K7F2M"))
				w.must(w.report("p", "cut 1:1"))
				test.before(w)
				before := w.files()
				w.refused(act(w, test.folder), test.want...)
				if !same(before, w.files()) {
					t.Error("what was refused changed something")
				}
				if said, err := w.open(test.folder).Said(); err != nil || said == "" {
					t.Error("the folder does not say what became of its plan", err)
				}
			})
		}
	}
}

func TestNumbersAndFoldersAreNeverUsedTwice(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	step := func(from, code, want string, number int) {
		t.Helper()
		where, err := w.recut(from, "", code)
		w.must(err)
		if n := w.open(where).Plan().Number; where != want || n != number {
			t.Errorf("plan %s is number %d in %s, want %d in %s", code, n, where, number, want)
		}
	}
	step("p", "AAAAA", "p-2", 2)
	step("p-2", "CCCCC", "p-3", 3)
	w.must(w.withdraw("p-3"))
	w.must(w.withdraw("p-2"))
	step("p", "DDDDD", "p-4", 4) // 3 was used below 2
	w.must(w.withdraw("p-4"))
	os.RemoveAll(w.at("p-4")) // the number is used all the same
	w.write("p-5/photo.jpg", "mine")
	step("p", "EEEEE", "p-6", 6) // a folder of that name is there
	where, err := w.recut("p-6", "elsewhere", "FFFFF")
	w.must(err)
	if p := w.open(where).Plan(); p.Number != 7 || len(p.Continues) != 2 || p.Before != "../p-6" {
		t.Error(p.Number, p.Continues, p.Before)
	}
	step(where, "HHHHH", "elsewhere-8", 8)
}

func TestARestIsWithdrawn(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.must(w.report("p", "cut 1", "lost shelf"))
	_, err := w.recut("p", "", "H4XYZ")
	w.must(err)
	w.must(w.report("p-2", "cut 1"))
	w.refused(w.withdraw("p-2"), "p-2/progress.jsonl:1: there is progress of plan H4XYZ", "sawbill progress --undo")
	w.must(w.undo("p-2"))
	w.must(w.withdraw("p-2"))
	w.refused(w.withdraw("p-2"), "plan H4XYZ was withdrawn")
	w.refused(w.withdraw("p"), "plan K7F2M is the rest of no other")
	w.must(w.report("p", "good shelf"))
	where, err := w.recut("p", "", "H4XYZ") // the code may be the same
	if err != nil || where != "p-3" {
		t.Error(where, err)
	}
	w.refused(w.report("p-2", "cut 1"), "was withdrawn")
	w.must(w.report("p-3", "cut 1"))
}

// The user may have moved a folder or thrown it away: what remains can go on.
func TestAFolderOfTheLineageHasGone(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.must(w.report("p", "cut 1"))
	_, err := w.recut("p", "", "H4XYZ")
	w.must(err)

	w.must(os.Rename(w.at("p-2"), w.at("away")))
	w.refused(w.report("p", "cut 2"), "plan K7F2M goes on as plan H4XYZ in", "and that folder does not hold it", "--withdraw")
	w.must(w.report("away", "cut 1")) // which goes on where it is
	w.must(w.undo("away"))
	w.must(w.plan("bench.toml", "p-2", "J5ABC"))
	w.refused(w.report("p", "cut 2"), "and that folder does not hold it")
	w.must(w.withdraw("p"))
	w.refused(w.report("away", "cut 1"), "plan H4XYZ was withdrawn, plan K7F2M in")
	w.must(os.RemoveAll(w.at("p-2")))
	w.must(os.RemoveAll(w.at("away")))
	_, err = w.recut("p", "p-2", "H4XYZ")
	w.must(err)

	w.must(os.Rename(w.at("p"), w.at("away")))
	w.must(w.report("p-2", "cut 1"))
	w.must(w.undo("p-2"))
	w.refused(w.withdraw("p-2"), "the folder of plan K7F2M, which would go on, is not there; put that folder back")
	w.must(os.Rename(w.at("away"), w.at("p")))

	_, err = w.book("p-2", true)
	w.must(err)
	w.must(os.RemoveAll(w.at("p-2")))
	w.refused(w.withdraw("p"), "plan K7F2M is booked on the rack", "sawbill rack undo")
	_, _, err = rack.At(w.at("rack.toml")).Undo(t.Context(), "2026-03-06")
	w.must(err)
	w.must(w.withdraw("p"))
	w.must(w.report("p", "cut 2"))
	if where, err := w.recut("p", "", "J5ABC"); err != nil || where != "p-4" {
		t.Error(where, err)
	}
}

// All of a workshop can be moved.
func TestTheLineageMoves(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	_, err := w.recut("p", "", "H4XYZ")
	w.must(err)
	w.must(os.Rename(w.root, w.root+"-moved"))
	w.root += "-moved"
	defer os.RemoveAll(w.root)
	w.refused(w.report("p", "cut 1"), "-moved/p-2")
	w.must(w.report("p-2", "cut 1"))
	w.must(w.undo("p-2"))
	w.must(w.withdraw("p-2"))
	w.must(w.report("p", "cut 1"))
}

// What was reported while a rest was planned is not in it: the rest is not written.
func TestProgressWhileTheRestIsPlanned(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	rest, err := w.open("p").Rest(t.Context())
	w.must(err)
	w.must(w.report("p", "cut 1"))
	before := w.files()
	_, err = w.writeRest(rest, "", "H4XYZ")
	w.refused(err, "progress was reported while the rest was planned; run recut again; nothing was written")
	if !same(before, w.files()) {
		t.Error("something was written")
	}
	second, err := w.open("p").Rest(t.Context())
	w.must(err)
	_, err = w.recut("p", "", "J5ABC")
	w.must(err)
	_, err = w.writeRest(second, "other", "H4XYZ")
	w.refused(err, "goes on as plan J5ABC")
}

func TestARestDoesNotReplace(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.write("mine/plan.pdf", "mine")
	w.must(w.plan("bench.toml", "busy", "J5ABC"))
	w.must(w.report("busy", "cut 1"))
	before := w.files()
	for into, want := range map[string]string{"p": "this is the folder of the plan itself", "mine": "this program did not write it", "busy": "the record has progress of plan J5ABC"} {
		_, err := w.recut("p", into, "H4XYZ")
		w.refused(err, want)
	}
	if !same(before, w.files()) {
		t.Error("something was written")
	}
}
