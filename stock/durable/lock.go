package durable

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"time"

	"github.com/gofrs/flock"
)

const lookAgain = 5 * time.Millisecond // while another program holds the lock

// ErrBusy tells that another program held the lock until the time was up.
var ErrBusy = errors.New("another program holds the lock")

// Locked does what is to be done while no other program holds the lock of that file,
// which is made if need be. It waits until ctx ends, and then returns [ErrBusy].
func Locked(ctx context.Context, path string, do func() error) error {
	lock := flock.New(path, flock.SetPermissions(0o666))
	held, err := lock.TryLockContext(ctx, lookAgain)
	switch {
	case held:
	case ctx.Err() != nil:
		return ErrBusy
	default:
		return err
	}
	defer lock.Unlock()
	return do()
}

// Contents is what is in a file, and whether it is there.
func Contents(path string) (text string, there bool, err error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", false, nil
	}
	return string(data), err == nil, err
}
