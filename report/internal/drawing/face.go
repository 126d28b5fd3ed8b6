package drawing

import (
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the two embedded typefaces.
type Face int

const (
	Regular Face = iota
	Bold
)

// ttf are the embedded fonts: the Go fonts, free to use in any document.
var ttf = [...][]byte{Regular: goregular.TTF, Bold: gobold.TTF}

// glyph holds measures as shares of the size.
type glyph struct {
	known   bool
	advance float64
	top     float64 // above the base line
	bottom  float64 // below it
}

// lastRune ends the characters that are measured: the fonts' own last, the
// ligatures. All lie in the basic plane, which is what the PDF writer can embed.
const lastRune = 0xFB02

// metrics measures a face, by character. It is read once and never changed, so
// measuring needs no lock.
type metrics [lastRune + 1]glyph

var faces = [...]*metrics{Regular: measure(ttf[Regular]), Bold: measure(ttf[Bold])}

func measure(data []byte) *metrics {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		panic("drawing: embedded font: " + err.Error())
	}
	var buf sfnt.Buffer
	m := new(metrics)
	const em = 1000
	for r := rune(' '); r <= lastRune; r++ {
		index, err := parsed.GlyphIndex(&buf, r)
		if err != nil || index == 0 {
			continue
		}
		bounds, advance, err := parsed.GlyphBounds(&buf, index, fixed.I(em), font.HintingNone)
		if err != nil {
			continue
		}
		m[r] = glyph{
			known:   true,
			advance: float64(advance) / 64 / em,
			top:     -float64(bounds.Min.Y) / 64 / em,
			bottom:  float64(bounds.Max.Y) / 64 / em,
		}
	}
	return m
}

func (m *metrics) has(r rune) bool { return r <= lastRune && m[r].known }

// width is the sum of the advances, since neither renderer kerns; s is printable.
func (m *metrics) width(s string) float64 {
	total := 0.0
	for _, r := range s {
		total += m[r].advance
	}
	return total
}

// top is how high s reaches; s is printable.
func (m *metrics) top(s string) float64 {
	highest := 0.0
	for _, r := range s {
		highest = max(highest, m[r].top)
	}
	return highest
}

// bottom is how low s reaches; s is printable.
func (m *metrics) bottom(s string) float64 {
	lowest := 0.0
	for _, r := range s {
		lowest = max(lowest, m[r].bottom)
	}
	return lowest
}
