package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
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
		return fmt.Errorf("%s: the folder cannot be made: %w; name another with -o", folder, bare(err))
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
			return fmt.Errorf("%s: cannot be written: %w; nothing was changed", filepath.Join(folder, f.name), bare(err))
		}
	}
	for i, f := range files {
		if err := os.Rename(temporary[i], filepath.Join(folder, f.name)); err != nil {
			return fmt.Errorf("%s: cannot be replaced: %w; close it where it is open and run again", filepath.Join(folder, f.name), bare(err))
		}
	}
	return removeOldPictures(folder, files)
}

func writeTemporary(folder string, f output) (name string, err error) {
	// Not os.CreateTemp: that keeps the file from all others, whatever the
	// user's mask allows.
	t, err := os.OpenFile(filepath.Join(folder, fmt.Sprintf(".%s-%d", f.name, os.Getpid())), os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o666)
	if err != nil {
		return "", err
	}
	_, err = t.Write(f.data)
	if err == nil {
		err = t.Sync()
	}
	if closed := t.Close(); err == nil {
		err = closed
	}
	return t.Name(), err
}

// oldPicture is a name that [pictureName] or [elevationName] gives.
var oldPicture = regexp.MustCompile(`^(layout-\d{2,}|elevation-(front|side|section|plan))\.svg$`)

func removeOldPictures(folder string, files []output) error {
	there, err := os.ReadDir(folder)
	if err != nil {
		return fmt.Errorf("%s: the folder cannot be looked through for pictures of an earlier plan: %w", folder, bare(err))
	}
	for _, e := range there {
		written := slices.ContainsFunc(files, func(f output) bool { return f.name == e.Name() })
		if written || !oldPicture.MatchString(e.Name()) {
			continue
		}
		path := filepath.Join(folder, e.Name())
		if err := os.Remove(path); err != nil {
			return fmt.Errorf("%s: belongs to an earlier plan and cannot be removed: %w; remove it by hand", path, bare(err))
		}
	}
	return nil
}

// bare is err without the path and the call that failed, where the message
// names the file already.
func bare(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
