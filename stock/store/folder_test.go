package store

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// contents are the files of a folder, those of the program's own too.
func contents(t *testing.T, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(folder, func(path string, e os.DirEntry, err error) error {
		if err != nil || !e.Type().IsRegular() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(folder, path)
		all[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// shown are the files of a folder but for the list, and the names of what should not be
// there after a change.
func shown(t *testing.T, folder string) map[string]string {
	t.Helper()
	all := contents(t, folder)
	delete(all, listName)
	return all
}

func filesOf(texts map[string]string) []File {
	var all []File
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		all = append(all, File{name, []byte(texts[name])})
	}
	return all
}

// replace replaces the files of a folder.
func replace(t *testing.T, f Folder, texts map[string]string) error {
	t.Helper()
	return f.Change(t.Context(), func(h *Held) error { return h.Replace(filesOf(texts)) })
}

func mustReplace(t *testing.T, f Folder, texts map[string]string) {
	t.Helper()
	if err := replace(t, f, texts); err != nil {
		t.Fatal(err)
	}
}

var (
	first  = map[string]string{"plan.pdf": "old pages", "plan.json": "old", "layout-01.svg": "1", "layout-02.svg": "2"}
	second = map[string]string{"plan.pdf": "new pages", "plan.json": "new", "layout-01.svg": "1", "elevation.svg": "front"}
)

func TestAFolderTakesNewFilesForItsOld(t *testing.T) {
	folder := FolderAt(filepath.Join(t.TempDir(), "made", "plan"), "plan")
	mustReplace(t, folder, first)
	if d := cmp.Diff(first, shown(t, folder.Path())); d != "" {
		t.Error(d)
	}
	os.WriteFile(folder.at("photo.jpg"), []byte("mine"), 0o666)
	mustReplace(t, folder, second)
	want := maps.Clone(second)
	want["photo.jpg"] = "mine"
	if d := cmp.Diff(want, shown(t, folder.Path())); d != "" {
		t.Error(d)
	}
}

// What belongs to the user is named, and nothing is changed.
func TestFilesOfTheUserStay(t *testing.T) {
	tests := []struct {
		name   string
		before func(t *testing.T, f Folder)
		want   []string
	}{
		{"files of these names", func(t *testing.T, f Folder) {
			os.MkdirAll(f.Path(), 0o777)
			os.WriteFile(f.at("plan.pdf"), []byte("mine"), 0o666)
			os.WriteFile(f.at("plan.json"), []byte("mine"), 0o666)
		}, []string{"plan.pdf: this program did not write it", "plan.json: this program did not write it"}},
		{"a file that would be replaced was edited", func(t *testing.T, f Folder) {
			mustReplace(t, f, first)
			os.WriteFile(f.at("plan.json"), []byte("edited"), 0o666)
		}, []string{"plan.json: it was changed by hand, and the change would be lost"}},
		{"a file that would be removed was edited", func(t *testing.T, f Folder) {
			mustReplace(t, f, first)
			os.WriteFile(f.at("layout-02.svg"), []byte("colored in"), 0o666)
		}, []string{"layout-02.svg: it was changed by hand, and the change would be lost"}},
		{"a folder has the name of a file", func(t *testing.T, f Folder) {
			os.MkdirAll(f.at("plan.pdf"), 0o777)
		}, []string{"plan.pdf: this program did not write it"}},
		{"a link to nowhere", func(t *testing.T, f Folder) {
			if err := os.Symlink("nowhere", f.Path()); err != nil {
				t.Skip("this system makes no links")
			}
		}, []string{"there is no such folder"}},
		{"files of another kind", func(t *testing.T, f Folder) {
			mustReplace(t, FolderAt(f.Path(), "comparison"), first)
		}, []string{"the folder holds a comparison, which would be replaced"}},
		{"a list of a newer version", func(t *testing.T, f Folder) {
			mustReplace(t, f, first)
			os.WriteFile(f.at(listName), []byte(`{"v":2,"kind":"plan","files":[]}`), 0o666)
		}, []string{"version 2, this program reads version 1; use the newer Sawbill"}},
		{"a list that was edited", func(t *testing.T, f Folder) {
			mustReplace(t, f, first)
			os.WriteFile(f.at(listName), []byte(`{"v":1,"kind":"plan","files":[{"name":"../x"}]}`), 0o666)
		}, []string{"not as it was written"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			folder := folderIn(t.TempDir())
			test.before(t, folder)
			before := contents(t, filepath.Dir(folder.Path()))
			err := replace(t, folder, second)
			for _, want := range test.want {
				if err == nil || !strings.Contains(err.Error(), want) {
					t.Errorf("want %q: %v", want, err)
				}
			}
			if d := cmp.Diff(before, contents(t, filepath.Dir(folder.Path()))); d != "" {
				t.Error("the folder was changed:", d)
			}
		})
	}
}

// A refused change leaves no folder that was made for it.
func TestARefusedChangeLeavesNoFolder(t *testing.T) {
	root := t.TempDir()
	refused := errors.New("refused")
	err := FolderAt(filepath.Join(root, "a", "b"), "plan").Change(t.Context(), func(*Held) error { return refused })
	if err != refused || present(filepath.Join(root, "a")) {
		t.Error(err, contents(t, root))
	}
}

func TestAFolderWithoutAListIsAdopted(t *testing.T) {
	folder := folderIn(t.TempDir())
	os.MkdirAll(folder.Path(), 0o777)
	for name, text := range first {
		os.WriteFile(folder.at(name), []byte(text), 0o666)
	}
	os.WriteFile(folder.at("list.txt"), []byte("mine"), 0o666)
	err := folder.Change(t.Context(), func(h *Held) error {
		if h.Listed() {
			t.Error("there is no list yet")
		}
		if err := h.Adopt(func(name string) bool { return first[name] != "" }); err != nil {
			return err
		}
		return h.Replace(filesOf(second))
	})
	want := maps.Clone(second)
	want["list.txt"] = "mine"
	if d := cmp.Diff(want, shown(t, folder.Path())); err != nil || d != "" {
		t.Error(err, d)
	}
}

// unsynced is a disk that does not wait for itself.
type unsynced struct{ onDisk }

func (unsynced) sync(string) error { return nil }

func (unsynced) write(path string, data []byte) error { return os.WriteFile(path, data, 0o666) }

// folderIn is a folder in an empty one.
func folderIn(root string) Folder {
	f := FolderAt(filepath.Join(root, "plan"), "plan")
	f.disk = unsynced{}
	return f
}

// Readers of a folder that takes no new file need no lock.
func TestAFolderThatCannotBeWrittenIsRead(t *testing.T) {
	folder := folderIn(t.TempDir())
	mustReplace(t, folder, first)
	os.Chmod(folder.Path(), 0o555)
	defer os.Chmod(folder.Path(), 0o777)
	if os.WriteFile(folder.at("x"), nil, 0o666) == nil {
		t.Skip("this user may write everywhere")
	}
	looked := false
	err := folder.Look(t.Context(), func(h *Held) error { looked = h.Kind() == "plan" && h.Unlocked(); return nil })
	if err != nil || !looked {
		t.Error(err, looked)
	}
}

// Many at once: each sees one whole state, and the last one stays.
func TestChangesAndLooksExcludeEachOther(t *testing.T) {
	folder := folderIn(t.TempDir())
	mustReplace(t, folder, first)
	wrong := make(chan error)
	const workers, times = 4, 10
	for w := range workers {
		go func() {
			for range times {
				var err error
				if w%2 == 0 {
					err = folder.Change(context.Background(), func(h *Held) error {
						next := first
						if data, _ := os.ReadFile(folder.at("plan.json")); string(data) == first["plan.json"] {
							next = second
						}
						return h.Replace(filesOf(next))
					})
				} else {
					err = folder.Look(context.Background(), func(*Held) error {
						pdf, _ := os.ReadFile(folder.at("plan.pdf"))
						json, _ := os.ReadFile(folder.at("plan.json"))
						for _, whole := range []map[string]string{first, second} {
							if string(pdf) == whole["plan.pdf"] && string(json) == whole["plan.json"] {
								return nil
							}
						}
						return fmt.Errorf("%s beside %s", pdf, json)
					})
				}
				wrong <- err
			}
		}()
	}
	for range workers * times {
		if err := <-wrong; err != nil {
			t.Error(err)
		}
	}
}
