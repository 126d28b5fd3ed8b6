package job

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// labelKeys describe the sheets that labels are printed on.
var labelKeys = []key{
	{name: "columns", holds: aCount, need: true, example: "3", most: 10, usual: "count the labels side by side on a sheet"},
	{name: "rows", holds: aCount, need: true, example: "8", most: 20, usual: "count the labels below one another"},
	{name: "side_margin", holds: aLength, metric: "0", zero: true, longest: largestLabelMargin, usual: "measure from the edge of the sheet to the first label"},
	{name: "top_margin", holds: aLength, metric: "0", zero: true, longest: largestLabelMargin, usual: "measure from the top of the sheet to the first label"},
	{name: "column_gap", holds: aLength, metric: "0", zero: true, longest: largestLabelMargin, usual: "measure between two labels side by side"},
	{name: "row_gap", holds: aLength, metric: "0", zero: true, longest: largestLabelMargin, usual: "measure between two labels below one another"},
}

// Labels need room for a mark, sizes and the next setting in type that can be read. Sheets
// are A4 or Letter, so the narrower and the shorter of both must do.
const (
	largestLabelMargin = 60 * stock.Millimeter
	leastLabelWide     = 45 * stock.Millimeter
	leastLabelHigh     = 25 * stock.Millimeter
	narrowSheet        = 210 * stock.Millimeter // A4
	shortSheet         = 11 * stock.Inch        // Letter
)

// labels reads [labels].
func (r *reader) labels(root *table, at place) stock.LabelGrid {
	if _, there := root.last("labels"); !there {
		return stock.LabelGrid{}
	}
	rec := r.section(root, "labels", at)
	if !rec.sound {
		return stock.LabelGrid{}
	}
	g := stock.LabelGrid{Columns: rec.count("columns"), Rows: rec.count("rows"), SideMargin: rec.length("side_margin"),
		TopMargin: rec.length("top_margin"), ColumnGap: rec.length("column_gap"), RowGap: rec.length("row_gap")}
	if g.Columns < 1 || g.Rows < 1 {
		return stock.LabelGrid{}
	}
	wide, high := g.Label(narrowSheet, shortSheet)
	if wide < leastLabelWide {
		r.fault(rec.where("columns").of("columns"), fault.New(
			fmt.Sprintf("%d labels side by side would be %s wide, less than %s", g.Columns, r.ruler.PrintUnit(max(0, wide)), r.ruler.PrintUnit(leastLabelWide)),
			"give fewer columns, or a smaller side_margin or column_gap"))
	}
	if high < leastLabelHigh {
		r.fault(rec.where("rows").of("rows"), fault.New(
			fmt.Sprintf("%d labels below one another would be %s high, less than %s", g.Rows, r.ruler.PrintUnit(max(0, high)), r.ruler.PrintUnit(leastLabelHigh)),
			"give fewer rows, or a smaller top_margin or row_gap"))
	}
	return g
}
