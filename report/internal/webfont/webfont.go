// Package webfont makes small web fonts of TrueType fonts: the outlines of the characters
// that a page has, packed as WOFF.
//
// Kerning and ligatures are left out: drawings measure their texts without them.
package webfont

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"slices"

	"golang.org/x/image/font/sfnt"
)

// kept are the tables of a TrueType font that a browser needs, in the order of their tags.
var kept = []string{"OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"}

// Subset returns a WOFF font (W3C, WOFF File Format 1.0) with the outlines of the
// characters of ttf that are in chars. It panics if ttf is no TrueType font: fonts are
// part of the program.
func Subset(ttf []byte, chars []rune) []byte {
	f := tables(ttf)
	f.dropOutlines(used(ttf, chars))
	// Version 3 of this table has no names of glyphs.
	f["post"] = slices.Clone(f["post"][:32])
	binary.BigEndian.PutUint32(f["post"], 0x00030000)
	return f.woff()
}

// sfntTables are the tables of a font, by tag.
type sfntTables map[string][]byte

func tables(ttf []byte) sfntTables {
	f := sfntTables{}
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		entry := ttf[12+16*i:]
		from, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		f[string(entry[:4])] = ttf[from : from+length]
	}
	return f
}

// used returns the glyphs of chars, with glyph 0, which stands for what a font lacks.
func used(ttf []byte, chars []rune) map[int]bool {
	font, err := sfnt.Parse(ttf)
	if err != nil {
		panic("webfont: " + err.Error())
	}
	var buf sfnt.Buffer
	glyphs := map[int]bool{0: true}
	for _, r := range chars {
		if g, err := font.GlyphIndex(&buf, r); err == nil {
			glyphs[int(g)] = true
		}
	}
	return glyphs
}

// dropOutlines empties the outlines of all glyphs that are not used, by themselves or as
// parts of others. Numbers of glyphs stay as they are.
func (f sfntTables) dropOutlines(glyphs map[int]bool) {
	long := binary.BigEndian.Uint16(f["head"][50:]) == 1
	at := func(i int) int {
		if long {
			return int(binary.BigEndian.Uint32(f["loca"][4*i:]))
		}
		return 2 * int(binary.BigEndian.Uint16(f["loca"][2*i:]))
	}
	count := int(binary.BigEndian.Uint16(f["maxp"][4:]))
	outline := func(i int) []byte { return f["glyf"][at(i):at(i+1)] }
	var waiting []int
	for g := range glyphs {
		waiting = append(waiting, g)
	}
	for len(waiting) > 0 {
		g := waiting[0]
		waiting = waiting[1:]
		for _, part := range components(outline(g)) {
			if !glyphs[part] {
				glyphs[part] = true
				waiting = append(waiting, part)
			}
		}
	}
	var glyf, loca bytes.Buffer
	for i := range count + 1 {
		if long {
			binary.Write(&loca, binary.BigEndian, uint32(glyf.Len()))
		} else {
			binary.Write(&loca, binary.BigEndian, uint16(glyf.Len()/2))
		}
		if i < count && glyphs[i] {
			glyf.Write(outline(i))
			glyf.Write(make([]byte, -glyf.Len()&3))
		}
	}
	f["glyf"], f["loca"] = glyf.Bytes(), loca.Bytes()
}

// Flags of a component of a glyph (OpenType, glyf).
const (
	wordArguments = 1 << 0
	oneScale      = 1 << 3
	more          = 1 << 5
	twoScales     = 1 << 6
	matrix        = 1 << 7
)

// components lists the glyphs that an outline is composed of.
func components(outline []byte) []int {
	if len(outline) < 10 || int16(binary.BigEndian.Uint16(outline)) >= 0 {
		return nil
	}
	var all []int
	for rest := outline[10:]; ; {
		flags := binary.BigEndian.Uint16(rest)
		all = append(all, int(binary.BigEndian.Uint16(rest[2:])))
		size := 6
		if flags&wordArguments != 0 {
			size += 2
		}
		switch {
		case flags&oneScale != 0:
			size += 2
		case flags&twoScales != 0:
			size += 4
		case flags&matrix != 0:
			size += 8
		}
		if flags&more == 0 {
			return all
		}
		rest = rest[size:]
	}
}

// woff packs the tables.
func (f sfntTables) woff() []byte {
	const header, entry = 44, 20
	var tags []string
	for _, tag := range kept {
		if f[tag] != nil {
			tags = append(tags, tag)
		}
	}
	var directory, data bytes.Buffer
	size := 12 + 16*len(tags) // of the font unpacked
	for _, tag := range tags {
		table := f[tag]
		packed := pack(table)
		directory.WriteString(tag)
		binary.Write(&directory, binary.BigEndian, []uint32{
			uint32(header + entry*len(tags) + data.Len()), uint32(len(packed)), uint32(len(table)), checksum(table),
		})
		data.Write(packed)
		data.Write(make([]byte, -len(packed)&3))
		size += (len(table) + 3) &^ 3
	}
	var out bytes.Buffer
	binary.Write(&out, binary.BigEndian, []uint32{0x774F4646, 0x00010000, uint32(header + directory.Len() + data.Len())})
	binary.Write(&out, binary.BigEndian, []uint16{uint16(len(tags)), 0})
	binary.Write(&out, binary.BigEndian, []uint32{uint32(size), 1 << 16, 0, 0, 0, 0, 0})
	out.Write(directory.Bytes())
	out.Write(data.Bytes())
	return out.Bytes()
}

// pack compresses a table if that makes it smaller.
func pack(table []byte) []byte {
	var b bytes.Buffer
	// A buffer takes every write, and the level is one of the package's.
	w, _ := zlib.NewWriterLevel(&b, zlib.BestCompression)
	_, _ = w.Write(table)
	_ = w.Close()
	if b.Len() >= len(table) {
		return table
	}
	return b.Bytes()
}

func checksum(table []byte) uint32 {
	sum := uint32(0)
	for i := 0; i < len(table); i += 4 {
		var word [4]byte
		copy(word[:], table[i:])
		sum += binary.BigEndian.Uint32(word[:])
	}
	return sum
}
