package job

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// largestFile is far beyond any job; it keeps a wrong file from filling the
// memory.
const largestFile = 16 << 20

// decodeText reads a file as editors and spreadsheets write it: UTF-8 with or
// without a byte order mark, or UTF-16 with one ("Unicode text").
func decodeText(source []byte) (string, problem) {
	if len(source) > largestFile {
		return "", problem{fmt.Sprintf("the file has %d MB, more than any job", len(source)>>20), "check that it is the right file"}
	}
	var order binary.ByteOrder
	switch {
	case bytes.HasPrefix(source, []byte{0xFF, 0xFE}):
		order = binary.LittleEndian
	case bytes.HasPrefix(source, []byte{0xFE, 0xFF}):
		order = binary.BigEndian
	default:
		return decodeUTF8(bytes.TrimPrefix(source, []byte("\xEF\xBB\xBF")))
	}
	if len(source)%2 != 0 {
		return "", problem{"the file is UTF-16 text that breaks off", "save it again, as UTF-8"}
	}
	units := make([]uint16, 0, len(source)/2)
	for i := 2; i < len(source); i += 2 {
		units = append(units, order.Uint16(source[i:]))
	}
	return string(utf16.Decode(units)), problem{}
}

func decodeUTF8(source []byte) (string, problem) {
	s := string(source)
	if i := strings.IndexByte(s, 0); i >= 0 {
		return "", problem{fmt.Sprintf("line %d holds a zero byte, so the file is no plain text", lineOf(s, i)), "save it as UTF-8 text"}
	}
	if !utf8.ValidString(s) {
		i := strings.IndexFunc(s, func(r rune) bool { return r == utf8.RuneError })
		return "", problem{fmt.Sprintf("line %d holds bytes that are not UTF-8 text", lineOf(s, max(i, 0))),
			`save the file as UTF-8 (spreadsheets call it "CSV UTF-8")`}
	}
	return s, problem{}
}

func lineOf(s string, offset int) int { return 1 + strings.Count(s[:offset], "\n") }
