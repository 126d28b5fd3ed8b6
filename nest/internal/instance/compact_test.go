package instance

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func leaf(kind int, l, w int64) Piece { return Piece{L: l, W: w, Kind: kind} }
func gap(l, w int64) Piece            { return leaf(Rest, l, w) }

// rip and cross put pieces side by side.
func rip(pieces ...Piece) Piece {
	p := Piece{L: pieces[0].L, Dir: Ripped, Kind: Rest, Children: pieces}
	for _, c := range pieces {
		p.W += c.W
	}
	return p
}

func cross(pieces ...Piece) Piece {
	p := Piece{W: pieces[0].W, Dir: Crosscut, Kind: Rest, Children: pieces}
	for _, c := range pieces {
		p.L += c.L
	}
	return p
}

func TestCompact(t *testing.T) {
	tests := []struct {
		reason     string
		have, want Piece
	}{
		{"slack within a strip goes to the end of the strip",
			rip(cross(rip(leaf(0, 40, 30), gap(40, 5)), rip(cross(leaf(0, 40, 30), gap(10, 30)), gap(50, 5)), gap(10, 35)), gap(100, 15)),
			rip(cross(leaf(0, 40, 30), leaf(0, 40, 30), gap(20, 30)), gap(100, 20))},
		{"two rests become one",
			cross(leaf(0, 40, 50), gap(20, 50), leaf(1, 30, 50), gap(10, 50)),
			cross(leaf(0, 40, 50), leaf(1, 30, 50), gap(30, 50))},
		{"the first cut stays a rip",
			rip(cross(leaf(0, 40, 30), leaf(1, 50, 30), gap(10, 30)), gap(100, 20)),
			rip(cross(leaf(1, 50, 30), leaf(0, 40, 30), gap(10, 30)), gap(100, 20))},
		{"a lone part keeps the order of its cuts",
			cross(rip(leaf(0, 40, 30), gap(40, 20)), gap(60, 50)),
			cross(rip(leaf(0, 40, 30), gap(40, 20)), gap(60, 50))},
		{"levels that repeat a direction become one",
			rip(rip(leaf(0, 100, 10), leaf(1, 100, 20)), gap(100, 20)),
			rip(leaf(1, 100, 20), leaf(0, 100, 10), gap(100, 20))},
		{"what holds no part is one rest",
			rip(cross(gap(40, 30), gap(60, 30)), gap(100, 20)), gap(100, 50)},
		{"a whole part", leaf(0, 100, 50), leaf(0, 100, 50)},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			if d := cmp.Diff(test.want, Compact(test.have)); d != "" {
				t.Errorf("(-want +got)\n%s", d)
			}
		})
	}
}
