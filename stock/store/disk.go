package store

import "os"

// disk does the steps of a change of a folder. Tests put another in its place
// that stops at one of the steps.
type disk interface {
	mkdir(path string) error
	write(path string, data []byte) error // and makes sure that it is on the disk
	rename(from, to string) error
	remove(path string) error // a file, or a folder that is empty
	sync(folder string) error
}

type onDisk struct{}

func (onDisk) mkdir(path string) error      { return os.Mkdir(path, 0o777) }
func (onDisk) rename(from, to string) error { return os.Rename(from, to) }
func (onDisk) remove(path string) error     { return os.Remove(path) }
func (onDisk) sync(folder string) error     { return SyncFolder(folder) }

// write gives the file the permissions that the user's mask allows, so that others in the
// shop can read it.
func (onDisk) write(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return ended(f, err)
}
