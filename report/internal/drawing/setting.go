package drawing

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// setting is a text as it is set in type: which font writes which of its
// characters, and where. Measures are shares of the size.
type setting struct {
	runs        []run
	width       float64 // the sum of the advances, since neither renderer kerns
	top, bottom float64 // how far it reaches above and below the base line
}

// run is characters of one font in a row.
type run struct {
	font *typeface
	text string
	x, y float64 // where it begins, from the text's beginning and base line; y upwards
	mark bool    // it is a mark on the letter before it
}

// set finds the fonts for s. Words between two figures are written in the wide font
// altogether where the usual one lacks a letter of them: a name in letters of two
// fonts is hard to read. Figures look alike on all of a page. s is printable.
func set(s string, face Face) setting {
	fonts := faces[face]
	var l setting
	if usual := fonts.usual.metrics(); hasAll(usual, s) {
		for _, r := range s {
			l.add(usual[r])
		}
		l.runs = []run{{font: fonts.usual, text: s}}
		return l
	}
	for at := 0; at < len(s); {
		end := at + phrase(s[at:])
		font := fonts.usual
		if !hasAll(font.metrics(), s[at:end]) {
			font = fonts.wide
		}
		l.words(s, at, end, font, fonts.usual)
		at = end
	}
	return l
}

// phrase is where the first figure of s ends, or the words before it, with the
// spaces behind them.
func phrase(s string) int {
	at := 0
	for at < len(s) {
		end := len(s)
		if space := strings.IndexByte(s[at:], ' '); space >= 0 {
			end = len(s) - len(strings.TrimLeft(s[at+space:], " "))
		}
		if strings.ContainsAny(s[at:end], "0123456789") {
			if at == 0 {
				return end
			}
			return at
		}
		at = end
	}
	return at
}

func hasAll(m *metrics, s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return !m.has(r) }) < 0
}

func (l *setting) add(g glyph) {
	l.width += g.advance
	l.top, l.bottom = max(l.top, g.top), max(l.bottom, g.bottom)
}

// words sets s, from at to end, in a font, and characters that it lacks in another
// one.
func (l *setting) words(s string, at, end int, in, other *typeface) {
	var base glyph // of the letter before a mark, with the marks that it has already
	for i, r := range s[at:end] {
		i += at
		next := i + utf8.RuneLen(r)
		font := in
		if !in.metrics().has(r) {
			font = other
		}
		g := font.metrics()[r]
		if isMark(r) && base.known {
			base = l.mark(r, g, font, base)
			continue
		}
		base = g
		if n := len(l.runs); n > 0 && l.runs[n-1].font == font && !l.runs[n-1].mark {
			l.runs[n-1].text = s[i-len(l.runs[n-1].text) : next]
		} else {
			l.runs = append(l.runs, run{font: font, text: s[i:next], x: l.width})
		}
		l.add(g)
	}
}

// markGap is between a letter and its mark, as a share of the size.
const markGap = 0.05

// mark sets a mark above or below the letter before it, where there is no
// character for the two: in the middle, and clear of what is there. It returns
// the letter with its mark.
func (l *setting) mark(r rune, g glyph, font *typeface, base glyph) glyph {
	begins := l.width - base.advance
	x := begins + (base.left+base.right)/2 - (g.left+g.right)/2
	y := 0.0
	low, high := -g.bottom, g.top
	switch {
	case low > 0.3: // it stands above
		y = max(0, base.top+markGap-low)
	case high < 0.1: // it hangs below
		y = -max(0, base.bottom+markGap+high)
	}
	base.top, base.bottom = max(base.top, high+y), max(base.bottom, -low-y)
	l.runs = append(l.runs, run{font: font, text: string(r), x: x, y: y, mark: true})
	l.top, l.bottom = max(l.top, base.top), max(l.bottom, base.bottom)
	return base
}

func isMark(r rune) bool { return unicode.Is(unicode.Mn, r) }

// Replacement stands for a character that the fonts lack.
const Replacement = '□'

// Writable reports whether the fonts have all signs of s.
func Writable(s string) bool {
	_, missing := printable(s)
	return len(missing) == 0
}

// printable returns s as the fonts can write it, and what they lack. Letters and
// their marks become one character where there is one.
func printable(s string) (string, []rune) {
	usual := faces[Regular].usual.metrics()
	if strings.IndexFunc(s, func(r rune) bool { return !usual.has(r) || r != ' ' && unicode.IsSpace(r) }) < 0 {
		return s, nil
	}
	var missing []rune
	out := make([]rune, 0, len(s))
	for _, r := range norm.NFC.String(s) {
		switch {
		case unicode.IsSpace(r):
			out = append(out, ' ')
		case !usual.has(r) && !faces[Regular].wide.metrics().has(r):
			missing = append(missing, r)
			out = append(out, Replacement)
		default:
			out = append(out, r)
		}
	}
	return string(out), missing
}
