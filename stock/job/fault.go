package job

import (
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing that is wrong with a file, or worth a warning.
type Fault struct {
	File   string
	Line   int    // from 1; 0 when it is about the whole file
	Key    string // "saw.kerf", `part "shelf": length`; empty when there is none
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

// Faults is every fault of a job, in file order: the job file first, then its
// part lists. It is the error of [Read].
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

// inFileOrder sorts faults by the place of their file in files, then by line.
func inFileOrder(faults []Fault, files []string) {
	slices.SortStableFunc(faults, func(a, b Fault) int {
		if a.File != b.File {
			return slices.Index(files, a.File) - slices.Index(files, b.File)
		}
		return a.Line - b.Line
	})
}

// problem is a fault that does not know its place yet; the zero problem is
// none.
type problem struct {
	cause, remedy string
}

func (p problem) found() bool { return p.cause != "" }
