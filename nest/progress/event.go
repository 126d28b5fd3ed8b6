package progress

import (
	"fmt"
	"strings"
)

type Event struct{ Word, Value string }

var Words = []string{"cut", "good", "spoiled", "lost", "missing"}

func (e Event) String() string { return e.Word + " " + e.Value }

func ParseEvent(written string) (Event, error) {
	word, value, _ := strings.Cut(written, " ")
	for _, known := range Words {
		if word == known && strings.TrimSpace(value) != "" {
			return Event{word, strings.TrimSpace(value)}, nil
		}
	}
	return Event{}, Wrong{fmt.Sprintf("%q is nothing that can happen", written), "take the line back with undo"}
}

type Wrong struct{ Cause, Remedy string }

func (w Wrong) Error() string { return w.Cause + "; " + w.Remedy }

func (s *State) Tell(e Event) error {
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
	}
	return Wrong{fmt.Sprintf("%q is nothing that can happen", e.Word), "say " + strings.Join(Words, ", ")}
}
