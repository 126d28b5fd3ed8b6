package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/store"
)

// rackKeys are a rack's file: its units, and a [[piece]] for each thing on hand.
var rackKeys = []key{
	{name: "units", holds: aWord, words: []string{"mm", "in"}, metric: "mm"},
	{name: "piece", holds: sections, keys: pieceKeys},
}

var pieceKeys = append([]key{{name: "id", holds: anID, need: true, example: `"R1"`}}, pieceSays...)

// pieceSays are the keys of a piece, without its id.
var pieceSays = []key{
	{name: "kind", holds: aWord, words: []string{"sheet", "board"}, metric: "sheet"},
	{name: "name", holds: aText},
	{name: "material", holds: aText, need: true, example: `"birch ply 18"`},
	{name: "length", holds: aLength, need: true, example: `"900 mm"`, longest: longestStock},
	{name: "width", holds: aLength, need: true, example: `"300 mm"`, longest: longestStock},
	{name: "thickness", holds: aLength, need: true, example: `"18 mm"`, longest: thickestBoard},
	{name: "grain", holds: aWord, words: []string{"length", "width", "none", "unknown"}, metric: "length"},
	{name: "from", holds: aText},
	{name: "since", holds: aDay},
	{name: "note", holds: aText, most: longestNote},
}

// mostPiecesAlike is more than anybody lays on a rack at once.
const mostPiecesAlike = 1000

// pieceListKeys are the headings of a list of pieces, and what a command says
// of one.
var pieceListKeys = append([]key{{name: "count", holds: aCount, metric: "1", most: mostPiecesAlike, usual: "enter fewer at a time", none: "write a whole number above 0"}}, pieceSays...)

// Rack is a rack's file as it tells it: nothing in it is wrong.
type Rack struct {
	Units  stock.Units // of bare numbers, and for printing
	Pieces []stock.Piece
	// Text is the file as plain text, and Lines tells the line in it, from 1,
	// where the table of each piece begins.
	Text  string
	Lines []int
}

// ReadRack reads the rack's file at path. The error is of type [fault.Faults] and
// holds every fault.
func ReadRack(path string) (*Rack, error) {
	text, unread := openText(path, store.Read)
	return rackOf(path, text, unread)
}

// ParseRack is [ReadRack] of what is in a file called name.
func ParseRack(name string, source []byte) (*Rack, error) {
	text, unread := decodeText(source)
	return rackOf(name, text, unread)
}

// rackOf reads a rack from the text of its file, unless that could not be read whole.
func rackOf(name, text string, unread []fault.Fault) (*Rack, error) {
	r, at := rackReader(name, stock.Millimeters), place{file: name}
	if len(unread) > 0 {
		r.mistakes(at, unread)
		return nil, r.err()
	}
	read, _ := r.rack(text, at)
	if err := r.err(); err != nil {
		return nil, err
	}
	return read, nil
}

func rackReader(name string, units stock.Units) *reader {
	return &reader{layout: rackKeys, files: []string{name}, ruler: stock.Ruler{Units: units}}
}

// rack reads the text of a rack's file. The records are those of its pieces.
func (r *reader) rack(text string, at place) (*Rack, []record) {
	root, mistakes := parseTOML([]byte(text))
	r.mistakes(at, mistakes)
	top := r.read(root, rackKeys, at)
	if top.text("units") == stock.Inches.String() {
		r.ruler.Units = stock.Inches
	}
	read := &Rack{Units: r.ruler.Units, Text: text}
	if v, there := root.last("piece"); there && v.kind == list && v.fixed {
		r.fault(at.at(v.line).of("piece"), fault.New("the pieces stand in one list", "begin each with [[piece]] on a line of its own"))
		return read, nil
	}
	records := r.each(root, "piece", at)
	first := make(map[string]record)
	for _, rec := range records {
		p := pieceOf(rec)
		other := slices.IndexFunc(read.Pieces, func(q stock.Piece) bool { return q.Material == p.Material && q.Kind != p.Kind })
		if other >= 0 && p.Material != "" {
			r.fault(rec.where("kind"), fault.New(
				fmt.Sprintf("%q is a %s in line %d and a %s here", p.Material, read.Pieces[other].Kind, records[other].line, p.Kind),
				"give sheets and boards different materials"))
		}
		written := strings.ToUpper(p.ID)
		if earlier, again := first[written]; again && written != "" {
			r.fault(rec.where("id").of("id"), fault.New(fmt.Sprintf("the piece in line %d has the same id", earlier.line), "give each its own"))
		}
		first[written] = rec
		read.Pieces = append(read.Pieces, p)
		read.Lines = append(read.Lines, rec.line)
	}
	return read, records
}

