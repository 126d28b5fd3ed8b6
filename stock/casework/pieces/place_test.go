package pieces

import "testing"

func TestPlacesThatFollowOneAnotherAreNamedTogether(t *testing.T) {
	for _, c := range []struct {
		want   string
		places []string
	}{
		{"bay 1", []string{"bay 1", "bay 1"}},
		{"bay 1 + bay 3", []string{"bay 1", "bay 3"}},
		{"bays 1 and 2", []string{"bay 1", "bay 2"}},
		{"bay 1 drawers 2 to 4 + bay 2 drawer 1", []string{"bay 1 drawer 2", "bay 1 drawer 3", "bay 1 drawer 4", "bay 2 drawer 1"}},
		{"drawers 1 and 2 + 3 more", []string{"drawer 1", "drawer 2", "drawer 4", "drawer 6", "drawer 9"}},
		{"top", []string{"top"}},
	} {
		if got := (Piece{places: c.places}).where(); got != c.want {
			t.Errorf("%q: got %q, want %q", c.places, got, c.want)
		}
	}
}
