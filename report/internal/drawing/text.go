package drawing

import (
	"math"
	"strings"
	"sync"
)

// Align says which part of a text lies at its point.
type Align int

const (
	Left Align = iota
	Center
	Right
)

// Text is one line of writing.
type Text struct {
	At     Point // on the base line, at the side that Align names
	String string
	Size   float64 // in points
	Face   Face
	Align  Align
	// Turned text reads from below upwards, from the right-hand side of the
	// paper, as ISO 129-1 has it for upright dimensions (from memory).
	Turned bool
	// Reversed text is white, for a black ground.
	Reversed bool
	// Ground is painted white behind the text.
	Ground bool
}

// SmallestSize is the least size of a text that can be read at the saw, in points.
const SmallestSize = 7

// mmPerPoint converts a type size: 1 pt is 1/72 in.
const mmPerPoint = 25.4 / 72

// Ascent and Descent are how far ordinary letters reach above and below the
// base line, as shares of the size (measured on both faces).
const (
	Ascent  = 0.78
	Descent = 0.21
)

// LineHeight is the distance between base lines in mm, size in points.
func LineHeight(size float64) float64 { return size * 1.2 * mmPerPoint }

// Height is how high a line of letters is in mm, descenders included.
func Height(size float64) float64 { return (Ascent + Descent) * size * mmPerPoint }

// Rise is how far letters reach above the base line in mm.
func Rise(size float64) float64 { return Ascent * size * mmPerPoint }

// RiseOf is how far s reaches above the base line in mm: an accent on a capital
// reaches higher than other letters.
func RiseOf(s string, face Face, size float64) float64 {
	rise, _, _ := extent(s, face, size)
	return rise
}

// FallOf is how far s reaches below the base line in mm: nothing to speak of for
// capitals and figures.
func FallOf(s string, face Face, size float64) float64 {
	_, fall, _ := extent(s, face, size)
	return fall
}

// HeightOf is how high s is in mm.
func HeightOf(s string, face Face, size float64) float64 {
	rise, fall, _ := extent(s, face, size)
	return rise + fall
}

// Width is how wide s is in mm when it is written in the face and size.
func Width(s string, face Face, size float64) float64 {
	_, _, width := extent(s, face, size)
	return width
}

// extent is how far s reaches above and below the base line, and along it, in mm.
func extent(s string, face Face, size float64) (rise, fall, width float64) {
	m := measures.of(s, face)
	mm := size * mmPerPoint
	return max(Ascent, m.top) * mm, m.bottom * mm, m.width * mm
}

// measured is how far a text reaches, as shares of its size.
type measured struct{ top, bottom, width float64 }

// measures remembers texts: whoever looks for room asks for one text at many sizes.
var measures memory

// memory forgets all where it grows too large.
type memory struct {
	sync.Mutex
	known map[written]measured
}

type written struct {
	text string
	face Face
}

const mostRemembered = 20000

func (m *memory) of(s string, face Face) measured {
	key := written{s, face}
	m.Lock()
	known, ok := m.known[key]
	m.Unlock()
	if ok {
		return known
	}
	s, _ = printable(s)
	l := set(s, face)
	known = measured{l.top, l.bottom, l.width}
	m.Lock()
	defer m.Unlock()
	if m.known == nil || len(m.known) >= mostRemembered {
		m.known = make(map[written]measured)
	}
	m.known[key] = known
	return known
}

// Width is how long the text is along its base line, in mm.
func (t Text) Width() float64 { return Width(t.String, t.Face, t.Size) }

// Box is the paper that the text covers.
func (t Text) Box() Rect {
	rise, fall, w := extent(t.String, t.Face, t.Size)
	along := 0.0
	switch t.Align {
	case Center:
		along = w / 2
	case Right:
		along = w
	}
	if t.Turned {
		return Rect{t.At.X - rise, t.At.Y + along - w, rise + fall, w}
	}
	return Rect{t.At.X - along, t.At.Y - rise, w, rise + fall}
}

// Shorten cuts s so that it is no wider than width mm, with an ellipsis where
// something is left out.
func Shorten(s string, face Face, size, width float64) string {
	if Width(s, face, size) <= width {
		return s
	}
	runes := []rune(s)
	for n := len(runes) - 1; n > 0; n-- {
		short := strings.TrimRight(string(runes[:n]), " ") + "…"
		if Width(short, face, size) <= width {
			return short
		}
	}
	return ""
}

// Wrap breaks s into lines no wider than width mm, between words where that
// can be done and within a word where it cannot. A size stays together:
// "27 1/2 x 3/4" is one word.
func Wrap(s string, face Face, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range wordsOf(s) {
		joined := strings.TrimLeft(line+" "+word, " ")
		if Width(joined, face, size) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for word != "" && Width(word, face, size) > width {
			head := fitting(word, face, size, width)
			lines = append(lines, strings.TrimRight(head, " "))
			word = word[len(head):]
		}
		line = word
	}
	if line != "" || lines == nil {
		lines = append(lines, line)
	}
	return lines
}

// LongestWord is how wide the widest of the words of s is in mm, which Wrap keeps
// together where it can.
func LongestWord(s string, face Face, size float64) float64 {
	widest := 0.0
	for _, w := range wordsOf(s) {
		widest = max(widest, Width(w, face, size))
	}
	return widest
}

// wordsOf splits s at its spaces, except within a size.
func wordsOf(s string) []string {
	var words []string
	before := ""
	for _, w := range strings.Fields(s) {
		figure := strings.ContainsAny(w[:1], "0123456789") || strings.HasPrefix(w, "≈")
		after := before != "" && strings.ContainsAny(before[len(before)-1:], "0123456789")
		fraction := figure && after && strings.Contains(w, "/")
		times := w == "x" && after || figure && before == "x"
		if fraction || times {
			words[len(words)-1] += " " + w
		} else {
			words = append(words, w)
		}
		before = w
	}
	return words
}

// fitting is the longest beginning of word that is no wider than width, one
// character at least; it ends behind a separator if there is one in its second half.
func fitting(word string, face Face, size, width float64) string {
	end, separator := 0, 0
	for i, r := range word {
		next := i + len(string(r))
		if end > 0 && Width(word[:next], face, size) > width {
			break
		}
		end = next
		if strings.ContainsRune(" -/|_.,", r) {
			separator = next
		}
	}
	if end < len(word) && separator > end/2 {
		return word[:separator]
	}
	return word[:end]
}

// round trims noise from coordinates, so that they print short: 0.001 mm. A half goes
// up whatever noise it came with, which differs from processor to processor.
func round(v float64) float64 { return math.Round(math.Round(v*1e9)/1e6) / 1000 }
