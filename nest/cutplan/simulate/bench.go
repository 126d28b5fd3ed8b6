package simulate

import (
	"fmt"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// freedBy names a piece as the page does: what came off at a cut, or the rest of it. The
// stock itself is freed by cut 0.
type freedBy struct {
	cut  int
	rest bool
}

func (f freedBy) String() string {
	switch {
	case f.rest:
		return fmt.Sprintf("rest of %d", f.cut)
	case f.cut == 0:
		return "stock"
	}
	return fmt.Sprintf("piece from %d", f.cut)
}

// piece is a piece on the bench, at its place in the stock.
type piece struct {
	x, y, l, w stock.Length
	fromX      stock.Length // where the piece began before it was crosscut
	fromY      stock.Length // likewise, ripped
	stock      bool         // nothing but trim was cut off it
	named      *cutplan.Node
}

func (p piece) size() cutplan.Size {
	if p.l <= 0 || p.w <= 0 {
		return cutplan.Size{}
	}
	return cutplan.Size{Length: p.l, Width: p.w}
}

func (p piece) extent(c cutplan.Cut) stock.Length {
	if c == cutplan.Crosscut {
		return p.l
	}
	return p.w
}

func (p piece) start(c cutplan.Cut) stock.Length {
	if c == cutplan.Crosscut {
		return p.x
	}
	return p.y
}

func (p piece) origin(c cutplan.Cut) stock.Length {
	if c == cutplan.Crosscut {
		return p.fromX
	}
	return p.fromY
}

// split saws a piece. Keep of it comes off opposite to the waste side; the rest lies beyond
// the kerf, or is nothing.
func (p piece) split(c cutplan.Cut, waste cutplan.Side, keep, kerf stock.Length) (off, left piece) {
	off, left = p, p
	off.named, left.named, left.stock, off.stock = nil, nil, false, false
	if c == cutplan.Crosscut {
		off.l, left.l = keep, p.l-keep-kerf
		if waste == cutplan.Near {
			off.x = p.x + p.l - keep
		} else {
			left.x = p.x + keep + kerf
		}
		left.fromY = left.y
	} else {
		off.w, left.w = keep, p.w-keep-kerf
		if waste == cutplan.Near {
			off.y = p.y + p.w - keep
		} else {
			left.y = p.y + keep + kerf
		}
		left.fromX = left.x
	}
	off.fromX, off.fromY = off.x, off.y
	return off, left
}

type sideOf struct {
	cut  cutplan.Cut
	side cutplan.Side
}

// bench is what lies of one piece of stock.
type bench struct {
	lying map[freedBy]piece
	cuts  numbered        // so far
	trims map[sideOf]bool // by side to be trimmed: done
	nodes map[corner]bool // of the layout
}

// corner is a place in the layout with a size.
type corner struct{ x, y, l, w stock.Length }

func newBench(l cutplan.Layout) *bench {
	b := &bench{lying: map[freedBy]piece{}, cuts: numbered{}, trims: map[sideOf]bool{}, nodes: map[corner]bool{}}
	t := l.Stock.Trims()
	for side, off := range map[sideOf]stock.Length{
		{cutplan.Rip, cutplan.Near}: t.NearEdge, {cutplan.Rip, cutplan.Far}: t.FarEdge,
		{cutplan.Crosscut, cutplan.Near}: t.NearEnd, {cutplan.Crosscut, cutplan.Far}: t.FarEnd,
	} {
		if off > 0 {
			b.trims[side] = false
		}
	}
	whole := piece{l: l.Stock.Length, w: l.Stock.Width, stock: true}
	if root := &l.Root; b.trimmed() {
		for root.Use == cutplan.Split && len(root.Children) == 1 && root.Children[0].Length == root.Length && root.Children[0].Width == root.Width {
			root = &root.Children[0]
		}
		if root.Use != cutplan.Split {
			whole.named = root // it is not cut at all
		}
	}
	b.lying[freedBy{}] = whole
	var note func(n cutplan.Node)
	note = func(n cutplan.Node) {
		b.nodes[corner{n.X, n.Y, n.Length, n.Width}] = true
		for _, c := range n.Children {
			note(c)
		}
	}
	note(l.Root)
	return b
}

// sawn reports whether a side is straight: it is trimmed, or needs no trim.
func (b *bench) sawn(c cutplan.Cut, side cutplan.Side) bool {
	done, toTrim := b.trims[sideOf{c, side}]
	return done || !toTrim
}

func (b *bench) trimmed() bool {
	for _, done := range b.trims {
		if !done {
			return false
		}
	}
	return true
}

// isNode reports whether p is a piece of the layout by itself, not several side by side.
func (b *bench) isNode(p piece) bool { return b.nodes[corner{p.x, p.y, p.l, p.w}] }

// put lays a piece on the bench as what the row says it is.
func (b *bench) put(at freedBy, p piece, told cutplan.Freed) error {
	if told.Size != p.size() {
		return fmt.Errorf("the %v is %v, told is %v", at, p.size(), told.Size)
	}
	if n := told.Node; n != nil {
		if n.X != p.x || n.Y != p.y || n.Length != p.l || n.Width != p.w {
			return fmt.Errorf("the %v is not the piece of the layout that is told", at)
		}
		p.named, p.fromX, p.fromY = n, p.x, p.y // marks begin anew
	}
	b.lying[at] = p
	return nil
}

// leaf is a piece that is not divided further, as its layout has it.
type leaf struct {
	corner
	use    cutplan.Use
	blank  int
	turned bool
}

func leafOf(n cutplan.Node) leaf {
	l := leaf{corner: corner{n.X, n.Y, n.Length, n.Width}, use: n.Use}
	if n.Use == cutplan.Part {
		l.blank, l.turned = n.Blank, n.Turned
	}
	return l
}

// done checks that the pieces of a layout lie on the bench, each as what it is, and nothing
// else.
func (b *bench) done(p *cutplan.Plan, l cutplan.Layout) error {
	open := map[leaf]bool{}
	var note func(n cutplan.Node)
	note = func(n cutplan.Node) {
		if n.Use != cutplan.Split {
			open[leafOf(n)] = true
		}
		for _, c := range n.Children {
			note(c)
		}
	}
	note(l.Root)
	for at, is := range b.lying {
		if is.named == nil || is.named.Use == cutplan.Split {
			return fmt.Errorf("in the end the %v, %v, is not what was planned", at, is.size())
		}
		of := leafOf(*is.named)
		if !open[of] {
			return fmt.Errorf("the layout has no such piece as the %v", at)
		}
		delete(open, of)
		if of.use != cutplan.Part {
			continue
		}
		blank := p.Bill[of.blank]
		want := cutplan.Size{Length: blank.Length, Width: blank.Width}
		if of.turned {
			want.Length, want.Width = want.Width, want.Length
		}
		if is.size() != want {
			return fmt.Errorf("blank %s is %v, wanted is %v", blank.Mark, is.size(), want)
		}
	}
	if len(open) > 0 {
		return fmt.Errorf("%d pieces were not cut", len(open))
	}
	return nil
}
