package cutplan

import "sawbill/stock"

// Step is one cut.
type Step struct {
	Number int // from 1 within its layout
	// Level is how deep in the layout's tree the piece in hand is divided: 1 is
	// the stock itself, 0 its trim.
	Level int
	// InHand is the number of the step that freed the piece in hand; 0 is the
	// whole sheet or board. Rest tells what remained of that step from the
	// piece that came off at the fence.
	InHand    int
	Remainder bool
	Cut       Cut
	Guide     Guide
	// Setting is the distance from fence or stop to the blade: the size of the
	// piece that comes off there.
	Setting stock.Length
	// Mark is how far the cut's near side lies from the reference edge or end of
	// the piece as it came to hand, before the cuts that follow one another
	// along it: the kerfs between are counted in, so marks that are all measured
	// from there do not add up errors. The blade cuts beyond the mark. It is 0
	// for trim.
	Mark stock.Length
	// Piece is the size in hand before the cut, Off what comes off at the
	// fence or stop, Left what remains beyond the kerf: zero where the blade
	// runs off the edge.
	Piece, Off, Left Size
	// Trim cuts square the stock's own edges and ends: what comes off at the
	// fence is kept, what is left is scrap.
	Trim bool
	// OffNode is what came off, LeftNode what remains if it is cut no further
	// in this direction; nil otherwise, and for trim cuts.
	OffNode, LeftNode *Node
	// X, Y is where the cut's near side starts and Run how far it goes, along
	// X for a rip, along Y for a crosscut. The kerf lies beyond it.
	X, Y, Run stock.Length
}

// Size is a rectangle in hand.
type Size struct {
	Length, Width stock.Length
}

// Steps lists the cuts of l in an order in which they can be made: the trim,
// then level by level of the tree. Within a level cuts at the same setting
// follow one another where the order allows. A layout that was printed keeps the steps,
// the order and the numbers that were printed.
func (p *Plan) Steps(l Layout) []Step {
	if l.Printed != nil {
		return l.Printed
	}
	w := work{saw: p.Job.Saw}
	first := w.trim(l.Stock)
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

// work is the list of steps as it grows.
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
	if n.Use == Split {
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

// widest is the index of the split whose next cut has the widest setting, the
// first of them; -1 if no cut is left.
func widest(level []splitting) int {
	at := -1
	for i := range level {
		if level[i].cuttable() && (at < 0 || level[i].setting() > level[at].setting()) {
			at = i
		}
	}
	return at
}

// cuttable reports whether another cut is to be made: between children, and
// after the last where the split is a little larger.
func (s *splitting) cuttable() bool {
	last := len(s.node.Children) - 1
	return s.next < last || s.next == last && s.left() > 0
}

func (s *splitting) setting() stock.Length { return along(s.node.Cut, s.node.Children[s.next]) }

// left is what the piece in hand measures beyond the next child.
func (s *splitting) left() stock.Length {
	c := s.node.Children[s.next]
	if s.node.Cut == Rip {
		return s.node.Y + s.node.Width - c.Y - c.Width
	}
	return s.node.X + s.node.Length - c.X - c.Length
}

// cut takes the next child off s and puts what is to be divided further on
// the bench of the next level.
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
