package store_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock/store"
)

// newRecord is the record of a folder of its own.
func newRecord(t *testing.T) store.Record {
	return store.RecordAt(filepath.Join(t.TempDir(), "progress.jsonl"))
}

func add(t *testing.T, r store.Record, did ...string) store.Entry {
	t.Helper()
	return addEntry(t, r, store.Entry{Plan: "K7F2M", Date: "2026-03-05", Did: did})
}

func addEntry(t *testing.T, r store.Record, e store.Entry) store.Entry {
	t.Helper()
	added, err := r.Add(e)
	if err != nil {
		t.Fatal(err)
	}
	return added
}

// bytesOf is what is in a file; nothing if it is not there.
func bytesOf(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	return string(data)
}

// Entries are read back as Add returned them, whatever they say, one a line.
func TestEntriesAreReadBackAsTheyWereAdded(t *testing.T) {
	r := newRecord(t)
	var want []store.Entry
	ids := map[string]bool{}
	for n, did := range []string{"spoiled C, left 600 x 300 mm", `1/2" <rest> & more`, "two\nlines\u2028", "Esche, gedämpft", "not UTF-8: \xff", ""} {
		e := add(t, r, did, "cut 1")
		if e.Version != 2 || e.Number != n+1 || len(e.ID) != 22 || ids[e.ID] {
			t.Errorf("%+v", e)
		}
		ids[e.ID] = true
		want = append(want, e)
	}
	want = append(want, addEntry(t, r, store.Entry{Plan: "K7F2M", By: "bench saw", Undoes: want[1].ID}))
	got, err := r.Read()
	if d := cmp.Diff(want, got); err != nil || d != "" {
		t.Errorf("error %v (-want +got):\n%s", err, d)
	}
	if lines := strings.Count(bytesOf(t, r.Path()), "\n"); lines != len(want) {
		t.Errorf("%d lines for %d entries", lines, len(want))
	}
}

// An undo is an entry: nothing is removed, no number is used twice, and what was taken
// back cannot be taken back again.
func TestAnUndoIsAnEntry(t *testing.T) {
	r := newRecord(t)
	first, second := add(t, r, "cut 1"), add(t, r, "spoiled C")
	before := bytesOf(t, r.Path())
	back := store.Entry{Plan: "K7F2M", Undoes: second.ID}
	undo := addEntry(t, r, back)
	third := add(t, r, "spoiled C")
	if undo.Number != 3 || third.Number != 4 || third.ID == second.ID {
		t.Errorf("%+v, %+v", undo, third)
	}
	whole := bytesOf(t, r.Path())
	if !strings.HasPrefix(whole, before) {
		t.Errorf("%q became %q", before, whole)
	}
	entries, err := r.Read()
	if d := cmp.Diff([]store.Entry{first, third}, store.Standing(entries)); err != nil || d != "" {
		t.Errorf("error %v (-want +got):\n%s", err, d)
	}
	for name, id := range map[string]string{"twice": second.ID, "an undo": undo.ID, "unknown": store.NewID()} {
		back.Undoes, back.ID = id, ""
		if e, err := r.Add(back); err == nil || !strings.Contains(err.Error(), "no entry that counts has the id") {
			t.Errorf("%s: %+v, %v", name, e, err)
		}
	}
	if got := bytesOf(t, r.Path()); got != whole {
		t.Errorf("%q became %q", whole, got)
	}
}

