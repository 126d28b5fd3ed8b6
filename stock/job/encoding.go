package job

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"sawbill/stock/fault"
	"sawbill/stock/store"
)

// openText reads the file called name as text. If it is none, mistakes says why: about
// the whole file with line 0, or with the lines that hold what no text does.
func openText(name string, open func(string) ([]byte, error)) (text string, mistakes []fault.Fault) {
	source, err := open(name)
	if err != nil {
		cause, remedy := store.Explain(err)
		return "", []fault.Fault{fault.New(cause, remedy)}
	}
	return decodeText(source)
}

// decodeText reads a file as editors and spreadsheets write it: UTF-8 with or
// without a byte order mark, or UTF-16 with one ("Unicode text").
func decodeText(source []byte) (text string, mistakes []fault.Fault) {
	var order binary.ByteOrder
	switch {
	case len(source) > store.MostBytes: // what an opened file system holds
		return "", []fault.Fault{fault.New(fmt.Sprintf("the file has %d MB, and at most %d MB are read", len(source)>>20, store.MostBytes>>20), "check that it is the right file")}
	case bytes.HasPrefix(source, []byte{0xFF, 0xFE}):
		order = binary.LittleEndian
	case bytes.HasPrefix(source, []byte{0xFE, 0xFF}):
		order = binary.BigEndian
	default:
		text = string(bytes.TrimPrefix(source, []byte("\xEF\xBB\xBF")))
		return text, notText(text)
	}
	if len(source)%2 != 0 {
		return "", []fault.Fault{fault.New("the file is UTF-16 text that breaks off", "save it again, as UTF-8")}
	}
	units := make([]uint16, 0, len(source)/2)
	for i := 2; i < len(source); i += 2 {
		units = append(units, order.Uint16(source[i:]))
	}
	text = string(utf16.Decode(units))
	return text, notText(text)
}

// notText tells of every line that holds what no text does: a control character could
// steer the terminal on which the line is shown.
func notText(text string) (mistakes []fault.Fault) {
	line := 0
	for each := range strings.Lines(text) {
		line++
		if found := notInText(each); found.Found() {
			mistakes = append(mistakes, fault.Fault{Line: line, Cause: found.Cause, Remedy: found.Remedy})
		}
	}
	return mistakes
}

// notInText is about the first character of a line that no text holds.
func notInText(line string) fault.Fault {
	for i, r := range line {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(line[i:], string(utf8.RuneError)):
			return fault.New("the line holds bytes that are not UTF-8 text", `save the file as UTF-8 (spreadsheets call it "CSV UTF-8")`)
		case r == 0:
			return fault.New("the line holds a zero byte, so the file is no plain text", "save it as UTF-8 text")
		case unicode.IsControl(r) && !strings.ContainsRune("\t\r\n", r):
			return fault.New(fmt.Sprintf("the line holds a control character (%U)", r), "delete it")
		}
	}
	return fault.Fault{}
}
