package paper

import (
	"strconv"

	"sawbill/report/internal/drawing"
)

// Note is a few things to know, below a heading.
type Note struct {
	Heading string
	Items   []string
}

// Layout of notes, in mm.
const (
	noteSize    = 9.0 // pt
	columnGap   = 6.0
	noteIndent  = 5.5
	belowItem   = 0.5
	aboveNote   = 1.8 // its heading
	columnCount = 2
)

// noteLine is a line of notes: a heading or a part of an item.
type noteLine struct {
	text   string
	number string // of the item that begins
	head   bool
	high   float64
	keeps  bool // with the next line
}

// Notes writes notes in two columns, on one page if they fit on one, else on several.
// Short lines over the whole width would leave half of it empty.
func (b *Book) Notes(notes []Note) {
	width := (b.Width() - (columnCount-1)*columnGap) / columnCount
	lines := noteLines(notes, width)
	for len(lines) > 0 {
		room := b.Room()
		if high := balanced(lines); high > room && b.y > b.top() && high <= b.whole() {
			b.turn()
			room = b.Room()
		}
		high := min(balanced(lines), room)
		top, lowest := b.y, b.y
		for column := range columnCount {
			n := fill(lines, high)
			b.y = top
			for i, l := range lines[:n] {
				b.noteLine(l, i == 0, float64(column)*(width+columnGap))
			}
			lowest = max(lowest, b.y)
			lines = lines[n:]
		}
		b.y = lowest
		if len(lines) > 0 {
			b.turn()
		}
	}
	b.y += belowItem
}

// noteLines breaks notes into lines of a column.
func noteLines(notes []Note, width float64) []noteLine {
	var all []noteLine
	for _, n := range notes {
		all = append(all, noteLine{text: n.Heading, head: true, high: aboveNote + drawing.LineHeight(bodySize), keeps: true})
		for i, item := range n.Items {
			wrapped := drawing.Wrap(item, drawing.Regular, noteSize, width-noteIndent)
			for k, text := range wrapped {
				l := noteLine{text: text, high: max(drawing.LineHeight(noteSize), drawing.HeightOf(text, drawing.Regular, noteSize)+0.2), keeps: k < len(wrapped)-1 && len(wrapped) <= keptTogether}
				if k == 0 {
					l.number = strconv.Itoa(i + 1)
				}
				if k == len(wrapped)-1 {
					l.high += belowItem
				}
				all = append(all, l)
			}
		}
	}
	return all
}

// fill is how many lines fit into a column of a height, parting none that keep together;
// one at least.
func fill(lines []noteLine, high float64) int {
	sum, n := 0.0, 0
	for i, l := range lines {
		if sum += l.high; sum > high+0.01 && n > 0 {
			return n
		}
		if !l.keeps {
			n = i + 1
		}
	}
	return len(lines)
}

// balanced is the least height of columns that hold all lines.
func balanced(lines []noteLine) float64 {
	sum := 0.0
	for _, l := range lines {
		sum += l.high
	}
	for high := sum / columnCount; ; high++ {
		rest := lines
		for range columnCount {
			rest = rest[fill(rest, high):]
		}
		if len(rest) == 0 || high > sum {
			return high
		}
	}
}

// noteLine writes a line so far from the left margin. The first of a column has no room
// above it.
func (b *Book) noteLine(l noteLine, first bool, left float64) {
	face, size := drawing.Regular, noteSize
	if l.head {
		face, size = drawing.Bold, bodySize
		if !first {
			b.y += aboveNote
		}
	}
	base := b.y + max(drawing.Rise(size), drawing.RiseOf(l.text, face, size))
	if l.number != "" {
		b.page().Text(drawing.Text{At: drawing.Point{X: sideMargin + left + noteIndent - 1.5, Y: base}, String: l.number, Size: size, Align: drawing.Right})
	}
	x := sideMargin + left
	if !l.head {
		x += noteIndent
	}
	b.page().Text(drawing.Text{At: drawing.Point{X: x, Y: base}, String: l.text, Size: size, Face: face})
	if b.y += l.high; l.head {
		b.y -= aboveNote
	}
}
