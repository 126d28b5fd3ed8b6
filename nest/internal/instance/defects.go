package instance

import "slices"

// Rect is a rectangle within a piece of stock, from its reference corner. It ends before X1 and Y1.
type Rect struct{ X0, Y0, X1, Y1 int64 }

// Checked reports whether a layout that obeys the rules cut by cut may still be forbidden: its
// stock has defects, or the cuts within a run may be a level too many, or the wrong first cut.
func (in *Instance) Checked(stock int) bool {
	st := in.Stock[stock]
	return len(st.Defects) > 0 || (in.Stages < NoLimit || st.FirstCut != None) && slices.ContainsFunc(in.Kinds, func(k Kind) bool { return k.Run != None })
}

// AnyChecked reports whether any stock is.
func (in *Instance) AnyChecked() bool {
	for s := range in.Stock {
		if in.Checked(s) {
			return true
		}
	}
	return false
}

// maxArranging limits the places that Arrange tries for the pieces of one layout.
const maxArranging = 1 << 8

// Arrange puts the pieces of a layout in normal form in order and moves them apart, so that its
// parts keep clear of the defects. Leftovers fill the gaps, and are cut off beside a defect
// where that leaves something to keep. The cuts may pass a defect. It is not ok if it finds no
// order; there may be one.
//
// A piece begins where the one before it ends, or where a defect ends. Depth first, the pieces
// that need no gap come first.
func (in *Instance) Arrange(stock int, root Piece) (arranged Piece, ok bool) {
	if len(in.Stock[stock].Defects) == 0 {
		return root, true
	}
	a := arranger{in: in, defects: in.Stock[stock].Defects, left: maxArranging}
	return a.piece(root, 0, 0)
}

type arranger struct {
	in      *Instance
	defects []Rect
	left    int // places to try
}

// meets reports whether a defect lies within a rectangle, the kerf beyond its far sides left out.
func (a *arranger) meets(x, y, l, w int64) bool {
	for _, d := range a.defects {
		if x < d.X1 && x+l-a.in.Kerf > d.X0 && y < d.Y1 && y+w-a.in.Kerf > d.Y0 {
			return true
		}
	}
	return false
}

// piece arranges p at a place.
func (a *arranger) piece(p Piece, x, y int64) (arranged Piece, ok bool) {
	switch {
	case p.isLeftover() || !a.meets(x, y, p.L, p.W):
		return p, true
	case len(p.Children) == 0:
		return p, false
	}
	r := row{arranger: a, of: p, x: x, y: y}
	var room int64
	for _, c := range p.Children {
		if c.isLeftover() {
			room += r.size(c)
		} else {
			r.rest = append(r.rest, c)
		}
	}
	if !r.place(0, room) {
		return p, false
	}
	p.Children = r.placed
	return p, true
}

// row is a split whose children are being placed one after another.
type row struct {
	*arranger
	of     Piece
	x, y   int64
	rest   []Piece // not placed yet
	placed []Piece // with the gaps
}

func (r *row) size(p Piece) int64 {
	if r.of.Dir == Crosscut {
		return p.L
	}
	return p.W
}

func (r *row) sum(pieces []Piece) (sum int64) {
	for _, p := range pieces {
		sum += r.size(p)
	}
	return sum
}

// at returns the place of a child that begins so far along the row.
func (r *row) at(along int64) (x, y int64) {
	if r.of.Dir == Crosscut {
		return r.x + along, r.y
	}
	return r.x, r.y + along
}

