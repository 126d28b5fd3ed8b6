package planfile_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

const jobs = "../../../testdata/jobs/"

// exactly compares plans by all that is in them.
var exactly = cmp.Options{
	cmp.Comparer(func(a, b stock.Rough) bool { return a == b }),
	cmp.Comparer(func(a, b stock.Yield) bool { return a == b }),
	cmp.Comparer(func(a, b stock.BoardFeet) bool { return a == b }),
}

// printed is a plan with its cuts and offcuts as they are printed.
func printed(p *cutplan.Plan) *cutplan.Plan {
	out := *p
	out.Layouts = nil
	for _, l := range p.Layouts {
		l.Printed = append([]cutplan.Step{}, p.Steps(l)...)
		out.Layouts = append(out.Layouts, l)
	}
	out.Numbered = append([]cutplan.NumberedOffcut{}, p.Offcuts()...)
	return &out
}

func planned(t *testing.T, path string) (*job.File, *cutplan.Plan) {
	t.Helper()
	file, err := job.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	return file, p
}

// The plans of the example jobs are read back as they were, whatever becomes of their
// files.
func TestAPlanIsReadBackAsItWas(t *testing.T) {
	paths, _ := filepath.Glob(jobs + "*.toml")
	if len(paths) == 0 {
		t.Fatal("there are no jobs")
	}
	for _, path := range paths {
		file, p := planned(t, path)
		want := &planfile.Plan{Plan: p, Code: "K7F2M", Number: 3, Continues: []string{"AAAAA", "CCCCC"}, Before: "../job-plan-2", File: file,
			Job: "../job.toml", WhatIf: []string{"2 more of each small part"}, Changes: job.Changes{Spare: 0}, Marks: 12,
			Rack: "../rack.toml", OnRack: []string{"R1", "R3"}, Begun: []string{"R1"}}
		data := want.Bytes()
		got, err := planfile.Parse("plan.sawbill", data)
		if err != nil {
			t.Fatal(path, err)
		}
		if !bytes.Equal(got.Bytes(), data) {
			t.Errorf("%s: written again it is another file", path)
		}
		if d := cmp.Diff(printed(p), got.Plan, exactly); d != "" {
			t.Errorf("%s (-want +got):\n%s", path, d)
		}
		if got.Unread != nil || got.File.Title != file.Title || len(got.File.Parts) != len(file.Parts) {
			t.Errorf("%s: its job is read back otherwise: %v", path, got.Unread)
		}
		got.Plan, got.File, want.Plan, want.File = nil, nil, nil, nil
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", path, d)
		}
	}
}

// mended gives a text the sum that it should have, of both versions.
func mended(text string) string {
	sum := regexp.MustCompile(`"sum":"[0-9a-f]*"`)
	if sum.FindString(text) == "" {
		return text
	}
	none := strings.Replace(text, sum.FindString(text), `"sum":""`, 1)
	digest := sha256.Sum256([]byte(none))
	return strings.Replace(none, `"sum":""`, `"sum":"`+hex.EncodeToString(digest[:8])+`"`, 1)
}

