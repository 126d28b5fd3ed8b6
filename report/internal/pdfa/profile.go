package pdfa

import "encoding/binary"

// grayName tells what the shades of the pages are measured in.
const grayName = "gray, gamma 2.2"

// grayProfile is an ICC profile (ICC.1:2001-04, version 2.1) of a gray display with gamma
// 2.2: the pages know black, white and shades of gray alone. It has the four tags that a
// profile of one channel must have.
func grayProfile() []byte {
	tags := []struct {
		name string
		data []byte
	}{
		{"desc", description(grayName)},
		{"cprt", append([]byte("text\x00\x00\x00\x00"), "No rights are claimed in this profile.\x00"...)},
		{"wtpt", append([]byte("XYZ \x00\x00\x00\x00"), d50...)},
		{"kTRC", append([]byte("curv\x00\x00\x00\x00"), 0, 0, 0, 1, 2, 0x33)}, // one number: a gamma of 2 + 0x33/256
	}
	const head, entry = 128, 12
	table := binary.BigEndian.AppendUint32(nil, uint32(len(tags)))
	at := head + 4 + entry*len(tags)
	var data []byte
	for _, t := range tags {
		table = append(table, t.name...)
		table = binary.BigEndian.AppendUint32(table, uint32(at+len(data)))
		table = binary.BigEndian.AppendUint32(table, uint32(len(t.data)))
		data = append(data, t.data...)
		data = append(data, make([]byte, -len(data)&3)...) // tags begin at multiples of four
	}
	p := make([]byte, head)
	binary.BigEndian.PutUint32(p[0:], uint32(at+len(data)))
	copy(p[8:], "\x02\x10\x00\x00") // version
	copy(p[12:], "mntrGRAYXYZ ")    // class, channels, where they are connected
	copy(p[24:], "\x07\xD0\x00\x01\x00\x01\x00\x00\x00\x00\x00\x00")
	copy(p[36:], "acsp")
	copy(p[68:], d50)
	return append(append(p, table...), data...)
}

// d50 is the white of the connection space, in fixed-point numbers of 16 and 16 bits.
var d50 = []byte("\x00\x00\xF6\xD6\x00\x01\x00\x00\x00\x00\xD3\x2D")

// description is a text for readers, in ASCII, with its Unicode and script forms empty.
func description(s string) []byte {
	d := []byte("desc\x00\x00\x00\x00")
	d = binary.BigEndian.AppendUint32(d, uint32(len(s)+1))
	d = append(d, s...)
	d = append(d, 0)
	const unicode, script = 8, 2 + 1 + 67
	return append(d, make([]byte, unicode+script)...)
}
