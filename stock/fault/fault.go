// Package fault is the one type for faults of an input, a stored file, a command line or a
// value in any of them. A fault has a place, a cause and a remedy.
package fault

import (
	"fmt"
	"strings"
)

// Fault is one thing that is wrong, or worth a warning. Its place may be unknown, or
// filled in by whoever knows it. The zero Fault is none.
type Fault struct {
	File   string // empty if it is not known, or if there is no file
	Line   int    // from 1; 0 if the fault concerns the whole file
	Key    string // "saw.kerf", `part "shelf": length`, `price "7,4,0"`; empty if there is none
	Cause  string
	Remedy string
}

// New is a fault whose place is not known yet.
func New(cause, remedy string) Fault { return Fault{Cause: cause, Remedy: remedy} }

// Found reports whether there is a fault.
func (f Fault) Found() bool { return f.Cause != "" }

// Error writes "file:line: key: what is wrong; what to do".
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d", f.Line)
	}
	if b.Len() > 0 {
		b.WriteString(": ")
	}
	if f.Key != "" {
		b.WriteString(f.Key + ": ")
	}
	b.WriteString(f.Cause)
	if f.Remedy != "" {
		b.WriteString("; " + f.Remedy)
	}
	return b.String()
}

// Faults is every fault found at once, as an error.
type Faults []Fault

// OrNil returns the faults as an error, nil if there are none.
func (fs Faults) OrNil() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// mostShown keeps a long list from scrolling its own beginning away.
const mostShown = 20

// Error writes one fault a line, and how many more there are.
func (fs Faults) Error() string {
	var lines []string
	for i, f := range fs {
		if i == mostShown {
			lines = append(lines, fmt.Sprintf("and %d more", len(fs)-i))
			break
		}
		lines = append(lines, f.Error())
	}
	return strings.Join(lines, "\n")
}
