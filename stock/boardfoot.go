package stock

// BoardFeet is a count of hundredths of a board foot.
type BoardFeet int64

// String writes "5.33".
func (b BoardFeet) String() string { panic("stock: not written yet") }

// BoardMeasure is the board measure of a nominal or rough size.
func BoardMeasure(thickness, width, length Length) BoardFeet { panic("stock: not written yet") }

// BoardFeet is the softwood tally of one piece.
func (n Nominal) BoardFeet(length Length) BoardFeet { return BoardMeasure(n.Thickness, n.Width, length) }
