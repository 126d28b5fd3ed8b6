package store

import (
	"bytes"
	"crypto/rand"
	"encoding/base64"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"

	"sawbill/stock/fault"
)

// Record is a file of entries, one a line, that only grows at its end. It takes no lock:
// the caller holds that of the folder while it adds.
type Record struct{ path string }

// RecordAt is the record whose file is at path, which need not exist yet.
func RecordAt(path string) Record { return Record{path} }

// Path is the record's file.
func (r Record) Path() string { return r.path }

// Read reads the entries, the first one first. A missing file has none. A torn last line
// is no entry. Any other line that is not as the program wrote it is reported with its
// number, in an error of type [fault.Faults].
func (r Record) Read() ([]Entry, error) {
	entries, _, err := r.read()
	return entries, err
}

// read returns the entries, and the number of bytes up to the end of the last.
func (r Record) read() (entries []Entry, good int64, err error) {
	text, _, err := Contents(r.path)
	if err != nil {
		return nil, 0, r.cannot("read", err)
	}
	for rest := []byte(text); len(rest) > 0; {
		length := bytes.IndexByte(rest, '\n') + 1
		if length == 0 {
			break // torn
		}
		e, problem := parseLine(rest[:length])
		if problem == nil && !follows(e, entries) {
			problem = notAsWritten()
		}
		if problem != nil {
			problem.File, problem.Line = r.path, len(entries)+1
			return nil, 0, fault.Faults{*problem}
		}
		entries = append(entries, e)
		rest, good = rest[length:], good+int64(length)
	}
	return entries, good, nil
}

// follows reports whether e can be the line behind these entries: it has the next number,
// an id of its own, and takes back only an entry that stands.
func follows(e Entry, before []Entry) bool {
	return e.Number == len(before)+1 && find(before, e.ID) == nil && (e.Undoes == "" || stands(before, e.Undoes))
}

// Add adds an entry and returns it as it will be read: with its Version and Number, and
// an ID if it had none. When Add returns without an error the entry is on the disk.
//
// An entry can be sent again: one whose ID is in the record already is returned as it
// stands there, and nothing is written. Its Date may differ. The error, of type
// [fault.Faults], reports an ID that was used for another entry, and an Undoes that names
// no entry that stands. The caller holds the lock of the folder.
func (r Record) Add(e Entry) (Entry, error) {
	before, good, err := r.read()
	if err != nil {
		return Entry{}, err
	}
	if e.ID == "" {
		e.ID = NewID()
	}
	if (len(e.Did) > 0) == (e.Undoes != "") {
		panic("store: an entry either did something or takes an entry back")
	}
	e.Version, e.Number = versionNow, len(before)+1
	e = e.asRead()
	switch known := find(before, e.ID); {
	case known != nil && sameContents(*known, e):
		return *known, nil
	case known != nil:
		return Entry{}, r.wrong(fmt.Sprintf("entry %d has the id %s and other contents", known.Number, e.ID), "send it with an id of its own; nothing was changed")
	case !drawn.MatchString(e.ID):
		return Entry{}, r.wrong(fmt.Sprintf("%q is no id of an entry", e.ID), "send 16 random bytes as 22 letters of base64url; nothing was changed")
	case e.Undoes != "" && !stands(before, e.Undoes):
		return Entry{}, r.wrong(fmt.Sprintf("no entry that counts has the id %q", e.Undoes), "it was taken back already, or belongs to another record; nothing was changed")
	}
	if err := Append(r.path, good, e.line()); err != nil {
		return Entry{}, r.cannot("written", err)
	}
	return e, nil
}

// Settle removes what a killed Add left: a torn line, or a file without an entry. The
// caller holds the lock of the folder. A file that cannot be read, or not be written, stays
// as it is.
func (r Record) Settle() {
	if info, err := os.Lstat(r.path); err != nil || !info.Mode().IsRegular() {
		return
	}
	if _, good, err := r.read(); err == nil {
		CutTorn(r.path, good) // a torn line does no harm where it cannot be cut off
	}
}

// Standing selects the entries that count: neither taken back nor taking back another.
func Standing(entries []Entry) []Entry {
	undone := make(map[string]bool)
	for _, e := range entries {
		undone[e.Undoes] = true
	}
	return slices.DeleteFunc(slices.Clone(entries), func(e Entry) bool { return e.Undoes != "" || undone[e.ID] })
}

// stands reports whether the entry with this id is there and counts.
func stands(entries []Entry, id string) bool {
	return slices.ContainsFunc(Standing(entries), func(e Entry) bool { return e.ID == id })
}

// find finds an entry by its id; nil if there is none.
func find(entries []Entry, id string) *Entry {
	for i := range entries {
		if entries[i].ID == id {
			return &entries[i]
		}
	}
	return nil
}

// drawn is the form of an id. Those of version 1 are shorter and have a form of their own.
var drawn = regexp.MustCompile(`^[A-Za-z0-9_-]{21}[AQgw]$`)

// NewID draws the id of a new entry: 16 random bytes as 22 letters, figures, - and _.
func NewID() string {
	var id [16]byte
	rand.Read(id[:]) // has no error
	return base64.RawURLEncoding.EncodeToString(id[:])
}

func (r Record) wrong(cause, remedy string) error {
	return fault.Faults{{File: r.path, Cause: cause, Remedy: remedy}}
}

func (r Record) cannot(what string, err error) error {
	if no := (*NoInput)(nil); errors.As(err, &no) {
		return r.wrong(no.Cause, no.Remedy)
	}
	return r.wrong(fmt.Sprintf("cannot be %s (%v)", what, Bare(err)), "nothing was changed; look at "+filepath.Dir(r.path)+" and its permissions")
}
