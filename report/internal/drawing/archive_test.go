package drawing

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// object is one of a PDF: its dictionary, and the bytes of its stream.
type object struct{ dictionary, stream string }

// objectsOf reads a PDF by its table of objects. It fails where an object does not begin
// where the table says, or a stream is not as long as it says (ISO 19005-2, 6.1.4 and
// 6.1.7, from memory).
func objectsOf(t *testing.T, data []byte) (objects map[int]object, trailer string) {
	t.Helper()
	end := regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`).FindSubmatch(data)
	if end == nil {
		t.Fatal("the file does not end with the place of its table")
	}
	at, _ := strconv.Atoi(string(end[1]))
	table, trailer, _ := strings.Cut(string(data[at:]), "trailer\n")
	objects = map[int]object{}
	for number, entry := range strings.Split(strings.TrimSuffix(table, "\n"), "\n")[2:] {
		if number == 0 {
			continue
		}
		at, _ := strconv.Atoi(entry[:10])
		body, found := bytes.CutPrefix(data[at:], fmt.Appendf(nil, "%d 0 obj\n", number))
		body, _, ended := bytes.Cut(body, []byte("\nendobj\n"))
		if !found || len(entry) != 19 || entry[10:] != " 00000 n " {
			t.Fatalf("object %d is not where the table says: %q", number, entry)
		}
		o := object{dictionary: string(body)}
		if dictionary, _, has := strings.Cut(string(body), "\nstream\n"); has {
			length, _ := strconv.Atoi(regexp.MustCompile(`/Length (\d+)`).FindStringSubmatch(dictionary)[1])
			from := at + len(fmt.Sprintf("%d 0 obj\n", number)) + len(dictionary) + len("\nstream\n")
			stream := string(data[from : from+length])
			if ended = strings.HasPrefix(string(data[from+length:]), "\nendstream\nendobj\n"); strings.Contains(dictionary, "/FlateDecode") {
				r, err := zlib.NewReader(strings.NewReader(stream))
				if err != nil {
					t.Fatal(number, err)
				}
				plain, err := io.ReadAll(r)
				if err != nil {
					t.Fatal(number, err)
				}
				stream = string(plain)
			}
			o = object{dictionary, stream}
		}
		if !ended {
			t.Fatalf("object %d does not end where it says", number)
		}
		objects[number] = o
	}
	return objects, trailer
}

func find(t *testing.T, in, pattern string) string {
	t.Helper()
	found := regexp.MustCompile(pattern).FindStringSubmatch(in)
	if found == nil {
		t.Fatalf("%q is not in %s", pattern, in)
	}
	return found[1]
}

func referred(t *testing.T, objects map[int]object, in, key string) object {
	t.Helper()
	number, _ := strconv.Atoi(find(t, in, key+`\s+\[?(\d+) 0 R`))
	return objects[number]
}

// Each clause of ISO 19005-2 (PDF/A-2b) that concerns a document of text and lines; the
// numbers of the clauses are from memory.
func TestPDFIsForArchives(t *testing.T) {
	var page Drawing
	page.Width, page.Height = 210, 297
	page.Line(Point{10, 10}, Point{100, 10}, Cut)
	page.Text(Text{At: Point{20, 30}, String: "Łódź, Ωmega & <shelf> 11 25/32", Size: 10})
	page.Text(Text{At: Point{20, 60}, String: "turned", Size: 12, Face: Bold, Turned: true})
	page.Text(Text{At: Point{20, 90}, String: "Schrank Größe ж", Size: 9, Face: Bold})
	data, err := PDF(Document{Title: "Case & <shelf> é", Subject: "plan ABCDE", Keywords: []string{"a", "b"},
		Pages: []Drawing{page, page}, Bookmarks: []Bookmark{{Title: "one"}, {Title: "two", Page: 1}}})
	if err != nil {
		t.Fatal(err)
	}
	objects, trailer := objectsOf(t, data)
	catalog := referred(t, objects, trailer, "/Root").dictionary

	t.Run("6.1.2 header", func(t *testing.T) {
		if !regexp.MustCompile(`^%PDF-1\.[0-7]\n%[\x80-\xff]{4}\n`).Match([]byte(latin(data[:20]))) {
			t.Errorf("%q", data[:20])
		}
	})
	t.Run("6.1.3 trailer", func(t *testing.T) {
		if find(t, trailer, `/ID \[<([0-9a-f]{32})>`) == "" || strings.Contains(trailer, "/Encrypt") {
			t.Error(trailer)
		}
	})
	t.Run("6.2.2 and 6.2.4.3 content", func(t *testing.T) {
		known := strings.Fields("q Q cm w J j M d g G m l c h re S s f F B b n W BT ET Tf Td Tj TJ Tm")
		words := regexp.MustCompile(`(?s)\((?:\\.|[^\\)])*\)|\[[^\]]*\]|\S+`)
		for _, o := range objects {
			if !strings.Contains(o.dictionary, "/Type /Page\n") {
				continue
			}
			for _, word := range words.FindAllString(referred(t, objects, o.dictionary, "/Contents").stream, -1) {
				if regexp.MustCompile(`^[A-Za-z]+\*?$`).MatchString(word) && !slices.Contains(known, strings.TrimSuffix(word, "*")) {
					t.Errorf("operator %s", word)
				}
			}
		}
	})
	t.Run("6.2.3 output intent", func(t *testing.T) {
		intent := referred(t, objects, catalog, "/OutputIntents").dictionary
		profile := referred(t, objects, intent, "/DestOutputProfile")
		icc := []byte(profile.stream)
		if find(t, intent, `/S /(\w+)`) != "GTS_PDFA1" || find(t, profile.dictionary, `/N (\d)`) != "1" || len(icc) < 132 ||
			int(binary.BigEndian.Uint32(icc)) != len(icc) || string(icc[12:24]) != "mntrGRAYXYZ " || string(icc[36:40]) != "acsp" {
			t.Fatalf("%s: %q", intent, icc)
		}
		for i := range int(binary.BigEndian.Uint32(icc[128:])) {
			entry := icc[132+12*i:]
			from, size := binary.BigEndian.Uint32(entry[4:]), binary.BigEndian.Uint32(entry[8:])
			if from%4 != 0 || int(from+size) > len(icc) {
				t.Errorf("tag %s lies at %d, %d bytes", entry[:4], from, size)
			}
		}
	})
	t.Run("6.2.11 fonts", func(t *testing.T) { checkFonts(t, objects) })
	t.Run("6.1.12, 6.2.8, 6.2.10, 6.3, 6.5 and 6.8: what is not there", func(t *testing.T) {
		for _, o := range objects {
			for _, key := range []string{"/EmbeddedFiles", "/Annots", "/JavaScript", "/AA", "/OpenAction", "/SMask", "/ExtGState", "/Subtype /Image", "/LZWDecode"} {
				if strings.Contains(o.dictionary, key) {
					t.Errorf("%s in %s", key, o.dictionary)
				}
			}
		}
	})
	t.Run("6.6.2 and 6.6.4 metadata", func(t *testing.T) {
		metadata := referred(t, objects, catalog, "/Metadata")
		var said struct {
			RDF struct {
				Description struct {
					Part        int    `xml:"http://www.aiim.org/pdfa/ns/id/ part"`
					Conformance string `xml:"http://www.aiim.org/pdfa/ns/id/ conformance"`
					Title       string `xml:"title>Alt>li"`
					Created     string `xml:"http://ns.adobe.com/xap/1.0/ CreateDate"`
				}
			}
		}
		if err := xml.Unmarshal([]byte(metadata.stream), &said); err != nil {
			t.Fatal(err)
		}
		d := said.RDF.Description
		if d.Part != 2 || d.Conformance != "B" || d.Title != "Case & <shelf> é" || d.Created != "2000-01-01T00:00:00" || strings.Contains(metadata.dictionary, "/Filter") {
			t.Errorf("%+v, %s", d, metadata.dictionary)
		}
	})
	t.Run("ISO 32000-1, 14.9.2 language", func(t *testing.T) {
		if find(t, catalog, `/Lang \(([^)]+)\)`) != "en-US" {
			t.Error(catalog)
		}
	})
}

// latin reads each byte as one character.
func latin(data []byte) string {
	var b strings.Builder
	for _, c := range data {
		b.WriteRune(rune(c))
	}
	return b.String()
}

// checkFonts checks that each font is embedded (6.2.11.4), that all its letters are in it
// (6.2.11.8), and that they are as wide as the document says, to a thousandth (6.2.11.5).
func checkFonts(t *testing.T, objects map[int]object) {
	fonts := 0
	for _, o := range objects {
		if !strings.Contains(o.dictionary, "/CIDFontType2") {
			continue
		}
		fonts++
		for _, name := range []string{find(t, o.dictionary, `/BaseFont /(\S+)`), find(t, referred(t, objects, o.dictionary, "/FontDescriptor").dictionary, `/FontName /(\S+)`)} {
			if !regexp.MustCompile(`^[A-Z]{6}\+`).MatchString(name) { // ISO 32000-1, 9.6.4
				t.Errorf("a part of a font is named %s", name)
			}
		}
		glyphs := referred(t, objects, o.dictionary, "/CIDToGIDMap").stream
		font := []byte(referred(t, objects, referred(t, objects, o.dictionary, "/FontDescriptor").dictionary, "/FontFile2").stream)
		table := func(name string) []byte {
			for i := range int(binary.BigEndian.Uint16(font[4:])) {
				if e := font[12+16*i:]; string(e[:4]) == name {
					return font[binary.BigEndian.Uint32(e[8:]):]
				}
			}
			t.Fatal("no table", name)
			return nil
		}
		units, wide, widths := float64(binary.BigEndian.Uint16(table("head")[18:])), int(binary.BigEndian.Uint16(table("hhea")[34:])), table("hmtx")
		checked := 0
		for letter, said := range widthsOf(t, o.dictionary) {
			glyph := int(glyphs[2*letter])<<8 | int(glyphs[2*letter+1])
			if glyph == 0 {
				continue // the document names widths of letters that it does not set
			}
			checked++
			if is := 1000 / units * float64(binary.BigEndian.Uint16(widths[4*min(glyph, wide-1):])); math.Abs(is-float64(said)) > 1 {
				t.Errorf("letter %q is %.1f wide, %d by the document", rune(letter), is, said)
			}
		}
		if checked == 0 {
			t.Error("no letter is checked")
		}
	}
	if fonts == 0 {
		t.Error("no fonts")
	}
}

// widthsOf reads the widths of a font: "65 68 722" for a range, "69 [ 667 611 ]" for a row.
func widthsOf(t *testing.T, dictionary string) map[int]int {
	t.Helper()
	_, all, _ := strings.Cut(dictionary, "/W [")
	all, _, _ = strings.Cut(all, "]\n/")
	words := strings.Fields(strings.NewReplacer("[", " [ ", "]", " ] ").Replace(all))
	widths := map[int]int{}
	number := func(i int) int {
		n, err := strconv.Atoi(words[i])
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	for i := 0; i+2 < len(words); {
		first := number(i)
		if words[i+1] == "[" {
			for i += 2; i < len(words) && words[i] != "]"; i++ {
				widths[first] = number(i)
				first++
			}
			i++
			continue
		}
		for letter := first; letter <= number(i+1); letter++ {
			widths[letter] = number(i + 2)
		}
		i += 3
	}
	return widths
}
