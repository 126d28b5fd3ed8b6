package casework

import "testing"

// Two marks of one kind on one face are on different pieces, and these have
// different names.
func TestMarksAreOnPiecesThatCanBeTold(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, d Design, c *Case) {
		type place struct {
			part        int
			what, piece string
			face        Face
		}
		type found struct{ mark, solid int }
		first := make(map[place]found)
		for i, k := range c.Marks {
			for _, s := range k.Spots {
				p := place{k.Part, k.What, s.Piece, s.Face}
				if other, told := first[p]; told && other.mark != i && other.solid != s.Solid {
					t.Errorf("two marks, %s of %s on the %s of %q: which of two pieces?", k.What, c.Parts[k.Part].Name, s.Face, s.Piece)
				}
				first[p] = found{i, s.Solid}
			}
		}
	})
}
