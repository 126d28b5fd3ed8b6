package pdfa

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"errors"
	"fmt"
	"slices"
	"strconv"
)

// header has a comment of bytes above 127, which tells that the file is binary (ISO
// 19005-2, 6.1.2).
const header = "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n"

var errForm = errors.New("the document is not in the form in which the PDF writer leaves it")

// Archived returns the document with what PDF/A-2b asks for besides. Equal documents give
// equal bytes. The error tells that the document has another form than the writer's: one
// table of objects, the catalog last.
func Archived(document []byte, about Info) ([]byte, error) {
	f, err := read(document)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	out.WriteString(header)
	f.tagSubsets(document, &out)
	add := func(number int, format string, values ...any) {
		f.offsets[number] = out.Len()
		fmt.Fprintf(&out, "%d 0 obj\n", number)
		fmt.Fprintf(&out, format, values...)
		out.WriteString("\nendobj\n")
	}
	metadata := len(f.offsets)
	intent, profile := metadata+1, metadata+2
	f.offsets = append(f.offsets, 0, 0, 0)
	add(f.root, "<<\n/Type /Catalog\n/Lang (%s)\n/Metadata %d 0 R\n/OutputIntents [%d 0 R]\n/ViewerPreferences <</DisplayDocTitle true>>%s>>",
		language, metadata, intent, f.catalog.entries)
	about.write(add, metadata)
	gray := grayProfile()
	add(intent, "<</Type /OutputIntent /S /GTS_PDFA1 /OutputConditionIdentifier (%s) /Info (%s) /DestOutputProfile %d 0 R>>",
		grayName, grayName, profile)
	add(profile, "<</N 1 /Alternate /DeviceGray /Length %d>>\nstream\n%s\nendstream", len(gray), gray)

	sum := sha256.Sum256(out.Bytes())
	table := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(f.offsets))
	for _, at := range f.offsets[1:] {
		fmt.Fprintf(&out, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%x> <%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(f.offsets), f.root, f.info, sum[:16], sum[:16], table)
	return out.Bytes(), nil
}

// tagSubsets copies the objects before the catalog, with the tag that the name of a font bears
// of which a part is embedded (ISO 32000-1, 9.6.4, from memory), and notes where each begins.
func (f *file) tagSubsets(document []byte, out *bytes.Buffer) {
	numbers := make([]int, 0, len(f.offsets))
	for number, at := range f.offsets {
		if at > 0 && number != f.root {
			numbers = append(numbers, number)
		}
	}
	slices.SortFunc(numbers, func(a, b int) int { return cmp.Compare(f.offsets[a], f.offsets[b]) })
	ends := make([]int, len(numbers))
	for i := range numbers {
		ends[i] = f.catalog.from
		if i+1 < len(numbers) {
			ends[i] = f.offsets[numbers[i+1]]
		}
	}
	for i, number := range numbers {
		object := document[f.offsets[number]:ends[i]]
		if !bytes.Contains(object, []byte("stream\n")) {
			object = bytes.ReplaceAll(object, []byte("Name /utf8"), []byte("Name /SAWBIL+utf8"))
			object = bytes.ReplaceAll(object, []byte("BaseFont /utf8"), []byte("BaseFont /SAWBIL+utf8"))
		}
		f.offsets[number] = out.Len()
		out.Write(object)
	}
}

// language is that of the words that the program says (ISO 32000-1, 14.9.2).
const language = "en-US"

// file is what is known of a document of the writer.
type file struct {
	body       int   // where the objects begin
	offsets    []int // of objects by their numbers; 0 is none
	root, info int   // numbers of objects
	catalog    struct {
		from    int    // where its object begins, behind all others
		entries []byte // that are kept
	}
}

func read(document []byte) (file, error) {
	var f file
	f.body = bytes.IndexByte(document, '\n') + 1
	_, tail, found := bytes.Cut(document[max(0, len(document)-40):], []byte("startxref\n"))
	number, _, ended := bytes.Cut(tail, []byte("\n"))
	table, err := strconv.Atoi(string(number))
	if !bytes.HasPrefix(document, []byte("%PDF-")) || !found || !ended || err != nil || table <= 0 || table > len(document) {
		return f, errForm
	}
	entries, trailer, found := bytes.Cut(document[table:], []byte("trailer\n"))
	lines := bytes.Split(bytes.TrimSpace(entries), []byte("\n"))
	if !found || len(lines) < 3 || string(lines[0]) != "xref" {
		return f, errForm
	}
	for _, line := range lines[2:] {
		at, err := strconv.Atoi(string(bytes.Fields(line)[0]))
		if err != nil {
			return f, errForm
		}
		f.offsets = append(f.offsets, at)
	}
	_, root, hasRoot := bytes.Cut(trailer, []byte("/Root "))
	_, info, hasInfo := bytes.Cut(trailer, []byte("/Info "))
	if !hasRoot || !hasInfo {
		return f, errForm
	}
	fmt.Sscan(string(root), &f.root)
	fmt.Sscan(string(info), &f.info)
	if f.root != len(f.offsets)-1 || f.info <= 0 || f.info >= f.root {
		return f, errForm
	}
	f.catalog.from = f.offsets[f.root]
	_, catalog, found := bytes.Cut(document[f.catalog.from:table], []byte("/Type /Catalog"))
	if !found {
		return f, errForm
	}
	// The writer ends the catalog with an empty list of files, which is left out.
	f.catalog.entries, _, found = bytes.Cut(catalog, []byte("/Names <<"))
	if !found {
		return f, errForm
	}
	return f, nil
}
