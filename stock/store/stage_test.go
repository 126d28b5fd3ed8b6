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

// stopping is a disk that stops at a step: there and, if it is dead, ever after.
type stopping struct {
	disk
	at   int
	dead bool
	step *int
}

var errStopped = errors.New("stopped")

func (d stopping) stops() bool {
	*d.step++
	return *d.step == d.at || d.dead && *d.step > d.at
}

func (d stopping) mkdir(path string) error {
	if d.stops() {
		return errStopped
	}
	return d.disk.mkdir(path)
}

// write leaves half of the file when it stops.
func (d stopping) write(path string, data []byte) error {
	if d.stops() {
		d.disk.write(path, data[:len(data)/2])
		return errStopped
	}
	return d.disk.write(path, data)
}

func (d stopping) rename(from, to string) error {
	if d.stops() {
		return errStopped
	}
	return d.disk.rename(from, to)
}

func (d stopping) remove(path string) error {
	if d.stops() {
		return errStopped
	}
	return d.disk.remove(path)
}

func (d stopping) sync(folder string) error {
	if d.stops() {
		return errStopped
	}
	return d.disk.sync(folder)
}

// Whatever step a change stops at, whoever opens the folder next sees all the old files
// or all the new ones, and nothing else is left there. A change that returned without an
// error is the new ones; one that failed and did not say that it waits is the old ones.
func TestAChangeIsWholeOrNotAtAll(t *testing.T) {
	for _, dead := range []bool{false, true} {
		for _, adopted := range []bool{false, true} {
			t.Run(fmt.Sprintf("dead=%v adopted=%v", dead, adopted), func(t *testing.T) {
				olds, news := 0, 0
				for at := 1; ; at++ {
					folder := folderIn(t.TempDir())
					mustReplace(t, folder, first)
					if adopted {
						os.Remove(folder.at(listName))
					}
					step := 0
					stopped := folder
					stopped.disk = stopping{folder.disk, at, dead, &step}
					err := stopped.Change(t.Context(), func(h *Held) error {
						if adopted {
							if err := h.Adopt(func(name string) bool { return first[name] != "" }); err != nil {
								return err
							}
						}
						return h.Replace(filesOf(second))
					})
					if step < at {
						break
					}
					if err := folder.Look(t.Context(), func(*Held) error { return nil }); err != nil {
						t.Fatalf("step %d: %v", at, err)
					}
					got := shown(t, folder.Path())
					waits := errors.As(err, &Waits{})
					switch old, new := cmp.Equal(got, first), cmp.Equal(got, second); {
					case old && err != nil && !waits:
						olds++
					case new && (err == nil || waits):
						news++
					case new && dead: // stopped after the change was made, which nobody could say
						news++
					default:
						t.Errorf("step %d: %v, the folder has %v", at, err, slices.Sorted(maps.Keys(got)))
					}
				}
				if olds < 5 || news < 1 {
					t.Errorf("%d times the old files, %d times the new", olds, news)
				}
			})
		}
	}
}

// A change that an entry of another record makes is made with that entry, whatever step
// stops.
func TestAChangeThatAnEntryMakes(t *testing.T) {
	for _, dead := range []bool{false, true} {
		dropped, made := 0, 0
		for at := 1; ; at++ {
			root := t.TempDir()
			os.Mkdir(filepath.Join(root, "before"), 0o777)
			record := RecordAt(filepath.Join(root, "before", "progress.jsonl"))
			folder := folderIn(root)
			step := 0
			stopped := folder
			stopped.disk = stopping{folder.disk, at, dead, &step}
			err := stopped.Change(t.Context(), func(h *Held) error {
				return h.ReplaceOnce(filesOf(second), Once{"../before/progress.jsonl", "continued K7F2M"}, func() error {
					if stopped.disk.(stopping).stops() { // the program dies before it wrote the entry
						return errStopped
					}
					_, err := record.Add(Entry{Plan: "H4XYZ", Did: []string{"continued K7F2M"}})
					return err
				})
			})
			if step < at {
				break
			}
			entries, wrong := record.Read()
			if wrong != nil {
				t.Fatal(wrong)
			}
			got := map[string]string{}
			if folder.There() {
				if err := folder.Look(t.Context(), func(*Held) error { return nil }); err != nil {
					t.Fatal(err)
				}
			}
			if folder.There() { // it went with what was dropped
				got = shown(t, folder.Path())
			}
			switch {
			case len(entries) == 0 && len(got) == 0 && err != nil:
				dropped++
			case len(entries) == 1 && cmp.Equal(got, second):
				made++
			default:
				t.Errorf("dead=%v step %d: %v, %d entries, %v", dead, at, err, len(entries), slices.Sorted(maps.Keys(got)))
			}
		}
		if dropped < 5 || made < 5 {
			t.Errorf("%d times dropped, %d times made", dropped, made)
		}
	}
}

