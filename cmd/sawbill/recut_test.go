package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/progress"
	"sawbill/nest/shop"
)

// Every example job is planned, spoiled at random, planned anew, and again: all is
// written and read back, and what is shown of the rest are its own marks.
func TestTheRestOfEveryExampleIsPlanned(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/jobs/*.toml")
	if err != nil || len(paths) == 0 {
		t.Fatal(paths, err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			path, err := filepath.Abs(path)
			if err != nil {
				t.Fatal(err)
			}
			t.Chdir(t.TempDir())
			said(t, "plan", path, "-o", "a-plan", "--iterations", "200", "--quiet")
			folder := "a-plan"
			for round := range uint64(3) {
				before := opened(t, folder)
				spoilAtRandom(t, before, rand.New(rand.NewPCG(round, 4)))
				out := said(t, "recut", folder, "--iterations", "200", "--quiet")
				if strings.Contains(out, "there is no rest") {
					return
				}
				folder = fmt.Sprintf("a-plan-%d", round+2)
				after := opened(t, folder)
				marks := map[string]string{}
				for _, b := range before.Plan().Plan.Bill {
					marks[b.Mark] = b.Part.Name
				}
				for _, b := range after.Plan().Plan.Bill {
					if was, there := marks[b.Mark]; there && was != b.Part.Name {
						t.Errorf("%s is the mark of %q and was that of %q", b.Mark, b.Part.Name, was)
					}
				}
				for _, name := range []string{"plan.pdf", "plan.html", "plan.json", "cutting-bill.csv"} {
					if data, err := os.ReadFile(filepath.Join(folder, name)); err != nil || len(data) == 0 {
						t.Errorf("%s: %v", name, err)
					}
				}
			}
		})
	}
}

// said runs the program and returns what it says; it must write a plan.
func said(t *testing.T, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	if status := run(args, &out, &out); status != exitDone && status != exitIncomplete {
		t.Fatalf("%s: status %d: %s", strings.Join(args, " "), status, out.String())
	}
	return out.String()
}

func opened(t *testing.T, folder string) *shop.Folder {
	t.Helper()
	f, err := shop.Open(t.Context(), folder)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// spoilAtRandom tells of some cuts, and of blanks of them that are no good.
func spoilAtRandom(t *testing.T, f *shop.Folder, random *rand.Rand) {
	t.Helper()
	tell := func(word, value string) {
		f.Report(t.Context(), shop.Report{Events: []progress.Event{{Word: word, Value: value}}}) // or not, if it cannot be
	}
	plan := f.Plan().Plan
	for i, l := range plan.Layouts {
		switch random.IntN(3) {
		case 0:
			tell("cut", fmt.Sprint(i+1))
		case 1:
			tell("cut", fmt.Sprintf("%d/%d:%d", i+1, 1+random.IntN(l.Repeat), 1+random.IntN(9)))
		}
	}
	for range 3 {
		b := plan.Bill[random.IntN(len(plan.Bill))]
		tell("spoiled", fmt.Sprintf("%s=%s x %s mm", b.Mark, (b.Length*3/4).Decimal(), b.Width.Decimal()))
		tell("lost", plan.Bill[random.IntN(len(plan.Bill))].Mark)
	}
}

// One blank that a begun piece is for is told as one.
func TestAPieceForOneBlankSaysSo(t *testing.T) {
	t.Chdir(t.TempDir())
	job := `title = "Shelf"
units = "mm"
[[sheet]]
name = "birch 18"
material = "birch ply 18"
thickness = 18
length = 2440
width = 1220
[[part]]
name = "shelf"
material = "birch ply 18"
length = 900
width = 300
count = 1
`
	if err := os.WriteFile("shelf.toml", []byte(job), 0o666); err != nil {
		t.Fatal(err)
	}
	said(t, "plan", "shelf.toml", "--iterations", "200", "--quiet")
	if out := said(t, "progress", "shelf-plan", "--cut", "1:1"); !strings.Contains(out, "blank A\n") {
		t.Errorf("the piece is for blank A:\n%s", out)
	}
}
