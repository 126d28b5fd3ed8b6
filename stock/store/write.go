// Package store keeps files that no crash leaves half written. An acknowledged change is
// on the disk; any other is there whole or not at all.
package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Contents is [Read], but a missing file is no error: there is false.
func Contents(path string) (text string, there bool, err error) {
	data, err := Read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", false, nil
	}
	return string(data), err == nil, err
}

// Write writes a file and makes sure that it is on the disk. The file gets the
// permissions of the one called like, if that exists. A crash may leave it half written,
// so its name is one that only its writer knows.
func Write(path, text, like string) error {
	mode := os.FileMode(0o666) // less what the user's mask takes
	info, missing := os.Stat(like)
	if missing == nil {
		mode = info.Mode().Perm()
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, mode)
	if err != nil {
		return err
	}
	if missing == nil {
		err = f.Chmod(mode)
	}
	if err == nil {
		_, err = f.WriteString(text)
	}
	if err = ended(f, err); err == nil {
		err = SyncFolder(filepath.Dir(path))
	}
	return err
}

// Append writes a line behind the good bytes of a file, in place of a torn line, and
// makes sure that it is on the disk. On failure the file ends with its good bytes again;
// a file that was new is removed.
func Append(path string, good int64, line []byte) error {
	_, err := os.Stat(path)
	begun := errors.Is(err, fs.ErrNotExist)
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE, 0o666)
	if err != nil {
		return err
	}
	if err = f.Truncate(good); err == nil {
		_, err = f.WriteAt(line, good)
	}
	if err = ended(f, err); err == nil && begun {
		err = SyncFolder(filepath.Dir(path))
	}
	switch {
	case err == nil:
	case begun:
		os.Remove(path)
	default:
		os.Truncate(path, good)
	}
	return err
}

// CutTorn cuts off a line that a killed program left torn behind the good bytes of a file.
// A file with no good bytes is removed.
func CutTorn(path string, good int64) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case good == 0:
		return Remove(path)
	case good == info.Size():
		return nil
	}
	return os.Truncate(path, good)
}

// ended syncs and closes a file, unless writing to it failed.
func ended(f *os.File, err error) error {
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}

// SyncFolder makes sure that the names in a folder are on the disk. Windows has no such
// call, and keeps names itself.
func SyncFolder(path string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	return ended(f, nil)
}

// Remove removes a file, and makes sure of it.
func Remove(path string) error {
	if err := os.Remove(path); err != nil {
		return err
	}
	return SyncFolder(filepath.Dir(path))
}
