// Package fault is the one type for whatever is wrong with an input or a stored file:
// its place, its cause and its remedy.
package fault

import (
	"fmt"
	"strings"
)

// Fault is one thing that is wrong with a file, or worth a warning.
type Fault struct {
	File   string
	Line   int    // from 1; 0 if the fault concerns the whole file
	Key    string // "saw.kerf", `part "shelf": length`; empty if there is none
	Cause  string
	Remedy string
}

// String writes "file:line: key: what is wrong; what to do".
func (f Fault) String() string {
	var b strings.Builder
	b.WriteString(f.File)
	if f.Line > 0 {
		fmt.Fprintf(&b, ":%d", f.Line)
	}
	b.WriteString(": ")
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
		lines = append(lines, f.String())
	}
	return strings.Join(lines, "\n")
}
