package diagram

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// line is one line of a label, with its measures at a type size of 1 pt: they
// grow with the size, and many sizes are tried.
type line struct {
	text       string
	mark       bool // the mark, in the larger type
	face       drawing.Face
	w, h, rise float64
}

func newLine(text string, mark bool, face drawing.Face) line {
	return line{text, mark, face,
		drawing.Width(text, face, 1), drawing.HeightOf(text, face, 1), drawing.RiseOf(text, face, 1)}
}

func markLine(text string) line  { return newLine(text, true, drawing.Bold) }
func boldLine(text string) line  { return newLine(text, false, drawing.Bold) }
func plainLine(text string) line { return newLine(text, false, drawing.Regular) }

// label is the lines of a label, in the variant that was chosen.
type label struct {
	lines []line
	short bool // something is left out that the key must tell
}

// wording is what can be written on a piece.
type wording struct {
	mark, name, size, finish string
	keep                     bool // an offcut: what is written on it is its name
	turned                   bool // it lies across the stock
	brief                    bool // a part's mark and size are enough, beside the stock an offcut's name
}

func wordingOf(n *cutplan.Node, v View) wording {
	ruler := v.Ruler
	if n.Use == cutplan.Offcut {
		w := wording{mark: "keep", size: ruler.Size(n.Length, n.Width), keep: true, brief: v.Brief}
		if v.Name != nil {
			w.name = v.Name(n)
		}
		return w
	}
	b := v.Bill[n.Blank]
	w := wording{mark: b.Mark, name: b.Name(), size: ruler.Size(b.Length, b.Width), turned: n.Turned, brief: v.Brief}
	if v.lie(n).Outside {
		w.name += " (outside)"
	}
	if n.Turned {
		w.size += ", turned"
	}
	if b.Length != b.Part.Length || b.Width != b.Part.Width {
		w.finish = "finish " + ruler.Size(b.Part.Length, b.Part.Width)
	}
	return w
}

// single is all that the saw needs, in one line.
func (w wording) single() string {
	if w.name == "" {
		return w.mark + " " + w.size
	}
	return w.mark + " " + w.name + ", " + w.size
}

// variants are the ways to write w: all of it, what the saw needs, and what
// little a small piece has room for. A fuller group in small type is better than
// a shorter one in large type.
func (w wording) variants() [][]label {
	full := func(lines ...line) label { return label{lines: lines} }
	short := func(lines ...line) label { return label{lines: lines, short: true} }
	mark, size := markLine(w.mark), boldLine(w.size)
	if w.brief && !w.keep {
		return [][]label{{full(mark, size), full(boldLine(w.mark + " " + w.size))}, {full(mark)}}
	}
	single := boldLine(w.single())
	if w.name == "" {
		keep := plainLine(w.mark)
		return [][]label{{full(keep, size), full(single)}, {short(keep)}}
	}
	if w.keep {
		keep, name := plainLine(w.mark), boldLine(w.name)
		return [][]label{
			{full(keep, name, size), full(plainLine(w.mark+" "+w.name), size), full(single)},
			{full(name, size), full(boldLine(w.name + ", " + w.size))},
			{short(name)},
		}
	}
	name, finish := plainLine(w.name), plainLine(w.finish)
	headed := boldLine(w.mark + " " + w.name)
	sized, bare := []label{short(mark, size), short(boldLine(w.mark + " " + w.size))}, []label{short(mark)}
	if w.finish == "" {
		return [][]label{{full(mark, name, size), full(headed, size), full(single)}, sized, bare}
	}
	return [][]label{
		{
			full(mark, name, size, finish), full(headed, size, finish),
			full(boldLine(single.text + " (" + w.finish + ")")),
		},
		{short(mark, name, size), short(headed, size), short(single)},
		sized, bare,
	}
}

// named are the ways to write w where its sizes stand along its edges.
func (w wording) named() [][]label {
	full := func(lines ...line) label { return label{lines: lines} }
	short := func(lines ...line) label { return label{lines: lines, short: true} }
	mark := markLine(w.mark)
	if w.name == "" {
		return [][]label{{full(plainLine(w.mark))}}
	}
	if w.keep {
		return [][]label{{full(plainLine(w.mark), boldLine(w.name)), full(plainLine(w.mark + " " + w.name))}, {full(boldLine(w.name))}}
	}
	var below []line
	if w.turned {
		below = append(below, plainLine("turned"))
	}
	if w.finish != "" {
		below = append(below, plainLine(w.finish))
	}
	name, headed := plainLine(w.name), boldLine(w.mark+" "+w.name)
	return [][]label{
		{full(append([]line{mark, name}, below...)...), full(append([]line{headed}, below...)...)},
		{short(append([]line{mark}, below...)...)},
	}
}

// tiers are the sizes to try, in points: of the mark, and of the other lines.
// The least is [drawing.SmallestSize].
var tiers = []struct{ mark, text float64 }{
	{28, 13}, {24, 12}, {20, 11}, {17, 10}, {14, 9}, {12, 8.5}, {10, 8}, {8.5, 7.5}, {7, 7},
}

