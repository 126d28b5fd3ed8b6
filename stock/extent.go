package stock

// Area is an exact total of areas, however large.
type Area struct{}

// Add returns a plus count rectangles.
func (a Area) Add(length, width Length, count int) Area { panic("stock: not written yet") }

// Ratio is a over of; 0 when of is nothing.
func (a Area) Ratio(of Area) float64 { panic("stock: not written yet") }

// Volume is an exact total of volumes, however large.
type Volume struct{}

// Add returns v plus count pieces.
func (v Volume) Add(length, width, thickness Length, count int) Volume {
	panic("stock: not written yet")
}

// Ratio is v over of; 0 when of is nothing.
func (v Volume) Ratio(of Volume) float64 { panic("stock: not written yet") }
