package job

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"sawbill/stock/fault"
)

// column is the meaning of a heading: a key, or "" for one that is not
// read, and the unit of its bare numbers.
type column struct {
	key, unit string
	heading   string
}

// complete reports whether every key that is needed has a column.
func complete(columns []column, keys []key) bool {
	return !slices.ContainsFunc(keys, func(k key) bool {
		return k.need && !slices.ContainsFunc(columns, func(c column) bool { return c.key == k.name })
	})
}

// columns reads the heading. The keys it returns are those given; none is
// needed when a column is missing or misspelt, for that is told once, here, and
// not again in every row. It returns no columns when the first row is no
// heading at all.
func (r *reader) columns(heading row, of []key, at place) ([]column, []key) {
	at.line = heading.lines[0]
	if n := len(heading.cells); n > mostColumns {
		r.fault(at, fault.New(fmt.Sprintf("the heading has %d columns, and at most %d are read", n, mostColumns), "delete those that are not of the list"))
		return nil, nil
	}
	known := namesOf(of)
	keys := of
	columns := make([]column, len(heading.cells))
	seen := make(map[string]bool)
	var unread []string
	for i, written := range heading.cells {
		at := at.at(heading.lines[i])
		c := columnOf(written)
		switch {
		case c.heading == "":
		case !slices.Contains(known, c.key):
			if meant, ok := r.meantBy(c.key, known); ok {
				r.fault(at, fault.New(fmt.Sprintf("unknown column %q", c.heading), fmt.Sprintf("did you mean %q?", meant)))
				seen[meant] = true
				keys = optional(of)
			} else {
				unread = append(unread, c.heading)
			}
			c.key = ""
		case seen[c.key]:
			r.fault(at, fault.New(fmt.Sprintf("there are two columns %q", c.key), "delete one of them"))
			c.key = ""
		default:
			seen[c.key] = true
		}
		columns[i] = c
	}
	if len(seen) == 0 {
		r.fault(at, fault.New("the first row is not a heading",
			"begin with a row of the words "+strings.Join(known, ", ")))
		return nil, nil
	}
	if len(unread) > 0 {
		columns := "the column "
		if len(unread) > 1 {
			columns = "the columns "
		}
		r.warn(at, fault.New("not read: "+columns+quotedWith("and", unread), "columns read are "+strings.Join(known, ", ")))
	}
	var missing []string
	for _, k := range of {
		if k.need && !seen[k.name] {
			missing = append(missing, k.name)
		}
	}
	if len(missing) > 0 {
		if cell, ok := partedOtherwise(heading, known); ok {
			r.fault(at, fault.New(fmt.Sprintf("%q in the heading holds another mark between columns than the rest of it", cell), "use one mark between all columns: a comma, a semicolon or a tab"))
			return nil, nil
		}
		r.fault(at, fault.New("the heading has no column "+quotedWith("and", missing), "add it, and fill it in every row"))
		keys = optional(of)
	}
	return columns, keys
}

// partedOtherwise finds a cell of the heading that holds known words, parted by another
// mark than its columns.
func partedOtherwise(heading row, known []string) (cell string, found bool) {
	for _, cell := range heading.cells {
		words := strings.FieldsFunc(cell, func(r rune) bool { return slices.Contains(separators, r) })
		if len(words) > 1 && slices.ContainsFunc(words, func(w string) bool { return slices.Contains(known, columnOf(w).key) }) {
			return cell, true
		}
	}
	return "", false
}

// unitAtEnd finds the unit in "length (mm)", "length [in]", "Length mm",
// "length_mm" or "length in mm".
var unitAtEnd = regexp.MustCompile(`(?i)^(.*?)(?: in)?[\s_,/]*[\s_,/(\[]\s*(mm|cm|m|in|inch|inches|ft|"|″)\s*[)\]]?$`)

func columnOf(written string) column {
	c := column{heading: strings.Join(strings.Fields(written), " ")}
	said := strings.ToLower(c.heading)
	if found := unitAtEnd.FindStringSubmatch(said); found != nil {
		said, c.unit = found[1], found[2]
	}
	c.key = spelled(strings.NewReplacer(" ", "_", "-", "_").Replace(strings.TrimSpace(said)))
	return c
}
