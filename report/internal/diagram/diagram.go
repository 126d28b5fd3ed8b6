// Package diagram draws one layout as a cutting diagram: the sheet or board to
// scale, every part with its mark, name and size, offcuts to keep, waste
// hatched, and every cut numbered where it starts.
//
// It computes no cut. Where the pieces lie comes from the layout's nodes, where
// and in which order to saw from its steps.
//
// # How to read one
//
// The stock's length lies across the paper. The reference corner is at the
// lower left: all settings are measured from the edges that meet there, or from the
// edge sawn last. An arrow runs from the edge that guides a piece to the cut, with the
// cut's number and its setting (arrow.go); a bar at its foot is the fence, a square a stop,
// a ring a line that is measured. A tick on a cut shows the side of the kerf (kerf.go).
// Sizes of parts stand along their edges (edges.go). Widths and kinds of lines follow
// drafting practice (package drawing, pen.go); nothing depends on color.
//
// Boards (board.go) have running marks below them, each crosscut with its number and its
// distance from the reference end, and rips on the left. A board with defects has a map
// of its own (boardmap.go).
package diagram

import (
	"math"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
	"sawbill/stock"
)

// View is what one diagram shows.
type View struct {
	Layout cutplan.Layout
	Steps  []cutplan.Step // in order; their numbers are drawn
	Rows   []cutplan.Row  // of them: settings of trim cuts, and sides of the kerf
	Kerf   stock.Length
	Bill   []cutplan.Blank
	Ruler  stock.Ruler
	// Name is what to write on an offcut.
	Name func(*cutplan.Node) string
	// Lie is how a part lies in the layout; may be nil.
	Lie func(*cutplan.Node) Lie
	// Brief leaves out settings and names of parts: for a narrow screen, where the steps
	// stand below. Of boards it changes nothing.
	Brief bool
}

// Lie is how a part lies, seen with its good face up.
type Lie struct {
	Edged   edging.Sides
	Outside bool // that face is its outside: it has an inside
}

func (v View) lie(n *cutplan.Node) Lie {
	if v.Lie == nil || n.Use != cutplan.Part {
		return Lie{}
	}
	return v.Lie(n)
}

// Edging is drawn within the piece, in mm from its edge; so much is then taken of its room.
const (
	edgedOff  = 1.1
	edgedRoom = 1.6
)

// edging is the sign on a piece, and where it lies: close to the edges of a narrow one.
func (v View) edging(n *cutplan.Node, piece drawing.Rect) (edging.Sides, float64) {
	return v.lie(n).Edged, -min(edgedOff, piece.W/4, piece.H/4)
}

// Picture is a diagram, drawn as large as its room allows.
type Picture struct {
	drawing.Drawing
	Scale int // n of "1:n"
	// Short are the blanks, as indices into the bill and in its order, of which
	// a label had to leave something out: they belong into a key.
	Short []int
	// Rows are the same as Drawing in rows below one another, where a page may
	// break; nil for a sheet.
	Rows []drawing.Drawing
	// Unnamed counts the pieces and cuts that found no room for any label.
	Unnamed int
	// Stock is where the whole stock lies in the drawing, untrimmed.
	Stock drawing.Rect
}

// Room around the drawn stock, in mm.
const (
	sideLane      = 6.0 // left, at least: the tags of the rips that start there
	lowLane       = 4.0 // below, at least: the tags of the crosscuts that start there
	dimensionLane = 7.5 // beyond it: the stock's own size
	headLane      = 7.0 // above: grain and scale
	sideMargin    = 2.4 // right of the stock: ticks, and the teeth of the seller's cuts
	noteLane      = 4.6 // above: what is said of the seller's cuts
	dimensionSize = 9.0 // pt
	legendSize    = drawing.SmallestSize
)

// lanes is the room for labels that are led out, in mm.
type lanes struct{ top, right, left, below float64 }

