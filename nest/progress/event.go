package progress

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// Event reports what happened, as a word and a value.
//
//	cut 2          all pieces of layout 2 are cut
//	cut 2/1        the first piece of layout 2 is cut
//	cut 2/1:3-7    its cuts 3 to 7 are made, and the cuts that they depend on
//	good C=2       two more of blank C are good, whatever their source
//	spoiled C      one C is no good; "C=590 x 300 mm" gives its usable size
//	spoiled C:2    two parts in the blanks C are no good, the others are good
//	lost C         one C is lost
//	missing NAME   one piece of a stock to be cut is missing; "NAME=2": two
//	measured NAME=590 x 300 mm   a piece in the shop, or one of a stock that was not
//	               begun, is clear for that size from its reference corner
//
// A blank goes by its mark or the name of its part. If blanks from different stock may be
// meant, ", grain width" at the end gives the grain along the blank's own length.
type Event struct{ Word, Value string }

// Words lists the first words of events, in the order in which things happen.
var Words = []string{"cut", "good", "spoiled", "lost", "missing", "measured"}

// String returns the event as it is written in the record.
func (e Event) String() string { return e.Word + " " + e.Value }

// ParseEvent parses the result of String. The error is of type [fault.Fault].
func ParseEvent(written string) (Event, error) {
	word, value, _ := strings.Cut(written, " ")
	e := Event{word, strings.TrimSpace(value)}
	if !slices.Contains(Words, word) || e.Value == "" {
		return Event{}, fault.New(fmt.Sprintf("%q is nothing that can happen", written), "take the line back with undo")
	}
	return e, nil
}

// Apply adds an event to the state. The error is of type [fault.Fault]; the state is then
// unchanged.
func (s *State) Apply(e Event) error {
	record, known := records[e.Word]
	if !known {
		return fault.New(fmt.Sprintf("%q is nothing that can happen", e.Word), "say "+strings.Join(Words, ", "))
	}
	return record(s, e.Value)
}

// records tells how the value of each word is recorded.
var records = map[string]func(*State, string) error{
	"cut": (*State).recordCut, "good": (*State).recordGood, "spoiled": (*State).recordSpoiled,
	"lost": (*State).recordLost, "missing": (*State).recordMissing, "measured": (*State).recordSize,
}

// unknown reports an unknown name and suggests a similar one.
func unknown(what, name string, known []string, remedy string) error {
	if near, ok := stock.Nearest(name, known); ok {
		remedy = fmt.Sprintf("did you mean %q?", near)
	}
	return fault.New(fmt.Sprintf("there is no %s %q", what, name), remedy)
}
