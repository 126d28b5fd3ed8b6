package casework

import (
	"fmt"
	"slices"
)

// Fault is something in a design that cannot be meant, or is missing.
type Fault struct {
	Line   int    // of the job file
	Key    string // "case.outside_width", "case.bay 2.opening 1.height"
	Cause  string // with the numbers
	Remedy string
}

// at is a place in the job file.
type at struct {
	line int
	path string // of keys
}

// under is the place of key within the table at a; line is the key's own, or 0
// where it was not written: then the table's header has to do.
func (a at) under(line int, key string) at {
	if line == 0 {
		line = a.line
	}
	return at{line, a.path + "." + key}
}

// nth is the place of entry n, counted from 1, of the array of tables key.
func (a at) nth(line int, key string, n int) at {
	return a.under(line, fmt.Sprintf("%s %d", key, n))
}

// fault tells what is wrong at a, unless it could not be read there.
func (r *reader) fault(a at, cause, remedy string) {
	f := Fault{Line: a.line, Key: a.path, Cause: cause, Remedy: remedy}
	if !r.unread(a.path) && !slices.Contains(r.faults, f) { // alike pieces have alike faults
		r.faults = append(r.faults, f)
	}
}

// doubt leaves what is written at a out of what follows.
func (r *reader) doubt(a at) {
	r.doubts = append(r.doubts, a.path)
}

// refuse tells what is wrong with the value itself at a.
func (r *reader) refuse(a at, cause, remedy string) {
	r.faults = append(r.faults, Fault{Line: a.line, Key: a.path, Cause: cause, Remedy: remedy})
	r.doubt(a)
}
