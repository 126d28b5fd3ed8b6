package job

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// row is a row of a part list that is not empty, with the line of each cell.
type row struct {
	cells []string
	lines []int
}

// partList reads a part list: a heading with the words of [[part]], in any
// order, and one part a row.
func (r *reader) partList(source string, at place, allowed allowances) []wanted {
	var all []wanted
	for _, rec := range r.rowsOf("part", source, partKeys, at) {
		all = append(all, partOf(rec, allowed))
	}
	return all
}

// rowsOf reads a list of parts or pieces: a heading with the words of keys, and
// one of them a row. Those that are not sound are left out.
func (r *reader) rowsOf(word, source string, of []key, at place) []record {
	if !strings.Contains(source, "\n") {
		source = strings.ReplaceAll(source, "\r", "\n") // some spreadsheets still end rows so
	}
	separator, skip := separatorOf(source, of)
	rows, found, line := parted(source, separator)
	if found.Found() {
		r.fault(at.at(line), found)
		return nil
	}
	if skip && len(rows) > 0 {
		rows = rows[1:]
	}
	if len(rows) == 0 {
		r.fault(at, fault.New("the "+word+" list is empty", "begin it with a heading: "+strings.Join(namesOf(of), ", ")))
		return nil
	}
	columns, keys := r.columns(rows[0], of, at)
	if columns == nil {
		return nil
	}
	if n := len(rows) - 1; n > mostRows {
		r.fault(at.at(rows[mostRows+1].lines[0]), fault.New(fmt.Sprintf("the list has %d rows, and at most %d are read", n, mostRows), fewer(word)))
		return nil
	}
	var all []record
	for i, row := range rows[1:] {
		if found := mixedRow(row.cells, separator, len(columns)); found.Found() {
			r.fault(at.at(row.lines[0]), found)
			continue
		}
		t := r.rowTable(row, columns, of, separator, at)
		rec := r.read(t, keys, place{file: at.file, subject: called(word, t, i, of)})
		if rec.sound && complete(columns, of) {
			all = append(all, rec)
		}
	}
	return all
}

// rowTable turns a row into a table with a key for each cell that is not
// empty.
func (r *reader) rowTable(row row, columns []column, of []key, separator rune, at place) *table {
	t := &table{line: row.lines[0], made: byRow}
	for i, written := range row.cells {
		written = stock.PlainCell(strings.TrimSpace(written))
		line := row.lines[i]
		switch {
		case written == "":
		case i >= len(columns) || columns[i].heading == "":
			r.fault(at.at(line), fault.New(fmt.Sprintf("%q stands in column %d, which has no heading", written, i+1),
				"give the column a heading, or put a text that holds the separator in quotes"))
		case columns[i].key != "":
			v, found := cellValue(written, columns[i], of, separator, line)
			if found.Found() {
				r.fault(at.at(line).of(columns[i].key), found)
			}
			t.add(columns[i].key, line, v)
		}
	}
	return t
}

// pointThousands looks like a number with a separator of thousands, 2.440,
// where commas are decimal.
var pointThousands = regexp.MustCompile(`^[1-9]\d{0,2}\.\d{3}$`)

// cellValue reads a cell: a bare length takes the unit of its heading. Where
// semicolons part the columns a comma is the decimal mark, so a point may be
// one or not.
func cellValue(written string, c column, of []key, separator rune, line int) (value, fault.Fault) {
	v := value{kind: cell, line: line, text: written}
	at := slices.IndexFunc(of, func(k key) bool { return k.name == c.key })
	if of[at].holds != aLength {
		return v, fault.Fault{}
	}
	if separator == ';' {
		if pointThousands.MatchString(written) {
			v.kind = broken
			return v, fault.New(fmt.Sprintf("%q may be %s or %s", written, strings.Replace(written, ".", "", 1), strings.Replace(written, ".", ",", 1)),
				"write it without a separator of thousands, or with a decimal comma")
		}
		if strings.Count(written, ",") == 1 && !strings.Contains(written, ".") {
			v.text = strings.Replace(written, ",", ".", 1)
		}
	}
	if c.unit != "" && bare(written) {
		v.text += " " + c.unit
	}
	return v, fault.Fault{}
}

// separators part the columns, the likeliest first.
var separators = []rune{',', ';', '\t'}

// separatorOf finds what parts the columns: the mark by which the heading
// falls into the most known words. A first line "sep=;", as spreadsheets write
// it, settles the matter and is to be skipped.
func separatorOf(source string, of []key) (separator rune, skip bool) {
	first, _, _ := strings.Cut(strings.TrimLeft(source, "\r\n"), "\n")
	if mark, ok := strings.CutPrefix(strings.ToLower(strings.TrimRight(first, "\r")), "sep="); ok {
		for _, s := range separators {
			if mark == string(s) {
				return s, true
			}
		}
	}
	best, mostKnown, mostCells := separators[0], 0, 0
	for _, s := range separators {
		heading, err := newCSV(source, s).Read()
		if err != nil {
			continue
		}
		known := 0
		for _, cell := range heading {
			if slices.Contains(namesOf(of), columnOf(cell).key) {
				known++
			}
		}
		if known > mostKnown || known == mostKnown && len(heading) > mostCells {
			best, mostKnown, mostCells = s, known, len(heading)
		}
	}
	return best, false
}

func newCSV(source string, separator rune) *csv.Reader {
	c := csv.NewReader(strings.NewReader(source))
	c.Comma = separator
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = separator != '\t' // it would take empty cells for blanks
	return c
}

// parted parts source into rows. An inch mark in a cell without quotes, 27 1/2",
// is against the rules of CSV but can only be meant one way.
func parted(source string, separator rune) (rows []row, found fault.Fault, line int) {
	rows, err := rowsBy(newCSV(source, separator))
	if errors.Is(err, csv.ErrBareQuote) {
		lenient := newCSV(source, separator)
		lenient.LazyQuotes = true
		rows, err = rowsBy(lenient)
	}
	if wrong, ok := errors.AsType[*csv.ParseError](err); ok {
		return nil, fault.New("a quoted cell does not end where it should", `close it with ", and write "" for a quotation mark within it`), wrong.StartLine
	}
	return rows, fault.Fault{}, 0
}

func rowsBy(c *csv.Reader) (rows []row, err error) {
	for {
		cells, err := c.Read()
		if err == io.EOF {
			return rows, nil
		}
		if err != nil {
			return nil, err
		}
		if !slices.ContainsFunc(cells, func(s string) bool { return strings.TrimSpace(s) != "" }) {
			continue
		}
		each := row{cells: cells}
		for i := range cells {
			line, _ := c.FieldPos(i)
			each.lines = append(each.lines, line)
		}
		rows = append(rows, each)
	}
}

var separatorNames = map[rune]string{',': "commas", ';': "semicolons", '\t': "tabs"}

// mixedRow looks for a row that is one cell, which another mark would part.
func mixedRow(cells []string, by rune, columns int) fault.Fault {
	if columns < 2 || slices.ContainsFunc(cells[1:], func(c string) bool { return strings.TrimSpace(c) != "" }) {
		return fault.Fault{}
	}
	for _, also := range separators {
		if also != by && strings.Count(cells[0], string(also)) >= columns-1 {
			return fault.New(fmt.Sprintf("the row is parted by %s, and the heading by %s", separatorNames[also], separatorNames[by]),
				"part all columns of the list by the same mark")
		}
	}
	return fault.Fault{}
}