// An entry that is sent again counts once, though others were added meanwhile, and even
// though it was taken back. The same id for something else is a fault.
func TestAnEntryIsAddedOnce(t *testing.T) {
	r := newRecord(t)
	sent := store.Entry{ID: store.NewID(), Plan: "K7F2M", Date: "2026-03-05", By: "bench saw", Did: []string{"good A", "not UTF-8: \xff"}}
	first := addEntry(t, r, sent)
	add(t, r, "cut 2")
	addEntry(t, r, store.Entry{Plan: "K7F2M", Undoes: first.ID})
	whole := bytesOf(t, r.Path())
	sent.Date = "2026-03-06" // after midnight
	if again := addEntry(t, r, sent); !cmp.Equal(first, again) {
		t.Errorf("first %+v, again %+v", first, again)
	}
	for name, change := range map[string]func(*store.Entry){
		"plan":   func(e *store.Entry) { e.Plan = "AP77R" },
		"screen": func(e *store.Entry) { e.By = "desk" },
		"events": func(e *store.Entry) { e.Did = []string{"good A"} },
		"undo":   func(e *store.Entry) { e.Did, e.Undoes = nil, store.NewID() },
	} {
		other := sent
		change(&other)
		if _, err := r.Add(other); err == nil || !strings.Contains(err.Error(), "entry 1 has the id "+sent.ID+" and other contents") {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, id := range []string{"1-1", "short", sent.ID + "A", sent.ID[:21] + "!", sent.ID[:21] + "B"} {
		if _, err := r.Add(store.Entry{ID: id, Plan: "K7F2M", Did: []string{"cut 3"}}); err == nil || !strings.Contains(err.Error(), "is no id of an entry") {
			t.Errorf("%s: %v", id, err)
		}
	}
	if got := bytesOf(t, r.Path()); got != whole {
		t.Errorf("%q became %q", whole, got)
	}
}

// A last line that is torn anywhere is no entry, and gives way to the next.
func TestATornLineGivesWay(t *testing.T) {
	r := newRecord(t)
	kept := add(t, r, "cut 1")
	first := bytesOf(t, r.Path())
	add(t, r, "cut 2")
	both := bytesOf(t, r.Path())
	for end := len(first); end < len(both); end++ {
		if err := os.WriteFile(r.Path(), []byte(both[:end]), 0o666); err != nil {
			t.Fatal(err)
		}
		if entries, err := r.Read(); err != nil || !cmp.Equal([]store.Entry{kept}, entries) {
			t.Fatalf("torn at %d: %v, %v", end, entries, err)
		}
		if end%2 == 0 {
			if r.Settle(); bytesOf(t, r.Path()) != first {
				t.Fatalf("torn at %d: %q", end, bytesOf(t, r.Path()))
			}
		}
		e := add(t, r, "cut 3")
		if entries, err := r.Read(); err != nil || !cmp.Equal([]store.Entry{kept, e}, entries) || !strings.HasPrefix(bytesOf(t, r.Path()), first) {
			t.Fatalf("torn at %d: %v, %v", end, entries, err)
		}
	}
}

// A record of which only a torn first line was written is as if it had never begun.
func TestATornFirstLineIsNoRecord(t *testing.T) {
	r := newRecord(t)
	r.Settle()
	add(t, r, "cut 1")
	whole := bytesOf(t, r.Path())
	if r.Settle(); bytesOf(t, r.Path()) != whole {
		t.Errorf("%q", bytesOf(t, r.Path()))
	}
	for _, text := range []string{"", whole[:20]} {
		if err := os.WriteFile(r.Path(), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		if r.Settle(); len(names(t, filepath.Dir(r.Path()))) > 0 {
			t.Errorf("%q is left", text)
		}
	}
}

// A line that was damaged or edited is reported with its number, and nothing is written.
func TestADamagedLineIsReported(t *testing.T) {
	r := newRecord(t)
	first, second := add(t, r, "cut 1"), add(t, r, "cut 2")
	whole := bytesOf(t, r.Path())
	for _, change := range [][2]string{
		{`{"v":2,"n":2`, `{"v":2,"n":3`},
		{`{"v":2,"n":2`, `{"v":1,"n":2`},
		{`{"v":2,"n":2`, `{"v":-1,"n":2`},
		{`{"v":2,"n":2`, `{"n":2`},
		{`{"v":2,"n":2`, `{"v":2,"N":2`},
		{`{"v":2,"n":2,`, `{"v":2,"n":2,"also":1,`},
		{`"cut 2"]}`, `"cut 2"]`},
		{`,"did":["cut 2"]`, ``},
		{`"did":["cut 2"]`, `"did":["cut 2"],"undoes":"` + first.ID + `"`},
		{`"did":["cut 2"]`, `"undoes":"` + second.ID + `"`},
		{`"did":["cut 2"]`, `"undoes":"1-1"`},
		{second.ID, first.ID},
		{second.ID, "1-2"},
		{`"cut 2"]}`, `"cut 2"]} and cut 3`},
		{`"cut 2"]}`, `"cut 2"]}{"n":3}`},
		{`["cut 2"]`, `[ "cut 2" ]`},
		{"\"cut 2\"]}\n", "\"cut 2\"]}\r\n"},
		{"\n", "\n\n"},
	} {
		text := strings.Replace(whole, change[0], change[1], 1)
		if text == whole {
			t.Fatalf("%q is not in %q", change[0], whole)
		}
		if err := os.WriteFile(r.Path(), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		_, err := r.Add(store.Entry{Plan: "K7F2M", Did: []string{"cut 3"}})
		r.Settle()
		if err == nil || !strings.Contains(err.Error(), r.Path()+":2: the line is not as it was written") {
			t.Errorf("%q: %v", text, err)
		}
		if got := bytesOf(t, r.Path()); got != text {
			t.Errorf("%q became %q", text, got)
		}
	}
}

// An entry of nothing, or of two things, is a mistake of the caller.
func TestAnEntryOfNothingIsNotWritten(t *testing.T) {
	r := newRecord(t)
	for _, e := range []store.Entry{{Plan: "K7F2M"}, {Plan: "K7F2M", Did: []string{"cut 1"}, Undoes: store.NewID()}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Error("it was added")
				}
			}()
			r.Add(e)
		}()
	}
	if left := names(t, filepath.Dir(r.Path())); len(left) > 0 {
		t.Error(left)
	}
}

// A record that cannot be written names its file, the cause and the folder.
func TestARecordThatCannotBeWritten(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "gone")
	r := store.RecordAt(filepath.Join(folder, "progress.jsonl"))
	if _, err := r.Add(store.Entry{Plan: "K7F2M", Did: []string{"cut 1"}}); err == nil || !strings.Contains(err.Error(), r.Path()+": cannot be written") || !strings.Contains(err.Error(), "look at "+folder) {
		t.Error(err)
	}
	if entries, err := r.Read(); err != nil || entries != nil {
		t.Error(entries, err)
	}
}

