package rack

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/job"
)

// head begins a new rack.
const head = `# What is on hand. You may edit this file: a piece that is gone, a size that was
# measured anew. Give each piece an id of its own and write it on the piece.

units = %q
`

// edited is the text of a rack without the pieces at the indices of gone, and
// with others behind the rest. All else in it stays as its owner wrote it.
func edited(file *job.Rack, gone []int, added []stock.Piece) string {
	lines := strings.SplitAfter(file.Text, "\n")
	end := "\n"
	if strings.Contains(file.Text, "\r\n") {
		end = "\r\n"
	}
	for _, i := range slices.Backward(slices.Sorted(slices.Values(gone))) {
		from, to := tableOf(lines, file.Lines, i)
		lines = slices.Delete(lines, from, to)
	}
	text := strings.Join(lines, "")
	if len(added) > 0 && text != "" && !strings.HasSuffix(text, "\n") {
		text += end
	}
	for _, p := range added {
		text += strings.ReplaceAll("\n"+written(p, file.Units), "\n", end)
	}
	return text
}

// tableOf is the lines of a piece, from its heading to its last key, with the
// blank lines behind it. A remark behind that may be about the next piece.
func tableOf(lines []string, headings []int, i int) (from, to int) {
	from, to = headings[i]-1, len(lines)
	if i+1 < len(headings) {
		to = headings[i+1] - 1
	}
	last := to
	for last > from+1 && isAside(lines[last-1]) {
		last--
	}
	for last < to && strings.TrimSpace(lines[last]) == "" {
		last++
	}
	return from, last
}

// isAside reports whether a line says nothing to the program.
func isAside(line string) bool {
	line = strings.TrimSpace(line)
	return line == "" || strings.HasPrefix(line, "#")
}

// written is a piece as a table of the rack's file.
func written(p stock.Piece, units stock.Units) string {
	var b strings.Builder
	b.WriteString("[[piece]]\n")
	word := func(key, value string) {
		if value != "" {
			fmt.Fprintf(&b, "%s = %s\n", key, quote(value))
		}
	}
	word("id", p.ID)
	word("kind", p.Kind.String())
	word("name", p.Name)
	word("material", p.Material)
	fmt.Fprintf(&b, "length = %s\nwidth = %s\nthickness = %s\n", size(p.Length, units), size(p.Width, units), size(p.Thickness, units))
	word("grain", map[stock.Grain]string{stock.GrainWidth: "width", stock.GrainAny: "none", stock.GrainUnknown: "unknown"}[p.Grain])
	word("from", p.From)
	if p.Since != "" {
		fmt.Fprintf(&b, "since = %s\n", p.Since)
	}
	word("note", p.Note)
	return b.String()
}

// size writes a length exactly, as it would be written by hand in these units.
func size(l stock.Length, units stock.Units) string {
	tape := stock.Ruler{Units: stock.Inches, Denominator: 64}
	switch {
	case units == stock.Millimeters:
		return l.Decimal()
	case l%stock.Inch == 0:
		return strconv.FormatInt(int64(l/stock.Inch), 10)
	case tape.Exact(l):
		return quote(tape.Print(l))
	}
	return quote(l.Decimal() + " mm")
}

// quote puts a text without control characters between quotes, as TOML has them.
func quote(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}

// begun is a new rack, still empty.
func begun(path string, units stock.Units) (*job.Rack, error) {
	return job.ParseRack(path, fmt.Appendf(nil, head, units))
}
