package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"sawbill/nest/shop"
)

// Equal job files in equal places give equal bytes, wherever all that lies and from
// wherever it is called: in every file of the plan and of its rest, with a part list, a
// price list and a rack beside the job or elsewhere.
func TestFilesDoNotHangOnWhereTheyLie(t *testing.T) {
	for _, job := range []struct{ of, name, rest string }{
		{"stool", "stool.toml", "side"},
		{"shelf", "shelf.toml", "shelf"},
		{"bench", "bench.toml", ""},
		{"cabinet", "cabinet.toml", "side"},
	} {
		var first map[string][]byte
		for _, at := range []struct {
			root string              // below a folder of its own
			from string              // where it is called, from the root
			path func(string) string // how a path from the root is said there
		}{
			{"here", "shop", func(p string) string { return filepath.Join("..", p) }},
			{"a/rather/deep/folder", ".", func(p string) string { return p }},
			{"elsewhere", "shop/" + job.of, func(p string) string { abs, _ := filepath.Abs(filepath.Join("../..", p)); return abs }},
		} {
			root := filepath.Join(t.TempDir(), at.root)
			if err := os.CopyFS(filepath.Join(root, "shop", job.of), os.DirFS("../../testdata/plans/v1/"+job.of)); err != nil {
				t.Fatal(err)
			}
			back, err := os.Getwd()
			if err != nil {
				t.Fatal(err)
			}
			t.Chdir(filepath.Join(root, at.from))
			plan, rest := at.path("plans/one"), at.path("plans/two")
			if err := os.MkdirAll(at.path("plans"), 0o777); err != nil {
				t.Fatal(err)
			}
			said(t, "plan", at.path("shop/"+job.of+"/"+job.name), "-o", plan, "--iterations", "100", "--quiet")
			said(t, "progress", plan, "--cut", "1", "--date", "2026-05-02", "--quiet")
			if job.rest != "" {
				said(t, "progress", plan, "--lost", job.rest, "--date", "2026-05-03", "--quiet")
				said(t, "recut", plan, "-o", rest, "--iterations", "100", "--quiet")
			}
			files := filesBelow(t, at.path("plans"))
			t.Chdir(back)
			if first == nil {
				first = files
				continue
			}
			for name, data := range files {
				if filepath.Base(name) == shop.RecordName {
					continue // entries have ids of their own
				}
				if !bytes.Equal(first[name], data) {
					t.Errorf("%s: %s is another in %s", job.of, name, at.root)
				}
				if bytes.Contains(data, []byte(root)) || bytes.Contains(data, []byte("rather/deep")) {
					t.Errorf("%s: %s says where it lies", job.of, name)
				}
			}
			if len(files) != len(first) {
				t.Errorf("%s: there are %d files, and %d in %s", job.of, len(first), len(files), at.root)
			}
		}
	}
}

func filesBelow(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	err := filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, _ := filepath.Rel(folder, path)
		all[name], err = os.ReadFile(path)
		return err
	})
	if err != nil || len(all) == 0 {
		t.Fatal(len(all), err)
	}
	return all
}
