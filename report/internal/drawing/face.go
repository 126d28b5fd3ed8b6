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
	advance float64
	top     float64
}

// metrics measures the characters of the basic plane, which is also what the
// PDF writer can embed. They are read once, so measuring needs no lock.
type metrics map[rune]glyph

var faces = [...]metrics{Regular: measure(ttf[Regular]), Bold: measure(ttf[Bold])}

func measure(data []byte) metrics {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		panic("drawing: embedded font: " + err.Error())
	}
	var buf sfnt.Buffer
	m := make(metrics)
	const em = 1000
	// The fonts end with the ligatures at U+FB02.
	for r := rune(' '); r <= 0xFB02; r++ {
		index, err := parsed.GlyphIndex(&buf, r)
		if err != nil || index == 0 {
			continue
		}
		bounds, advance, err := parsed.GlyphBounds(&buf, index, fixed.I(em), font.HintingNone)
		if err != nil {
			continue
		}
		m[r] = glyph{
			advance: float64(advance) / 64 / em,
			top:     -float64(bounds.Min.Y) / 64 / em,
		}
	}
	return m
}

func (m metrics) has(r rune) bool {
	_, ok := m[r]
	return ok
}

// width is the sum of the advances: neither renderer kerns.
func (m metrics) width(s string) float64 {
	total := 0.0
	for _, r := range s {
		total += m[r].advance
	}
	return total
}

func (m metrics) top(s string) float64 {
	highest := 0.0
	for _, r := range s {
		highest = max(highest, m[r].top)
	}
	return highest
}
