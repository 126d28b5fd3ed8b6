package diagram

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// Room around a slab, in mm.
const (
	slabHead     = 6.0  // above: what it is, and its scale
	cornerRoom   = 15.5 // left: the reference end
	boardRoom    = 24.0 // left of a board: most fence settings too, so that boards begin below one another
	fenceGap     = 4.6  // from the stock to the tags of its rips
	barGap       = 1.0  // from the stock to the bar that joins rips at one setting
	slabRight    = 9.0  // right: half of the last mark's tag
	tagLeaders   = 4.5  // of a row above for the slanting leaders
	markDrop     = 2.4  // from the stock, or the marks above, to a line of marks
	markLeaders  = 2.6  // from the line to its tags
	originRadius = 0.7
	slabFoot     = 2.5
)

// placedSlab is a slab with all its writing in place.
type placedSlab struct {
	slab
	f       frame
	blocks  []block
	places  []drawing.Rect // of blocks
	fences  []fence        // that start at the left edge
	pile    []tag          // of them
	pileAt  []float64
	top     row
	dots    [][]drawing.Point // of the tags in top
	lines   []markRow
	height  float64
	short   []int
	unnamed int
}

// markRow is a level of lines of marks with the tags below it.
type markRow struct {
	lines []runningLine
	y     float64 // of the line
	row   row
	x     []float64 // of the mark that a tag is about
}

const fenceSize = 10 // pt

// highestSlab is what a page has room for, mm. Only strips by the dozen, each
// crosscut at marks of its own, would ask for more.
const highestSlab = 160.0

// atEdge are the rips that start where the slab does, with their tags.
func (s slab) atEdge() (edge, inner []fence, tags []tag) {
	for _, f := range fences(s.splits()) {
		if !f.edge {
			inner = append(inner, f)
			continue
		}
		edge = append(edge, f)
	}
	slices.SortStableFunc(edge, func(a, b fence) int { return cmp.Compare(b.rips[0].Y, a.rips[0].Y) })
	for _, f := range edge {
		tags = append(tags, s.fenceTag(f, fenceSize))
	}
	return edge, inner, tags
}

func (s slab) fenceTag(f fence, size float64) tag {
	return tag{number: ranges(f.numbers, 2), text: s.v.Ruler.Print(f.setting), face: drawing.Bold, size: size}
}

// left is the room that the slab needs on its left.
func (s slab) left() float64 {
	_, _, tags := s.atEdge()
	left := cornerRoom
	if s.whole {
		left = boardRoom
	}
	for _, t := range tags {
		left = max(left, t.width()+fenceGap)
	}
	return left
}

// scaleFor is the largest scale, as n of 1:n, at which the slab is no wider than
// width, and no higher than height unless that is 0.
func (s slab) scaleFor(width, height float64) int {
	length, across := s.size()
	n := math.Ceil(mm(length) / (width - s.left() - slabRight))
	if height > 0 {
		n = max(n, math.Ceil(mm(across)/height))
	}
	return max(1, int(n))
}

// widthAt is how much paper the slab takes at a scale.
func (s slab) widthAt(scale int) float64 {
	length, _ := s.size()
	drawn := s.left() + mm(length)/float64(scale) + slabRight
	return max(drawn, drawing.Width(s.head(scale), drawing.Bold, headSize)+1)
}

// place finds room for everything that is written on and around the slab.
func (s slab) place(scale int, width float64) placedSlab {
	p := placedSlab{slab: s}
	length, across := s.size()
	p.f = frame{scale: scale}
	if !s.whole {
		p.f.x0, p.f.y0 = s.equal[0].X, s.equal[0].Y
	}
	p.f.stock = drawing.Rect{X: s.left(), Y: slabHead, W: mm(length) / float64(scale), H: mm(across) / float64(scale)}
	p.f.picture = drawing.Rect{W: width}
	var inner []fence
	p.fences, inner, p.pile = s.atEdge()
	p.fences, p.pile = p.apart(p.fences)

	lane := 0.0
	without := p.label()
	p.placeTop(without, inner)
	if len(p.top.tags) > 0 {
		lane = p.top.height() + tagLeaders
	}
	var extents []float64
	for _, t := range p.pile {
		extents = append(extents, t.height()+tagsPile)
	}
	// What is left of the slab may be higher than the slab itself.
	lane = max(lane, total(extents)-p.f.stock.H)
	p.shift(lane)
	var wanted []float64
	for _, f := range p.fences {
		first, _ := p.f.cutLine(f.rips[0], s.v.Kerf)
		last, _ := p.f.cutLine(f.rips[len(f.rips)-1], s.v.Kerf)
		wanted = append(wanted, (first.Y+last.Y)/2)
	}
	p.pileAt = drawing.Spread(wanted, extents, slabHead, p.f.stock.Bottom())
	p.placeMarks()
	return p
}

