package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A room is a row of the table of rooms in DEVELOPERS.md.
type room struct {
	packages, imports, unknown []string // paths from the root; "a/..." is a and all below it
}

var (
	top        = filepath.Join("..", "..")
	backquoted = regexp.MustCompile("`([^`]+)`")
)

// tableOf returns the cells of the table in DEVELOPERS.md with the heading.
func tableOf(t *testing.T, heading string) (rows [][]string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(top, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, after, ok := strings.Cut(string(text), heading+"\n")
	if !ok {
		t.Fatalf("DEVELOPERS.md has no table %s", heading)
	}
	for line := range strings.Lines(after) {
		if !strings.HasPrefix(line, "|") {
			break
		}
		if cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|"); !strings.Contains(cells[0], "---") {
			rows = append(rows, cells)
		}
	}
	return rows
}

// named returns what stands in backquotes.
func named(cell string) (all []string) {
	for _, found := range backquoted.FindAllStringSubmatch(cell, -1) {
		all = append(all, found[1])
	}
	return all
}

func rooms(t *testing.T) (all []room) {
	for _, row := range tableOf(t, "| room | holds | imports, of ours | knows nothing of |") {
		all = append(all, room{named(row[0]), named(row[2]), named(row[3])})
	}
	return all
}

// among reports whether a package is one of the paths.
func among(pkg string, paths []string) bool {
	return slices.ContainsFunc(paths, func(p string) bool {
		below, tree := strings.CutSuffix(p, "/...")
		return pkg == below || tree && strings.HasPrefix(pkg, below+"/")
	})
}

// importsOf reads the packages of the project and what each imports of the others, tests left out.
func importsOf(t *testing.T) map[string][]string {
	t.Helper()
	all := map[string][]string{}
	err := filepath.WalkDir(top, func(name string, e fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		relative, err := filepath.Rel(top, filepath.Dir(name))
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(relative)
		all[pkg] = append(all[pkg], []string{}...)
		for _, i := range parsed.Imports {
			if ours, is := strings.CutPrefix(strings.Trim(i.Path.Value, `"`), "sawbill/"); is && !slices.Contains(all[pkg], ours) {
				all[pkg] = append(all[pkg], ours)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// reached returns what a package imports, directly or through others.
func reached(pkg string, imports map[string][]string) []string {
	seen := map[string]bool{}
	var follow func(string)
	follow = func(from string) {
		for _, to := range imports[from] {
			if !seen[to] {
				seen[to] = true
				follow(to)
			}
		}
	}
	follow(pkg)
	return slices.Sorted(maps.Keys(seen))
}

// Each package is in one room, and imports what the table says: no more, and no less.
func TestRoomsImportWhatTheTableSays(t *testing.T) {
	table, imports := rooms(t), importsOf(t)
	forTests := []string{"stock/internal/killed", "cmd/sawbill/internal/killed", "stock/casework/sample", "report/internal/samples"}
	home := func(pkg string) (in int) {
		in = -1
		for i, r := range table {
			if slices.Contains(r.packages, pkg) || in < 0 && among(pkg, r.packages) {
				in = i
			}
		}
		return in
	}
	used := make([][]string, len(table))
	for pkg, of := range imports {
		if slices.Contains(forTests, pkg) {
			continue
		}
		in := home(pkg)
		if in < 0 {
			t.Errorf("%s is in no room of the table", pkg)
			continue
		}
		for _, to := range of {
			switch {
			case slices.Contains(forTests, to):
				t.Errorf("%s imports %s, which is for tests", pkg, to)
			case among(to, table[in].packages):
			case !among(to, table[in].imports):
				t.Errorf("%s imports %s, and the table does not say so", pkg, to)
			case home(to) >= in:
				t.Errorf("%s imports %s, which stands below it in the table", pkg, to)
			}
			used[in] = append(used[in], to)
		}
	}
	for i, r := range table {
		for _, to := range r.imports {
			if !slices.ContainsFunc(used[i], func(pkg string) bool { return among(pkg, []string{to}) }) {
				t.Errorf("the table says that %v imports %s, and it does not", r.packages, to)
			}
		}
	}
}

// No package reaches what its room knows nothing of, through whatever other package.
func TestRoomsKnowNothingOfWhatTheTableSays(t *testing.T) {
	imports := importsOf(t)
	for _, r := range rooms(t) {
		for pkg := range imports {
			if !among(pkg, r.packages) {
				continue
			}
			for _, to := range reached(pkg, imports) {
				for _, unknown := range r.unknown {
					if among(to, []string{unknown + "/..."}) && !among(to, r.packages) {
						t.Errorf("%s knows %s through its imports", pkg, to)
					}
				}
				if strings.HasPrefix(to, "cmd/") {
					t.Errorf("%s imports %s, a command", pkg, to)
				}
			}
		}
	}
}
