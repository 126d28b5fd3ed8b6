package journal_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock/durable"
	"sawbill/stock/journal"
)

func add(t *testing.T, j journal.Journal, did ...string) journal.Entry {
	t.Helper()
	e, err := j.Add(t.Context(), func([]journal.Entry) (journal.Entry, error) {
		return journal.Entry{Plan: "K7F2M", Date: "2026-03-05", Did: did}, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func bytesOf(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	return string(data)
}

// Entries are read back as they were added, and each undo restores the bytes.
func TestAnUndoRestoresTheBytes(t *testing.T) {
	j := journal.At(filepath.Join(t.TempDir(), "progress.jsonl"))
	var states []string
	for n := range 5 {
		states = append(states, bytesOf(t, j.Path()))
		if e := add(t, j, fmt.Sprintf("cut %d", n), "spoiled C"); e.Number != n+1 {
			t.Errorf("entry %d is number %d", n+1, e.Number)
		}
	}
	entries, err := j.Read()
	if err != nil || len(entries) != 5 {
		t.Fatal(entries, err)
	}
	if d := cmp.Diff(journal.Entry{Number: 3, Plan: "K7F2M", Date: "2026-03-05", Did: []string{"cut 2", "spoiled C"}}, entries[2]); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for n := 4; n >= 0; n-- {
		undone, err := j.Undo(t.Context())
		if err != nil || undone.Number != n+1 {
			t.Fatal(undone, err)
		}
		if got := bytesOf(t, j.Path()); got != states[n] {
			t.Errorf("after undo %q, was %q", got, states[n])
		}
	}
	if _, err := os.Stat(j.Path()); err == nil {
		t.Error("without an entry there is a file")
	}
	if _, err := j.Undo(t.Context()); err == nil || !strings.Contains(err.Error(), "nothing to take back") {
		t.Error(err)
	}
}

// A last line that is torn anywhere is no entry, and gives way to the next.
func TestATornLineGivesWay(t *testing.T) {
	j := journal.At(filepath.Join(t.TempDir(), "progress.jsonl"))
	add(t, j, "cut 1")
	first := bytesOf(t, j.Path())
	add(t, j, "cut 2")
	both := bytesOf(t, j.Path())
	for end := len(first); end < len(both); end++ {
		if err := os.WriteFile(j.Path(), []byte(both[:end]), 0o666); err != nil {
			t.Fatal(err)
		}
		if entries, err := j.Read(); err != nil || len(entries) != 1 {
			t.Fatalf("torn at %d: %v, %v", end, entries, err)
		}
		if e := add(t, j, "cut 3"); e.Number != 2 {
			t.Fatalf("torn at %d: the next is number %d", end, e.Number)
		}
		if _, err := j.Undo(t.Context()); err != nil || bytesOf(t, j.Path()) != first {
			t.Fatalf("torn at %d: %q, %v", end, bytesOf(t, j.Path()), err)
		}
	}
}

// What was damaged or edited is told with its line, and nothing is written.
func TestADamagedLineIsTold(t *testing.T) {
	j := journal.At(filepath.Join(t.TempDir(), "progress.jsonl"))
	add(t, j, "cut 1")
	add(t, j, "cut 2")
	whole := bytesOf(t, j.Path())
	for _, text := range []string{
		strings.Replace(whole, `{"n":2`, `{"n":3`, 1),
		strings.Replace(whole, `"cut 2"]}`, `"cut 2"]`, 1),
		strings.Replace(whole, `["cut 2"]`, `[]`, 1),
		strings.Replace(whole, `{"n":2,`, `{"n":2,"also":1,`, 1),
		strings.Replace(whole, `{"n":2`, `{"N":2`, 1),
		strings.Replace(whole, `"cut 2"]}`, `"cut 2"]} and cut 3`, 1),
		strings.Replace(whole, `"cut 2"]}`, `"cut 2"]}{"n":3}`, 1),
		strings.Replace(whole, `["cut 2"]`, `[ "cut 2" ]`, 1),
		strings.TrimSuffix(whole, "\n") + "\r\n",
		strings.Replace(whole, "\n", "\n\n", 1),
	} {
		if err := os.WriteFile(j.Path(), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		_, err := j.Add(t.Context(), func([]journal.Entry) (journal.Entry, error) { return journal.Entry{Did: []string{"cut 3"}}, nil })
		if err == nil || !strings.Contains(err.Error(), j.Path()+":2: ") {
			t.Errorf("%q: %v", text, err)
		}
		if got := bytesOf(t, j.Path()); got != text {
			t.Errorf("%q became %q", text, got)
		}
	}
}

// What is refused is not written, and leaves no file, nor a lock.
func TestARefusedEntryLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	j := journal.At(filepath.Join(folder, "progress.jsonl"))
	no := errors.New("no such cut")
	refused := func() {
		t.Helper()
		e, err := j.Add(t.Context(), func([]journal.Entry) (journal.Entry, error) { return journal.Entry{Did: []string{"cut 9"}}, no })
		if err != no || e.Did != nil {
			t.Error(e, err)
		}
	}
	refused()
	if _, err := j.Undo(t.Context()); err == nil {
		t.Error("nothing was taken back")
	}
	if left, err := os.ReadDir(folder); err != nil || len(left) > 0 {
		t.Error(left, err)
	}
	add(t, j, "cut 1")
	was := bytesOf(t, j.Path())
	refused()
	if got := bytesOf(t, j.Path()); got != was {
		t.Errorf("%q became %q", was, got)
	}
}

// Several write at once, and some are refused: each entry is there once, in the order
// of its number, and each saw those before it.
func TestWritersAtOnceLoseNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "progress.jsonl")
	const writers, each = 4, 25
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			for n := range each {
				did := fmt.Sprintf("cut %d:%d", w, n)
				e, err := journal.At(path).Add(t.Context(), func(before []journal.Entry) (journal.Entry, error) {
					return journal.Entry{Did: []string{did, fmt.Sprint(len(before))}}, nil
				})
				if err != nil || fmt.Sprint(e.Number-1) != e.Did[1] {
					t.Error(e, err)
				}
				journal.At(path).Add(t.Context(), func([]journal.Entry) (journal.Entry, error) { return journal.Entry{}, errors.New("no such cut") })
			}
		})
	}
	all.Wait()
	entries, err := journal.At(path).Read()
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
}

