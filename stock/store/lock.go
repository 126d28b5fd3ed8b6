package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"runtime"
	"syscall"
	"time"

	"github.com/gofrs/flock"
)

const lookAgain = 5 * time.Millisecond // while another program holds the lock

// ErrBusy says that another program held the lock until the time was up.
var ErrBusy = errors.New("another program holds the lock")

// Locked calls do while no other program holds the lock whose file is at path. It waits
// until ctx ends, and then returns [ErrBusy]. The lock file is made if need be, and is
// gone when Locked returns. An error of do is returned as it is.
func Locked(ctx context.Context, path string, do func() error) error {
	lock, err := hold(ctx, path)
	if err != nil {
		return err
	}
	defer release(lock)
	return do()
}

// TryLocked is [Locked] without waiting: it returns [ErrBusy] if another program holds the
// lock just now.
func TryLocked(path string, do func() error) error {
	lock, err := take(path, (*flock.Flock).TryLock)
	switch {
	case err != nil:
		return err
	case lock == nil:
		return ErrBusy
	}
	defer release(lock)
	return do()
}

// ReadOnly reports whether an error says that a folder takes no new file. Its files can
// still be read, without a lock: no program changes them.
func ReadOnly(err error) bool {
	return errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS)
}

// hold takes the lock, or waits for it until ctx ends.
func hold(ctx context.Context, path string) (*flock.Flock, error) {
	lock, err := take(path, func(l *flock.Flock) (bool, error) { return l.TryLockContext(ctx, lookAgain) })
	if err != nil && ctx.Err() != nil {
		err = ErrBusy
	}
	return lock, err
}

// take tries to take the lock; nil if another program holds it. A program that waited may
// get the lock of a file that was removed meanwhile. Nobody else sees that file, so only
// the file at the path counts.
func take(path string, try func(*flock.Flock) (bool, error)) (*flock.Flock, error) {
	for {
		// To open a pipe would wait for its other end.
		if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
			return nil, &fs.PathError{Op: "lock", Path: path, Err: notRegular}
		}
		lock := flock.New(path, flock.SetPermissions(0o666))
		held, err := try(lock)
		switch {
		case held && isThere(lock):
			return lock, nil
		case held:
			lock.Unlock()
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

// release gives the lock up. Its file is removed while the lock is held: whoever waits
// then sees that the file has gone. Windows removes no open file, its own included, so
// there the file goes afterwards, unless another program has opened it.
func release(lock *flock.Flock) {
	whileOpen := runtime.GOOS != "windows"
	if whileOpen {
		os.Remove(lock.Path())
	}
	lock.Unlock()
	if !whileOpen {
		os.Remove(lock.Path())
	}
}
