package drawing

import (
	"strings"

	"sawbill/report/internal/webfont"
)

// WebFont is a font for a page, small since it has the page's characters only.
type WebFont struct {
	Family string // as SVG names it
	Bold   bool
	WOFF   []byte
}

// WebFonts returns the fonts in which the characters of s are measured, so that a viewer
// has them too. The wide font is among them if the usual one lacks a letter.
func WebFonts(s string) []WebFont {
	chars := []rune(s)
	wide := strings.IndexFunc(s, func(r rune) bool {
		return !faces[Regular].usual.metrics().has(r) && faces[Regular].wide.metrics().has(r)
	}) >= 0
	var all []WebFont
	for face, fonts := range faces {
		all = append(all, WebFont{"Go", Face(face) == Bold, webfont.Subset(fonts.usual.ttf, chars)})
		if wide {
			all = append(all, WebFont{"DejaVu Sans", Face(face) == Bold, webfont.Subset(fonts.wide.ttf, chars)})
		}
	}
	return all
}
