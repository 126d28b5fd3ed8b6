package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/shop/planfile"
)

// Plans under way go on, whatever version of the program wrote their folders: progress is
// reported and taken back, the rest is planned, what is carried out is booked, and what goes
// on as another plan takes nothing more.
func TestPlansOfEveryVersionGoOn(t *testing.T) {
	folders, _ := filepath.Glob("../../testdata/plans/*/*/*/" + planfile.Name)
	if len(folders) == 0 {
		t.Fatal("there are no plans")
	}
	for _, path := range folders {
		story, folder := filepath.Dir(filepath.Dir(path)), filepath.Base(filepath.Dir(path))
		t.Run(filepath.Base(filepath.Dir(story))+"/"+folder, func(t *testing.T) {
			successor := map[string]string{"hall-plan": "hall-plan-2", "rails-plan": "rails-plan-2", "rails-plan-2": "rails-plan-3"}[folder]
			at := func() string { // the story, once more
				dir := t.TempDir()
				if err := os.CopyFS(dir, os.DirFS(story)); err != nil {
					t.Fatal(err)
				}
				return filepath.Join(dir, folder)
			}
			if successor != "" {
				ended(t, at(), successor)
				return
			}
			plan := at()
			told := said(t, "progress", plan)
			said(t, "progress", plan, "--cut", "all", "--date", "2026-05-02")
			said(t, "progress", plan, "--undo", "--date", "2026-05-02")
			if again := said(t, "progress", plan); again != told {
				t.Errorf("taken back, it is\n%s\nand was\n%s", again, told)
			}
			rest := said(t, "recut", plan, "--iterations", "100", "--quiet", "--date", "2026-05-02")
			if !strings.Contains(rest, "Written to ") {
				t.Errorf("there is no rest:\n%s", rest)
			}
			ended(t, plan, "")

			plan = at()
			said(t, "progress", plan, "--cut", "all", "--date", "2026-05-03")
			p, err := planfile.Read(filepath.Join(plan, planfile.Name))
			if err != nil {
				t.Fatal(err)
			}
			for _, b := range p.Plan.Bill {
				var out bytes.Buffer
				for range b.Count { // until no more is wanted
					run([]string{"progress", plan, "--good", b.Mark, "--quiet"}, &out, &out)
				}
			}
			if told := said(t, "progress", plan); strings.Contains(told, "Still to cut") {
				t.Fatalf("all is cut, and it says\n%s", told)
			}
			rack := filepath.Join(filepath.Dir(plan), "rack.toml")
			if booked := said(t, "rack", "book", plan, "--rack", rack, "--date", "2026-05-04"); !strings.Contains(booked, "on the rack") && !strings.Contains(booked, "nothing is kept") {
				t.Errorf("booked it says\n%s", booked)
			}
			var out bytes.Buffer
			if status := run([]string{"progress", plan, "--lost", p.Plan.Bill[0].Mark}, &out, &out); status == exitDone || !strings.Contains(out.String(), "booked") {
				t.Errorf("a plan that was booked takes progress: %s", out.String())
			}
		})
	}
}

// ended checks that a plan takes nothing more, and names the one that goes on.
func ended(t *testing.T, plan, successor string) {
	t.Helper()
	for _, args := range [][]string{{"progress", plan, "--cut", "all"}, {"progress", plan, "--undo"}, {"recut", plan, "--quiet"}, {"rack", "book", plan, "--rack", filepath.Join(filepath.Dir(plan), "rack.toml")}} {
		var out bytes.Buffer
		if status := run(args, &out, &out); status == exitDone || !strings.Contains(out.String(), successor) || !strings.Contains(out.String(), "goes on") {
			t.Errorf("sawbill %s: status %d\n%s", strings.Join(args, " "), status, out.String())
		}
	}
}