// place places the rest from so far along the row on, with room for gaps.
func (r *row) place(along, room int64) bool {
	if len(r.rest) == 0 {
		r.gap(along, room)
		return true
	}
	if x, y := r.at(along); !r.meets(x, y, r.x+r.of.L-x, r.y+r.of.W-y) {
		r.placed = append(r.placed, r.rest...)
		r.gap(along+r.sum(r.rest), room)
		return true
	}
	for _, gap := range r.gaps(along, room) {
		for i, c := range r.rest {
			if i > 0 && ComparePieces(c, r.rest[i-1]) == 0 {
				continue
			}
			if r.left--; r.left < 0 {
				return false
			}
			x, y := r.at(along + gap)
			arranged, ok := r.piece(c, x, y)
			if !ok {
				continue
			}
			rest, placed := r.rest, len(r.placed)
			r.gap(along, gap)
			r.placed = append(r.placed, arranged)
			if r.rest = rest[1:]; i > 0 {
				r.rest = slices.Concat(rest[:i], rest[i+1:])
			}
			if r.place(along+gap+r.size(c), room-gap) {
				return true
			}
			r.rest, r.placed = rest, r.placed[:placed]
		}
	}
	return false
}

// gaps lists the gaps to try before the next child, in ascending order: none, or up to the end
// of a defect. A gap in the middle is a piece of its own, wider than the kerf.
func (r *row) gaps(along, room int64) []int64 {
	list := []int64{0}
	for _, d := range r.defects {
		end := d.X1 - r.x
		if r.of.Dir == Rip {
			end = d.Y1 - r.y
		}
		if gap := max(end-along, r.in.Kerf+1); end > along && gap <= room {
			list = append(list, gap)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// gap appends leftovers of a size in all: one, or several if a part of it that is clear of
// defects is worth keeping.
func (r *row) gap(along, size int64) {
	for size > 0 {
		n := r.clear(along, size)
		r.placed = append(r.placed, r.leftover(n))
		along, size = along+n, size-n
	}
}

func (r *row) leftover(size int64) Piece {
	if r.of.Dir == Crosscut {
		return Piece{L: size, W: r.of.W, Kind: Leftover}
	}
	return Piece{L: r.of.L, W: size, Kind: Leftover}
}

// clear returns how much of a gap to cut off as the next leftover: up to a defect, or past all
// defects that touch, if what is clear is worth keeping; else all.
func (r *row) clear(along, size int64) int64 {
	worth := func(from, size int64) bool {
		x, y := r.at(from)
		p := r.leftover(size)
		return p.L >= r.in.KeepLength && p.W >= r.in.KeepWidth && !r.meets(x, y, p.L, p.W)
	}
	var ends []int64
	for _, d := range r.defects {
		from, to := d.X0-r.x, d.X1-r.x
		if r.of.Dir == Rip {
			from, to = d.Y0-r.y, d.Y1-r.y
		}
		ends = append(ends, from-along, to-along)
	}
	slices.Sort(ends)
	for _, n := range slices.Backward(ends) { // as much as is clear from here
		if n > 0 && n < size && size-n > r.in.Kerf && worth(along, n) {
			if worth(along, size) {
				return size
			}
			return n
		}
	}
	for i, n := range ends { // waste up to where something clear begins
		for _, m := range append(slices.Clone(ends[i+1:]), size) {
			if n > r.in.Kerf && m > n && m <= size && worth(along+n, m-n) {
				return n
			}
		}
	}
	return size
}

// AllowsPlan reports whether every layout of a plan is allowed in stock that is checked.
func (in *Instance) AllowsPlan(p *Plan) bool {
	for _, l := range p.Layouts {
		if in.Checked(l.Stock) && !in.Allows(l.Stock, l.Root) {
			return false
		}
	}
	return true
}

// DropForbidden returns p without the layouts that stock that is checked does not allow. Their
// parts are missing.
func (in *Instance) DropForbidden(p *Plan) *Plan {
	if in.AllowsPlan(p) {
		return p
	}
	kept := &Plan{Missing: slices.Clone(p.Missing), Cost: p.Cost}
	for _, l := range p.Layouts {
		if !in.Checked(l.Stock) || in.Allows(l.Stock, l.Root) {
			kept.Layouts = append(kept.Layouts, l)
			continue
		}
		l.Root.CountParts(kept.Missing)
		kept.Cost = kept.Cost.Plus(in.CostOf(l.Stock), -1)
	}
	return kept
}
