package store_test

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"sawbill/stock/store"
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
	text, there, err := store.Contents(path)
	if err != nil || !there {
		t.Fatalf("there is %v, error %v", there, err)
	}
	return text
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
		if err := store.Append(path, c.good, []byte("three\n")); err != nil || contents(t, path) != c.after {
			t.Errorf("%q became %q, error %v", c.before, contents(t, path), err)
		}
		if err := store.Remove(path); err != nil {
			t.Error(err)
		}
		if _, there, err := store.Contents(path); there || err != nil {
			t.Errorf("there is %v, error %v", there, err)
		}
		if err := store.Append(path, 0, []byte("three\n")); err != nil || contents(t, path) != "three\n" {
			t.Errorf("a new file is %q, error %v", contents(t, path), err)
		}
	}
}

// A line that cannot be written leaves neither a part of it nor a new file.
func TestAnAppendThatFailsLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	const noPlace = -1 // in no file
	if err := store.Append(filepath.Join(folder, "record"), noPlace, []byte("one\n")); err == nil {
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
	if err := store.Write(path, "whole", old); err != nil || contents(t, path) != "whole" {
		t.Errorf("%q, error %v", contents(t, path), err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, error %v", info.Mode(), err)
	}
}
