package pieces

import "sawbill/stock"

// Storage is the inside of a drawer's box, above its bottom.
type Storage struct {
	Drawer               string // "bay 1 drawer 2", in as few words as tell it apart
	Width, Depth, Height stock.Length
}

// CubicMillimeters is the volume, for print: rounded to a double's 53 bits.
func (s Storage) CubicMillimeters() float64 {
	const mm = float64(stock.Millimeter)
	return float64(s.Width) / mm * (float64(s.Depth) / mm) * (float64(s.Height) / mm)
}
