package design

// Coating is how the case is finished: [case.finish].
type Coating struct {
	Line int `toml:"-"`

	// Coats of each class of surface; see [Surfaces]. Default 2 outside, 1
	// inside, 3 where it wears.
	CoatsOutside Count `toml:"coats_outside" zero:"allowed"`
	CoatsInside  Count `toml:"coats_inside" zero:"allowed"`
	CoatsWear    Count `toml:"coats_wear" zero:"allowed"`
	// Coverage of one coat in m2 per liter, in a job in inches in ft2 per US
	// gallon. Default 10 m2 (400 ft2).
	Coverage Count `toml:"coverage"`
}
