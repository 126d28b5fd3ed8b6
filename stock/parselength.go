package stock

// ParseLength reads one length as the trade writes it.
func ParseLength(text string, units Units) (Length, error) { panic("stock: not written yet") }
