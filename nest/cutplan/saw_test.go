package cutplan

import (
	"fmt"
	"sort"
	"testing"

	"sawbill/stock"
)

// bench holds the pieces on the bench while a test saws the printed steps of one piece of
// stock: for each step the piece at the fence and the remainder.
type bench struct {
	kerf      stock.Length
	off, rest map[int]Size
}

func newBench(l Layout, kerf stock.Length) bench {
	return bench{kerf, map[int]Size{0: {l.Stock.Length, l.Stock.Width}}, map[int]Size{}}
}

// saw carries out the steps of l as printed and returns the sizes of all pieces in the
// end.
func saw(t *testing.T, l Layout, steps []Step, kerf stock.Length) []Size {
	t.Helper()
	b := newBench(l, kerf)
	for i, s := range steps {
		if s.Number != i+1 {
			t.Fatalf("step %d is numbered %d", i+1, s.Number)
		}
		b.cut(t, s)
	}
	return b.left()
}

// cut carries out s, whose piece must be ready.
func (b bench) cut(t *testing.T, s Step) {
	t.Helper()
	pile := b.off
	if s.Remainder {
		pile = b.rest
	}
	in, ok := pile[s.InHand]
	if !ok {
		t.Fatalf("step %d takes the piece of step %d (rest %v), which is not there", s.Number, s.InHand, s.Remainder)
	}
	delete(pile, s.InHand)
	if in != s.Piece {
		t.Fatalf("step %d has %v in hand, says %v", s.Number, in, s.Piece)
	}
	off, left := in, in
	if s.Cut == Rip {
		off.Width = s.Setting
		left.Width -= s.Setting + b.kerf
	} else {
		off.Length = s.Setting
		left.Length -= s.Setting + b.kerf
	}
	if off != s.Off {
		t.Fatalf("step %d frees %v, says %v", s.Number, off, s.Off)
	}
	if left.Length <= 0 || left.Width <= 0 {
		left = Size{}
	}
	if left != s.Left {
		t.Fatalf("step %d leaves %v, says %v", s.Number, left, s.Left)
	}
	b.off[s.Number] = off
	if left != (Size{}) && !s.Trim {
		b.rest[s.Number] = left
	}
}

// left lists all pieces on the bench.
func (b bench) left() []Size {
	var all []Size
	for _, s := range b.off {
		all = append(all, s)
	}
	for _, s := range b.rest {
		all = append(all, s)
	}
	return all
}

func sorted(sizes []Size) []string {
	var s []string
	for _, z := range sizes {
		s = append(s, fmt.Sprintf("%d x %d", z.Length, z.Width))
	}
	sort.Strings(s)
	return s
}
