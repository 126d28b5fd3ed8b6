package stock

// LabelGrid is sheets of labels to print on: how many, and where they lie. The zero value is
// plain paper, to be cut apart.
type LabelGrid struct {
	Columns, Rows         int
	SideMargin, TopMargin Length // left and right, top and bottom of the sheet
	ColumnGap, RowGap     Length // between two labels
}

// Label is the size of a label on a sheet so wide and high; 0 or less where the grid does not
// fit.
func (g LabelGrid) Label(width, height Length) (wide, high Length) {
	return (width - 2*g.SideMargin - Length(g.Columns-1)*g.ColumnGap) / Length(g.Columns),
		(height - 2*g.TopMargin - Length(g.Rows-1)*g.RowGap) / Length(g.Rows)
}
