package report

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/rack"
)

// RackList writes what is on hand, by material and thickness, the largest piece
// first, and how many there are. The error is that of to.
func RackList(to io.Writer, pieces []stock.Piece, o Options) error {
	w := &writer{w: to}
	if len(pieces) == 0 {
		w.line("The rack is empty.")
		return w.err
	}
	w.line("On the rack")
	if w.err == nil {
		w.err = rackList(pieces, o.Ruler).text(to)
	}
	w.line("  %s, %s", counted(len(pieces), "piece"), counted(len(Materials(pieces)), "material"))
	return w.err
}

func rackList(pieces []stock.Piece, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"id", marks}, {"kind", words}, {"material", words}, {"size" + unit(r), sizes}, {"grain", words},
		{"name", words}, {"from", words}, {"since", sizes}, {"note", words},
	}}
	sorted := slices.Clone(pieces)
	slices.SortStableFunc(sorted, func(a, b stock.Piece) int {
		return cmp.Or(cmp.Compare(a.Material, b.Material), cmp.Compare(a.Thickness, b.Thickness), cmp.Compare(b.Length*b.Width, a.Length*a.Width))
	})
	for _, p := range sorted {
		l.add(p.ID, p.Kind.String(), p.Material, pieceSize(p, r), grainOfPiece(p), p.Name, p.From, p.Since, p.Note)
	}
	return l.withoutEmpty()
}

// withoutEmpty leaves out columns in which nothing stands.
func (l listing) withoutEmpty() listing {
	for i := len(l.columns) - 1; i >= 0; i-- {
		if slices.ContainsFunc(l.rows, func(row []string) bool { return row[i] != "" }) {
			continue
		}
		l.columns = slices.Delete(l.columns, i, i+1)
		for n := range l.rows {
			l.rows[n] = slices.Delete(l.rows[n], i, i+1)
		}
	}
	return l
}

func pieceSize(p stock.Piece, r stock.Ruler) string { return stockSize(p.Stock(), r) }

// grainOfPiece tells of a grain that is not as usual, along the length.
func grainOfPiece(p stock.Piece) string {
	switch p.Grain {
	case stock.GrainWidth:
		return "width"
	case stock.GrainAny:
		return "none"
	case stock.GrainUnknown:
		return "unknown"
	}
	return ""
}

// Materials lists the materials on hand, each once, in the order of the pieces.
func Materials(pieces []stock.Piece) []string {
	var all []string
	for _, p := range pieces {
		if !slices.Contains(all, p.Material) {
			all = append(all, p.Material)
		}
	}
	return all
}

// RackFits writes the pieces that would make a part, the best fitting first,
// and what would be left of each. The error is that of to.
func RackFits(to io.Writer, fits []rack.Fit, o Options) error {
	w := &writer{w: to}
	l := listing{columns: []heading{
		{"id", marks}, {"material", words}, {"size" + unit(o.Ruler), sizes}, {"the part lies", words}, {"left" + unit(o.Ruler), sizes}, {"note", words},
	}}
	for _, f := range fits {
		lies := "along it"
		if f.Turned {
			lies = "across it"
		}
		left := "nothing"
		if len(f.Left) > 0 {
			var each []string
			for _, p := range f.Left {
				each = append(each, o.Ruler.Size(p.Length, p.Width))
			}
			left = strings.Join(each, " and ")
		}
		l.add(f.Piece.ID, f.Piece.Material, pieceSize(f.Piece, o.Ruler), lies, left, f.Piece.Note)
	}
	w.line("Best fitting first")
	if w.err == nil {
		w.err = l.withoutEmpty().text(to)
	}
	return w.err
}

// RackHistory writes every change of a rack. The error is that of to.
func RackHistory(to io.Writer, entries []rack.Entry) error {
	l := listing{columns: []heading{
		{"change", figures}, {"date", sizes}, {"what", words}, {"left the rack", words}, {"entered it", words}, {"plan", words},
	}}
	for _, e := range entries {
		l.add(strconv.Itoa(e.Number), e.Date, e.What, rack.List(e.Out), rack.List(e.In), e.Plan)
	}
	if len(l.rows) == 0 {
		_, err := fmt.Fprintln(to, "The rack has no history yet.")
		return err
	}
	return l.withoutEmpty().text(to)
}
