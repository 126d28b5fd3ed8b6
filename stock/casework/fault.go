package casework

// Fault is something in a design that cannot be meant, or is missing.
type Fault struct {
	Line   int    // of the job file
	Key    string // "case.outside_width", "case.bay 2.opening 1.height"
	Cause  string // with the numbers
	Remedy string
}
