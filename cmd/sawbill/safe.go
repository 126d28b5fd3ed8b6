package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// safe is the one way to the terminal: whatever a value, a path or a flag holds,
// nothing that passes steers the terminal or turns text around. A character that could
// is shown by its number, <U+001B>. Only the end of a line passes as it is.
type safe struct {
	to   io.Writer
	rest []byte // of a character whose last bytes are still to come
}

func safeWriter(to io.Writer) *safe { return &safe{to: to} }

// Write writes all of p, or has the error of the writer behind it.
func (s *safe) Write(p []byte) (int, error) {
	all := append(s.rest, p...)
	end := len(all)
	for back := 1; back < utf8.UTFMax && back <= len(all); back++ {
		if from := len(all) - back; utf8.RuneStart(all[from]) {
			if !utf8.FullRune(all[from:]) {
				end = from
			}
			break
		}
	}
	s.rest = append([]byte(nil), all[end:]...)
	if _, err := io.WriteString(s.to, visible(string(all[:end]))); err != nil {
		return 0, err
	}
	return len(p), nil
}

// flush writes what is left of a character that broke off.
func (s *safe) flush() {
	if len(s.rest) > 0 {
		io.WriteString(s.to, visible(string(s.rest)))
		s.rest = nil
	}
}

// visible is text with every character that steers a terminal shown by its number.
func visible(text string) string {
	if !strings.ContainsFunc(text, steers) {
		return text
	}
	var b strings.Builder
	for i, r := range text {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(text[i:], string(utf8.RuneError)):
			fmt.Fprintf(&b, "<%02X>", text[i])
		case steers(r) && r != utf8.RuneError:
			fmt.Fprintf(&b, "<U+%04X>", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// steers reports whether a terminal does something else with r than show it, or may.
func steers(r rune) bool {
	return r != '\n' && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) ||
		r == '\u2028' || r == '\u2029' || r == utf8.RuneError
}

// longestArgument is in bytes: more than any path or name.
const longestArgument = 4096

// checkArguments refuses what no name, path or value has on a command line.
func checkArguments(args []string) error {
	for i, a := range args {
		which := fmt.Sprintf("argument %d", i+1)
		if flag, _, ok := strings.Cut(a, "="); ok && strings.HasPrefix(flag, "--") && len(flag) < 30 && !unwritable(flag) {
			which = flag
		}
		switch {
		case len(a) > longestArgument:
			return usage(fmt.Sprintf("%s has %d characters", which, len(a)), fmt.Sprintf("write at most %d", longestArgument))
		case !utf8.ValidString(a):
			return usage(fmt.Sprintf("%s, %s, is not UTF-8 text", which, visible(a)), "write it in UTF-8; rename a file whose name is not")
		case unwritable(a):
			return usage(fmt.Sprintf("%s, %s, holds a character that cannot be seen", which, oneLine(a)), "leave it out; rename a file whose name holds one")
		}
	}
	return nil
}

func unwritable(a string) bool {
	return strings.ContainsFunc(a, func(r rune) bool { return steers(r) || r == '\n' })
}

// oneLine is visible without the end of a line.
func oneLine(text string) string {
	return strings.ReplaceAll(visible(text), "\n", "<U+000A>")
}
