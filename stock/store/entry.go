package store

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"

	"sawbill/stock/fault"
)

// versionNow is the version of the lines that [Record.Add] writes. The struct of a
// version never changes: another key needs another version, with a struct of its own.
const versionNow = 2

// Entry is one line of a record: what was done at once, or which entry it takes back.
// Its keys are those of version 2.
type Entry struct {
	Version int      `json:"v"`
	Number  int      `json:"n"`                // from 1, never used twice
	ID      string   `json:"id"`               // 22 letters, never used twice; "1-<n>" for a line of version 1
	Plan    string   `json:"plan"`             // code of the plan that the entry is about
	Date    string   `json:"date,omitempty"`   // "2026-03-05"
	By      string   `json:"by,omitempty"`     // the screen that sent it; empty from the command line
	Did     []string `json:"did,omitempty"`    // in words that the program reads back
	Undoes  string   `json:"undoes,omitempty"` // id of the entry that it takes back, which then did nothing else
}

// entry1 is a line of version 1, which had no id and was removed when taken back.
type entry1 struct {
	Number int      `json:"n"`
	Plan   string   `json:"plan"`
	Date   string   `json:"date,omitempty"`
	Did    []string `json:"did"`
}

// line is e as the file has it.
func (e Entry) line() []byte { return lineOf(e) }

// asRead is e as it will be read from its line: bytes that are not UTF-8 become a
// replacement character.
func (e Entry) asRead() Entry {
	var read Entry
	if err := json.Unmarshal(e.line(), &read); err != nil {
		panic("store: an entry that cannot be read back: " + err.Error())
	}
	return read
}

func lineOf(v any) []byte {
	data, err := json.Marshal(v)
	if err != nil {
		panic("store: an entry that is no JSON: " + err.Error())
	}
	return append(data, '\n')
}

// notAsWritten is the fault of a line that the program did not write like this.
func notAsWritten() *fault.Fault {
	return &fault.Fault{Cause: "the line is not as it was written", Remedy: "put back a copy of the file, or delete this line and those behind it"}
}

// parseLine reads a line of any version up to now. It must be as it was written, byte for
// byte: a line changed by hand may mean something else to the entries behind it.
func parseLine(line []byte) (Entry, *fault.Fault) {
	var of struct {
		Version int `json:"v"`
	}
	if json.Unmarshal(line, &of) != nil {
		return Entry{}, notAsWritten()
	}
	var e Entry
	whole := false
	switch {
	case of.Version > versionNow:
		return Entry{}, &fault.Fault{
			Cause:  fmt.Sprintf("the line is of version %d of the record, this program reads versions 1 to %d", of.Version, versionNow),
			Remedy: "use the newer Sawbill that wrote it"}
	case of.Version == versionNow:
		whole = json.Unmarshal(line, &e) == nil && bytes.Equal(line, e.line()) && drawn.MatchString(e.ID) &&
			(len(e.Did) > 0) == (e.Undoes == "")
	case of.Version == 0:
		var old entry1
		whole = json.Unmarshal(line, &old) == nil && bytes.Equal(line, lineOf(old)) && len(old.Did) > 0
		e = Entry{Version: 1, Number: old.Number, ID: fmt.Sprintf("1-%d", old.Number), Plan: old.Plan, Date: old.Date, Did: old.Did}
	}
	if !whole {
		return Entry{}, notAsWritten()
	}
	return e, nil
}

// sameContents reports whether two entries say the same. The date is left out: an entry
// may be sent again after midnight.
func sameContents(a, b Entry) bool {
	return a.Plan == b.Plan && a.By == b.By && a.Undoes == b.Undoes && slices.Equal(a.Did, b.Did)
}
