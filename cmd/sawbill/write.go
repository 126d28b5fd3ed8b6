package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// output is one file to be written.
type output struct {
	name string
	data []byte
}

// writeAll writes files into folder, which is made if need be. All are written
// beside their places first and only then moved there, so that each is there
// whole or not at all, and a full disk leaves the old ones as they were.
// Pictures of an earlier, longer plan are removed.
func writeAll(folder string, files []output) (err error) {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return fmt.Errorf("%s: the folder cannot be made: %w; name another with -o", folder, err)
	}
	var temporary []string
	defer func() {
		for _, t := range temporary {
			os.Remove(t) // those already moved are gone, which is as well
		}
	}()
	for _, f := range files {
		t, err := writeTemporary(folder, f)
		if t != "" {
			temporary = append(temporary, t)
		}
		if err != nil {
			return fmt.Errorf("%s: cannot be written: %w; nothing was changed", filepath.Join(folder, f.name), err)
		}
	}
	for i, f := range files {
		if err := os.Rename(temporary[i], filepath.Join(folder, f.name)); err != nil {
			return fmt.Errorf("%s: cannot be replaced: %w; close it where it is open and run again", filepath.Join(folder, f.name), err)
		}
	}
	return removeOldPictures(folder, files)
}

func writeTemporary(folder string, f output) (name string, err error) {
	t, err := os.CreateTemp(folder, "."+f.name+"-*")
	if err != nil {
		return "", err
	}
	_, err = t.Write(f.data)
	if err == nil {
		err = t.Chmod(0o644)
	}
	if err == nil {
		err = t.Sync()
	}
	if closed := t.Close(); err == nil {
		err = closed
	}
	return t.Name(), err
}

func removeOldPictures(folder string, files []output) error {
	old, err := filepath.Glob(filepath.Join(folder, "layout-[0-9][0-9].svg"))
	if err != nil {
		return err
	}
	for _, path := range old {
		written := slices.ContainsFunc(files, func(f output) bool { return f.name == filepath.Base(path) })
		if !written {
			if err := os.Remove(path); err != nil {
				return fmt.Errorf("%s: belongs to an earlier plan and cannot be removed: %w", path, err)
			}
		}
	}
	return nil
}
