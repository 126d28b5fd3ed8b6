package marksheet

import (
	"strings"
	"testing"

	"sawbill/stock/casework"
)

// Whatever is bored or cut says with what, how wide and how deep; a catch is at its place and
// screwed on.
func TestMarksSayToolDiameterAndDepth(t *testing.T) {
	bored := []string{"diameter", "deep"}
	wants := map[string][]string{
		casework.ShelfPins: append(bored, "drill"), "dowel hole": append(bored, "drill"),
		casework.HandleHole: {"drill", "diameter", "right through"},
		"mortise":           {"chisel or router", "long", "wide", "deep"},
		"mortise center":    {"router", "wide", "deep"},
		"dado":              {"router or saw", "wide", "deep"}, "groove": {"router or saw", "wide", "deep"}, "rabbet": {"router or saw", "wide", "deep"},
		casework.Catch: {"screws"},
	}
	seen := make(map[string]int)
	everySubject(t, func(t *testing.T, s Subject) {
		faces, _, _ := s.figures()
		for _, f := range faces {
			for _, note := range s.notes(f) {
				kind, said, _ := strings.Cut(note.text, ": ")
				for _, want := range wants[kind] {
					if !strings.Contains(said, want) {
						t.Errorf("%s: %q lacks %q", s.parts(f), note.text, want)
					}
				}
				if kind == casework.Hinge {
					hinge := []string{"screws"} // on what the door hangs on
					if strings.Contains(said, "cup") {
						hinge = append(bored, "flat-bottomed bit")
					}
					for _, want := range hinge {
						if !strings.Contains(said, want) {
							t.Errorf("%s: %q lacks %q", s.parts(f), note.text, want)
						}
					}
				}
				seen[kind]++
			}
		}
	})
	for kind := range wants {
		if seen[kind] == 0 {
			t.Errorf("no case has a %s", kind)
		}
	}
}
