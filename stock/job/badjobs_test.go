package job_test

import (
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock/fault"
	"sawbill/stock/job"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const badJobs = "../../testdata/bad-jobs"

// Each file of testdata/bad-jobs has one idea of what can go wrong, and beside
// it what is then said.
func TestReadSaysWhatIsWrongAndWhatToDo(t *testing.T) {
	fsys := os.DirFS(badJobs)
	names, err := fs.Glob(fsys, "*.toml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no bad jobs in %s (%v)", badJobs, err)
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(name, ".toml"), func(t *testing.T) {
			_, err := job.ReadFS(fsys, name)
			faults, ok := err.(fault.Faults)
			if !ok {
				t.Fatalf("ReadFS: error is %T, want fault.Faults", err)
			}
			for _, f := range faults {
				if f.Cause == "" || f.Remedy == "" {
					t.Errorf("a fault without cause or remedy: %v", f)
				}
			}
			golden := strings.TrimSuffix(name, ".toml") + ".want"
			if *update {
				if err := os.WriteFile(filepath.Join(badJobs, golden), []byte(err.Error()+"\n"), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := fs.ReadFile(fsys, golden)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), faults.Error()+"\n"); diff != "" {
				t.Errorf("what is said (-want +got):\n%s", diff)
			}
		})
	}
}
