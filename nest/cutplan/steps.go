package cutplan

import "sawbill/stock"

// Step is one cut.
type Step struct {
	Number int // from 1 within its layout
	// Level is the depth of the piece in hand in the layout's tree: 0 for the trim, 1 for
	// the stock itself.
	Level int
	// InHand is the number of the step that freed the piece in hand; 0 is the uncut sheet
	// or board. Remainder: the piece is the far side of that step, not the piece that came
	// off at the fence.
	InHand    int
	Remainder bool
	Cut       Cut
	Guide     Guide
	// Setting is the distance from fence or stop to the blade: the size of the piece that
	// comes off there.
	Setting stock.Length
	// Mark is the distance of the cut's near side from the reference edge or end of the
	// piece before this run of cuts. It includes the kerfs between, and all marks are
	// measured from the same place, so errors do not accumulate. The blade cuts beyond the
	// mark. Mark is 0 for trim.
	Mark stock.Length
	// Piece is the size in hand before the cut. Off comes off at the fence or stop. Left
	// remains beyond the kerf, and is zero if the blade runs off the edge.
	Piece, Off, Left Size
	// Trim cuts square the stock's own edges and ends: the piece at the fence is kept, the
	// rest is scrap.
	Trim bool
	// OffNode is the node that came off. LeftNode is the node that remains if no cut in
	// this direction follows. Both are nil otherwise, and for trim cuts.
	OffNode, LeftNode *Node
	// X, Y is the start of the cut's near side. Run is its length, along X for a rip,
	// along Y for a crosscut. The kerf lies beyond it.
	X, Y, Run stock.Length
}

// Size is a rectangle in hand.
type Size struct {
	Length, Width stock.Length
}

// Steps lists the cuts of l in an order in which they can be made: the trim, then level by
// level of the tree. Within a level equal settings follow one another if the order allows.
// A printed layout keeps its printed steps, order and numbers.
func (p *Plan) Steps(l Layout) []Step {
	if l.Printed != nil {
		return l.Printed
	}
	return p.steps(l, trimOrder)
}

// FormerSteps lists the cuts of l as programs did whose plan files keep no steps.
func (p *Plan) FormerSteps(l Layout) []Step { return p.steps(l, formerTrimOrder(l.Stock.Kind)) }

func (p *Plan) steps(l Layout, trims []trimmedSide) []Step {
	w := work{saw: p.Job.Saw}
	first := w.trim(l.Stock, trims)
	level := w.open(nil, l.Root, first, false)
	for depth := 1; len(level) > 0; depth++ {
		from := len(w.steps)
		level = w.cutLevel(level)
		for i := range w.steps[from:] {
			w.steps[from+i].Level = depth
		}
	}
	return w.steps
}

// work collects the steps.
type work struct {
	saw   stock.Saw
	steps []Step
}

// splitting is a split on the bench: next is the child that comes off next.
type splitting struct {
	node      Node
	next      int
	inHand    int
	remainder bool
}

// open puts n on the bench if it is to be divided.
func (w *work) open(level []splitting, n Node, inHand int, remainder bool) []splitting {
	if n = *only(&n); n.Use == Split {
		level = append(level, splitting{node: n, inHand: inHand, remainder: remainder})
	}
	return level
}

// cutLevel divides all splits of one level and returns the splits of the next.
func (w *work) cutLevel(level []splitting) (below []splitting) {
	for {
		at := widest(level)
		if at < 0 {
			break
		}
		setting := level[at].setting()
		for i := range level {
			for level[i].cuttable() && level[i].setting() == setting {
				below = w.cut(&level[i], below)
			}
		}
	}
	return below
}

// widest returns the index of the first split whose next cut has the widest setting; -1 if
// no cut is left.
func widest(level []splitting) int {
	at := -1
	for i := range level {
		if level[i].cuttable() && (at < 0 || level[i].setting() > level[at].setting()) {
			at = i
		}
	}
	return at
}

// cuttable reports whether another cut is needed: between children, and after the last if
// the split is a little larger.
func (s *splitting) cuttable() bool {
	last := len(s.node.Children) - 1
	return s.next < last || s.next == last && s.left() > 0
}

func (s *splitting) setting() stock.Length { return along(s.node.Cut, s.node.Children[s.next]) }

// left returns the size of the piece in hand beyond the next child.
func (s *splitting) left() stock.Length {
	c := s.node.Children[s.next]
	if s.node.Cut == Rip {
		return s.node.Y + s.node.Width - c.Y - c.Width
	}
	return s.node.X + s.node.Length - c.X - c.Length
}

// cut takes the next child off s. Pieces to divide further go to the bench of the next
// level.
func (w *work) cut(s *splitting, below []splitting) []splitting {
	n, c := s.node, s.node.Children[s.next]
	left := max(0, s.left()-w.saw.Kerf)
	st := Step{
		Number: len(w.steps) + 1, InHand: s.inHand, Remainder: s.remainder,
		Cut: n.Cut, Setting: s.setting(),
		Off: Size{c.Length, c.Width}, OffNode: &c,
	}
	if n.Cut == Rip {
		st.Piece = Size{n.Length, c.Width + s.left()}
		st.Left = Size{n.Length, left}
		st.X, st.Y, st.Run = n.X, c.Y+c.Width, n.Length
		st.Mark = st.Y - n.Y
	} else {
		st.Piece = Size{c.Length + s.left(), n.Width}
		st.Left = Size{left, n.Width}
		st.X, st.Y, st.Run = c.X+c.Length, n.Y, n.Width
		st.Mark = st.X - n.X
	}
	if left == 0 {
		st.Left = Size{}
	}
	st.Guide = w.guide(st)
	below = w.open(below, c, st.Number, false)
	s.next++
	s.inHand, s.remainder = st.Number, true
	if s.next == len(n.Children)-1 && !s.cuttable() {
		last := n.Children[s.next]
		st.LeftNode = &last
		below = w.open(below, last, st.Number, true)
	}
	w.steps = append(w.steps, st)
	return below
}

func along(c Cut, n Node) stock.Length {
	if c == Rip {
		return n.Width
	}
	return n.Length
}