// Where the record that decides is not there, nothing is decided.
func TestAChangeWhoseRecordHasGone(t *testing.T) {
	root := t.TempDir()
	os.Mkdir(filepath.Join(root, "before"), 0o777)
	folder := folderIn(root)
	step := 0
	folder.disk = stopping{folder.disk, 1000, true, &step}
	folder.Change(t.Context(), func(h *Held) error {
		return h.ReplaceOnce(filesOf(second), Once{"../before/progress.jsonl", "continued K7F2M"}, func() error { step = 1000; return errStopped })
	})
	os.Rename(filepath.Join(root, "before"), filepath.Join(root, "elsewhere"))
	folder.disk = unsynced{}
	err := folder.Look(context.Background(), func(*Held) error { return nil })
	if err == nil || !strings.Contains(err.Error(), "put that folder back") || !present(folder.at(newName, "plan.pdf")) {
		t.Error(err, contents(t, folder.Path()))
	}
	os.Rename(filepath.Join(root, "elsewhere"), filepath.Join(root, "before"))
	if err := folder.Look(context.Background(), func(*Held) error { return nil }); err != nil || folder.There() {
		t.Error(err, "what was dropped is still there")
	}
}

// An empty folder may be the user's own: a look leaves it. One that the program named, and
// was stopped in, goes.
func TestAnEmptyFolder(t *testing.T) {
	folder := FolderAt(t.TempDir(), "plan")
	if err := folder.Look(t.Context(), func(*Held) error { return errStopped }); err != errStopped || !folder.There() {
		t.Error(err, "the user's folder has gone")
	}
	if err := folder.Change(t.Context(), func(*Held) error { return errStopped }); err != errStopped || !folder.There() {
		t.Error(err, "the user's folder has gone")
	}
	mustWrite := func(name string) {
		if err := os.WriteFile(folder.at(name), nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	mustWrite("notes.txt")
	if err := folder.Tidy(t.Context()); err != nil || !folder.There() {
		t.Error(err, "a folder with a file has gone")
	}
	os.Remove(folder.at("notes.txt"))
	mustWrite(lockName) // of a program that was stopped
	if err := folder.Tidy(t.Context()); err != nil || folder.There() {
		t.Error(err, "the folder is still there")
	}
}

// What the user changed while a made change waited is not lost when it is finished.
func TestAFileChangedWhileAChangeWaited(t *testing.T) {
	folder := folderIn(t.TempDir())
	mustReplace(t, folder, first)
	for at := 1; !present(folder.at(readyName)); at++ {
		step := 0
		stopped := folder
		stopped.disk = stopping{folder.disk, at, true, &step}
		replace(t, stopped, second)
	}
	os.WriteFile(folder.at("plan.json"), []byte("mine"), 0o666)
	err := folder.Look(t.Context(), func(*Held) error { return nil })
	if err == nil || !strings.Contains(err.Error(), "changed by hand") || errors.As(err, &Waits{}) {
		t.Error(err) // this look has written nothing
	}
	os.Rename(folder.at("plan.json"), folder.at("mine.json"))
	want := maps.Clone(second)
	want["mine.json"] = "mine"
	if err := folder.Look(t.Context(), func(*Held) error { return nil }); err != nil {
		t.Error(err)
	}
	if d := cmp.Diff(want, shown(t, folder.Path())); d != "" {
		t.Error(d)
	}
}
