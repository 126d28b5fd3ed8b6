package stock

// BoardMeasure is thickness in inches x width in inches x length in feet / 12,
// to the nearest hundredth, a half upwards. Sizes are nominal or rough; stock
// thinner than an inch counts as an inch (PS 20, from memory).
func BoardMeasure(thickness, width, length Length) BoardFeet {
	return Volume{}.Add(max(thickness, Inch), width, length, 1).BoardFeet()
}

// BoardFeet is the surface measure times the rough thickness, which counts as
// an inch where it is less (NHLA rules, from memory).
func (t *Tally) BoardFeet(thickness, width, length Length) BoardFeet {
	surface := t.SurfaceMeasure(width, length)
	return BoardMeasure(thickness, Length(surface)*Foot, Foot)
}

// Width is the width to write down: the nearest whole inch.
func (t *Tally) Width(width Length) int { return t.nearest(width, Inch) }
