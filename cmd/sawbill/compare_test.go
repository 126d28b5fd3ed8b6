package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
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

// What a plan and a comparison of the same job say is paid is the same, at each seller and
// in all, to the cent.
func TestPlanAndCompareAgreeOnWhatIsPaid(t *testing.T) {
	job := filepath.Join(jobs, "record-shelves.toml")
	folder := t.TempDir()
	status, planned, errs := call(t, "plan", job, "--iterations", "2000", "-o", filepath.Join(folder, "p"))
	if status != exitDone {
		t.Fatal(errs)
	}
	if status, _, errs := call(t, "compare", job, "--iterations", "2000", "-o", filepath.Join(folder, "c")); status != exitDone {
		t.Fatal(errs)
	}
	list, err := os.ReadFile(filepath.Join(folder, "c", "shopping-list.txt"))
	if err != nil {
		t.Fatal(err)
	}
	lists := func(text string) string {
		from, to := strings.Index(text, "Buy at"), strings.Index(text, "At all sellers together: 204.19, of it tax 15.30.")
		if from < 0 || to < 0 {
			t.Fatalf("no lists or not their sum in\n%s", text)
		}
		var kept []string
		for line := range strings.Lines(text[from:to]) {
			if !strings.Contains(line, " is out: ") { // found within less time
				kept = append(kept, line)
			}
		}
		return strings.Join(kept, "")
	}
	inPlan, inList := lists(planned), lists(string(list))
	for _, want := range []string{"to pay", "178.41", "25.78"} {
		if !strings.Contains(inPlan, want) {
			t.Errorf("the plan lacks %q:\n%s", want, inPlan)
		}
	}
	sorted := func(text string) []string { all := strings.Split(text, "\n"); slices.Sort(all); return all }
	if d := cmp.Diff(sorted(inPlan), sorted(inList)); d != "" {
		t.Errorf("(-plan +comparison):\n%s", d)
	}
}
