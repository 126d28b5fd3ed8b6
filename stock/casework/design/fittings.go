package design

// Base lifts the case off the floor, or holds it to the wall: [case.base]. The outside
// height includes it; the outside depth leaves out what reaches forward.
type Base struct {
	Line int `toml:"-"`

	// Kind is "none" (the default), "plinth" (a front, a back and a cross piece
	// at each end), "feet" (one at each corner) or "hung" (hanging rails hold it to the
	// wall).
	Kind      Word   `toml:"kind" words:"none plinth feet hung"`
	Material  Word   `toml:"material"` // default: the carcass's
	Thickness Length `toml:"thickness"`
	// Height is from the floor to the lowest part of the case.
	Height Length `toml:"height"`
	// SetBack is how far a plinth's front lies behind that of the case. Default 0.
	SetBack Length `toml:"set_back" zero:"allowed"`
	// Depth is the size of a foot, front to back.
	Depth Length `toml:"depth"`
	// Forward is how far the front feet reach before the case. Default 0.
	Forward Length `toml:"forward" zero:"allowed"`
	// Rails is how many hanging rails lie above one another: 1, below the top, or 2
	// (the default), one above the bottom too. RailWidth is their face; default 80 mm
	// (3 in).
	Rails     Count  `toml:"rails"`
	RailWidth Length `toml:"rail_width"`
}

// Door describes all doors: [case.door].
type Door struct {
	Line int `toml:"-"`

	Material  Word   `toml:"material"` // default: the carcass's
	Thickness Length `toml:"thickness"`
	// Fit is "inset" (the default), within the opening, or "overlay", over its
	// edges.
	Fit Word `toml:"fit" words:"inset overlay"`
	// Gap is left between two doors, and all round inset ones. Default 3 mm
	// (1/8 in); for inset doors 2 mm (1/16 in).
	Gap Length `toml:"gap" zero:"allowed"`
	// Overlay is how far a door reaches over each edge of its opening.
	Overlay Length `toml:"overlay"`
	// HandleInset is how far a handle lies from the edge that opens. Default 40 mm
	// (1 1/2 in), in a narrow door the middle.
	HandleInset Length `toml:"handle_inset"`
	// HandleSpacing is the distance of a handle's two holes. Default: one hole.
	HandleSpacing Length `toml:"handle_spacing"`
}

// Edging is strips on the edges of some of the panels: [[case.edging]]. A strip
// is as wide as its panel is thick.
type Edging struct {
	Line int `toml:"-"`

	// On names the panels: the front edges of the "carcass" (the default),
	// "partitions", "dividers" or "shelves"; the "top", whose front and side
	// edges get a trim; or "fronts", the doors and false fronts, all round.
	On       Word `toml:"on" words:"carcass partitions dividers shelves top fronts"`
	Material Word `toml:"material"`
	// Thickness is how far a strip stands off the panel's edge.
	Thickness Length `toml:"thickness"`
	// Fit is "taken-off" (the default): the panel is smaller by the strips, and
	// all sizes stay; or "added": the strips stand out before the case.
	Fit Word `toml:"fit" words:"taken-off added"`
	// Corner is "butt" (the default; the longer strips of a front, the front
	// strip of a top run through) or "miter".
	Corner Word `toml:"corner" words:"butt miter"`
}

// LooseTenon is how the tenons of joints called "loose-tenon" are made, out of
// strips: [case.loose_tenon].
type LooseTenon struct {
	Line int `toml:"-"`

	Material Word `toml:"material"`
	// Thickness is a third of what is joined by default.
	Thickness Length `toml:"thickness"`
	// Width is three thicknesses by default.
	Width Length `toml:"width"`
	// Length is the length of one tenon, half of it in each part; in a panel's face two thirds of
	// its thickness at most, and the rest in the other's end.
	Length Length `toml:"length"`
	// Spacing is the greatest distance of the tenons along a corner of the carcass, which has at
	// least two. Default 150 mm (6 in). A frame's corner has one.
	Spacing Length `toml:"spacing"`
}

// Joinery is small pieces of wood that hold or stiffen joints, where the maker
// puts them: [case.spline], [case.glue_block].
type Joinery struct {
	Line int `toml:"-"`

	Count     Count  `toml:"count" zero:"allowed"` // default 0: none
	Material  Word   `toml:"material"`
	Thickness Length `toml:"thickness"`
	Length    Length `toml:"length"`
	Width     Length `toml:"width"`
}
