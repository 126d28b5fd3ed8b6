package job

import (
	"slices"

	"sawbill/stock/fault"
)

// Fault is one thing that is wrong with a file, or worth a warning.
type Fault = fault.Fault

// Faults is every fault of a job, in file order: the job file first, then its
// part lists. It is the error of [Read].
type Faults = fault.Faults

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