// apart numbers each rip of its own where the lines leave room for that.
func (p placedSlab) apart(joint []fence) (all []fence, tags []tag) {
	for _, f := range joint {
		pitch := mm(f.setting) / float64(p.f.scale)
		if len(f.numbers) != len(f.rips) || pitch < p.fenceTag(f, fenceSize).height()+tagsPile {
			all = append(all, f)
			continue
		}
		for i := len(f.rips) - 1; i >= 0; i-- {
			of := f
			of.rips, of.numbers = f.rips[i:i+1], f.numbers[i:i+1]
			all = append(all, of)
		}
	}
	for _, f := range all {
		tags = append(tags, p.fenceTag(f, fenceSize))
	}
	return all, tags
}

// shift moves what is drawn down by dy.
func (p *placedSlab) shift(dy float64) {
	p.f.stock.Y += dy
	for i := range p.places {
		p.places[i].Y += dy
	}
	for _, dots := range p.dots {
		for i := range dots {
			dots[i].Y += dy
		}
	}
}

// label writes on the pieces and returns those that are too small for it.
func (p *placedSlab) label() (without []narrow) {
	p.leaves(func(leaf *cutplan.Node) {
		if leaf.Use == cutplan.Waste {
			return
		}
		piece := p.f.rect(leaf)
		if leaf.Use == cutplan.Split {
			name := p.closed[extentOf(*leaf)]
			if b, at, ok := fitAny(closedVariants(name, p.v.Ruler.Size(leaf.Length, leaf.Width)), piece, nil); ok {
				p.blocks, p.places = append(p.blocks, b), append(p.places, at)
			} else {
				without = append(without, narrow{piece, name, nil, true})
			}
			return
		}
		w, room := wordingOf(leaf, p.v), piece
		if leaf.Use == cutplan.Offcut {
			room = piece.Inset(keepFrame)
		}
		room = p.v.lie(leaf).Edged.Inset(room, edgedRoom)
		b, at, ok := fit(w, room, nil)
		if ok {
			p.blocks, p.places = append(p.blocks, b), append(p.places, at)
		} else {
			without = append(without, narrow{piece, w.led(), nil, true})
		}
		if leaf.Use == cutplan.Part && (ok && b.short || !ok && w.ledShort()) {
			p.short = append(p.short, leaf.Blank)
		}
	})
	return without
}

// closedVariants are the ways to name a piece that is drawn on its own.
func closedVariants(name, size string) [][]label {
	return [][]label{
		{{lines: []line{plainLine(name), plainLine(size)}}, {lines: []line{plainLine(name + ": " + size)}}},
		{{lines: []line{plainLine(name)}}},
	}
}