// A file that was damaged is told, and no plan is made of it; so is one that says what makes
// no sense, though its sum is right.
func TestADamagedFileIsRefused(t *testing.T) {
	file, p := planned(t, jobs+"potting-bench.toml")
	whole := string((&planfile.Plan{Plan: p, Code: "K7F2M", Number: 1, File: file, Made: []progress.Made{{Blank: p.Bill[0]}}}).Bytes())
	if whole != mended(whole) {
		t.Fatal("the sum is another than the test makes")
	}
	tests := []struct {
		name, text string
		mend       bool
		cause      string
	}{
		{"torn", whole[:len(whole)/2], false, "not as it was written"},
		{"empty", "", false, "not as it was written"},
		{"a blank more", strings.Replace(whole, `"repeat":1,`, `"repeat":2,`, 1), false, "not as it was written"},
		{"what was made before", strings.Replace(whole, `"marks":0`, `"marks":1`, 1), false, "not as it was written"},
		{"lines that a mail program broke", strings.Replace(whole, `,"job"`, ",\n\"job\"", 1), false, "not as it was written"},
		{"without its job", strings.Replace(whole, `"sources":[{`, `"sources":[],"begun":[],"on_rack":[],"sourced":[{`, 1), true, "does not have"},
		{"a blank of another part", strings.Replace(whole, `"bill":[{"part":0`, `"bill":[{"part":1`, 1), true, "does not hold"},
		{"a blank that is none", strings.Replace(whole, `"blank":1,`, `"blank":99,`, 1), true, "does not have"},
		{"stock that is none", strings.Replace(whole, `"layouts":[{"stock":`, `"layouts":[{"stock":9`, 1), true, "does not have"},
		{"another direction", strings.Replace(whole, `"use":"split","cut":"rip"`, `"use":"split","cut":"crosscut"`, 1), true, "does not hold"},
		{"a word that is none", strings.Replace(whole, `"use":"split"`, `"use":"shred"`, 1), true, `"shred"`},
		{"a price below nothing", strings.Replace(whole, `"price":`, `"price":-`, 1), true, "price"},
		{"a length beyond sense", strings.Replace(whole, `"length":`, `"length":99999999`, 1), true, "length"},
		{"cuts out of order", strings.Replace(whole, `"number":2,`, `"number":3,`, 1), true, "not in order"},
		{"a number twice", strings.Replace(whole, `"first":2,`, `"first":1,`, 1), true, "not numbered"},
		{"a key that it does not have", strings.Replace(whole, `"marks":`, `"colour":1,"marks":`, 1), true, "colour"},
	}
	for _, test := range tests {
		if test.text == whole {
			t.Errorf("%s: nothing was changed", test.name)
		}
		if test.mend {
			test.text = mended(test.text)
		}
		name := filepath.Join(t.TempDir(), planfile.Name)
		if err := os.WriteFile(name, []byte(test.text), 0o666); err != nil {
			t.Fatal(err)
		}
		_, err := planfile.Read(name)
		if faults, are := err.(fault.Faults); !are || !strings.Contains(err.Error(), test.cause) || !strings.Contains(err.Error(), "put back a copy") || faults[0].File != name {
			t.Errorf("%s: %v", test.name, err)
		}
	}
}

// A file of a version to come is refused by its version, whatever else it holds.
func TestAFileOfANewerVersionNamesIt(t *testing.T) {
	for _, text := range []string{
		`{"format":"sawbill plan file 3","sum":"00","sheets":[]}`,
		"{\n  \"pages\": 4,\n  \"format\": \"sawbill plan file 3\"\n}\n",
	} {
		_, err := planfile.Parse("a/plan.sawbill", []byte(text))
		want := "a/plan.sawbill: the file has version 3 of the plan file, and this program reads versions up to 2; use a newer Sawbill"
		if err == nil || err.Error() != want {
			t.Errorf("%v\nwanted is %s", err, want)
		}
	}
}

// Folders, and files beyond any plan, are refused before they are read.
func TestOnlyAFileOfAPlansSizeIsRead(t *testing.T) {
	dir := t.TempDir()
	large := filepath.Join(dir, "large.sawbill")
	if err := os.WriteFile(large, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(large, 1<<40); err != nil {
		t.Fatal(err)
	}
	for path, cause := range map[string]string{dir: "is a folder", large: "at most 16 MB", filepath.Join(dir, "none"): "no such file", os.DevNull: "no regular file"} {
		if _, err := planfile.Read(path); err == nil || !strings.Contains(err.Error(), cause) {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// A plan whose file could not be read back is not written.
func TestAPlanTooLargeToBeReadIsRefused(t *testing.T) {
	p := &planfile.Plan{Plan: &cutplan.Plan{}, File: &job.File{Sources: []job.Source{{Name: "job.toml", Text: strings.Repeat("# \n", 6<<20)}}}}
	if _, err := p.Written("a/plan.sawbill"); err == nil || !strings.Contains(err.Error(), "at most 16 MB are read; plan the job as several") {
		t.Errorf("%v", err)
	}
}

// A job that can be read no more, since a later program reads otherwise, does not end its
// plan: it goes on by what it holds itself.
func TestAPlanGoesOnThoughItsJobCannotBeRead(t *testing.T) {
	file, made := planned(t, jobs+"potting-bench.toml")
	file.Sources = []job.Source{{Name: "../bench.toml", Text: "[saw]\nkerf = \"as it is\"\n"}}
	p, err := planfile.Parse(planfile.Name, (&planfile.Plan{Plan: made, Code: "K7F2M", File: file}).Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if p.Unread == nil || !strings.Contains(p.Unread.Error(), "bench.toml:2") {
		t.Errorf("why it is not read: %v", p.Unread)
	}
	if len(p.File.Parts) != len(made.Job.Parts) || p.File.Sources[0].Name != "bench.toml" || p.File.Case != nil {
		t.Error("the job is not that of the plan")
	}
	if _, _, err := p.Smaller("worktop=5 mm"); err == nil {
		t.Error("a job that is not read can be changed")
	}
	s := progress.Begin(p.Plan)
	if err := s.Apply(progress.Event{Word: "cut", Value: "1"}); err != nil {
		t.Error(err)
	}
}
