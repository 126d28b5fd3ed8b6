package casework

import (
	"go/parser"
	"go/token"
	"os"
	"path"
	"slices"
	"strings"
	"testing"
)

// Each package imports only those before it.
func TestPackagesHaveOneDirection(t *testing.T) {
	order := []string{"internal/wording", "internal/sums", "solid", "design", "sample", "joints", "construction", "sizes", "pieces", "marks", "checks", "assembly", "."}
	beside := map[string][]string{"assembly": {"marks", "checks"}, "checks": {"marks"}} // no matter which comes first, neither needs the other
	for i, dir := range order {
		files, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
				continue
			}
			parsed, err := parser.ParseFile(token.NewFileSet(), path.Join(dir, f.Name()), nil, parser.ImportsOnly)
			if err != nil {
				t.Fatal(err)
			}
			for _, imported := range parsed.Imports {
				name, ours := strings.CutPrefix(strings.Trim(imported.Path.Value, `"`), "sawbill/stock/casework")
				if name = strings.TrimPrefix(name, "/"); !ours {
					continue
				}
				if !slices.Contains(order[:i], name) || slices.Contains(beside[dir], name) || name == "sample" {
					t.Errorf("%s/%s imports %s", dir, f.Name(), name)
				}
			}
		}
	}
}
