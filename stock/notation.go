package stock

import "fmt"

// NotationError says why a text cannot be read, and what to write instead.
type NotationError struct {
	Of     string // what was to be read: "length", "price", "nominal size"
	Text   string // as it was given
	Cause  string
	Remedy string
}

func (e *NotationError) Error() string {
	return fmt.Sprintf("%s %q: %s; %s", e.Of, e.Text, e.Cause, e.Remedy)
}
