package store_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"testing"

	"sawbill/stock/store"
)

func TestReadRefusesWhatIsNoInput(t *testing.T) {
	folder := t.TempDir()
	in := func(name string) string { return filepath.Join(folder, name) }
	sized := func(name string, size int64) string {
		f, err := os.Create(in(name))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if err := f.Truncate(size); err != nil { // no disk is filled: it has no blocks
			t.Fatal(err)
		}
		return f.Name()
	}
	cases := []struct{ reason, path, cause, remedy string }{
		{"not there", in("none"), "there is no such file", "check its name and folder"},
		{"a folder", folder, "is a folder", "name a file in it"},
		{"a byte too large", sized("large", store.MostBytes+1), "the file has 17 MB, and at most 16 MB are read", "check that it is the right file"},
		{"a terabyte, read by its size only", sized("huge", 1<<40), "the file has 1048576 MB, and at most 16 MB are read", "check that it is the right file"},
	}
	if runtime.GOOS == "linux" {
		pipe := in("pipe")
		if out, err := exec.Command("mkfifo", pipe).CombinedOutput(); err != nil {
			t.Fatalf("mkfifo: %v %s", err, out)
		}
		if err := os.Symlink(pipe, in("link")); err != nil {
			t.Fatal(err)
		}
		for _, path := range []string{"/dev/zero", "/dev/null", pipe, in("link")} { // Read does not wait for a writer
			cases = append(cases, struct{ reason, path, cause, remedy string }{path, path, "is no regular file", "name a file that holds text"})
		}
	}
	for _, c := range cases {
		data, err := store.Read(c.path)
		if err == nil {
			t.Errorf("%s: %d bytes were read", c.reason, len(data))
			continue
		}
		if cause, remedy := store.Explain(err); cause != c.cause || remedy != c.remedy {
			t.Errorf("%s: %s; %s", c.reason, cause, remedy)
		}
	}
}

func TestReadReadsUpToTheLimit(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	for _, size := range []int{0, 1, store.MostBytes} {
		if err := os.WriteFile(path, make([]byte, size), 0o600); err != nil {
			t.Fatal(err)
		}
		if data, err := store.Read(path); err != nil || len(data) != size {
			t.Errorf("%d bytes of %d, %v", len(data), size, err)
		}
	}
}

// A file that the program made long is read beyond the limit of inputs.
func TestReadLongReadsWhatGrew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "history")
	if err := os.WriteFile(path, make([]byte, store.MostBytes+1), 0o600); err != nil {
		t.Fatal(err)
	}
	if data, err := store.ReadLong(path); err != nil || len(data) != store.MostBytes+1 {
		t.Errorf("%d bytes, %v", len(data), err)
	}
	if err := os.Truncate(path, store.MostOfLong+1); err != nil {
		t.Fatal(err)
	}
	if data, err := store.ReadLong(path); err == nil {
		t.Errorf("%d bytes were read", len(data))
	}
}

// What the system makes up as it is read says it has 0 bytes.
func TestReadReadsWhatHasNoSize(t *testing.T) {
	const made = "/proc/self/status"
	if _, err := os.Stat(made); err != nil {
		t.Skip("this system has no ", made)
	}
	if data, err := store.Read(made); err != nil || len(data) == 0 {
		t.Errorf("%d bytes, %v", len(data), err)
	}
}
