package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const (
	jobs   = "../../testdata/jobs"
	golden = "../../testdata/golden"
)

// call runs the command line and returns what it said.
func call(t *testing.T, args ...string) (status int, stdout, stderr string) {
	t.Helper()
	var out, errs bytes.Buffer
	status = run(args, &out, &errs)
	return status, out.String(), errs.String()
}

func compare(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join(golden, name)
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); d != "" {
		t.Errorf("%s (-want +got):\n%s", name, d)
	}
}

// examples are the jobs that come with the program.
func examples(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(jobs, "*.toml"))
	if err != nil || len(paths) < 4 {
		t.Fatal(paths, err)
	}
	return paths
}

func TestExamplesPlanAsBefore(t *testing.T) {
	for _, path := range examples(t) {
		name := strings.TrimSuffix(filepath.Base(path), ".toml")
		t.Run(name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), name+"-plan")
			status, out, errs := call(t, "plan", path, "--iterations", "100000", "-o", folder)
			if status != exitDone {
				t.Fatalf("status %d: %s", status, errs)
			}
			compare(t, name+"/plan.txt", []byte(strings.ReplaceAll(out, folder, name+"-plan")))
			compare(t, name+"/warnings.txt", []byte(strings.ReplaceAll(errs, filepath.ToSlash(jobs), "jobs")))
			plan, err := os.ReadFile(filepath.Join(folder, "plan.json"))
			if err != nil {
				t.Fatal(err)
			}
			compare(t, name+"/plan.json", plan)
			bill, err := os.ReadFile(filepath.Join(folder, "cutting-bill.csv"))
			if err != nil {
				t.Fatal(err)
			}
			compare(t, name+"/cutting-bill.csv", bill)
			picture, err := os.ReadFile(filepath.Join(folder, pictureName(0)))
			if err != nil {
				t.Fatal(err)
			}
			compare(t, name+"/"+pictureName(0), picture)
			elevations, err := filepath.Glob(filepath.Join(folder, elevationName("*")))
			if err != nil {
				t.Fatal(err)
			}
			for _, path := range elevations {
				picture, err := os.ReadFile(path)
				if err != nil {
					t.Fatal(err)
				}
				compare(t, name+"/"+filepath.Base(path), picture)
			}

			status, out, errs = call(t, "parts", path, "--quiet")
			if status != exitDone || errs != "" {
				t.Fatalf("status %d: %s", status, errs)
			}
			compare(t, name+"/parts.txt", []byte(out))
		})
	}
}

// What README.md shows as output is what the program prints.
func TestReadmeShowsRealOutput(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"potting-bench/plan.txt"} {
		out, err := os.ReadFile(filepath.Join(golden, name))
		if err != nil {
			t.Fatal(err)
		}
		var shown strings.Builder
		for line := range strings.Lines(string(out)) {
			if strings.TrimSpace(line) != "" {
				shown.WriteString("    ")
			}
			shown.WriteString(line)
		}
		if !strings.Contains(string(readme), shown.String()) {
			t.Errorf("README.md does not show %s as it is", name)
		}
	}
	out, err := os.ReadFile(filepath.Join(golden, "hall-table/plan.txt"))
	if err != nil {
		t.Fatal(err)
	}
	_, estimate, _ := strings.Cut(string(out), "Ask for")
	for i, line := range strings.Split(estimate, "\n")[:4] {
		if i > 0 && !strings.Contains(string(readme), "\n    "+line+"\n") {
			t.Errorf("README.md does not show %q of the hall table", line)
		}
	}
	parts, err := os.ReadFile(filepath.Join(golden, "keepsake-boxes/parts.txt"))
	if err != nil {
		t.Fatal(err)
	}
	_, shown, _ := strings.Cut(string(readme), "$ sawbill parts testdata/jobs/keepsake-boxes.toml\n    ...\n")
	shown, _, ended := strings.Cut(shown, "    ...\n")
	if !ended || !strings.Contains(string(parts), strings.ReplaceAll("\n"+shown, "\n    ", "\n")) {
		t.Errorf("README.md does not show the milling of the keepsake boxes as it is: %s", shown)
	}
	if !strings.Contains(string(readme), "testdata/golden/potting-bench/layout-01.svg") {
		t.Error("README.md does not show the first layout")
	}
}

