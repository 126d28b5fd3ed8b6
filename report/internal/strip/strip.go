package strip

import "sawbill/report/internal/drawing"

// Strip is cards in rows at one size of type.
type Strip struct {
	Rows   []drawing.Drawing // below one another; a page may break between them
	Height float64           // of all, mm
}

// sizes of type to try, pt: steps are read from further away than the rest.
var sizes = []float64{12, 11, 10, 9.5, leastSize}

// leastSize of words beside pictures, pt.
const leastSize = 9.0

// mostColumns of cards stand side by side.
const mostColumns = 6

// Lowest returns the cards in the rows that take the least paper of a width.
func Lowest(cards []Card, width float64) Strip { return lowest(cards, leastSize, width).strip(width) }

// Fit returns the cards in the largest type in which they are no higher than room, else
// the lowest.
func Fit(cards []Card, width, room float64) Strip {
	for _, size := range sizes {
		if a := lowest(cards, size, width); a.height() <= room {
			return a.strip(width)
		}
	}
	return Lowest(cards, width)
}

// arranged is cards in so many columns.
type arranged struct {
	cards   []set
	columns int
	wide    float64 // of a card
}

// worthIt is the share of the height that another column must leave to be worth its narrower
// words.
const worthIt = 0.95

// lowest arranges cards of a size in as many columns as take the least height; of two
// alike, in fewer.
func lowest(cards []Card, size, width float64) arranged {
	var best arranged
	for columns := 1; columns <= min(mostColumns, len(cards)); columns++ {
		wide := (width - float64(columns-1)*columnGap) / float64(columns)
		words := wide - pictureWide(size) - pictureGap
		if columns > 1 && words < widestWord(cards, size) {
			break
		}
		a := arranged{columns: columns, wide: wide}
		for _, c := range cards {
			a.cards = append(a.cards, setCard(c, size, words))
		}
		if columns == 1 || a.height() < worthIt*best.height() {
			best = a
		}
	}
	return best
}

// widestWord is the width that no word, figure or size of the cards exceeds.
func widestWord(cards []Card, size float64) float64 {
	widest := 0.0
	for _, c := range cards {
		disc := drawing.NumberBox(drawing.Point{}, c.Number).W
		widest = max(widest, disc+wordGap+drawing.Width(c.Guide, drawing.Regular, size), drawing.LongestWord(c.Setting, drawing.Bold, size+larger))
		for _, l := range c.Lines {
			widest = max(widest, drawing.LongestWord(l.Ways[len(l.Ways)-1], l.face(), size))
		}
	}
	return widest
}

// rowHigh is the height of the row that begins with card i.
func (a arranged) rowHigh(i int) float64 {
	high := 0.0
	for _, s := range a.cards[i:min(i+a.columns, len(a.cards))] {
		high = max(high, s.height())
	}
	return high
}

func (a arranged) height() float64 {
	high := 0.0
	for i := 0; i < len(a.cards); i += a.columns {
		high += a.rowHigh(i)
	}
	return high
}

// strip draws the cards, a rule between rows.
func (a arranged) strip(width float64) Strip {
	s := Strip{Height: a.height()}
	for i := 0; i < len(a.cards); i += a.columns {
		row := drawing.Drawing{Width: width, Height: a.rowHigh(i)}
		if i > 0 {
			row.Line(drawing.Point{}, drawing.Point{X: width}, drawing.Fine)
		}
		for n, c := range a.cards[i:min(i+a.columns, len(a.cards))] {
			c.draw(&row, drawing.Point{X: float64(n) * (a.wide + columnGap)}, row.Height)
		}
		s.Rows = append(s.Rows, row)
	}
	return s
}
