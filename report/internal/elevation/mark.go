package elevation

import (
	"cmp"
	"math"
	"slices"

	"sawbill/report/internal/drawing"
)

const (
	markSize    = 9.0 // pt
	markPad     = 0.5 // mm of paper around a mark
	leadNearest = 3.5 // mm from a part to a mark at a leader
	leadPitch   = 2.0
	leadLongest = 22.0
	slit        = 0.15 // mm; a leader to less points at nothing
	apart       = 1.2  // mm between other writing and a mark at a leader
	bearings    = 24   // directions that leaders try
)

// writeMarks writes each part's mark once: within the part, clear of all lines, where
// one of its pieces has room, else at a leader, else over lines that give way, else
// not at all; the list of sub-assemblies has them all.
func (f *frame) writeMarks(p picture, marks []string) {
	var taken []drawing.Rect
	for _, t := range f.d.Texts() {
		taken = append(taken, t.Box())
	}
	obstacles := f.strokes()
	var led []int // parts without room for their mark
	room := roomOf(p)
	for part, mark := range marks {
		if mark == "" || len(room[part]) == 0 {
			continue
		}
		box, ok := f.within(room[part], mark, slices.Concat(taken, obstacles))
		if !ok {
			led = append(led, part)
			continue
		}
		taken = append(taken, box)
		f.write(mark, box)
	}
	for _, part := range led {
		if to, box, ok := f.beside(room[part], marks[part], taken, obstacles); ok {
			taken = append(taken, box)
			f.d.Leader(to, nearest(box, to))
			f.write(marks[part], box)
		} else if box, ok := f.within(room[part], marks[part], taken); ok {
			taken = append(taken, box)
			f.write(marks[part], box)
		}
	}
}

// roomOf is what is seen of every part, the largest areas first.
func roomOf(p picture) map[int][]area {
	room := make(map[int][]area)
	for i, s := range p.shapes {
		if s.Part >= 0 {
			room[s.Part] = append(room[s.Part], p.seen(i)...)
		}
	}
	size := func(a area) float64 { return mm(a.x2-a.x1) * mm(a.y2-a.y1) }
	for _, areas := range room {
		slices.SortStableFunc(areas, func(a, b area) int { return cmp.Compare(size(b), size(a)) })
	}
	return room
}

func markBox(mark string, center drawing.Point) drawing.Rect {
	w := drawing.Width(mark, drawing.Bold, markSize) + 2*markPad
	h := drawing.Rise(markSize) + 2*markPad
	return drawing.Rect{X: center.X - w/2, Y: center.Y - h/2, W: w, H: h}
}

func (f *frame) write(mark string, box drawing.Rect) {
	f.d.Text(drawing.Text{At: drawing.Point{X: box.Center().X, Y: box.Bottom() - markPad}, String: mark,
		Size: markSize, Face: drawing.Bold, Align: drawing.Center, Ground: true})
}

// shares of an area at which room is looked for, the middle first.
var shares = []float64{0.5, 0.25, 0.75, 0.38, 0.62, 0.12, 0.88}

// within finds room for a mark in one of the areas of its part, along its longer way
// first.
func (f *frame) within(areas []area, mark string, taken []drawing.Rect) (drawing.Rect, bool) {
	for _, a := range areas {
		r := f.rect(a)
		for _, across := range shares {
			for _, along := range shares {
				center := drawing.Point{X: r.X + along*r.W, Y: r.Y + across*r.H}
				if r.H > r.W {
					center = drawing.Point{X: r.X + across*r.W, Y: r.Y + along*r.H}
				}
				if box := markBox(mark, center); r.Contains(box) && free(box, taken) {
					return box, true
				}
			}
		}
	}
	return drawing.Rect{}, false
}

// beside finds empty paper near one of the areas, the nearest first.
func (f *frame) beside(areas []area, mark string, taken, strokes []drawing.Rect) (to drawing.Point, box drawing.Rect, ok bool) {
	paper := drawing.Rect{W: f.d.Width, H: f.d.Height}
	for length := leadNearest; length <= leadLongest; length += leadPitch {
		for _, a := range areas[:min(len(areas), 4)] {
			r := f.rect(a)
			if max(r.W, r.H) < 1 || min(r.W, r.H) < slit {
				continue
			}
			for _, share := range []float64{0.3, 0.6, 0.15, 0.85} {
				to := r.Center()
				if r.W > r.H {
					to.X = r.X + share*r.W
				} else {
					to.Y = r.Y + share*r.H
				}
				for i := range bearings {
					turn := 2 * math.Pi * (float64(i) + 0.5) / bearings
					box := markBox(mark, drawing.Point{X: to.X + length*math.Cos(turn), Y: to.Y + length*math.Sin(turn)})
					if paper.Contains(box) && free(box.Inset(-apart), taken) && free(box, strokes) && clear(to, nearest(box, to), taken) {
						return to, box, true
					}
				}
			}
		}
	}
	return to, box, false
}

func free(box drawing.Rect, taken []drawing.Rect) bool {
	return !slices.ContainsFunc(taken, box.Overlaps)
}

// nearest is the point of a box's edge that a leader from a point meets.
func nearest(box drawing.Rect, from drawing.Point) drawing.Point {
	return drawing.Point{X: min(max(from.X, box.X), box.Right()), Y: min(max(from.Y, box.Y), box.Bottom())}
}

// clear reports whether a leader runs through none of the boxes.
func clear(a, b drawing.Point, boxes []drawing.Rect) bool {
	const steps = 24
	for i := range steps + 1 {
		t := float64(i) / steps
		dot := drawing.Rect{X: a.X + t*(b.X-a.X) - 0.2, Y: a.Y + t*(b.Y-a.Y) - 0.2, W: 0.4, H: 0.4}
		if !free(dot, boxes) {
			return false
		}
	}
	return true
}

// strokes are the boxes of all that is drawn so far but writing.
func (f *frame) strokes() []drawing.Rect {
	var all []drawing.Rect
	for _, m := range f.d.Marks {
		switch m := m.(type) {
		case drawing.Line:
			all = append(all, around(m.From, m.To))
		case drawing.Polygon:
			if m.Fill == drawing.Black {
				all = append(all, around(m.Points...))
				continue
			}
			for i, q := range m.Points {
				all = append(all, around(q, m.Points[(i+1)%len(m.Points)]))
			}
		case drawing.Hatch:
			all = append(all, m.Area)
		}
	}
	return all
}

func around(points ...drawing.Point) drawing.Rect {
	low, high := points[0], points[0]
	for _, q := range points[1:] {
		low = drawing.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}
		high = drawing.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	return drawing.Rect{X: low.X - 0.2, Y: low.Y - 0.2, W: high.X - low.X + 0.4, H: high.Y - low.Y + 0.4}
}