// Several programs add at once, each under the lock: every entry is there once, in the
// order of its number.
func TestWritersAtOnceLoseNothing(t *testing.T) {
	r := newRecord(t)
	lock := filepath.Join(filepath.Dir(r.Path()), ".lock")
	const writers, each = 4, 25
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			for n := range each {
				err := store.Locked(t.Context(), lock, func() error {
					_, err := r.Add(store.Entry{Did: []string{fmt.Sprintf("cut %d:%d", w, n)}})
					return err
				})
				if err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	entries, err := r.Read()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, e := range entries {
		seen[e.Did[0]] = true
	}
	if len(entries) != writers*each || len(seen) != len(entries) {
		t.Errorf("%d entries of %d, %d of them different", len(entries), writers*each, len(seen))
	}
	if left := names(t, filepath.Dir(r.Path())); len(left) != 1 {
		t.Error(left)
	}
}

func BenchmarkAdd(b *testing.B) {
	folder := b.TempDir()
	r := store.RecordAt(filepath.Join(folder, "progress.jsonl"))
	for b.Loop() {
		err := store.Locked(b.Context(), filepath.Join(folder, ".lock"), func() error {
			_, err := r.Add(store.Entry{Plan: "K7F2M", Date: "2026-03-05", Did: []string{"cut 1/1:3"}})
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}
