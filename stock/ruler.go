package stock

// Ruler prints lengths: millimetres to 0.1, or inches to a fraction. The zero
// Ruler prints millimetres.
type Ruler struct {
	Units       Units
	Denominator int64 // of inch fractions; 0 means 32
}

// Print writes the bare number, "698.5" or "27 1/2", behind "≈" where it was
// rounded.
func (r Ruler) Print(l Length) string { panic("stock: not written yet") }

// PrintUnit writes "698.5 mm" or "27 1/2 in".
func (r Ruler) PrintUnit(l Length) string { panic("stock: not written yet") }

// Exact reports whether l prints without rounding.
func (r Ruler) Exact(l Length) bool { panic("stock: not written yet") }

// Size writes "698.5 x 300".
func (r Ruler) Size(length, width Length) string { return r.Print(length) + " x " + r.Print(width) }
