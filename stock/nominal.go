package stock

// Nominal is the trade name of a softwood size, such as 2x4.
type Nominal struct{ Thickness, Width Length }

// ParseNominal reads "2x4", "1 x 12", "5/4x6".
func ParseNominal(text string) (Nominal, error) { panic("stock: not written yet") }

// Dressed is the minimum dressed dry size.
func (n Nominal) Dressed() (thickness, width Length) { panic("stock: not written yet") }

// Dressed reads a nominal size and gives its minimum dressed dry size.
func Dressed(nominal string) (thickness, width Length, err error) { panic("stock: not written yet") }
