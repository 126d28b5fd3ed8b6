package progress

import (
	"fmt"
	"strings"

	"sawbill/stock"
)

// Event is something that happened, as it is said: a word and a value.
//
//	cut 2          all pieces of layout 2 are cut
//	cut 2/1        the first piece of layout 2 is
//	cut 2/1:3-7    cuts 3 to 7 of it are made, and those that they cannot be made without
//	good C=2       two more of blank C are good, wherever they came from
//	spoiled C      one C is no good; "C=590 x 300 mm" tells what can be used of it
//	spoiled C:2    two parts of those in the blanks C are no good, the others are
//	lost C         one C is not there
//	missing NAME   one piece of a stock that was to be cut is not there; "NAME=2": two
//	measured NAME=590 x 300 mm   a piece that lies there, or one of a stock that was not
//	               begun, has that size: what is clear of it from its reference corner
//
// A blank goes by its mark or by the name of its part. Where several may be meant that
// came from other stock, ", grain width" behind all tells which by its grain, as the
// blank's own length runs.
type Event struct{ Word, Value string }

// Words are those that an event begins with, in the order in which things happen.
var Words = []string{"cut", "good", "spoiled", "lost", "missing", "measured"}

// String is how the event is written down.
func (e Event) String() string { return e.Word + " " + e.Value }

// ParseEvent reads what String wrote. The error is of type [Wrong].
func ParseEvent(written string) (Event, error) {
	word, value, _ := strings.Cut(written, " ")
	for _, known := range Words {
		if word == known && strings.TrimSpace(value) != "" {
			return Event{word, strings.TrimSpace(value)}, nil
		}
	}
	return Event{}, Wrong{fmt.Sprintf("%q is nothing that can happen", written), "take the line back with undo"}
}

// Wrong is an event that cannot have happened, with what could have.
type Wrong struct{ Cause, Remedy string }

func (w Wrong) Error() string { return w.Cause + "; " + w.Remedy }

// Apply adds an event to the state. The error is of type [Wrong]; the state is then as
// before.
func (s *State) Apply(e Event) error {
	switch e.Word {
	case "cut":
		return s.cut(e.Value)
	case "good":
		return s.good(e.Value)
	case "spoiled":
		return s.spoil(e.Value)
	case "lost":
		return s.lose(e.Value)
	case "missing":
		return s.miss(e.Value)
	case "measured":
		return s.measure(e.Value)
	}
	return Wrong{fmt.Sprintf("%q is nothing that can happen", e.Word), "say " + strings.Join(Words, ", ")}
}

// unknown tells of a name that is none of those known.
func unknown(what, name string, known []string, remedy string) error {
	if near, ok := stock.Nearest(name, known); ok {
		remedy = fmt.Sprintf("did you mean %q?", near)
	}
	return Wrong{fmt.Sprintf("there is no %s %q", what, name), remedy}
}
