package main

import (
	"bytes"
	"strings"
	"testing"
)

func TestTheTerminalGetsNothingThatSteersIt(t *testing.T) {
	for _, c := range []struct{ reason, written, want string }{
		{"plain text passes", "Bücherregal, 27½″ × 3\n", "Bücherregal, 27½″ × 3\n"},
		{"escape sequences", "a\x1b[2Jb\x1b]0;owned\a", "a<U+001B>[2Jb<U+001B>]0;owned<U+0007>"},
		{"return and backspace, which write over what is there", "new\rold\b", "new<U+000D>old<U+0008>"},
		{"controls of eight bits", "a\u009b2J", "a<U+009B>2J"},
		{"text turned around", "a\u202eb\u2066c\u200f", "a<U+202E>b<U+2066>c<U+200F>"},
		{"ends of lines of another kind", "a\u2028b\u0085", "a<U+2028>b<U+0085>"},
		{"bytes that are no text", "a\xff\x9bb", "a<FF><9B>b"},
		{"a mark for what was no text passes", "a\ufffdb", "a\ufffdb"},
	} {
		for _, size := range []int{1, 2, 3, 1000} { // however it is cut into writes
			var b bytes.Buffer
			s := safeWriter(&b)
			for rest := c.written; rest != ""; {
				n := min(size, len(rest))
				if wrote, err := s.Write([]byte(rest[:n])); wrote != n || err != nil {
					t.Fatal(wrote, err)
				}
				rest = rest[n:]
			}
			s.flush()
			if b.String() != c.want {
				t.Errorf("%s, in writes of %d: %q, want %q", c.reason, size, b.String(), c.want)
			}
		}
	}
}

func TestWhatBreaksOffIsShownAtTheEnd(t *testing.T) {
	var b bytes.Buffer
	s := safeWriter(&b)
	s.Write([]byte("a\xe2\x82"))
	s.flush()
	if b.String() != "a<E2><82>" {
		t.Errorf("%q", b.String())
	}
}

func TestArgumentsThatNoNameHoldsAreRefused(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"plan", "a\x1b[2J.toml"}, "sawbill: argument 2, a<U+001B>[2J.toml, holds a character that cannot be seen; leave it out; rename a file whose name holds one\n"},
		{[]string{"plan", "a\nb.toml"}, "sawbill: argument 2, a<U+000A>b.toml, holds a character that cannot be seen; leave it out; rename a file whose name holds one\n"},
		{[]string{"plan", "j.toml", "--without=\xff"}, "sawbill: --without, --without=<FF>, is not UTF-8 text; write it in UTF-8; rename a file whose name is not\n"},
		{[]string{"rack", "add", "--note", "a\u202eb"}, "sawbill: argument 4, a<U+202E>b, holds a character that cannot be seen; leave it out; rename a file whose name holds one\n"},
		{[]string{"\x1b"}, "sawbill: argument 1, <U+001B>, holds a character that cannot be seen; leave it out; rename a file whose name holds one\n"},
		{[]string{"plan", strings.Repeat("a", 5000)}, "sawbill: argument 2 has 5000 characters; write at most 4096\n"},
	} {
		status, out, errs := call(t, c.args...)
		if status != exitWrongUsage || out != "" || errs != c.want {
			t.Errorf("%q: status %d, %q%q\nwant %q", c.args, status, out, errs, c.want)
		}
	}
}
