package drawing

import (
	"bytes"
	"unicode/utf16"
)

// producer stands in the information of every document.
const producer = "Sawbill"

// Wrote reports whether data is a document that [PDF] wrote, with that title if one is
// given. The title is one of plain letters.
func Wrote(data []byte, title string) bool {
	if !bytes.HasPrefix(data, []byte("%PDF-")) || !bytes.Contains(data, []byte("/Producer ("+producer+")")) {
		return false
	}
	if title == "" {
		return true
	}
	said := []byte("/Title (\xfe\xff")
	for _, unit := range utf16.Encode([]rune(title)) {
		said = append(said, byte(unit>>8), byte(unit))
	}
	return bytes.Contains(data, append(said, ')'))
}
