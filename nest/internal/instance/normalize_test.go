package instance

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func leaf(kind int, l, w int64) Piece { return Piece{L: l, W: w, Kind: kind} }
func gap(l, w int64) Piece            { return leaf(Leftover, l, w) }

// rip and cross put pieces side by side.
func rip(pieces ...Piece) Piece {
	p := Piece{L: pieces[0].L, Dir: Rip, Kind: Leftover, Children: pieces}
	for _, c := range pieces {
		p.W += c.W
	}
	return p
}

func cross(pieces ...Piece) Piece {
	p := Piece{W: pieces[0].W, Dir: Crosscut, Kind: Leftover, Children: pieces}
	for _, c := range pieces {
		p.L += c.L
	}
	return p
}

func TestNormalize(t *testing.T) {
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
		{"the leftover beside a column stays whole",
			rip(leaf(2, 100, 20), cross(rip(leaf(0, 40, 20), cross(leaf(1, 30, 10), gap(10, 10)), gap(40, 5)), gap(60, 35))),
			rip(cross(rip(leaf(0, 40, 20), cross(leaf(1, 30, 10), gap(10, 10))), gap(60, 30)), leaf(2, 100, 20), gap(100, 5))},
		{"what holds no part is one rest",
			rip(cross(gap(40, 30), gap(60, 30)), gap(100, 20)), gap(100, 50)},
		{"a whole part", leaf(0, 100, 50), leaf(0, 100, 50)},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			if d := cmp.Diff(test.want, Normalize(test.have)); d != "" {
				t.Errorf("(-want +got)\n%s", d)
			}
		})
	}
}

// randomPiece divides l x w at random. About half of the pieces left uncut are parts, of which
// only the sizes matter.
func randomPiece(r *rand.Rand, l, w int64, over Dir, depth int) Piece {
	dir := over.Across()
	if over == None {
		dir = Dir(1 + r.IntN(2))
	}
	full := w
	if dir == Crosscut {
		full = l
	}
	if depth == 0 || full < 4 || r.IntN(5) == 0 {
		if r.IntN(2) == 0 {
			return gap(l, w)
		}
		return leaf(int(l*1000+w), l, w)
	}
	p := Piece{L: l, W: w, Dir: dir, Kind: Leftover}
	for full > 0 {
		size := 1 + r.Int64N(full)
		if len(p.Children) == 0 {
			size = 1 + r.Int64N(full-1) // a cut makes two pieces
		}
		full -= size
		if dir == Crosscut {
			p.Children = append(p.Children, randomPiece(r, size, w, dir, depth-1))
		} else {
			p.Children = append(p.Children, randomPiece(r, l, size, dir, depth-1))
		}
	}
	return p
}

// survey returns the parts of p, the sum of the squares of its leftovers, and the level of its
// deepest part. It fails if children do not fill their split.
func survey(t *testing.T, p Piece, level int) (parts []int, squares int64, deepest int) {
	t.Helper()
	if len(p.Children) == 0 {
		if p.Kind == Leftover {
			return nil, p.L * p.L * p.W * p.W, 0
		}
		if int64(p.Kind) != p.L*1000+p.W {
			t.Fatalf("part %d became %d x %d", p.Kind, p.L, p.W)
		}
		return []int{p.Kind}, 0, level
	}
	var l, w int64
	for _, c := range p.Children {
		if len(c.Children) > 0 && c.Dir == p.Dir {
			t.Fatal("two levels have one direction")
		}
		if p.Dir == Crosscut {
			l, w = l+c.L, c.W
		} else {
			l, w = c.L, w+c.W
		}
		if p.Dir == Crosscut && c.W != p.W || p.Dir == Rip && c.L != p.L {
			t.Fatal("a child is not as long or wide as its split")
		}
		some, square, deep := survey(t, c, level+1)
		parts, squares, deepest = append(parts, some...), squares+square, max(deepest, deep)
	}
	if l != p.L || w != p.W {
		t.Fatalf("children measure %d x %d of %d x %d", l, w, p.L, p.W)
	}
	return parts, squares, deepest
}

func TestNormalizeKeepsPartsAndLosesNoLeftover(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := randomPiece(r, 60, 40, None, 5)
		q := Normalize(p)
		parts, _, deep := survey(t, p, 0)
		kept, _, deeper := survey(t, q, 0)
		slices.Sort(parts)
		slices.Sort(kept)
		if !slices.Equal(parts, kept) {
			t.Fatalf("seed %d: parts %v became %v", seed, parts, kept)
		}
		if deeper > deep {
			t.Fatalf("seed %d: a part under %d levels of cuts came under %d", seed, deep, deeper)
		}
		if len(q.Children) > 0 && q.Dir != p.Dir {
			t.Fatalf("seed %d: the first cut changed its direction", seed)
		}
		if !cmp.Equal(q, Normalize(q)) {
			t.Fatalf("seed %d: compacting twice is not compacting once", seed)
		}
	}
}