func TestEqualRunsWriteEqualBytes(t *testing.T) {
	dir := t.TempDir()
	for _, extra := range [][]string{nil, {"--units", "in", "--paper", "letter"}} {
		var files [2]map[string]string
		for i := range files {
			folder := filepath.Join(dir, "plan")
			args := append([]string{"plan", jobs + "/van-shelves.toml", "--iterations", "800", "--seed", "7", "-o", folder}, extra...)
			if status, _, errs := call(t, args...); status != exitDone {
				t.Fatal(errs)
			}
			files[i] = map[string]string{}
			entries, err := os.ReadDir(folder)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range entries {
				data, err := os.ReadFile(filepath.Join(folder, e.Name()))
				if err != nil {
					t.Fatal(err)
				}
				files[i][e.Name()] = string(data)
			}
		}
		if d := cmp.Diff(files[0], files[1]); d != "" {
			t.Error(d)
		}
	}
}

func TestStarterJobPlansWithoutWarnings(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "shelf.toml")
	if status, out, errs := call(t, "new", path); status != exitDone || !strings.Contains(out, path) {
		t.Fatal(status, out, errs)
	}
	status, out, errs := call(t, "plan", path, "--iterations", "300", "-o", filepath.Join(dir, "p"))
	if status != exitDone || errs != "" || !strings.Contains(out, "birch 12") {
		t.Error(status, out, errs)
	}
	if status, out, _ := call(t, "new"); status != exitDone || out != starter {
		t.Error("new without a file does not print the starter job")
	}
}

func TestNewKeepsAFileThatIsThere(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.toml")
	if err := os.WriteFile(path, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	status, _, errs := call(t, "new", path)
	if data, _ := os.ReadFile(path); status != exitWrongInput || string(data) != "mine" {
		t.Errorf("status %d, %s, the file now says %q", status, errs, data)
	}
}

func TestWrongInputWritesNothing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "wrong.toml")
	if err := os.WriteFile(path, []byte("title = 'x'\n[saw]\nkerf = 32\n[[part]]\nname = 'a'\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(dir, "wrong-plan")
	status, out, errs := call(t, "plan", path, "-o", folder)
	if status != exitWrongInput || out != "" {
		t.Errorf("status %d, printed %q", status, out)
	}
	for _, want := range []string{path + ":3: saw.kerf: ", path + ":4: "} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q is not told of:\n%s", want, errs)
		}
	}
	if _, err := os.Stat(folder); !os.IsNotExist(err) {
		t.Error("the folder was made all the same")
	}
}

func TestMissingStockIsToldByStatus(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "short.toml")
	job := "title = 'Short'\n[[sheet]]\nname='s'\nmaterial='m'\nthickness=9\nlength=1000\nwidth=500\nprice=10\ncount=1\n" +
		"[[part]]\nname='a'\nmaterial='m'\nlength=900\nwidth=400\ncount=2\n"
	if err := os.WriteFile(path, []byte(job), 0o644); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(dir, "p")
	status, out, _ := call(t, "plan", path, "--iterations", "50", "-o", folder)
	if status != exitIncomplete || !strings.Contains(out, "not enough m") {
		t.Errorf("status %d:\n%s", status, out)
	}
	data, err := os.ReadFile(filepath.Join(folder, "plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	var plan struct {
		Complete, Proven bool
		Unplaced         []struct {
			Part  string
			Count int
		}
	}
	if err := json.Unmarshal(data, &plan); err != nil {
		t.Fatal(err)
	}
	if plan.Complete || plan.Proven || len(plan.Unplaced) != 1 || plan.Unplaced[0].Count != 1 {
		t.Errorf("plan.json says %+v", plan)
	}
}

func TestWrongUsageSaysWhatToDo(t *testing.T) {
	job := jobs + "/van-shelves.toml"
	tests := []struct {
		args []string
		want string
	}{
		{nil, "no command given"},
		{[]string{"plna", job}, `no command "plna"`},
		{[]string{"plan"}, "takes one job file, not 0"},
		{[]string{"plan", ""}, "an operand is empty"},
		{[]string{"progress", ""}, "an operand is empty"},
		{[]string{"rack", "add", "x"}, `rack add takes flags alone, and "x" belongs to none`},
		{[]string{"rack", "take"}, "rack take needs ID..."},
		{[]string{"rack", "restore", "1", "2"}, "rack restore takes one N, not 2"},
		{[]string{"plan", job, job}, "takes one job file, not 2"},
		{[]string{"plan", job, "--units", "cm"}, "use mm or in"},
		{[]string{"plan", job, "--paper", "a3"}, "use a4 or letter"},
		{[]string{"plan", job, "--pages", "store,lables"}, "did you mean labels?"},
		{[]string{"plan", job, "--limit", "-3s"}, "negative"},
		{[]string{"plan", job, "--limit", "soon"}, "--limit"},
		{[]string{"plan", job, "--iterations=-1"}, "negative"},
		{[]string{"plan", job, "--nothing"}, "--nothing"},
		{[]string{"new", "a", "b"}, "takes one file, not 2"},
		{[]string{"help", "nothing"}, `no command "nothing"`},
	}
	for _, test := range tests {
		status, out, errs := call(t, test.args...)
		if status != exitWrongUsage || out != "" || !strings.Contains(errs, test.want) {
			t.Errorf("%q: status %d, %q, %q; want %q", test.args, status, out, errs, test.want)
		}
	}
}

