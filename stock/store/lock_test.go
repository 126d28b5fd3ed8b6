package store_test

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"

	"sawbill/stock/store"
)

// No lock file is left behind, whether do returned, failed or panicked, and whether or
// not a killed program had left one.
func TestNoLockIsLeftBehind(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "lock")
	no := errors.New("refused")
	for name, do := range map[string]func() error{
		"done":     func() error { return nil },
		"refused":  func() error { return no },
		"panicked": func() error { panic("on the way") },
	} {
		for _, before := range []bool{false, true} {
			if before {
				if err := os.WriteFile(path, nil, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			called := false
			func() {
				defer func() { recover() }()
				err := store.Locked(t.Context(), path, func() error {
					called = true
					if _, err := os.Stat(path); err != nil {
						t.Error(err)
					}
					return do()
				})
				if want := do(); err != want {
					t.Errorf("%s: error %v, want %v", name, err, want)
				}
			}()
			if left := names(t, folder); !called || len(left) > 0 {
				t.Errorf("%s: called %v, left behind: %v", name, called, left)
			}
		}
	}
}

// A folder that takes no new file is known by its error, whatever the reason.
func TestAFolderThatTakesNoFileIsReadOnly(t *testing.T) {
	for err, want := range map[error]bool{
		&fs.PathError{Op: "open", Err: syscall.EACCES}: true,
		&fs.PathError{Op: "open", Err: syscall.EROFS}:  true,
		&fs.PathError{Op: "open", Err: syscall.EPERM}:  true,
		&fs.PathError{Op: "open", Err: syscall.ENOENT}: false,
		store.ErrBusy: false,
	} {
		if got := store.ReadOnly(err); got != want {
			t.Errorf("%v: %v", err, got)
		}
	}
	missing := filepath.Join(t.TempDir(), "no such folder", "lock")
	if err := store.Locked(t.Context(), missing, func() error { return nil }); err == nil || store.ReadOnly(err) {
		t.Error(err)
	}
}

// While one program holds the lock another waits until its context ends, or not at all.
func TestALockIsWaitedFor(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lock")
	second := func() error {
		t.Error("two hold the lock")
		return nil
	}
	done := false
	err := store.Locked(t.Context(), path, func() error {
		ended, end := context.WithCancel(t.Context())
		end()
		if err := store.Locked(ended, path, second); err != store.ErrBusy {
			t.Error(err)
		}
		done = true
		return store.TryLocked(path, second)
	})
	if err != store.ErrBusy || !done {
		t.Error(err)
	}
	no := errors.New("refused")
	if err := store.TryLocked(path, func() error { return no }); err != no {
		t.Error(err)
	}
	if left := names(t, filepath.Dir(path)); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// One program at a time holds the lock, though its file is removed again and again. Each
// holder makes the others give up and come back, so that many try just as it is removed.
func TestALockThatIsRemovedIsStillOne(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lock")
	const writers, each = 6, 1000
	var waits [writers]atomic.Pointer[context.CancelFunc]
	var inside, apart atomic.Int32
	done := 0 // only the lock guards it
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			for had := 0; had < each; {
				ctx, cancel := context.WithCancel(t.Context())
				waits[w].Store(&cancel)
				err := store.Locked(ctx, path, func() error {
					if inside.Add(1) > 1 {
						apart.Add(1)
					}
					defer inside.Add(-1)
					if _, err := os.Stat(path); err != nil {
						apart.Add(1) // nobody else would find this lock
					}
					done++
					had++
					for i := range waits {
						if other := waits[i].Load(); i != w && other != nil {
							(*other)()
						}
					}
					return nil
				})
				cancel()
				if err != nil && err != store.ErrBusy {
					t.Error(err)
					return
				}
			}
		})
	}
	all.Wait()
	if n := apart.Load(); n > 0 {
		t.Errorf("%d times two held the lock at once, or one that is not there", n)
	}
	if done != writers*each {
		t.Errorf("it was held %d times of %d", done, writers*each)
	}
}

// A pipe in the place of the lock is refused at once, as is a folder.
func TestALockThatIsNoFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lock")
	if err := os.Mkdir(path, 0o777); err != nil {
		t.Fatal(err)
	}
	err := store.Locked(t.Context(), path, func() error { return nil })
	if no := (*store.NoInput)(nil); !errors.As(err, &no) || store.ReadOnly(err) {
		t.Error(err)
	}
	if info, err := os.Stat(path); err != nil || !info.IsDir() {
		t.Error("the folder has gone", err)
	}
}
