package cutplan

import "sawbill/stock"

// Side is a side of a piece as it lies in its layout.
type Side int

const (
	Near Side = iota // the reference edge of a rip, the reference end of a crosscut
	Far
)

// Opposite returns the other side.
func (s Side) Opposite() Side { return 1 - s }

// Row is a line of the steps or the setups: cuts in one direction at one setting, made one
// after another. The pages print rows, and package simulate saws them.
type Row struct {
	Round int // the depth of the pieces in their trees, as [Position.Round]
	Cut   Cut
	Guide Guide
	Trim  bool
	// Waste is the side of the line on which the kerf lies. The piece that the row is after
	// lies on the other side. Near only where a reference edge or end is trimmed.
	Waste Side
	// Setting is the distance from the guided side, which is opposite to Waste, to the
	// line. If SawOff, it is what falls off the waste side, kerf included: then the guided
	// side is not sawn yet, and nothing can be set from it.
	Setting stock.Length
	SawOff  bool
	// Stays: the row before left fence or stop at this setting.
	Stays  bool
	Pieces []Held // in order
	// Count is the number of cuts. In the setups each counts as often as its layout is cut.
	Count int
	// Off comes off alike at every cut: its size and, if known, what it is. The kept piece
	// of trim that is trimmed further has no node and, in the setups, no size.
	Off Freed
}

// Held is a piece in hand with the cuts that a row makes in it. What a cut leaves is in
// hand for the next cut.
type Held struct {
	Layout int // index into Plan.Layouts
	// By is the cut that freed the piece, 0 for the whole stock. Rest: it is the far side
	// of that cut, not the piece that came off.
	By   int
	Rest bool
	// Stock: it is the stock itself, whole or trimmed so far.
	Stock bool
	Size  Size // before the first cut
	Cuts  []RowCut
}

// RowCut is one cut of a piece in hand.
type RowCut struct {
	Number int // of its layout
	// Mark is the distance of the line from the reference edge or end of the piece before
	// all cuts in this direction, Here from that of the piece that the row has in hand. All
	// marks of a piece are from one side, so no rounding adds up. Trim has no marks.
	Mark, Here stock.Length
	Off, Left  Freed
}

// Freed is a piece that a cut frees.
type Freed struct {
	Size Size // zero if nothing is left, or only the scrap of trim
	// Node is what the piece is in its layout; nil if it is cut further in the same
	// direction, or trimmed further.
	Node *Node
}

// Line returns the place of cut s of l: the line to saw to, along Y for a rip and along X
// for a crosscut, and the side of the line on which the kerf lies.
func (p *Plan) Line(l Layout, s Step) (at stock.Length, kerf Side) {
	at, start := s.Y, l.Root.Y
	if s.Cut == Crosscut {
		at, start = s.X, l.Root.X
	}
	if s.Trim && at <= start {
		return start, Near
	}
	return at, Far
}

// Last returns the last cut of h.
func (h Held) Last() RowCut { return h.Cuts[len(h.Cuts)-1] }

// rower makes the rows of one layout's steps.
type rower struct {
	plan   *Plan
	layout int
	trims  int        // trim cuts
	sawn   [2][2]bool // by direction and side: no trim remains to be cut off
}

func (p *Plan) rower(layout int, steps []Step) rower {
	w := rower{plan: p, layout: layout}
	t := p.Layouts[layout].Stock.Trims()
	w.sawn = [2][2]bool{Rip: {t.NearEdge == 0, t.FarEdge == 0}, Crosscut: {t.NearEnd == 0, t.FarEnd == 0}}
	for _, s := range steps {
		if s.Trim {
			w.trims++
		}
	}
	return w
}

// single returns step s as a row of its own. The steps of a layout come in their order.
func (w *rower) single(s Step) Row {
	l := w.plan.Layouts[w.layout]
	row := Row{Round: s.Level, Cut: s.Cut, Guide: s.Guide, Trim: s.Trim, Waste: Far, Setting: s.Setting, Count: 1}
	cut := RowCut{Number: s.Number, Mark: s.Mark, Here: s.Setting, Off: Freed{s.Off, only(s.OffNode)}, Left: Freed{s.Left, only(s.LeftNode)}}
	if s.Trim {
		_, row.Waste = w.plan.Line(l, s)
		cut.Mark, cut.Here, cut.Left = 0, 0, Freed{}
		if !w.sawn[s.Cut][row.Waste.Opposite()] {
			row.SawOff = true
			row.Setting = along(s.Cut, Node{Length: s.Piece.Length, Width: s.Piece.Width}) - s.Setting
		}
		w.sawn[s.Cut][row.Waste] = true
		if s.Number == w.trims {
			cut.Off.Node = only(&l.Root)
		}
	}
	row.Off = cut.Off
	row.Pieces = []Held{{
		Layout: w.layout, By: s.InHand, Rest: s.Remainder, Stock: s.InHand <= w.trims && !s.Remainder,
		Size: s.Piece, Cuts: []RowCut{cut},
	}}
	return row
}

// only returns the one piece in n if no cut is needed to free it, else n.
func only(n *Node) *Node {
	for n != nil && n.Use == Split && len(n.Children) == 1 && n.Children[0].Length == n.Length && n.Children[0].Width == n.Width {
		n = &n.Children[0]
	}
	return n
}

// sameSaw reports whether a and b are cut at one setting in one way.
func (a Row) sameSaw(b Row) bool {
	return a.Cut == b.Cut && a.Guide == b.Guide && a.Trim == b.Trim && a.Waste == b.Waste && a.Setting == b.Setting && a.SawOff == b.SawOff
}

// stays reports whether fence or stop stays where it is from a to b.
func (a Row) stays(b Row) bool {
	return a.Guide != Marked && a.Guide == b.Guide && a.Setting == b.Setting && !a.SawOff && !b.SawOff
}

// alike reports whether two freed pieces are told in the same words.
func (f Freed) alike(g Freed) bool {
	if f.Size != g.Size || (f.Node == nil) != (g.Node == nil) {
		return false
	}
	return f.Node == nil || f.Node.Use == g.Node.Use && f.Node.Blank == g.Node.Blank && f.Node.Turned == g.Node.Turned
}

// goesOn reports whether the first piece of b is what the last cut of h leaves, and is cut
// further along.
func (h Held) goesOn(b Held) bool {
	last := h.Last()
	return b.Layout == h.Layout && b.By == last.Number && b.Rest && last.Left.Node == nil
}

// extend adds the first cut of b to h, from which its marks are then measured.
func (h *Held) extend(b Held) {
	first, c := h.Cuts[0], b.Cuts[0]
	c.Here = first.Here + c.Mark - first.Mark
	h.Cuts = append(h.Cuts, c)
}
