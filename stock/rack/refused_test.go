package rack_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"sawbill/stock"
	"sawbill/stock/rack"
)

func names(t *testing.T, folder string) (all []string) {
	t.Helper()
	found, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range found {
		all = append(all, f.Name())
	}
	return all
}

// A change that is refused leaves no file that was not there: no lock, no history.
func TestARefusedChangeLeavesNoFileBehind(t *testing.T) {
	for name, c := range map[string]struct {
		file   string // empty: none
		change rack.Change
	}{
		"not on the rack":      {byHand, rack.Change{Take: []string{"R999"}}},
		"named twice":          {byHand, rack.Change{Take: []string{"R1", "r1"}}},
		"cannot be read":       {"[[piece]\n", rack.Change{Take: []string{"R1"}}},
		"to what is not there": {"", rack.Change{Take: []string{"R1"}}},
		"no such size":         {"", rack.Change{Put: []stock.Piece{{Material: "oak"}}}},
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			path, want := filepath.Join(folder, "rack.toml"), ""
			if c.file != "" {
				want = "rack.toml"
				if err := os.WriteFile(path, []byte(c.file), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			c.change.Date = today
			if _, err := rack.At(path).Change(t.Context(), c.change); err == nil {
				t.Error("it was made")
			}
			if left := strings.Join(names(t, folder), " "); left != want {
				t.Errorf("there are %q, want %q", left, want)
			}
		})
	}
}

// Two programs change a rack while two are refused, whose locks are gone again: each
// change is there, and none twice.
func TestRefusedWritersTakeNoLockFromOthers(t *testing.T) {
	path := filepath.Join(t.TempDir(), "rack.toml")
	const writers, each = 2, 25
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			p := plank
			for i := range each {
				p.Note = fmt.Sprintf("writer %d, piece %d", w, i)
				if _, err := rack.At(path).Change(t.Context(), rack.Change{Put: []stock.Piece{p}, Date: today}); err != nil {
					t.Error(err)
				}
			}
		})
		all.Go(func() {
			for range 4 * each {
				if _, err := rack.At(path).Change(t.Context(), rack.Change{Take: []string{"R999"}, Date: today}); !refused(err) {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	file, err := rack.At(path).Read()
	if err != nil {
		t.Fatal(err)
	}
	seen := make(map[string]bool)
	for i, p := range file.Pieces {
		if seen[p.Note] || p.ID != fmt.Sprintf("R%d", i+1) {
			t.Errorf("%s, %q", p.ID, p.Note)
		}
		seen[p.Note] = true
	}
	if len(seen) != writers*each {
		t.Errorf("%d pieces are there of %d", len(seen), writers*each)
	}
}
