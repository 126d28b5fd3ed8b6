package instance

import "cmp"

// ComparePieces orders pieces side by side, and finds equal layouts. Leftovers come last.
// Larger pieces come first, so that equal fence settings follow one another; then the contents
// decide.
func ComparePieces(a, b Piece) int {
	if a.isLeftover() != b.isLeftover() {
		if a.isLeftover() {
			return 1
		}
		return -1
	}
	if c := cmp.Or(cmp.Compare(b.W, a.W), cmp.Compare(b.L, a.L), cmp.Compare(a.Kind, b.Kind),
		cmp.Compare(a.Dir, b.Dir), cmp.Compare(len(a.Children), len(b.Children))); c != 0 {
		return c
	}
	if a.Turned != b.Turned {
		if a.Turned {
			return 1
		}
		return -1
	}
	for i := range a.Children {
		if c := ComparePieces(a.Children[i], b.Children[i]); c != 0 {
			return c
		}
	}
	return 0
}

func (p Piece) isLeftover() bool { return p.Kind == Leftover && len(p.Children) == 0 }
