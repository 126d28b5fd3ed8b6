package webfont

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"io"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The font is unpacked and read by another package: characters of the page keep outlines
// and widths, others have no outline.
func TestSubsetKeepsTheCharactersOfThePage(t *testing.T) {
	woff := Subset(goregular.TTF, []rune("Aé 1"))
	if len(woff) > len(goregular.TTF)/4 {
		t.Errorf("%d bytes of %d", len(woff), len(goregular.TTF))
	}
	font, err := sfnt.Parse(unpacked(t, woff))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	var buf sfnt.Buffer
	for r, drawn := range map[rune]bool{'A': true, 'é': true, '1': true, 'B': false} {
		outlines := func(f *sfnt.Font) int {
			g, err := f.GlyphIndex(&buf, r)
			if err != nil || g == 0 {
				t.Fatal(r, g, err)
			}
			s, err := f.LoadGlyph(&buf, g, fixed.I(100), nil)
			if err != nil {
				t.Fatal(err)
			}
			return len(s)
		}
		want := 0
		if drawn {
			want = outlines(whole)
		}
		if got := outlines(font); got != want {
			t.Errorf("%c has %d segments, want %d", r, got, want)
		}
	}
}

// unpacked is a WOFF font as a TrueType font.
func unpacked(t *testing.T, woff []byte) []byte {
	t.Helper()
	count := int(binary.BigEndian.Uint16(woff[12:]))
	var directory, data bytes.Buffer
	for i := range count {
		e := woff[44+20*i:]
		from, packed, length := binary.BigEndian.Uint32(e[4:]), binary.BigEndian.Uint32(e[8:]), binary.BigEndian.Uint32(e[12:])
		table := woff[from : from+packed]
		if packed < length {
			r, err := zlib.NewReader(bytes.NewReader(table))
			if err != nil {
				t.Fatal(err)
			}
			if table, err = io.ReadAll(r); err != nil || len(table) != int(length) {
				t.Fatal(len(table), length, err)
			}
		}
		directory.Write(e[:4])
		binary.Write(&directory, binary.BigEndian, []uint32{binary.BigEndian.Uint32(e[16:]), uint32(12 + 16*count + data.Len()), length})
		data.Write(table)
		data.Write(make([]byte, -len(table)&3))
	}
	var out bytes.Buffer
	binary.Write(&out, binary.BigEndian, []uint32{0x00010000})
	binary.Write(&out, binary.BigEndian, []uint16{uint16(count), 0, 0, 0})
	out.Write(directory.Bytes())
	out.Write(data.Bytes())
	if int(binary.BigEndian.Uint32(woff[16:])) != out.Len() {
		t.Errorf("unpacked it is %d bytes, and says %d", out.Len(), binary.BigEndian.Uint32(woff[16:]))
	}
	return out.Bytes()
}
