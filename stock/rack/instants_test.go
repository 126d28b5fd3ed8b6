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

// What a program leaves that is stopped between two steps of a change, and what
// the next one makes of it.
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
		want                 string // the file, once the next change was refused
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
			path := filepath.Join(t.TempDir(), "rack.toml")
			ready := filepath.Join(filepath.Dir(path), ".rack.toml.new")
			for name, content := range map[string]string{path: test.file, ready: test.ready, path + ".history": test.history} {
				if content == "" {
					continue
				}
				if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			r := rack.At(path)
			if _, err := r.Change(t.Context(), rack.Change{Take: []string{"nothing"}}); err == nil {
				t.Fatal("what is not there was taken")
			}
			if got := text(t, path); got != test.want {
				t.Errorf("the file is now:\n%s", got)
			}
			if _, err := os.Stat(ready); err == nil {
				t.Error("the new file is still there")
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
