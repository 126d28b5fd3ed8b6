package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"sawbill/stock/fault"
)

// Once names the entry of a record in another folder with which a change is made: one
// that did what Says says. Whatever program comes upon the change looks there.
type Once struct {
	Record string `json:"record"` // path from the folder, with slashes
	Says   string `json:"says"`
}

// Waits is the error of a change that was made, and whose files could not all be put in
// place. The next command that opens the folder tries again.
type Waits struct{ fault.Faults }

// Replace makes files take the place of those that the program wrote into the folder
// before. The change is on the disk when it returns without an error. Otherwise the folder
// is as it was, unless the error is [Waits]. Any other error is of type [fault.Faults].
func (h *Held) Replace(files []File) error {
	if err := h.Check(files); err != nil {
		return err
	}
	if err := h.stage(files, nil); err != nil {
		return err
	}
	return h.commit()
}

// ReplaceOnce is Replace for a change that is made by an entry of another record: agree adds
// that entry. If agree has an error, the folder is as it was.
func (h *Held) ReplaceOnce(files []File, once Once, agree func() error) error {
	if err := h.Check(files); err != nil {
		return err
	}
	if err := h.stage(files, &once); err != nil {
		return err
	}
	wrong := agree()
	if wrong != nil { // perhaps only after the entry was on the disk
		if made, err := h.agreed(); err != nil || !made {
			if err == nil {
				h.drop()
			}
			return wrong
		}
	}
	if err := h.advance(&moves{disk: h.disk}); err != nil {
		return h.waits(err)
	}
	return nil
}

// Check reports what Replace would refuse: a folder of another kind, and files that are
// the user's own.
func (h *Held) Check(files []File) error {
	if h.Listed() && h.list.Kind != h.kind {
		return h.wrong("", fmt.Sprintf("the folder holds a %s, which would be replaced", h.list.Kind), "name another folder with -o")
	}
	after := listOf(h.kind, files, nil)
	return h.theirs(h.list, after, after.Files, "name another folder with -o, or move the file away; nothing was changed")
}

// stage writes the files where they wait.
func (h *Held) stage(files []File, once *Once) error {
	after, before := listOf(h.kind, files, once), h.list
	before.Version, before.Kind, before.Once = listVersion, h.kind, nil
	if !after.sound() {
		panic("store: a file whose name leads out of its folder")
	}
	err := h.disk.mkdir(h.at(newName))
	for _, f := range slices.Concat(files, []File{{beforeName, before.bytes()}, {listName, after.bytes()}}) {
		if err == nil {
			err = h.disk.write(h.at(newName, f.Name), f.Data)
		}
		if err != nil {
			h.drop()
			return h.wrong(f.Name, fmt.Sprintf("cannot be written (%v)", Bare(err)), "nothing was changed; look at the folder and its permissions")
		}
	}
	if err = h.disk.sync(h.at(newName)); err == nil {
		err = h.disk.sync(h.path)
	}
	if err != nil {
		h.drop()
		return h.wrong("", fmt.Sprintf("cannot be synced (%v)", Bare(err)), "nothing was changed")
	}
	return nil
}

// commit makes the change that was staged. If that fails the folder is as it was, or the
// error is [Waits].
func (h *Held) commit() error {
	m := moves{disk: h.disk}
	err := h.advance(&m)
	if err == nil {
		return nil
	}
	if m.back() != nil {
		return h.waits(err)
	}
	h.drop()
	h.disk.remove(h.at(oldName))
	var theirs fault.Faults
	if errors.As(err, &theirs) {
		return theirs
	}
	return h.wrong("", fmt.Sprintf("the files cannot be replaced (%v)", err), "nothing was changed; close them where they are open, and run again")
}

// advance takes a change from where it was staged to its end.
func (h *Held) advance(m *moves) error {
	if err := m.move(h.at(newName), h.at(readyName)); err != nil {
		return err
	}
	if err := h.disk.sync(h.path); err != nil {
		return Bare(err)
	}
	return h.place(m)
}

// waits says that a change was made and is not in place.
func (h *Held) waits(err error) error {
	return Waits{fault.Faults{{File: h.path, Cause: fmt.Sprintf("the new files are written and wait in the folder, they cannot be put in place (%v)", err),
		Remedy: "close the files of the folder where they are open; the next command that opens the folder puts them in place"}}}
}

