package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime"
	"syscall"
)

// MostBytes is the size of the largest input, far beyond any job: a wrong file neither
// fills the memory nor keeps anybody waiting.
const MostBytes = 16 << 20

// MostOfLong is the size of the longest file that the program itself made long.
const MostOfLong = 1 << 30

// NoInput is the error of a file that is not read at all, though it is there.
type NoInput struct{ Cause, Remedy string }

func (e *NoInput) Error() string { return e.Cause }

var notRegular = &NoInput{"is no regular file", "name a file that holds text"}

// Read reads a file that somebody else may have written: a job, a list, a rack, a plan.
// It refuses at once a folder, a device, a pipe, and a file of more than [MostBytes].
// [Explain] says what its errors mean.
func Read(path string) ([]byte, error) { return readUpTo(path, MostBytes) }

// ReadLong is [Read] of a file that the program itself makes longer year by year, such as a
// history. It may have [MostOfLong] bytes.
func ReadLong(path string) ([]byte, error) { return readUpTo(path, MostOfLong) }

func readUpTo(path string, most int64) ([]byte, error) {
	refused := func(why error) ([]byte, error) { return nil, &fs.PathError{Op: "read", Path: path, Err: why} }
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if why := unfit(info, most); why != nil {
		return refused(why)
	}
	f, err := os.OpenFile(path, os.O_RDONLY|withoutWaiting(), 0)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err = f.Stat(); err != nil { // it may be another file by now
		return nil, err
	}
	if why := unfit(info, most); why != nil {
		return refused(why)
	}
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, err
	}
	if int64(len(data)) > most { // some systems give a size of 0 for what they make up
		return refused(tooLarge(fmt.Sprintf("more than %d MB", most>>20), most))
	}
	return data, nil
}

// unfit says why a file is no input, or is nil.
func unfit(info fs.FileInfo, most int64) error {
	switch {
	case info.IsDir():
		return &NoInput{"is a folder", "name a file in it"}
	case !info.Mode().IsRegular():
		return notRegular
	case info.Size() > most:
		return tooLarge(fmt.Sprintf("%d MB", (info.Size()+1<<20-1)>>20), most)
	}
	return nil
}

func tooLarge(size string, most int64) error {
	return &NoInput{fmt.Sprintf("the file has %s, and at most %d MB are read", size, most>>20), "check that it is the right file"}
}

// withoutWaiting keeps an open from waiting for the other end of a pipe.
func withoutWaiting() int {
	if runtime.GOOS == "windows" {
		return 0 // has no such pipes in folders
	}
	return syscall.O_NONBLOCK
}

// Explain says why a file could not be read, and what to do.
func Explain(err error) (cause, remedy string) {
	var no *NoInput
	switch {
	case errors.As(err, &no):
		return no.Cause, no.Remedy
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file", "check its name and folder"
	case errors.Is(err, fs.ErrPermission):
		return "the file may not be read", "change its permissions"
	}
	return "the file cannot be read (" + Bare(err).Error() + ")", "check that it is a file, and that its disk is there"
}
