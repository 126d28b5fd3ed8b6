package shop_test

import (
	"errors"
	"os"
	"slices"
	"testing"

	"sawbill/nest/shop"
	"sawbill/stock/store"
)

func TestProgressIsReportedAndTakenBack(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	ctx := t.Context()
	e, err := f.Report(ctx, shop.Report{Events: events(t, "cut 1:2"), Sender: shop.Sender{By: "saw"}})
	if err != nil || e.Number != 1 || e.By != "saw" || e.ID == "" {
		t.Fatal(e, err)
	}
	_, err = f.Report(ctx, shop.Report{Events: events(t, "cut 1", "spoiled Z")})
	var wrong shop.NotTaken
	if !errors.As(err, &wrong) || len(wrong) != 1 || wrong[0].Event.String() != "spoiled Z" {
		t.Error(err)
	}
	if made := f.State().Layouts()[0]; made.Uncut == made.Pieces {
		t.Error("what was reported before a wrong report is lost")
	}
	undone, err := f.Undo(ctx, shop.Sender{})
	if err != nil || !slices.Equal(undone.Did, []string{"cut 1:2"}) {
		t.Error(undone, err)
	}
	if made := f.State().Layouts()[0]; made.Uncut != made.Pieces {
		t.Error("what was taken back counts")
	}
	_, err = f.Undo(ctx, shop.Sender{})
	w.refused(err, "there is nothing to take back")
	if e, err := f.Report(ctx, shop.Report{Events: events(t, "cut 1")}); err != nil || e.Number != 3 {
		t.Error("a number was used twice", e, err)
	}
}

// A report and an undo that are sent again count once, also after other entries.
func TestWhatIsSentAgainCountsOnce(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	ctx := t.Context()
	count := func(n int) {
		t.Helper()
		entries, err := store.RecordAt(w.at("p/progress.jsonl")).Read()
		if err != nil || len(entries) != n {
			t.Errorf("%d entries, want %d: %v", len(entries), n, err)
		}
	}
	lost := shop.Report{Events: events(t, "lost side"), Sender: shop.Sender{ID: store.NewID(), By: "saw", Plan: "K7F2M"}}
	w.must(w.report("p", "cut 1", "cut 2"))
	first, err := f.Report(ctx, lost)
	w.must(err)
	w.must(w.report("p", "lost shelf"))
	again, err := f.Report(ctx, lost)
	if err != nil || again.Number != first.Number || again.ID != first.ID {
		t.Error(again, err)
	}
	count(3)
	back := shop.Sender{ID: store.NewID(), By: "saw"}
	for range 3 {
		if undone, err := f.Undo(ctx, back); err != nil || undone.Did[0] != "lost shelf" {
			t.Error(undone, err)
		}
	}
	count(4)
	// A late repetition of what was taken back does not bring it back.
	f.Undo(ctx, shop.Sender{})
	if _, err := f.Report(ctx, lost); err != nil {
		t.Error(err)
	}
	count(5)
	for _, b := range f.State().Blanks() {
		if b.Lost > 0 {
			t.Error("a report that was taken back counts again")
		}
	}
}

// A report that is sent again is known also when the plan goes on elsewhere by then; a new
// one is refused with the name of the successor.
func TestALateReport(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	ctx := t.Context()
	lost := shop.Report{Events: events(t, "cut 1", "lost shelf"), Sender: shop.Sender{ID: store.NewID(), By: "saw", Plan: "K7F2M"}}
	_, err := f.Report(ctx, lost)
	w.must(err)
	_, err = w.recut("p", "", "H4XYZ")
	w.must(err)
	if e, err := f.Report(ctx, lost); err != nil || e.Number != 1 {
		t.Error(e, err)
	}
	_, err = f.Report(ctx, shop.Report{Events: events(t, "cut 2"), Sender: shop.Sender{ID: store.NewID(), By: "saw", Plan: "K7F2M"}})
	w.refused(err, "plan K7F2M goes on as plan H4XYZ in", "p-2")
	g := w.open("p-2")
	_, err = g.Report(ctx, shop.Report{Events: events(t, "cut 1"), Sender: shop.Sender{Plan: "K7F2M"}})
	w.refused(err, "the report is of plan K7F2M, the folder holds plan H4XYZ")
}

// The state is kept from one report to the next, and is the one of the record also where
// another program reported, took back or replaced the plan in between.
func TestAFolderSeesWhatOthersDo(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	state := f.State()
	ctx := t.Context()
	w.must(w.report("p", "cut 1:1"))
	w.must(f.Refresh(ctx))
	if f.State() != state {
		t.Error("the state was made anew")
	}
	if made := f.State().Layouts()[0]; made.Uncut == made.Pieces {
		t.Error("a report of another program is not seen")
	}
	w.must(w.undo("p"))
	w.must(f.Refresh(ctx))
	if made := f.State().Layouts()[0]; made.Uncut != made.Pieces {
		t.Error("an undo of another program is not seen")
	}
	w.must(w.plan("bench.toml", "p", "H4XYZ"))
	w.must(f.Refresh(ctx))
	if f.Plan().Code != "H4XYZ" {
		t.Error("another plan is not seen")
	}
	_, err := f.Report(ctx, shop.Report{Events: events(t, "cut 1"), Sender: shop.Sender{Plan: "K7F2M"}})
	w.refused(err, "the report is of plan K7F2M, the folder holds plan H4XYZ")
}

// A record that can be written, in a folder that takes no lock, is not written.
func TestNothingIsNotedWithoutALock(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.must(w.report("p", "cut 1"))
	w.must(os.Chmod(w.at("p"), 0o555))
	defer os.Chmod(w.at("p"), 0o777)
	if os.WriteFile(w.at("p/x"), nil, 0o666) == nil {
		os.Remove(w.at("p/x"))
		t.Skip("this user may write everywhere")
	}
	before := w.files()
	w.refused(w.report("p", "lost shelf"), "p: the folder takes no new file", "make the folder writable")
	w.refused(w.undo("p"), "p: the folder takes no new file")
	if !same(before, w.files()) {
		t.Error("something was written without a lock")
	}
}
