package durable

import (
	"context"
	"errors"
	"os"
	"runtime"
	"time"

	"github.com/gofrs/flock"
)

const lookAgain = 5 * time.Millisecond // while another program holds the lock

// ErrBusy tells that another program held the lock until the time was up.
var ErrBusy = errors.New("another program holds the lock")

// Locked does what is to be done while no other program holds the lock of that file,
// which is made if need be. It waits until ctx ends, and then returns [ErrBusy]. If do
// has an error, Locked returns it and removes the file: what was refused leaves nothing
// behind. Else the file stays.
func Locked(ctx context.Context, path string, do func() error) error {
	lock, err := hold(ctx, path)
	if err != nil {
		return err
	}
	refused := true // if do panics, too
	defer func() { release(lock, refused) }()
	err = do()
	refused = err != nil
	return err
}

// hold takes the lock. Who waited may get that of a file which was removed meanwhile,
// of which nobody else knows any more: only the file that is found there now counts.
func hold(ctx context.Context, path string) (*flock.Flock, error) {
	for {
		lock := flock.New(path, flock.SetPermissions(0o666))
		held, err := lock.TryLockContext(ctx, lookAgain)
		switch {
		case held && isThere(lock):
			return lock, nil
		case held:
			lock.Unlock()
		case ctx.Err() != nil:
			return nil, ErrBusy
		default:
			return nil, err
		}
	}
}

// isThere reports whether the file that is locked is still the one at its path.
func isThere(lock *flock.Flock) bool {
	locked, err := lock.Stat()
	if err != nil {
		return false
	}
	found, err := os.Stat(lock.Path())
	return err == nil && os.SameFile(locked, found)
}

// release gives the lock up. Its file is removed while the lock is held, so that all who
// wait find out. Windows removes no file that is open, not even this one, and so
// cannot remove it from under another program either.
func release(lock *flock.Flock, remove bool) {
	whileOpen := runtime.GOOS != "windows"
	if remove && whileOpen {
		os.Remove(lock.Path())
	}
	lock.Unlock()
	if remove && !whileOpen {
		os.Remove(lock.Path())
	}
}
