package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"sawbill/stock/fault"
)

// Folder is a folder whose files change together: whatever stops the program, they are
// afterwards all the old ones or all the new ones.
//
// A change is made in this order, by one program at a time:
//
//	the lock of the folder is taken
//	the new files are written into .sawbill-new, and synced
//	.sawbill-new becomes .sawbill-ready              <- now the change is made
//	the old files are moved into .sawbill-old, the new ones to their places
//	both folders are removed
//
// Whoever opens the folder next finishes a change that was made, and drops one that was
// not. The list .sawbill-files names the files that the program wrote, with their sums.
// A file that is not in it, or that was edited since, belongs to the user: it is neither
// replaced nor removed, the change is refused.
type Folder struct {
	path string
	kind string
	disk disk
}

// FolderAt is the folder at path, which need not exist yet. The kind, "plan", says what
// its files are: a folder of another kind is not changed.
func FolderAt(path, kind string) Folder {
	return Folder{path: filepath.Clean(path), kind: kind, disk: onDisk{}}
}

// File is one file of a folder, whole. Its name has no slash.
type File struct {
	Name string
	Data []byte
}

// Names within a folder that the program keeps for itself.
const (
	lockName   = ".sawbill.lock"
	listName   = ".sawbill-files"
	beforeName = ".sawbill-before" // the list of the files that a change replaces
	newName    = ".sawbill-new"
	readyName  = ".sawbill-ready"
	oldName    = ".sawbill-old"
)

func (f Folder) at(names ...string) string {
	return filepath.Join(append([]string{f.path}, names...)...)
}

// There reports whether the path leads to a folder.
func (f Folder) There() bool {
	info, err := os.Stat(f.path)
	return err == nil && info.IsDir()
}

// Unsettled reports whether a program was stopped in a change of the folder, or is at one.
// The next that opens the folder settles it.
func (f Folder) Unsettled() bool { return present(f.at(readyName)) || present(f.at(newName)) }

// Held is a folder whose lock is held. Changes that a dead program left in it are settled.
type Held struct {
	Folder
	list list // of the files that the program wrote
	// dropped says that nothing is left of what a program had begun before it was stopped.
	dropped bool
	// unlocked says that the folder takes no new file, so that there is no lock either.
	unlocked bool
}

// Unlocked reports whether the folder is only looked at, without a lock, since it takes no
// new file. A file in it may still be one that can be written: it must not be.
func (h *Held) Unlocked() bool { return h.unlocked }

// Look calls do while no program changes the folder, which must exist. A folder that
// takes no new file is looked at without a lock. It returns the error of do, or one of
// type [fault.Faults].
func (f Folder) Look(ctx context.Context, do func(*Held) error) error {
	err := f.locked(ctx, do)
	if not := (unlocked{}); !errors.As(err, &not) || !ReadOnly(not) || !f.There() {
		return f.explained(err)
	}
	if f.Unsettled() {
		return f.wrong("", "a change to the folder was stopped halfway, and the folder cannot be written to finish it", "make the folder writable and try again")
	}
	h := &Held{Folder: f, unlocked: true}
	if err := h.readList(); err != nil {
		return err
	}
	return do(h)
}

// Tidy finishes what a program that was stopped left in the folder. A folder in which nothing
// is left goes: the program was stopped when it had made it. So it is for a folder whose
// name the program itself gave. The error is of type [fault.Faults].
func (f Folder) Tidy(ctx context.Context) error {
	if err := f.Look(ctx, func(*Held) error { return nil }); err != nil {
		return err
	}
	f.disk.remove(f.path) // stays if there is anything in it
	return nil
}

// Change calls do while no other program uses the folder, which is made if need be. When
// do has an error a folder that was made goes again. It returns the error of do, or one of
// type [fault.Faults].
func (f Folder) Change(ctx context.Context, do func(*Held) error) error {
	for tries := 0; ; tries++ {
		made, err := f.make()
		if err != nil {
			return f.wrong("", fmt.Sprintf("the folder cannot be made (%v)", Bare(err)), "name another folder with -o")
		}
		if err = f.locked(ctx, do); err != nil {
			for _, path := range slices.Backward(made) {
				f.disk.remove(path) // stays if another program uses it by now
			}
		}
		if errors.Is(err, errGone) && ctx.Err() == nil && tries < mostTries {
			continue // another program made the folder, changed its mind and removed it
		}
		return f.explained(err)
	}
}

// mostTries ends the tries for a folder that can never be there, such as a link to nowhere.
const mostTries = 100

// errGone says that the folder is not there any more.
var errGone = errors.New("the folder has gone")

// locked takes the lock, settles the folder and calls do.
func (f Folder) locked(ctx context.Context, do func(*Held) error) error {
	began := false
	h := &Held{Folder: f}
	err := Locked(ctx, f.at(lockName), func() error {
		began = true
		if err := h.settle(); err != nil {
			return err
		}
		return do(h)
	})
	if h.dropped {
		f.disk.remove(f.path) // stays if there is anything in it
	}
	if !began && errors.Is(err, fs.ErrNotExist) {
		return errGone
	}
	if !began && err != nil {
		return unlocked{err}
	}
	return err
}

// unlocked is why the lock was not taken.
type unlocked struct{ error }

func (u unlocked) Unwrap() error { return u.error }

// explained turns an error of the lock into a fault; other errors stay as they are.
func (f Folder) explained(err error) error {
	var not unlocked
	switch {
	case errors.Is(err, errGone):
		return f.wrong("", "there is no such folder", "name the folder that sawbill wrote")
	case !errors.As(err, &not):
		return err
	case errors.Is(err, ErrBusy):
		return f.wrong("", "another program is changing the folder", "wait until it has ended, and try again; nothing was changed")
	}
	if no := (*NoInput)(nil); errors.As(err, &no) {
		return f.wrong(lockName, no.Cause, "move it away; nothing was changed")
	}
	return f.wrong("", fmt.Sprintf("the folder cannot be locked (%v)", Bare(not.error)), "nothing was changed; look at the folder and its permissions")
}

// make makes the folder and those around it, and returns the paths that were missing, the
// outermost first.
func (f Folder) make() (made []string, err error) {
	for path := f.path; !present(path); path = filepath.Dir(path) {
		made = append(made, path)
	}
	slices.Reverse(made)
	for i, path := range made {
		err := f.disk.mkdir(path)
		if err == nil || errors.Is(err, fs.ErrExist) {
			err = f.disk.sync(filepath.Dir(path))
		}
		if err != nil {
			for _, path := range slices.Backward(made[:i]) {
				f.disk.remove(path)
			}
			return nil, err
		}
	}
	if info, err := os.Stat(f.path); err == nil && !info.IsDir() {
		return nil, errors.New("a file has this name")
	}
	return made, nil
}

func (f Folder) wrong(name, cause, remedy string) error {
	return fault.Faults{{File: f.at(name), Cause: cause, Remedy: remedy}}
}

func present(path string) bool {
	_, err := os.Lstat(path)
	return !errors.Is(err, fs.ErrNotExist)
}

// Bare is err without the path and the call, for a message that names the file itself.
func Bare(err error) error {
	if path, ok := errors.AsType[*fs.PathError](err); ok {
		return path.Err
	}
	if link, ok := errors.AsType[*os.LinkError](err); ok {
		return link.Err
	}
	return err
}
