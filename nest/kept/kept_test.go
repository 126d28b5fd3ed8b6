package kept_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/nest/kept"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
)

// What is kept of the example jobs is read back as it was, whatever becomes of their
// files.
func TestAPlanIsReadBackAsItWas(t *testing.T) {
	paths, _ := filepath.Glob("../../testdata/jobs/*.toml")
	for _, path := range paths {
		file, err := job.Read(path)
		if err != nil {
			t.Fatal(err)
		}
		p, err := cutplan.Make(t.Context(), file.Job, cutplan.Options{Iterations: 200})
		if err != nil {
			t.Fatal(err)
		}
		want := kept.Kept{Plan: p, Identity: "K7F2M", File: file, Rack: "../rack.toml", Begun: []string{"R1"}}
		name := filepath.Join(t.TempDir(), kept.Name)
		if err := os.WriteFile(name, want.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
		got, err := kept.Read(name)
		if err != nil {
			t.Fatal(path, err)
		}
		if !bytes.Equal(got.Bytes(), want.Bytes()) {
			t.Errorf("%s: written again it is another file", path)
		}
		exactly := cmp.Options{cmp.Comparer(func(a, b stock.Rough) bool { return a == b }), cmp.Comparer(func(a, b stock.Yield) bool { return a == b }),
			cmp.Comparer(func(a, b stock.BoardFeet) bool { return a.String() == b.String() })}
		if d := cmp.Diff(want.Plan, got.Plan, exactly); d != "" {
			t.Errorf("%s (-want +got):\n%s", path, d)
		}
	}
}

// A file that was damaged is told, and no plan is made of it.
func TestADamagedFileIsRefused(t *testing.T) {
	file, err := job.Read("../../testdata/jobs/potting-bench.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := cutplan.Make(t.Context(), file.Job, cutplan.Options{Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	whole := string(kept.Kept{Plan: p, Identity: "K7F2M", File: file, Made: []progress.Made{{Blank: p.Bill[0]}}}.Bytes())
	tests := []struct{ name, text, cause string }{
		{"torn", whole[:len(whole)/2], "not as it was written"},
		{"of another version", strings.Replace(whole, "kept plan 1", "kept plan 9", 1), "another version"},
		{"without the job", strings.Replace(whole, `"sources":[{`, `"sources":[],"were":[{`, 1), "cannot be read any more"},
		{"a blank more", strings.Replace(whole, `"Repeat":1,`, `"Repeat":2,`, 1), "does not hold"},
		{"a blank that is none", strings.Replace(whole, `"Blank":1,`, `"Blank":99,`, 1), "does not have"},
		{"what was made before", strings.Replace(whole, `"made":[`, `"made":[{"Mark":"Z","Count":1,"Gang":1,"Layers":1},`, 1), "not as it was written"},
		{"another direction", strings.Replace(whole, `"Use":0,"Cut":0,`, `"Use":0,"Cut":1,`, 1), "does not hold"},
	}
	for _, test := range tests {
		name := filepath.Join(t.TempDir(), kept.Name)
		if err := os.WriteFile(name, []byte(test.text), 0o666); err != nil {
			t.Fatal(err)
		}
		if test.text == whole {
			t.Errorf("%s: nothing was changed", test.name)
		}
		if _, err := kept.Read(name); err == nil || !strings.Contains(err.Error(), test.cause) {
			t.Errorf("%s: %v", test.name, err)
		}
	}
}