func TestHelpNamesEveryCommandAndFlag(t *testing.T) {
	_, out, _ := call(t, "help")
	for _, c := range commands() {
		if !strings.Contains(out, "  "+c.name+" ") {
			t.Errorf("help does not name %s", c.name)
		}
	}
	_, out, _ = call(t, "help", "plan")
	for _, flag := range []string{"--output", "--limit", "--iterations", "--seed", "--quiet", "--units", "--paper", "--pages"} {
		if !strings.Contains(out, flag) {
			t.Errorf("help plan does not name %s", flag)
		}
	}
	if _, again, _ := call(t, "plan", "--help"); again != out {
		t.Error("plan --help and help plan differ")
	}
}

func TestOldPicturesOfALongerPlanAreRemoved(t *testing.T) {
	dir := t.TempDir()
	folder, path := filepath.Join(dir, "odd [name"), filepath.Join(dir, "shelf.toml")
	planned := func(count int) {
		t.Helper()
		writeText(t, path, fmt.Sprintf("[[sheet]]\nname = \"s\"\nmaterial = \"ply\"\nlength = 1220\nwidth = 610\nthickness = 18\n[[part]]\nname = \"shelf\"\nmaterial = \"ply\"\nlength = 700\nwidth = 600\ncount = %d\n[[part]]\nname = \"cleat\"\nmaterial = \"ply\"\nlength = 500\nwidth = 50\ncount = 2\n", count))
		if status, _, errs := call(t, "plan", path, "--iterations", "20", "-o", folder); status != exitDone {
			t.Fatal(errs)
		}
	}
	planned(3)
	mine := []string{"layout-99.svg", "elevation-front.svg", "my-notes.txt"}
	for _, name := range mine {
		writeText(t, filepath.Join(folder, name), "mine")
	}
	if _, err := os.Stat(filepath.Join(folder, pictureName(1))); err != nil {
		t.Fatal("the longer plan has one picture only")
	}
	planned(1)
	if _, err := os.Stat(filepath.Join(folder, pictureName(1))); !os.IsNotExist(err) {
		t.Errorf("%s of an earlier plan is still there", pictureName(1))
	}
	for _, name := range mine {
		if fileText(t, filepath.Join(folder, name)) != "mine" {
			t.Errorf("%s of the user's has changed", name)
		}
	}
	left, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range left {
		if strings.HasPrefix(e.Name(), ".") && e.Name() != ".sawbill-files" {
			t.Errorf("%s is left", e.Name())
		}
	}
}

func TestFolderThatCannotBeMadeChangesNothing(t *testing.T) {
	file := filepath.Join(t.TempDir(), "in-the-way")
	if err := os.WriteFile(file, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	status, _, errs := call(t, "plan", jobs+"/van-shelves.toml", "--iterations", "20", "-o", file)
	if data, _ := os.ReadFile(file); status != exitWrongInput || string(data) != "mine" || !strings.Contains(errs, "-o") {
		t.Errorf("status %d: %s", status, errs)
	}
}

// longJob takes far longer to prove than any test waits: many sizes of parts, and
// offers whose prices no plan adds up to neatly.
func longJob() string {
	var b strings.Builder
	for i, sheet := range []string{"length=2440\nwidth=1220\nprice=74.53", "length=2500\nwidth=1250\nprice=79.37", "length=1525\nwidth=1525\nprice=58.11"} {
		fmt.Fprintf(&b, "[[sheet]]\nname='s%d'\nmaterial='m'\nthickness=18\n%s\n", i, sheet)
	}
	for i := range 70 {
		fmt.Fprintf(&b, "[[part]]\nname='p%d'\nmaterial='m'\nlength=%d\nwidth=%d\n", i, 150+i*373%900, 90+i*211%500)
	}
	return b.String()
}