// turnedTiers is how much larger, in tiers, turned text must be than level text
// to be worth turning one's head.
const turnedTiers = 3

const (
	labelPad  = 0.9 // mm between a label and the piece's edges
	linePad   = 0.6 // mm, above and below a label of one line
	tightPad  = 0.2 // mm, the same in the smallest type
	lineSpace = 1.2 // mm between lines
)

// block is a label with its size, ready to be put somewhere.
type block struct {
	label
	tier   int
	turned bool
	w, h   float64 // upright paper that it covers, mm
}

func newBlock(l label, tier int, turned bool) block {
	b := block{label: l, tier: tier, turned: turned}
	for i, ln := range l.lines {
		b.w = max(b.w, ln.w*ln.size(tier))
		b.h += ln.h * ln.size(tier)
		if i > 0 {
			b.h += lineSpace
		}
	}
	if turned {
		b.w, b.h = b.h, b.w
	}
	return b
}

func (l line) size(tier int) float64 {
	if l.mark {
		return tiers[tier].mark
	}
	return tiers[tier].text
}

// fit finds the fullest and largest way to write w in piece without touching
// what is taken. It returns false where not even the mark has room.
func fit(w wording, piece drawing.Rect, taken []drawing.Rect) (block, drawing.Rect, bool) {
	return fitAny(w.variants(), piece, taken)
}

func fitAny(groups [][]label, piece drawing.Rect, taken []drawing.Rect) (block, drawing.Rect, bool) {
	for _, group := range groups {
		if b, at, ok := fitOneOf(group, piece, taken); ok {
			return b, at, true
		}
	}
	return block{}, drawing.Rect{}, false
}

func fitOneOf(variants []label, piece drawing.Rect, taken []drawing.Rect) (block, drawing.Rect, bool) {
	try := func(tier int, turned bool) (block, drawing.Rect, bool) {
		for _, l := range variants {
			if turned && len(l.lines) == 1 && len(l.lines[0].text) <= 2 {
				continue // a turned mark gains nothing
			}
			b := newBlock(l, tier, turned)
			if at, ok := spot(b, piece, taken); ok {
				return b, at, true
			}
		}
		return block{}, drawing.Rect{}, false
	}
	for level := range len(tiers) + turnedTiers {
		if level < len(tiers) {
			if b, at, ok := try(level, false); ok {
				return b, at, true
			}
		}
		if turned := level - turnedTiers; turned >= 0 {
			if b, at, ok := try(turned, true); ok {
				return b, at, true
			}
		}
	}
	return block{}, drawing.Rect{}, false
}

// spots are the places to try for a label within a piece, as shares of the play
// there is: the middle first.
var spots = []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95}

func spot(b block, piece drawing.Rect, taken []drawing.Rect) (drawing.Rect, bool) {
	padX, padY := labelPad, labelPad
	// Across the text a line may come close to the edge: a narrow strip is
	// better labeled tightly than from afar.
	across := linePad
	if b.tier == len(tiers)-1 {
		across = tightPad
	}
	if len(b.lines) == 1 && b.turned {
		padX = across
	} else if len(b.lines) == 1 {
		padY = across
	}
	playX, playY := piece.W-b.w-2*padX, piece.H-b.h-2*padY
	if playX < 0 || playY < 0 {
		return drawing.Rect{}, false
	}
	for _, sy := range spots {
		for _, sx := range spots {
			at := drawing.Rect{X: piece.X + padX + sx*playX, Y: piece.Y + padY + sy*playY, W: b.w, H: b.h}
			if free(b.apart(at), taken) {
				return at, true
			}
		}
	}
	return drawing.Rect{}, false
}

// apart is the place of a block with the paper beside large type that keeps a number from
// being read together with it: word spaces grow with the type.
func (b block) apart(at drawing.Rect) drawing.Rect {
	const more = 0.5 // mm
	if tiers[b.tier].text <= 10 {
		return at
	}
	if b.turned {
		return drawing.Rect{X: at.X, Y: at.Y - more, W: at.W, H: at.H + 2*more}
	}
	return drawing.Rect{X: at.X - more, Y: at.Y, W: at.W + 2*more, H: at.H}
}

func free(r drawing.Rect, taken []drawing.Rect) bool {
	for _, t := range taken {
		if r.Overlaps(t) {
			return false
		}
	}
	return true
}

// write draws the block into its place.
func (b block) write(d *drawing.Drawing, at drawing.Rect) {
	offset := 0.0
	for _, ln := range b.lines {
		size := ln.size(b.tier)
		t := drawing.Text{String: ln.text, Size: size, Face: ln.face, Align: drawing.Center, Turned: b.turned, Ground: true}
		rise := ln.rise * size
		if b.turned {
			t.At = drawing.Point{X: at.X + offset + rise, Y: at.Y + at.H/2}
		} else {
			t.At = drawing.Point{X: at.X + at.W/2, Y: at.Y + offset + rise}
		}
		d.Text(t)
		offset += ln.h*size + lineSpace
	}
}