// unfinished says that the change of an earlier run cannot be put in place.
func (h *Held) unfinished(err error) error {
	var told fault.Faults
	if errors.As(err, &told) {
		return told
	}
	return h.wrong("", fmt.Sprintf("the new files of an earlier run wait in the folder, they cannot be put in place (%v)", err), "close the files of the folder where they are open, and try again")
}

// moves are renames that can be taken back.
type moves struct {
	disk disk
	done [][2]string
}

func (m *moves) move(from, to string) error {
	if err := m.disk.rename(from, to); err != nil {
		return fmt.Errorf("%s: %w", filepath.Base(from), Bare(err))
	}
	m.done = append(m.done, [2]string{from, to})
	return nil
}

// back takes all back, the last first.
func (m *moves) back() error {
	for _, done := range slices.Backward(m.done) {
		if err := m.disk.rename(done[1], done[0]); err != nil {
			return err
		}
	}
	return nil
}

// place puts what waits in .sawbill-ready in place, from wherever a program before was
// stopped, and cleans up.
func (h *Held) place(m *moves) error {
	ready := func(name string) string { return h.at(readyName, name) }
	after, err := h.readListAt(ready(listName))
	if err != nil {
		return err
	}
	if after.Version > 0 { // else all is in place
		before, err := h.readListAt(ready(beforeName))
		if err != nil {
			return err
		}
		coming := slices.DeleteFunc(slices.Clone(after.Files), func(f listed) bool { return !present(ready(f.Name)) })
		if err := h.theirs(before, after, coming, "move the file away"); err != nil {
			return err
		}
		if err := h.put(m, before, after, coming); err != nil {
			return err
		}
	}
	if err := h.disk.sync(h.path); err != nil {
		return err
	}
	h.clear(readyName)
	h.clear(oldName)
	return h.readList()
}

// put moves the old files out of the way and those that are coming to their places, the
// list last.
func (h *Held) put(m *moves, before, after list, coming []listed) error {
	if err := h.disk.mkdir(h.at(oldName)); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	away := func(name string) error {
		if !present(h.at(name)) {
			return nil
		}
		return m.move(h.at(name), h.at(oldName, name))
	}
	for _, f := range append(coming, listed{Name: listName}) {
		if f.Name == listName {
			for _, old := range before.Files {
				if after.sum(old.Name) == "" {
					if err := away(old.Name); err != nil {
						return err
					}
				}
			}
		}
		if err := away(f.Name); err != nil {
			return err
		}
		if err := m.move(h.at(readyName, f.Name), h.at(f.Name)); err != nil {
			return err
		}
	}
	return nil
}

// drop removes what was staged.
func (h *Held) drop() { h.clear(newName) }

// clear removes a folder of the program's own with its files. A file that cannot be removed
// goes the next time.
func (h *Held) clear(name string) {
	files, err := os.ReadDir(h.at(name))
	if err != nil {
		return
	}
	for _, f := range files {
		h.disk.remove(h.at(name, f.Name()))
	}
	h.disk.remove(h.at(name))
}

// settle finishes a change that was made and drops one that was not.
func (h *Held) settle() error {
	if present(h.at(readyName)) {
		if err := h.place(&moves{disk: h.disk}); err != nil {
			return h.unfinished(err)
		}
	}
	h.clear(oldName)
	if present(h.at(newName)) {
		made, err := h.agreed()
		switch {
		case err != nil:
			return err
		case made:
			if err := h.advance(&moves{disk: h.disk}); err != nil {
				return h.unfinished(err)
			}
		default:
			h.drop()
			h.dropped = true
		}
	}
	return h.readList()
}

// agreed reports whether the change that waits in .sawbill-new was made by the entry of
// another record.
func (h *Held) agreed() (bool, error) {
	staged, err := h.readListAt(h.at(newName, listName))
	if torn := (damaged{}); errors.As(err, &torn) {
		return false, nil // the program was stopped while it wrote the list
	}
	if err != nil || staged.Once == nil {
		return false, err
	}
	path := filepath.FromSlash(staged.Once.Record)
	if !filepath.IsAbs(path) {
		path = filepath.Join(h.path, path)
	}
	if !present(filepath.Dir(path)) {
		return false, fault.Faults{{File: h.at(newName), Cause: fmt.Sprintf("whether these files count is written in %s, and that folder is not there", filepath.Dir(path)),
			Remedy: "put that folder back; if it is lost for good, delete " + h.at(newName)}}
	}
	entries, err := RecordAt(path).Read()
	if err != nil {
		return false, err
	}
	return slices.ContainsFunc(entries, func(e Entry) bool { return slices.Contains(e.Did, staged.Once.Says) }), nil
}
