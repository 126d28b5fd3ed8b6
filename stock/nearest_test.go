package stock

import (
	"strings"
	"testing"
)

func TestNearestOffersOnlyWhatWasLikelyMeant(t *testing.T) {
	materials := []string{"birch ply 18", "birch ply 12", "spruce", "oak", "mm", "in"}
	tests := []struct {
		word, want, reason string
	}{
		{"brich ply 18", "birch ply 18", "neighbors exchanged"},
		{"birch ply 19", "birch ply 18", "one wrong letter; the first of equally near"},
		{"birch ply 2", "birch ply 12", "one letter missing"},
		{"Spruce", "spruce", "case does not count"},
		{"sprruce", "spruce", "one letter too many"},
		{"spruse", "spruce", "one wrong letter"},
		{"ook", "oak", "one of three"},
		{"oka", "oak", "neighbors exchanged"},
		{"ok", "oak", "one of three"},
		{"pine", "", "nothing like it"},
		{"im", "", "two letters leave no room for a slip"},
		{"", "", "nothing to go by"},
	}
	for _, test := range tests {
		got, found := Nearest(test.word, materials)
		if got != test.want || found != (test.want != "") {
			t.Errorf("Nearest(%q) = %q, %v, want %q: %s", test.word, got, found, test.want, test.reason)
		}
	}
	if got, found := Nearest("length", nil); found {
		t.Errorf("found %q among nothing", got)
	}
}

func TestTypingSlips(t *testing.T) {
	for _, test := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"abc", "abc", 0},
		{"kitten", "sitting", 3}, // the textbook example
		{"ab", "ba", 1}, {"abcd", "badc", 2}, {"ca", "abc", 3},
		{"żółw", "zolw", 3},
	} {
		if got := typingSlips([]rune(test.a), []rune(test.b)); got != test.want {
			t.Errorf("%q to %q: %d, want %d", test.a, test.b, got, test.want)
		}
	}
	long := strings.Repeat("ab", 200)
	if got := typingSlips([]rune(long), []rune(long+"c")); got != 1 {
		t.Errorf("long words: %d", got)
	}
}
