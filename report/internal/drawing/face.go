package drawing

import (
	"sync"
	"unicode"

	"github.com/go-fonts/dejavu/dejavusans"
	"github.com/go-fonts/dejavu/dejavusansbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the two weights that texts are set in.
type Face int

const (
	Regular Face = iota
	Bold
)

// typeface is an embedded font. The Go fonts have the letters of most of Europe
// and are free to use in any document; DejaVu Sans, whose letters are as large,
// has those of all languages that write in Latin, Greek or Cyrillic. Its licence
// (Bitstream Vera's) allows embedding as well.
type typeface struct {
	name string // in the PDF
	ttf  []byte
	// metrics are read when they are first asked for: most commands draw nothing.
	metrics func() *metrics
}

// faces are, of each weight, the usual font and the one for words that it has
// not all letters of.
var faces = [...]struct{ usual, wide *typeface }{
	Regular: {embed("Go", goregular.TTF), embed("DejaVu", dejavusans.TTF)},
	Bold:    {embed("GoBold", gobold.TTF), embed("DejaVuBold", dejavusansbold.TTF)},
}

func embed(name string, ttf []byte) *typeface {
	return &typeface{name, ttf, sync.OnceValue(func() *metrics { return measure(ttf) })}
}

// glyph holds measures as shares of the size.
type glyph struct {
	known       bool
	advance     float64
	left, right float64 // of what is inked, from where the glyph begins
	top         float64 // above the base line
	bottom      float64 // below it
}

// lastRune ends the characters that are measured: the fonts' own last, a
// replacement character. All lie in the basic plane, which is what the PDF
// writer can embed.
const lastRune = 0xFFFD

// metrics measures a font, by character. It is read once and never changed, so
// measuring needs no lock.
type metrics [lastRune + 1]glyph

// lettered are the scripts whose letters stand one beside another from left to
// right, with marks above and below them at most. Others need more than a font:
// letters that join, or a line that runs to the left.
var lettered = []*unicode.RangeTable{
	unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Armenian, unicode.Georgian,
	unicode.Common, unicode.Inherited,
}

func measure(data []byte) *metrics {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		panic("drawing: embedded font: " + err.Error())
	}
	var buf sfnt.Buffer
	m := new(metrics)
	const em = 1000
	share := func(v fixed.Int26_6) float64 { return float64(v) / 64 / em }
	for r := rune(' '); r <= lastRune; r++ {
		index, err := parsed.GlyphIndex(&buf, r)
		if err != nil || index == 0 || !unicode.In(r, lettered...) {
			continue
		}
		bounds, advance, err := parsed.GlyphBounds(&buf, index, fixed.I(em), font.HintingNone)
		if err != nil {
			continue
		}
		m[r] = glyph{
			known:   true,
			advance: share(advance),
			left:    share(bounds.Min.X), right: share(bounds.Max.X),
			top: -share(bounds.Min.Y), bottom: share(bounds.Max.Y),
		}
	}
	return m
}

func (m *metrics) has(r rune) bool { return r <= lastRune && m[r].known }