func pieceOf(rec record) stock.Piece {
	p := stock.Piece{
		ID:        rec.text("id"),
		Name:      rec.text("name"),
		Material:  rec.text("material"),
		Length:    rec.length("length"),
		Width:     rec.length("width"),
		Thickness: rec.length("thickness"),
		Grain:     map[string]stock.Grain{"width": stock.GrainWidth, "none": stock.GrainAny, "unknown": stock.GrainUnknown}[rec.text("grain")],
		From:      rec.text("from"),
		Since:     rec.text("since"),
		Note:      rec.text("note"),
	}
	if rec.text("kind") == stock.Board.String() {
		p.Kind = stock.Board
	}
	return p
}

// piecesOf is a piece as often as its count says.
func piecesOf(rec record) []stock.Piece {
	all := make([]stock.Piece, rec.count("count"))
	for i := range all {
		all[i] = pieceOf(rec)
	}
	return all
}

// ReadPieces reads a list of pieces at path: CSV with the words of [[piece]] as
// headings, and count. Bare numbers are in the units given. A row of which there
// are several gives as many pieces, none of them with an id. The error is of
// type [fault.Faults].
func ReadPieces(path string, units stock.Units) (pieces []stock.Piece, warnings []fault.Fault, err error) {
	r := rackReader(path, units)
	at := place{file: path}
	text, unread := openText(path, store.Read)
	if len(unread) > 0 {
		r.mistakes(at, unread)
		return nil, nil, r.err()
	}
	for _, rec := range r.rowsOf("piece", text, pieceListKeys, at) {
		pieces = append(pieces, piecesOf(rec)...)
	}
	if len(r.faults) == 0 && len(pieces) == 0 {
		r.fault(at, fault.New("the list has a heading but no pieces", "write a row for each"))
	}
	return pieces, r.warnings, r.err()
}

// PiecesFromFlags reads a piece and its count from flags of a command, which have the names
// of the keys of [[piece]]. It reads them as [ReadPieces] reads a row. Faults name the command.
func PiecesFromFlags(command string, flags []Flag, units stock.Units) ([]stock.Piece, error) {
	r := rackReader(command, units)
	rec := r.flags(flags, pieceListKeys, command)
	return piecesOf(rec), r.err()
}

// Flag is a flag of a command line, without its dashes, and its value.
type Flag struct{ Name, Value string }

func (r *reader) flags(all []Flag, keys []key, command string) record {
	t := &table{made: byFlags}
	for _, s := range all {
		t.add(s.Name, 0, value{kind: cell, text: s.Value})
	}
	return r.read(t, keys, place{file: command})
}

// PartFromFlags reads a part to be found on a rack: its material, length, width, grain and
// thickness. A thickness that is left out is 0. Faults name the command.
func PartFromFlags(command string, flags []Flag, units stock.Units) (stock.Part, error) {
	r := rackReader(command, units)
	keys := slices.DeleteFunc(slices.Clone(partKeys), func(k key) bool { return k.name == "name" })
	rec := r.flags(flags, keys, command)
	return partOf(rec, allowances{}).Part, r.err()
}

// LengthFromFlag reads a length, which may be 0. The fault names the command.
func LengthFromFlag(command string, flag Flag, units stock.Units) (stock.Length, error) {
	r := rackReader(command, units)
	rec := r.flags([]Flag{flag}, []key{{name: flag.Name, holds: aLength, zero: true, longest: longestStock}}, command)
	return rec.length(flag.Name), r.err()
}

// DefaultKerf is the kerf of a saw whose job gives none.
func DefaultKerf(units stock.Units) stock.Length {
	r := rackReader("", units)
	return r.read(&table{}, sawKeys, place{}).length("kerf")
}

// longestID is the length limit of an id: it is written on a piece, and read off it.
const longestID = 8

// id reads what is written on a piece.
func id(v value) (string, fault.Fault) {
	if v.kind == number {
		return "", wrongKind(v, "write it in quotes: "+strconv.Quote(v.text))
	}
	said, found := words(v)
	switch {
	case found.Found():
		return "", found
	case len(said) > longestID:
		return "", fault.New(fmt.Sprintf("%q is long to write on a piece (at most %d letters and digits)", said, longestID), `write one such as "R17"`)
	case strings.Trim(strings.ToUpper(said), "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") != "" || strings.HasPrefix(said, "-"):
		return "", fault.New(fmt.Sprintf("%q has a character that no id has", said), `write letters and digits, such as "R17"`)
	}
	return said, fault.Fault{}
}
