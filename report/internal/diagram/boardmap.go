package diagram

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// BoardMap is a whole board that is crosscut at its defects first. All its marks are
// measured from its reference end, so all are made before the first cut: that end is gone
// after it.
type BoardMap struct {
	Length, Width stock.Length
	Kerf          stock.Length
	// Clear are the stretches between the defects, from the reference end on.
	Clear []Stretch
	Ruler stock.Ruler
}

// Stretch is a clear stretch of a board.
type Stretch struct {
	stock.Zone
	Name string // empty if nothing is cut from it
	Cuts []MapCut
}

// MapCut is a crosscut within a stretch that can be marked before the stretch is free.
type MapCut struct {
	Name string
	At   stock.Length // from the board's reference end
}

// mapMark is a crosscut on the map.
type mapMark struct {
	name string
	at   stock.Length
	back bool // the kerf lies towards the reference end
	own  bool // it frees a stretch
}

// marks lists the crosscuts from the reference end on. Those that free a stretch are named
// a, b, c and so on. Where one kerf parts two stretches, one cut frees both.
func (m BoardMap) marks() []mapMark {
	var all []mapMark
	free := 0
	freeing := func(at stock.Length, back bool) {
		all = append(all, mapMark{letter(free), at, back, true})
		free++
	}
	for i, s := range m.Clear {
		if s.Name == "" {
			continue
		}
		shared := i > 0 && m.Clear[i-1].Name != "" && s.From-m.Clear[i-1].To == m.Kerf
		if s.From > 0 && !shared {
			freeing(s.From, true)
		}
		for _, c := range s.Cuts {
			all = append(all, mapMark{name: c.Name, at: c.At})
		}
		if s.To < m.Length {
			freeing(s.To, false)
		}
	}
	slices.SortStableFunc(all, func(a, b mapMark) int { return cmp.Compare(a.at, b.at) })
	return all
}

// letter names a cut that frees a stretch.
func letter(i int) string {
	const letters = "abcdefhkmnpqrstuvwxyz"
	if i < len(letters) {
		return letters[i : i+1]
	}
	return letter(i/len(letters)-1) + letter(i%len(letters))
}

const leastMapHigh = 11.0 // mm of a board on its map, at least: names stand in it

// Draw draws the map as wide as it may be, in mm. A narrow board is drawn wider than its
// scale says, so that there is room for names.
func (m BoardMap) Draw(width float64) drawing.Drawing {
	wide := width - cornerRoom - slabRight
	scale := max(1, int(math.Ceil(mm(m.Length)/wide)))
	f := frame{scale: scale}
	f.stock = drawing.Rect{X: cornerRoom, Y: slabHead, W: mm(m.Length) / float64(scale), H: max(leastMapHigh, mm(m.Width)/float64(scale))}
	f.picture = drawing.Rect{W: width}
	d := drawing.Drawing{Width: width}

	m.drawStretches(&d, f)
	marks := m.marks()
	tags, wanted := []tag{{text: "0", face: drawing.Bold}}, []float64{f.stock.X}
	for _, k := range marks {
		tags = append(tags, tag{number: k.name, text: m.Ruler.Print(k.at), face: drawing.Bold})
		wanted = append(wanted, f.x(k.at))
	}
	lineY := f.stock.Bottom() + markDrop
	row := newRow(tags, wanted, f.stock.X-3.4, width, 10)
	origin := drawing.Point{X: f.stock.X, Y: lineY}
	d.Line(origin, drawing.Point{X: wanted[len(wanted)-1], Y: lineY}, drawing.Narrow)
	before := origin
	for i, k := range marks {
		at := drawing.Point{X: f.x(k.at), Y: lineY}
		pen := drawing.FineCut
		if k.own {
			pen = drawing.Cut
		}
		middle := mm(m.Kerf) / float64(scale) / 2
		if k.back {
			middle = -middle
		}
		from := drawing.Point{X: at.X + middle, Y: f.stock.Bottom()}
		to := drawing.Point{X: from.X, Y: f.stock.Y}
		d.Line(from, to, pen)
		for _, y := range []float64{from.Y - tickInset, to.Y + tickInset} {
			end := drawing.Point{X: from.X + tickLong, Y: y}
			if k.back {
				end.X = from.X - tickLong
			}
			d.Line(drawing.Point{X: from.X, Y: y}, end, drawing.Cut)
		}
		d.Line(drawing.Point{X: at.X, Y: f.stock.Bottom() + 0.5}, drawing.Point{X: at.X, Y: lineY + 0.8}, drawing.Narrow)
		if at.X-before.X > arrowRoom {
			d.Arrow(at, before)
		} else {
			d.Disc(at, 0.45, drawing.NoPen, drawing.Black)
		}
		before = at
		if i+1 < len(row.at) {
			d.Line(drawing.Point{X: at.X, Y: lineY + 0.8}, drawing.Point{X: row.at[i+1], Y: lineY + markLeaders - 0.3}, drawing.Narrow)
		}
	}
	d.Box(f.stock, drawing.Outline, drawing.NoFill)
	d.Line(drawing.Point{X: origin.X, Y: f.stock.Bottom() + 0.5}, drawing.Point{X: origin.X, Y: lineY + 0.8}, drawing.Narrow)
	d.Disc(origin, originRadius, drawing.Narrow, drawing.White)
	m.name(&d, f)
	row.write(&d, lineY+markLeaders, true)
	placedSlab{f: f}.drawCorner(&d)
	d.Text(drawing.Text{At: drawing.Point{X: f.stock.X, Y: drawing.Rise(headSize) + 0.6}, String: "whole board, scale 1:" + strconv.Itoa(scale), Size: headSize})
	d.Height = lineY + markLeaders + max(row.height(), 2*drawing.Height(legendSize)) + slabFoot
	return d
}

// drawStretches crosshatches the defects, and hatches what is clear but not used.
func (m BoardMap) drawStretches(d *drawing.Drawing, f frame) {
	at := stock.Length(0)
	part := func(to stock.Length) drawing.Rect {
		return drawing.Rect{X: f.x(at), Y: f.stock.Y, W: f.x(to) - f.x(at), H: f.stock.H}
	}
	cross := func(to stock.Length) {
		d.HatchAs(drawing.Hatch{Area: part(to), Pitch: 2})
		d.HatchAs(drawing.Hatch{Area: part(to), Pitch: 2, Falls: true})
	}
	for _, s := range m.Clear {
		cross(s.From)
		at = s.To
	}
	cross(m.Length)
}

// name writes on each stretch what it is.
func (m BoardMap) name(d *drawing.Drawing, f frame) {
	for _, s := range m.Clear {
		name := s.Name
		if name == "" {
			name = "not cut"
		}
		room := drawing.Rect{X: f.x(s.From), Y: f.stock.Y, W: f.x(s.To) - f.x(s.From), H: f.stock.H}
		var taken []drawing.Rect
		for _, c := range s.Cuts {
			taken = append(taken, drawing.Rect{X: f.x(c.At) - 0.5, Y: room.Y, W: tickLong + 1, H: room.H})
		}
		inner := drawing.Rect{X: room.X + tickLong, Y: room.Y, W: room.W - 2*tickLong, H: room.H}
		variants := [][]label{{{lines: []line{boldLine(name)}}}}
		if b, at, ok := fitAny(variants, inner, taken); ok {
			b.write(d, at)
		}
	}
}
