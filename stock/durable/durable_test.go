package durable_test

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"sawbill/stock/durable"
)

func names(t *testing.T, folder string) (all []string) {
	t.Helper()
	found, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range found {
		all = append(all, f.Name())
	}
	return all
}

func contents(t *testing.T, path string) string {
	t.Helper()
	text, there, err := durable.Contents(path)
	if err != nil || !there {
		t.Fatalf("there is %v, error %v", there, err)
	}
	return text
}

// What is refused leaves no lock behind, whether or not one was there; what is done does.
func TestRefusedNoLockIsLeftBehind(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "lock")
	no := errors.New("refused")
	refused := func() {
		t.Helper()
		if err := durable.Locked(t.Context(), path, func() error { return no }); err != no {
			t.Errorf("error %v", err)
		}
		if left := names(t, folder); len(left) > 0 {
			t.Errorf("left behind: %v", left)
		}
	}
	refused()
	func() {
		defer func() { recover() }()
		durable.Locked(t.Context(), path, func() error { panic("on the way") })
	}()
	if left := names(t, folder); len(left) > 0 {
		t.Errorf("left behind by a panic: %v", left)
	}
	if err := durable.Locked(t.Context(), path, func() error { return nil }); err != nil || len(names(t, folder)) != 1 {
		t.Errorf("error %v, there are %v", err, names(t, folder))
	}
	refused()
}

// The lock is one program's at a time, though its file is removed again and again. Who
// waits gives up at once and comes back, so that many try just when that happens.
func TestALockThatIsRemovedIsStillOne(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lock")
	const writers, each = 6, 1000
	var inside, apart atomic.Int32
	done := 0 // only the lock guards it
	var all sync.WaitGroup
	for range writers {
		all.Go(func() {
			for had := 0; had < each; {
				ctx, cancel := context.WithTimeout(t.Context(), 50*time.Microsecond)
				err := durable.Locked(ctx, path, func() error {
					if inside.Add(1) > 1 {
						apart.Add(1)
					}
					defer inside.Add(-1)
					if _, err := os.Stat(path); err != nil {
						apart.Add(1) // nobody else would find this lock
					}
					done++
					had++
					return fs.ErrInvalid
				})
				cancel()
				if err != fs.ErrInvalid && err != durable.ErrBusy {
					t.Error(err)
					return
				}
			}
		})
	}
	all.Wait()
	if n := apart.Load(); n > 0 {
		t.Errorf("%d times two had the lock at once, or one that is not there", n)
	}
	if done != writers*each {
		t.Errorf("%d times it was had of %d", done, writers*each)
	}
}

// A line takes the place of a torn one, and begins a file that is not there.
func TestAppendWritesBehindTheGoodBytes(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record")
	for _, c := range []struct {
		before string
		good   int64
		after  string
	}{
		{"", 0, "three\n"},
		{"one\n", 4, "one\nthree\n"},
		{"one\ntorn, and longer than what follows", 4, "one\nthree\n"},
		{"torn", 0, "three\n"},
	} {
		if err := os.WriteFile(path, []byte(c.before), 0o666); err != nil {
			t.Fatal(err)
		}
		if err := durable.Append(path, c.good, []byte("three\n")); err != nil || contents(t, path) != c.after {
			t.Errorf("%q became %q, error %v", c.before, contents(t, path), err)
		}
		if err := durable.Truncate(path, c.good); err != nil || contents(t, path) != c.before[:c.good] {
			t.Errorf("%q was cut to %q, error %v", c.after, contents(t, path), err)
		}
		if err := durable.Remove(path); err != nil {
			t.Error(err)
		}
		if _, there, err := durable.Contents(path); there || err != nil {
			t.Errorf("there is %v, error %v", there, err)
		}
		if err := durable.Append(path, 0, []byte("three\n")); err != nil || contents(t, path) != "three\n" {
			t.Errorf("a new file is %q, error %v", contents(t, path), err)
		}
	}
}

// A line that cannot be written leaves neither a part of it nor a new file.
func TestAnAppendThatFailsLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	const noPlace = -1 // in no file
	if err := durable.Append(filepath.Join(folder, "record"), noPlace, []byte("one\n")); err == nil {
		t.Error("no error")
	}
	if left := names(t, folder); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// A file takes the permissions of the one whose place it will take.
func TestWriteKeepsThePermissions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("has none of these")
	}
	folder := t.TempDir()
	old, path := filepath.Join(folder, "rack"), filepath.Join(folder, "new")
	if err := os.WriteFile(old, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("longer than what is written"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := durable.Write(path, "whole", old); err != nil || contents(t, path) != "whole" {
		t.Errorf("%q, error %v", contents(t, path), err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, error %v", info.Mode(), err)
	}
}