// Whatever is told is one line, and is read back as Add returned it.
func TestWhatIsToldIsReadBack(t *testing.T) {
	j := journal.At(filepath.Join(t.TempDir(), "progress.jsonl"))
	var want []journal.Entry
	for _, did := range []string{"spoiled C, left 600 x 300 mm", `1/2" <rest> & more`, "two\nlines\u2028", "Esche, gedämpft", "no text: \xff", ""} {
		want = append(want, add(t, j, did))
	}
	got, err := j.Read()
	if d := cmp.Diff(want, got); err != nil || d != "" {
		t.Errorf("error %v (-want +got):\n%s", err, d)
	}
	if lines := strings.Count(bytesOf(t, j.Path()), "\n"); lines != len(want) {
		t.Errorf("%d lines for %d entries", lines, len(want))
	}
}

// An entry of nothing is no entry, and not one that could not be read back.
func TestAnEntryOfNothingIsNotWritten(t *testing.T) {
	folder := t.TempDir()
	defer func() {
		if recover() == nil {
			t.Error("it was added")
		}
		if left, err := os.ReadDir(folder); err != nil || len(left) > 0 {
			t.Error(left, err)
		}
	}()
	journal.At(filepath.Join(folder, "progress.jsonl")).Add(t.Context(), func([]journal.Entry) (journal.Entry, error) {
		return journal.Entry{Plan: "K7F2M"}, nil
	})
}

// While another program writes, an entry waits, and gives up when its time is up.
func TestAnEntryWaitsForAnother(t *testing.T) {
	path := filepath.Join(t.TempDir(), "progress.jsonl")
	j := journal.At(path)
	lock := filepath.Join(filepath.Dir(path), ".progress.jsonl.lock")
	err := durable.Locked(t.Context(), lock, func() error {
		ctx, cancel := context.WithTimeout(t.Context(), 30*time.Millisecond)
		defer cancel()
		_, err := j.Add(ctx, func([]journal.Entry) (journal.Entry, error) { return journal.Entry{Did: []string{"cut 1"}}, nil })
		if err == nil || !strings.Contains(err.Error(), "another program") {
			t.Error(err)
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
	if e := add(t, j, "cut 1"); e.Number != 1 {
		t.Error(e)
	}
}
