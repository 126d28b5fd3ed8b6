package design

import (
	"fmt"
	"sawbill/stock/fault"
	"slices"
)

// Place is a place in the job file.
type Place struct {
	Line int
	Path string // of keys
}

// Under is the place of key within the table at a; line is the key's own, or 0
// where it was not written: then the table's header has to do.
func (a Place) Under(line int, key string) Place {
	if line == 0 {
		line = a.Line
	}
	return Place{line, a.Path + "." + key}
}

// Nth is the place of entry n, counted from 1, of the array of tables key.
func (a Place) Nth(line int, key string, n int) Place {
	return a.Under(line, fmt.Sprintf("%s %d", key, n))
}

// Fault reports what is wrong at a, unless it could not be read there.
func (r *Reader) Fault(a Place, cause, remedy string) {
	f := fault.Fault{Line: a.Line, Key: a.Path, Cause: cause, Remedy: remedy}
	if !r.Unread(a.Path) && !slices.Contains(r.Faults, f) { // alike pieces have alike faults
		r.Faults = append(r.Faults, f)
	}
}

// Doubt leaves what is written at a out of what follows.
func (r *Reader) Doubt(a Place) {
	r.Doubts = append(r.Doubts, a.Path)
}

// refuse reports what is wrong with the value itself at a.
func (r *Reader) refuse(a Place, cause, remedy string) {
	r.Faults = append(r.Faults, fault.Fault{Line: a.Line, Key: a.Path, Cause: cause, Remedy: remedy})
	r.Doubt(a)
}
