package design

// Bay is one upright division of the case: [[case.bay]].
type Bay struct {
	Line int `toml:"-"`

	// Width is clear. Bays without one, and without measured drawers or contents,
	// share what is left equally.
	Width Length `toml:"width"`
	// Openings lie one above the other, from the top, with a divider between.
	// None means a single, open one.
	Openings []Opening `toml:"opening"`
}

// Opening is a space of a bay, and what it holds: [[case.bay.opening]]. It
// holds shelves or drawers, or stays open, and may have doors before them.
type Opening struct {
	Line int `toml:"-"`

	// Height is clear. Openings without one, and without drawers or contents that
	// settle it, share what is left equally.
	Height Length `toml:"height"`
	// Shelves is their number.
	Shelves Count `toml:"shelves" zero:"allowed"`
	// Doors is 1, or 2 that meet in the middle.
	Doors Count `toml:"doors" zero:"allowed"`
	// Hinged is the side that a single door is hung on: "left" (the default) or
	// "right". Drawers behind it keep clear of it there.
	Hinged Word `toml:"hinged" words:"left right"`
	// Drawers lie one above the other, from the top.
	Drawers []DrawerBox `toml:"drawer"`
	// Graded is how much higher each front is than the one above it. Only the
	// top one may then have a height of its own. Without it fronts are equal.
	Graded Length `toml:"graded"`
	// Contents must go in, on shelves or without.
	Contents Contents `toml:"contents"`
}

// Contents are alike pieces in rows that must go into an opening: [case.bay.opening.contents]. The
// room they need is a minimum: it settles a size that nothing else does.
type Contents struct {
	Line int `toml:"-"`

	Name Word `toml:"name"` // default "pieces"

	// The size of one piece. One that is left out claims nothing.
	Width  Length `toml:"width"`
	Height Length `toml:"height"`
	Depth  Length `toml:"depth"`

	// Weight is the weight of all of them together, in kg, in a job in inches in pounds.
	Weight Count `toml:"weight"`

	// Across is how many stand side by side, Deep how many behind one another.
	// Default 1.
	Across Count `toml:"across"`
	Deep   Count `toml:"deep"`
	// High is how many rows lie above one another. With shelves there is one in
	// each of their spaces. Default: one row, or one for each space.
	High Count `toml:"high"`
	// Clearance is left over the whole width, over the whole depth, and over the
	// height, in every space between shelves. Default 10 mm (3/8 in).
	Clearance Length `toml:"clearance" zero:"allowed"`
}

// DrawerBox is one drawer, or several alike: [[case.bay.opening.drawer]]. One
// with width, height and depth is already made and has been measured; any
// other is to be made.
type DrawerBox struct {
	Line int `toml:"-"`

	Count Count `toml:"count"` // so many alike; default 1

	// The measured outside of a finished drawer, without its slides.
	Width  Length `toml:"width"`
	Height Length `toml:"height"`
	Depth  Length `toml:"depth"`
	// Weight is the weight of a finished drawer, empty, in kg, in a job in inches in pounds.
	Weight Count `toml:"weight"`
	// Load is the weight of what is put in each, in the same unit.
	Load Count `toml:"load"`

	// FrontHeight is the height of the front of a drawer to be made, or of its box where front is
	// "none". Drawers without one share what is left equally.
	FrontHeight Length `toml:"front_height"`
	// BoxHeight is the height of a box behind a false front. Default: see height_clearance.
	BoxHeight Length `toml:"box_height"`
}
