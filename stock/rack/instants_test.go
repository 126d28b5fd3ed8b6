package rack_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/rack"
)

// A program may be stopped between any two steps of a change. Readers then see the rack
// whole, as its history promises it, and the next change goes on from there.
func TestEachInstantOfAChangeIsPutRight(t *testing.T) {
	carry := rack.Change{Take: []string{"R4"}, Put: []stock.Piece{panel}, Plan: "K7F2", Date: today}
	r, path := written(t, byHand)
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	before, historyBefore := text(t, path), text(t, path+".history")
	change(t, r, carry)
	after, historyAfter := text(t, path), text(t, path+".history")
	line := strings.TrimPrefix(historyAfter, historyBefore)
	edited := before + "# counted\n"

	tests := []struct {
		name                 string
		file, ready, history string
		want                 string // what readers see, and the file has once the next change was refused
		made                 bool   // the plan counts as carried out
	}{
		{"before the new file", before, "", historyBefore, before, false},
		{"within the new file", before, after[:len(after)/2], historyBefore, before, false},
		{"behind the new file", before, after, historyBefore, before, false},
		{"within the line", before, after, historyBefore + line[:len(line)/2], before, false},
		{"before the line's end", before, after, historyBefore + strings.TrimSuffix(line, "\n"), before, false},
		{"within the line, which the disk filled up", before, after, historyBefore + line[:20] + strings.Repeat("\x00", 100) + "\n", before, false},
		{"behind the line", before, after, historyAfter, after, true},
		{"behind the line, then edited", edited, after, historyAfter, edited, false},
		{"behind the exchange", after, "", historyAfter, after, true},
		{"an edit after all", edited, "", historyBefore, edited, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			lay := func() (path string) {
				path = filepath.Join(t.TempDir(), "rack.toml")
				for name, content := range map[string]string{path: test.file, hidden(path, "new"): test.ready, path + ".history": test.history, hidden(path, "lock"): "\n"} {
					if content == "" {
						continue
					}
					if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
						t.Fatal(err)
					}
				}
				return path
			}
			sees := func(r rack.Rack, booked bool) {
				t.Helper()
				file, err := r.Read()
				if err != nil || file.Text != test.want || !r.Exists() {
					t.Errorf("error %v, there is %v, readers see\n%s", err, r.Exists(), file.Text)
				}
				if _, is, err := r.BookedBy(carry.Plan); err != nil || is != booked {
					t.Errorf("booked %v, error %v", is, err)
				}
			}
			t.Run("read", func(t *testing.T) {
				path := lay()
				sees(rack.At(path), test.made)
				if left := strings.Join(names(t, filepath.Dir(path)), " "); left != "rack.toml rack.toml.history" || text(t, path) != test.want {
					t.Errorf("there are %s, the file is\n%s", left, text(t, path))
				}
			})
			t.Run("read while another program holds the lock", func(t *testing.T) {
				path := lay()
				before := text(t, path)
				free := rack.Hold(t, path)
				// A change that will be given up is in the history until then.
				sees(rack.At(path), test.made || test.history == historyAfter)
				if now := text(t, path); now != before {
					t.Errorf("the file became\n%s", now)
				}
				free()
			})
			path := lay()
			r := rack.At(path)
			if _, err := r.Change(t.Context(), rack.Change{Take: []string{"nothing"}}); err == nil {
				t.Fatal("what is not there was taken")
			}
			if got := text(t, path); got != test.want {
				t.Errorf("the file is now:\n%s", got)
			}
			if left := strings.Join(names(t, filepath.Dir(path)), " "); left != "rack.toml rack.toml.history" {
				t.Errorf("there are %s", left)
			}
			_, err := r.Change(t.Context(), carry)
			if again := err != nil && strings.Contains(err.Error(), "was carried out already"); again != test.made || !again && err != nil {
				t.Errorf("carried out again: %v", err)
			}
			states := rack.States(path)
			for _, state := range []string{before, test.file, text(t, path)} {
				if !slices.Contains(states, state) {
					t.Errorf("a state is lost:\n%s", state)
				}
			}
		})
	}
}

func hidden(path, end string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"."+end)
}

// A rack whose first change was stopped is there for readers once its history promises
// it, and else nothing of it is left.
func TestTheFirstChangeIsPutRight(t *testing.T) {
	r := rack.At(filepath.Join(t.TempDir(), "rack.toml"))
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	file, line := text(t, r.Path()), text(t, r.Path()+".history")
	for history, there := range map[string]bool{"": false, line[:len(line)/2]: false, line: true} {
		for _, held := range []bool{false, true} {
			path := filepath.Join(t.TempDir(), "rack.toml")
			for name, content := range map[string]string{hidden(path, "new"): file, path + ".history": history, hidden(path, "lock"): ""} {
				if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			free := func() {}
			if held {
				free = rack.Hold(t, path)
			}
			r := rack.At(path)
			is := r.Exists()
			read, err := r.Read()
			free()
			if is != there || (err == nil) != there || there && read.Text != file {
				t.Errorf("history %q, held %v: there is %v, error %v", history, held, is, err)
			}
			if want := map[bool]string{true: "rack.toml rack.toml.history"}[there]; !held && strings.Join(names(t, filepath.Dir(path)), " ") != want {
				t.Errorf("history %q: there are %v", history, names(t, filepath.Dir(path)))
			}
		}
	}
}

// Readers of a rack with a damaged history see its file, whatever lies beside it.
func TestADamagedHistoryPromisesNothing(t *testing.T) {
	r, path := written(t, byHand)
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	before := text(t, path)
	history := "damaged\n" + text(t, path+".history")
	for name, content := range map[string]string{hidden(path, "new"): before + "# other\n", path + ".history": history} {
		if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if file, err := r.Read(); err != nil || file.Text != before {
		t.Errorf("error %v, readers see %v", err, file)
	}
	if _, err := r.History(); err == nil || !strings.Contains(err.Error(), "rack.toml.history:1:") {
		t.Error(err)
	}
	if text(t, path) != before || text(t, path+".history") != history {
		t.Error("a file was changed")
	}
}
