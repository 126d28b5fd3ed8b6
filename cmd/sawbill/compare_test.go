package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What README.md shows of a comparison is what the program prints.
func TestReadmeShowsAComparison(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	status, out, errs := call(t, "compare", filepath.Join(jobs, "potting-bench.toml"), "--iterations", "2000")
	if status != exitDone || errs != "" {
		t.Fatalf("status %d: %s", status, errs)
	}
	_, spruce, found := strings.Cut(out, "\n\nspruce 45\n")
	spruce, _, ended := strings.Cut(spruce, "\n\n")
	if !found || !ended {
		t.Fatal("no spruce 45 in", out)
	}
	shown := "    spruce 45\n    " + strings.ReplaceAll(spruce, "\n", "\n    ") + "\n"
	if !strings.Contains(string(readme), shown) {
		t.Errorf("README.md does not show the choices of spruce as they are:\n%s", shown)
	}
}

func TestComparisonsWithIterationsWriteEqualFiles(t *testing.T) {
	names := []string{"compare.pdf", "compare.csv", "cost.svg", "yield.svg", "shopping-list.txt", "shopping-list.csv"}
	var before map[string]string
	for range 2 {
		folder := t.TempDir()
		if status, _, errs := call(t, "compare", filepath.Join(jobs, "workbench.toml"), "--iterations", "500", "-o", folder); status != exitDone {
			t.Fatalf("status %d: %s", status, errs)
		}
		now := map[string]string{}
		for _, name := range names {
			data, err := os.ReadFile(filepath.Join(folder, name))
			if err != nil || len(data) == 0 {
				t.Fatal(name, err)
			}
			now[name] = string(data)
			if before != nil && before[name] != now[name] {
				t.Errorf("%s is not what it was", name)
			}
		}
		before = now
	}
}

// Two sellers, three sizes of sheet and two of board, prices by the piece, the meter and
// the square meter.
func TestCompareAsBefore(t *testing.T) {
	status, out, errs := call(t, "compare", filepath.Join(jobs, "record-shelves.toml"), "--iterations", "2000")
	if status != exitDone || errs != "" {
		t.Fatalf("status %d: %s", status, errs)
	}
	compare(t, "record-shelves/compare.txt", []byte(out))
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, oak, _ := strings.Cut(out, "\noak 27\n")
	oak, _, _ = strings.Cut(oak, "\nThe whole job")
	for line := range strings.Lines(oak) {
		if line = strings.TrimRight(line, "\n"); line != "" && !strings.Contains(string(readme), "\n    "+line+"\n") {
			t.Errorf("README.md does not show %q", line)
		}
	}
}
