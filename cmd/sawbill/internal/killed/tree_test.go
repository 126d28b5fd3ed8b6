package killed

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree is what is in a folder: a text for each path below it.
type tree map[string]string

// drawn is the id of an entry of a record, which is drawn at random.
var drawn = regexp.MustCompile(`"[A-Za-z0-9_-]{22}"`)

func treeOf(t *testing.T, folder string) tree {
	t.Helper()
	all := tree{}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || path == folder {
			return err
		}
		name := strings.TrimPrefix(path, folder+string(filepath.Separator))
		if d.IsDir() {
			all[name+"/"] = "a folder"
			return nil
		}
		data, err := os.ReadFile(path)
		if strings.HasSuffix(name, ".jsonl") {
			ids := map[string]string{}
			data = drawn.ReplaceAllFunc(data, func(id []byte) []byte {
				if ids[string(id)] == "" {
					ids[string(id)] = fmt.Sprintf(`"ID %d"`, len(ids)+1)
				}
				return []byte(ids[string(id)])
			})
		}
		all[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// differences names the paths at which two trees differ.
func differences(want, got tree) string {
	var all []string
	for name, text := range want {
		switch is, there := got[name]; {
		case !there:
			all = append(all, name+" is missing")
		case is != text && len(text)+len(is) < 4000:
			all = append(all, name+" differs (-want +got):\n"+cmp.Diff(strings.Split(text, "\n"), strings.Split(is, "\n")))
		case is != text:
			all = append(all, name+" differs")
		}
	}
	for name := range got {
		if _, there := want[name]; !there {
			all = append(all, name+" is left")
		}
	}
	return strings.Join(all, "; ")
}

// copied copies a folder to a new one.
func copied(t *testing.T, folder string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), "shop")
	if err := os.CopyFS(to, os.DirFS(folder)); err != nil {
		t.Fatal(err)
	}
	return to
}