// placeTop leads out above what is not written on the slab: pieces, and rips
// that start within it.
func (p *placedSlab) placeTop(without []narrow, inner []fence) {
	type led struct {
		tag
		dots []drawing.Point
	}
	var all []led
	callouts, _ := p.f.callouts(without, nil, p.places)
	for _, c := range callouts {
		all = append(all, led{tag{text: c.text}, c.dots})
	}
	for _, f := range joined(inner) {
		var dots []drawing.Point
		for _, s := range f.rips {
			from, to := p.f.cutLine(s, p.v.Kerf)
			dots = append(dots, drawing.Point{X: p.clearOf(from, to), Y: from.Y})
		}
		// The one nearest the lane first.
		slices.SortStableFunc(dots, func(a, b drawing.Point) int { return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X)) })
		all = append(all, led{p.fenceTag(f, 0), dots})
	}
	slices.SortStableFunc(all, func(a, b led) int { return cmp.Compare(a.dots[0].X, b.dots[0].X) })
	var tags []tag
	var wanted []float64
	for _, l := range all {
		tags = append(tags, l.tag)
		p.dots = append(p.dots, l.dots)
		wanted = append(wanted, l.dots[0].X)
	}
	p.top = newRow(tags, wanted, p.f.stock.X, p.f.picture.W, 8)
	p.unnamed += p.top.dropped
}

// clearOf is where along a rip a leader from above reaches it across the fewest labels.
func (p placedSlab) clearOf(from, to drawing.Point) float64 {
	best, fewest := from.X+0.6, len(p.places)+1
	for _, share := range []float64{0, 1, 0.5, 0.25, 0.75, 0.1, 0.9, 0.03, 0.97} {
		x := from.X + 0.6 + share*(to.X-from.X-1.2)
		path := drawing.Rect{X: x - 0.5, Y: p.f.stock.Y, W: 1, H: from.Y - p.f.stock.Y}
		crossed := 0
		for _, at := range p.places {
			if path.Overlaps(at) {
				crossed++
			}
		}
		if crossed < fewest {
			best, fewest = x, crossed
		}
	}
	return best
}

// placeMarks puts lines of marks below the slab.
func (p *placedSlab) placeMarks() {
	y := p.f.stock.Bottom()
	for _, level := range levels(p.allLines()) {
		m := markRow{lines: level, y: y + markDrop}
		var tags []tag
		for _, l := range level {
			for _, k := range l.marks {
				t := tag{text: p.v.Ruler.Print(k.at), face: drawing.Bold}
				if k.off > 0 {
					t.text += " (off " + p.v.Ruler.Print(k.off) + ")"
				}
				if len(k.numbers) > 0 {
					t.number = ranges(k.numbers, 2)
				}
				tags = append(tags, t)
				m.x = append(m.x, p.f.x(k.x))
			}
		}
		m.row = newRow(tags, m.x, p.f.stock.X-3.4, p.f.picture.W, 10)
		p.unnamed += m.row.dropped
		if below := m.y + markLeaders + m.row.height(); below <= highestSlab {
			y = below
		} else {
			p.unnamed += len(m.row.tags)
			continue
		}
		p.lines = append(p.lines, m)
	}
	// The words at the reference corner stand beside the first line.
	y = max(y, p.f.stock.Bottom()+1.4+2*drawing.Height(legendSize))
	p.height = y + slabFoot
}

// allLines are the lines of marks; that of the board itself tells its trim.
func (p *placedSlab) allLines() []runningLine {
	lines := runningLines(p.splits())
	if !p.whole {
		return lines
	}
	own := runningLine{from: p.equal[0].X, to: p.equal[0].X + p.equal[0].Length}
	start := mark{x: own.from, at: 0}
	var marks []mark
	for i, l := range lines {
		if root := p.equal[0]; root.Cut == cutplan.Crosscut && i == 0 {
			marks = l.marks
			lines = lines[1:]
			break
		}
	}
	var end []mark
	for _, s := range p.v.Steps {
		switch {
		case s.Cut == cutplan.Rip:
		case s.Trim && s.X >= own.to:
			end = []mark{{x: own.to, at: p.equal[0].Length, numbers: []int{s.Number}}}
		case s.Trim:
			start.numbers = []int{s.Number}
			if row := p.v.row(s.Number); row.SawOff {
				start.off = row.Setting
			}
		}
	}
	own.marks = append(append([]mark{start}, marks...), end...)
	if len(own.marks) == 1 {
		return lines
	}
	return append([]runningLine{own}, lines...)
}

// head says what is drawn, and its scale.
func (s slab) head(scale int) string {
	words := "scale 1:" + strconv.Itoa(scale)
	if title := s.heading(); title != "" {
		words = title + ", " + words
	}
	return words
}
