// Package journal is a record of what was done, entry by entry, in one plain file that
// only ever grows at its end, by a whole line or not at all, whatever stops the program.
package journal

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"sawbill/stock/durable"
	"sawbill/stock/job"
)

// Entry is one line: what was done at once.
type Entry struct {
	Number int      `json:"n"`              // from 1
	Plan   string   `json:"plan"`           // the code of the plan that it is about
	Date   string   `json:"date,omitempty"` // "2026-03-05"
	Did    []string `json:"did"`            // in words that the program reads back; at least one
}

// line is e as the file has it.
func (e Entry) line() []byte {
	data, err := json.Marshal(e)
	if err != nil {
		panic("journal: an entry that is no JSON: " + err.Error())
	}
	return append(data, '\n')
}

// Journal is the file of a record. Several programs may use it at once.
type Journal struct{ path string }

// At is the journal whose file is at path, which need not be there yet.
func At(path string) Journal { return Journal{path} }

// Path is the journal's file.
func (j Journal) Path() string { return j.path }

func (j Journal) lockFile() string {
	return filepath.Join(filepath.Dir(j.path), "."+filepath.Base(j.path)+".lock")
}

// Read reads the entries; a file that is not there has none. A last line that was torn
// is no entry. A line that is not as Add writes it is told with its number, in an error
// of type [job.Faults].
func (j Journal) Read() ([]Entry, error) {
	entries, _, err := j.read()
	return entries, err
}

// read returns the entries, and of each at which byte its line ends.
func (j Journal) read() (entries []Entry, ends []int64, err error) {
	data, err := os.ReadFile(j.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, j.cannot("read", err)
	}
	end := int64(0)
	for rest := data; len(rest) > 0; {
		length := bytes.IndexByte(rest, '\n') + 1
		if length == 0 {
			break // torn
		}
		line := rest[:length]
		var e Entry
		if err := json.Unmarshal(line, &e); err != nil || e.Number != len(entries)+1 || len(e.Did) == 0 || !bytes.Equal(line, e.line()) {
			return nil, nil, job.Faults{{File: j.path, Line: len(entries) + 1, Cause: "the line is not as it was written",
				Remedy: "put back a copy of the file, or delete this line and those behind it"}}
		}
		end += int64(length)
		entries, ends = append(entries, e), append(ends, end)
		rest = rest[length:]
	}
	return entries, ends, nil
}

// Add adds what next says, which is asked while no other program can add anything, and
// returns it as it will be read; its Number follows from those before. It waits for
// others until ctx ends. If next has an error, Add returns that, and neither writes nor
// leaves any file. When Add returns without an error the entry is on the disk. Errors
// but for those of next are of type [job.Faults].
func (j Journal) Add(ctx context.Context, next func(before []Entry) (Entry, error)) (Entry, error) {
	var added Entry
	err := j.locked(ctx, func() error {
		before, ends, err := j.read()
		if err != nil {
			return err
		}
		e, err := next(before)
		if err != nil {
			return err
		}
		if len(e.Did) == 0 {
			panic("journal: an entry of nothing that was done")
		}
		e.Number = len(before) + 1
		read := Entry{} // bytes that are no text become a mark that is
		if err := json.Unmarshal(e.line(), &read); err != nil {
			panic("journal: an entry that cannot be read back: " + err.Error())
		}
		if err := durable.Append(j.path, last(ends), read.line()); err != nil {
			return j.cannot("written", err)
		}
		added = read
		return nil
	})
	return added, err
}

// Undo takes the last entry off and returns it: the file is byte for byte what it was
// before; without an entry there is none. The error is of type [job.Faults].
func (j Journal) Undo(ctx context.Context) (Entry, error) {
	var undone Entry
	nothing := job.Faults{{File: j.path, Cause: "there is nothing to take back", Remedy: "what is done is told there first"}}
	if _, err := os.Stat(j.path); errors.Is(err, fs.ErrNotExist) {
		return undone, nothing
	}
	err := j.locked(ctx, func() error {
		entries, ends, err := j.read()
		if err != nil {
			return err
		}
		n := len(entries)
		if n == 0 {
			return nothing
		}
		if n == 1 {
			err = durable.Remove(j.path)
		} else {
			err = durable.Truncate(j.path, ends[n-2])
		}
		if err != nil {
			return j.cannot("written", err)
		}
		undone = entries[n-1]
		return nil
	})
	return undone, err
}

func last(ends []int64) int64 {
	if len(ends) == 0 {
		return 0
	}
	return ends[len(ends)-1]
}

func (j Journal) locked(ctx context.Context, do func() error) error {
	wrong := error(nil) // of what was done, which is no trouble with the lock
	err := durable.Locked(ctx, j.lockFile(), func() error {
		wrong = do()
		return wrong
	})
	switch {
	case wrong != nil:
		return wrong
	case errors.Is(err, durable.ErrBusy):
		return job.Faults{{File: j.path, Cause: "another program is writing to it", Remedy: "wait until it has ended, and try again; nothing was changed"}}
	case err != nil:
		return j.cannot("locked", err)
	}
	return nil
}

func (j Journal) cannot(what string, err error) error {
	var of *fs.PathError
	if errors.As(err, &of) {
		err = of.Err
	}
	return job.Faults{{File: j.path, Cause: fmt.Sprintf("cannot be %s (%v)", what, err), Remedy: "nothing was changed; look at the folder and its permissions"}}
}
