package drawing

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestWrapKeepsASizeTogether(t *testing.T) {
	width := Width("piece from 12: 24 13/32 x", Regular, 9)
	lines := Wrap("piece from 12: 24 13/32 x ≈7 1/2", Regular, 9, width)
	if len(lines) != 2 || lines[1] != "24 13/32 x ≈7 1/2" {
		t.Errorf("got %q", lines)
	}
}

// FuzzWrap wants every character kept, in order, and no line of several
// characters wider than asked.
func FuzzWrap(f *testing.F) {
	for _, s := range []string{"", "left side", "24 13/32 x 7 1/2", "x x 3 3/4 1/2", "家具 ÉÅ", "a-b/c.d", strings.Repeat("w", 99), "\xff 1 x"} {
		f.Add(s, 20.0)
	}
	f.Fuzz(func(t *testing.T, s string, width float64) {
		if !(width > 0 && width < 1000) || !utf8.ValidString(s) {
			t.Skip("no width or no text that could be asked for")
		}
		lines := Wrap(s, Bold, 9, width)
		for _, l := range lines {
			if utf8.RuneCountInString(l) > 1 && Width(l, Bold, 9) > width {
				t.Errorf("line %q is wider than %v mm", l, width)
			}
		}
		got, want := strings.Join(strings.Fields(strings.Join(lines, " ")), ""), strings.Join(strings.Fields(s), "")
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	})
}

// However little room there is, every character is written.
func TestWrapEndsWithoutRoom(t *testing.T) {
	if got := strings.Join(Wrap("a b1", Regular, 9, -1), "|"); strings.ReplaceAll(got, "|", "") != "ab1" {
		t.Errorf("%q", got)
	}
}
