package job

import (
	"slices"

	"sawbill/stock/fault"
)

// inFileOrder sorts faults by the place of their file in files, then by line.
func inFileOrder(faults []fault.Fault, files []string) {
	slices.SortStableFunc(faults, func(a, b fault.Fault) int {
		if a.File != b.File {
			return slices.Index(files, a.File) - slices.Index(files, b.File)
		}
		return a.Line - b.Line
	})
}

// err returns the faults so far, in the order of their files, or nil.
func (r *reader) err() error {
	inFileOrder(r.faults, r.files)
	return fault.Faults(r.faults).OrNil()
}