// New draws v within width and height, in mm. The picture is as wide as it was
// allowed to be, and as high as it needs.
func New(v View, width, height float64) Picture {
	if v.Layout.Stock.Kind == stock.Board {
		return newBoard(v, width)
	}
	var reserved lanes
	for {
		f := newFrame(v, width, height, reserved)
		labels := place(v, f)
		if labels.need.top <= reserved.top && labels.need.right <= reserved.right && labels.need.left <= f.lanes.left && labels.need.below <= f.lanes.below {
			return draw(v, f, labels)
		}
		// Lanes only grow, up to the tags' and callouts' widest, so this ends. Those for
		// callouts follow when the others are settled: what is led out depends on them.
		if settled := labels.need.left <= f.lanes.left && labels.need.below <= f.lanes.below; settled {
			reserved.top = max(reserved.top, labels.need.top)
			reserved.right = max(reserved.right, labels.need.right)
		}
		reserved.left = max(reserved.left, labels.need.left)
		reserved.below = max(reserved.below, labels.need.below)
	}
}

// frame maps the stock onto the paper.
type frame struct {
	scale int
	// stock is the outline of the untrimmed piece.
	stock drawing.Rect
	// x0, y0 is its corner on the stock, where a piece of it is drawn.
	x0, y0 stock.Length
	// picture is all the paper there is.
	picture drawing.Rect
	lanes   lanes
}

func newFrame(v View, width, height float64, reserved lanes) frame {
	s := v.Layout.Stock
	reserved.left = max(reserved.left, sideLane)
	reserved.below = max(reserved.below, lowLane)
	head := headLane
	if sellerNote(s) != "" {
		head += noteLane
	}
	left := reserved.left + dimensionLane
	wide := width - left - sideMargin - reserved.right
	high := height - head - reserved.top - reserved.below - dimensionLane
	scale := max(1,
		int(math.Ceil(mm(s.Length)/wide)),
		int(math.Ceil(mm(s.Width)/max(high, 1))))
	f := frame{scale: scale, lanes: reserved}
	f.stock = drawing.Rect{
		X: left,
		Y: head + reserved.top,
		W: mm(s.Length) / float64(scale),
		H: mm(s.Width) / float64(scale),
	}
	f.picture = drawing.Rect{W: width, H: f.stock.Bottom() + reserved.below + dimensionLane}
	return f
}

// mm converts for drawing only.
func mm(l stock.Length) float64 { return float64(l) / float64(stock.Millimeter) }

// x and y are where a length from the reference corner lies on the paper.
func (f frame) x(l stock.Length) float64 { return f.stock.X + mm(l-f.x0)/float64(f.scale) }
func (f frame) y(l stock.Length) float64 { return f.stock.Bottom() - mm(l-f.y0)/float64(f.scale) }

// rect is where a node lies on the paper.
func (f frame) rect(n *cutplan.Node) drawing.Rect {
	x, y := f.x(n.X), f.y(n.Y+n.Width)
	return drawing.Rect{X: x, Y: y, W: f.x(n.X+n.Length) - x, H: f.y(n.Y) - y}
}

// cutLine is the middle of a step's kerf, from where the cut starts. A blade
// that runs half off the stock is drawn on its edge.
func (f frame) cutLine(s cutplan.Step, kerf stock.Length) (from, to drawing.Point) {
	if s.Cut == cutplan.Rip {
		y := min(max(f.y(s.Y+kerf/2), f.stock.Y), f.stock.Bottom())
		return drawing.Point{X: f.x(s.X), Y: y}, drawing.Point{X: f.x(s.X + s.Run), Y: y}
	}
	x := min(max(f.x(s.X+kerf/2), f.stock.X), f.stock.Right())
	return drawing.Point{X: x, Y: f.y(s.Y)}, drawing.Point{X: x, Y: f.y(s.Y + s.Run)}
}

// leaves calls visit for every piece that is not divided further, with its parent.
func leaves(n, parent *cutplan.Node, visit func(leaf, parent *cutplan.Node)) {
	if n.Use != cutplan.Split {
		visit(n, parent)
		return
	}
	for i := range n.Children {
		leaves(&n.Children[i], n, visit)
	}
}
