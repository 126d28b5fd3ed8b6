package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// fileOrFolder is a name in DEVELOPERS.md that must be in the tree: "stock/gang.go", "gang.go",
// "nest/internal/...". In "joint_NAME_test.go" any name may stand.
var fileOrFolder = regexp.MustCompile(`^[a-z][A-Za-z0-9_]*(/[A-Za-z0-9_]+)*(\.go|\.md|/\.\.\.)?$|^\.ci/[a-z]+$`)

// codeName is a name in the code: "frontPage", "stock.Stock.Serves".
var codeName = regexp.MustCompile(`^([a-z]+\.)?[A-Za-z]*[A-Z][A-Za-z]*[a-z](\.[A-Z][A-Za-z]+)?$`)

// declared returns the names that the project declares, its tests left out.
func declared(t *testing.T) map[string]bool {
	t.Helper()
	all := map[string]bool{}
	err := filepath.WalkDir(top, func(name string, e fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, d := range parsed.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				all[d.Name.Name] = true
			case *ast.GenDecl:
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.TypeSpec:
						all[s.Name.Name] = true
					case *ast.ValueSpec:
						for _, n := range s.Names {
							all[n.Name] = true
						}
					}
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// rootFolder reports whether a name is that of a folder at the top: "stock".
func rootFolder(name string) bool {
	info, err := os.Stat(filepath.Join(top, name))
	return err == nil && info.IsDir() && !strings.ContainsAny(name, "./")
}

// Whoever looks for a name in DEVELOPERS.md finds it. A file without a folder lies in the folder
// that was named before it in the same row, step or paragraph.
func TestDevelopersNamesWhatIsThere(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(top, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	code, folder, files, names, number := declared(t), "", 0, 0, 0
	for line := range strings.Lines(string(text)) {
		number++
		if !strings.HasPrefix(line, "   ") && strings.TrimLeft(line, "|-0123456789") != line || strings.TrimSpace(line) == "" {
			folder = ""
		}
		for _, name := range named(line) {
			switch {
			case fileOrFolder.MatchString(name) && (strings.Contains(name, "/") || strings.Contains(name, ".")):
				files++
				at := strings.TrimSuffix(name, "/...")
				if !strings.Contains(name, "/") {
					at = path.Join(folder, name)
				} else if folder = at; path.Ext(at) != "" {
					folder = path.Dir(at)
				}
				found, err := filepath.Glob(filepath.Join(top, filepath.FromSlash(strings.ReplaceAll(at, "NAME", "*"))))
				if err != nil || len(found) == 0 {
					t.Errorf("DEVELOPERS.md:%d: there is no %s", number, at)
				}
			case rootFolder(name):
				folder = name
			case codeName.MatchString(name):
				names++
				if !code[name[strings.LastIndex(name, ".")+1:]] {
					t.Errorf("DEVELOPERS.md:%d: nothing declares %s", number, name)
				}
			}
		}
	}
	for _, row := range tableOf(t, "| term | where | meaning | source (from memory, except those marked *) |") {
		for _, name := range named(row[1]) {
			files++
			if name != "nest" {
				name = "nest/internal/" + name
			}
			if _, err := os.Stat(filepath.Join(top, filepath.FromSlash(name))); err != nil {
				t.Errorf("%s: %v", strings.TrimSpace(row[0]), err)
			}
		}
	}
	if files < 300 || names < 10 {
		t.Errorf("DEVELOPERS.md names %d files and folders, and %d names of the code", files, names)
	}
}
