// Package elevation draws a case: from the front, from the right, and cut open
// upright and level, to scale.
//
// It knows boxes along the axes only, which is what the pieces of a case are
// (casework.Solid). A view projects them onto a plane (project.go) and finds which
// stretches of their edges can be seen (edges.go); everything up to there is in
// exact lengths. Dimensions stand outside (dimension.go), the marks of parts
// within or at a leader (mark.go).
//
// The views stand to each other as in third-angle projection (ISO 5456-2, from
// memory): what is seen from the right stands on the right, with its front towards
// the front view.
package elevation

import (
	"math"
	"strconv"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// View is a way to look at a case.
type View int

const (
	Front   View = iota
	Side         // from the right
	Upright      // cut through the first bay, seen from the right
	Level        // cut through the first opening, seen from above
)

// Views are all of them, in the order of the page.
var Views = []View{Front, Side, Upright, Level}

// Name is short enough for a file: "front".
func (v View) Name() string { return [...]string{"front", "side", "section", "plan"}[v] }

func (v View) caption() string {
	return [...]string{"front", "side", "section 1-1", "section 2-2"}[v]
}

// Subject is the case that is drawn.
type Subject struct {
	*casework.Case
	Marks []string // of its parts; nil: none are written
	Ruler stock.Ruler
}

// Drawable reports whether there is anything to draw.
func (s Subject) Drawable() bool {
	size := s.extent().size()
	return size[casework.X] > 0 && size[casework.Y] > 0 && size[casework.Z] > 0
}

// span is a box that all lies in.
type span struct{ from, to casework.Point }

func (s span) size() casework.Point {
	var p casework.Point
	for a := range p {
		p[a] = s.to[a] - s.from[a]
	}
	return p
}

// extent is what all pieces take together.
func (s Subject) extent() span {
	var all span
	for i, piece := range s.Solids {
		if i == 0 {
			all = span{piece.At, piece.End()}
		}
		for a := range piece.At {
			all.from[a] = min(all.from[a], piece.At[a])
			all.to[a] = max(all.to[a], piece.End()[a])
		}
	}
	return all
}

// plane is where a section cuts: in the middle of the first bay, or in its first
// opening where no level panel is in the way. Without openings it is the middle of
// the case.
func (s Subject) plane(axis casework.Axis) stock.Length {
	all := s.extent()
	from, size := all.from[axis], all.size()[axis]
	if len(s.Openings) > 0 {
		o := s.Openings[0]
		from, size = o.At[axis], o.Width
		if axis == casework.Z {
			size = o.Height
		}
	}
	for _, eighths := range []stock.Length{4, 5, 3, 6, 2, 7, 1} {
		at := from + size*eighths/8
		if !s.alongPanel(axis, at) && !s.besideDoors(axis, at) {
			return at
		}
	}
	return from + size/2
}

// besideDoors reports whether an upright plane misses the doors of the first bay, as
// it does in the gap between two.
func (s Subject) besideDoors(axis casework.Axis, at stock.Length) bool {
	doors, cut := false, false
	for _, piece := range s.Solids {
		if axis == casework.X && piece.Role == "door" && s.bayOf(piece) == 1 {
			doors = true
			cut = cut || piece.At[axis] < at && at < piece.End()[axis]
		}
	}
	return doors && !cut
}

// alongPanel reports whether a plane lies within the thickness of a panel.
func (s Subject) alongPanel(axis casework.Axis, at stock.Length) bool {
	for _, piece := range s.Solids {
		if piece.Through == axis && piece.At[axis] <= at && at <= piece.End()[axis] {
			return true
		}
	}
	return false
}

// prospect is all of a view that does not depend on its scale.
type prospect struct {
	Subject
	view View
	picture
	chains []chain
}

func (s Subject) look(v View) prospect { return prospect{s, v, s.project(v), s.chains(v)} }

func (p prospect) frame(scale int) *frame { return newFrame(p.picture, p.chains, p.view, scale) }

// size is how large the drawing will be, which its frame tells.
func (p prospect) size(scale int) drawing.Drawing {
	d := p.frame(scale).d
	return drawing.Drawing{Width: d.Width, Height: d.Height}
}

// Draw makes a view at 1:scale, with its dimensions, as large as it needs.
func (s Subject) Draw(v View, scale int) drawing.Drawing { return s.look(v).draw(scale) }

func (p prospect) draw(scale int) drawing.Drawing {
	f := p.frame(scale)
	f.drawCuts(p.picture)
	f.drawEdges(p.picture)
	if p.view == Front {
		f.drawHandles(p.handles())
	}
	f.drawChains()
	if p.view == Front { // their names break the lines of dimensions
		f.drawPlane(p.picture, p.plane(casework.X), "1", true)
		f.drawPlane(p.picture, p.plane(casework.Z), "2", false)
	}
	f.writeMarks(p.picture, p.Marks)
	return f.d
}

// Fit draws a view as large as it goes into a room, in mm, and tells the scale.
func (s Subject) Fit(v View, width, height float64) (drawing.Drawing, int) {
	p := s.look(v)
	scale := fitting(s.leastScale(width, height), width, height, p.size)
	return p.draw(scale), scale
}

// Sheet draws all views in one picture.
func (s Subject) Sheet(width, height float64) (drawing.Drawing, int) {
	looks := make([]prospect, len(Views))
	for i, v := range Views {
		looks[i] = s.look(v)
	}
	sheet := func(make func(p prospect) drawing.Drawing) (sheet drawing.Drawing) {
		var drawn []drawing.Drawing
		for _, p := range looks {
			drawn = append(drawn, make(p))
		}
		for _, rows := range arrangements {
			sheet = arrange(drawn, rows)
			if sheet.Width <= width && sheet.Height <= height {
				break
			}
		}
		return sheet
	}
	scale := fitting(s.leastScale(width, height), width, height, func(scale int) drawing.Drawing {
		return sheet(func(p prospect) drawing.Drawing { return p.size(scale) })
	})
	return sheet(func(p prospect) drawing.Drawing { return p.draw(scale) }), scale
}

// arrangements are rows of views: for a tall case, for a deep one, for a wide one.
var arrangements = [][][]View{
	{{Front, Side, Upright}, {Level}},
	{{Front, Side}, {Level, Upright}},
	{{Front}, {Side, Upright}, {Level}},
}

// leastScale is the scale at which the case alone would fill the room.
func (s Subject) leastScale(width, height float64) int {
	size := s.extent().size()
	return max(1, int(math.Ceil(mm(size[casework.X])/width)), int(math.Ceil(mm(size[casework.Z])/height)))
}

// mostScale ends the search for one that fits; nothing built is drawn so small.
const mostScale = 1000

// fitting is the largest scale, from one on, at which the size of a drawing is within a
// room. Only sizes are tried: a large case takes long to draw.
func fitting(scale int, width, height float64, size func(scale int) drawing.Drawing) int {
	for ; scale < mostScale; scale++ {
		if d := size(scale); d.Width <= width && d.Height <= height {
			break
		}
	}
	return scale
}

// between is the paper between two views, mm.
const between = 5.0

// arrange puts views in rows. Those of the longest rows stand in columns.
func arrange(drawn []drawing.Drawing, rows [][]View) drawing.Drawing {
	longest := 0
	for _, row := range rows {
		longest = max(longest, len(row))
	}
	columns := make([]float64, longest)
	for _, row := range rows {
		for i, v := range row {
			if len(row) == longest {
				columns[i] = max(columns[i], drawn[v].Width)
			}
		}
	}
	var all drawing.Drawing
	for _, row := range rows {
		x, high := 0.0, 0.0
		for i, v := range row {
			all.Place(drawn[v], drawing.Point{X: x, Y: all.Height})
			all.Width = max(all.Width, x+drawn[v].Width)
			x += columns[i] + between
			high = max(high, drawn[v].Height)
		}
		all.Height += high + between
	}
	all.Height -= between
	return all
}

// mm converts for drawing only.
func mm(l stock.Length) float64 { return float64(l) / float64(stock.Millimeter) }

// ScaleText states a scale.
func ScaleText(scale int) string { return "scale 1:" + strconv.Itoa(scale) }
