package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// full is a terminal, or a file for what is said, that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// Status 1 says that nothing was written. What was written and cannot be printed has a
// status of its own.
func TestWhatWasWrittenAndCannotBePrinted(t *testing.T) {
	dir := t.TempDir()
	folder := filepath.Join(dir, "p")
	for _, args := range [][]string{
		{"plan", jobs + "/van-shelves.toml", "--iterations", "20", "--quiet", "-o", folder},
		{"progress", folder, "--cut", "1"},
		{"recut", folder, "--iterations", "20", "--quiet", "-o", filepath.Join(dir, "rest")},
		{"compare", jobs + "/van-shelves.toml", "--iterations", "20", "--quiet", "-o", filepath.Join(dir, "c")},
	} {
		var errs bytes.Buffer
		if status := run(args, full{}, &errs); status != exitAfterwards || !strings.Contains(errs.String(), "all was written, but the answer cannot be printed: no space left") {
			t.Errorf("%s: status %d: %s", args[0], status, errs.String())
		}
	}
	for _, name := range []string{"p/plan.pdf", "p/progress.jsonl", "rest/plan.pdf", "c/compare.pdf"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(err)
		}
	}
	var errs bytes.Buffer
	if status := run([]string{"progress", filepath.Join(dir, "rest")}, full{}, &errs); status != exitWrongInput {
		t.Errorf("nothing was to be written: status %d: %s", status, errs.String())
	}
}
