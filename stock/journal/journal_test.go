package journal_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
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

// What is refused is not written, and leaves no file.
func TestARefusedEntryLeavesNothing(t *testing.T) {
	j := journal.At(filepath.Join(t.TempDir(), "progress.jsonl"))
	_, err := j.Add(t.Context(), func([]journal.Entry) (journal.Entry, error) { return journal.Entry{}, errors.New("no such cut") })
	if err == nil || err.Error() != "no such cut" {
		t.Error(err)
	}
	if _, err := os.Stat(j.Path()); err == nil {
		t.Error("there is a file")
	}
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
