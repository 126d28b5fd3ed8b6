// Package design holds what a job file says of a case. A [Reader] looks it up, fills in defaults and
// keeps what is wrong with it.
package design

import "sawbill/stock"

// Given is a value of the job file: what was written, and where. The zero
// Given was not written.
type Given[T any] struct {
	Value T
	Set   bool
	Line  int // of the job file
}

// The kinds of values a design is written in. A Count is a whole number, a
// Word one of the words its key allows, or the name of a material.
type (
	Length = Given[stock.Length]
	Count  = Given[int]
	Word   = Given[string]
)

// Design is the [case] table of a job file. Field tags are the TOML keys; a
// struct is a table of its own, a slice an array of tables. Every key may be
// left out: [Derive] says what is missing. Line is the line of the table's
// header, 0 where it was not written.
//
// The tag "words" lists the words a key allows, its default first; the tag "joint" names a
// site, whose words are its joints. A length or
// count must be more than zero unless the tag "zero" allows it. Derive checks
// both.
type Design struct {
	Line int `toml:"-"`

	// Construction is "panel" (the default): a box of panels; or "framed":
	// such a box between a front and a back frame of lumber.
	Construction Word `toml:"construction" words:"panel framed"`

	// Outside sizes measure the whole case, frames and back included.
	OutsideWidth  Length `toml:"outside_width"`
	OutsideHeight Length `toml:"outside_height"`
	OutsideDepth  Length `toml:"outside_depth"`

	// Inside sizes are clear of everything: between the sides (framed: between
	// the stiles), between top and bottom (framed: between the rails), and from
	// the front to the back (framed: to the back frame).
	InsideWidth  Length `toml:"inside_width"`
	InsideHeight Length `toml:"inside_height"`
	InsideDepth  Length `toml:"inside_depth"`

	Carcass   Carcass `toml:"carcass"`
	Frame     Frame   `toml:"frame"` // of a framed case
	Back      Back    `toml:"back"`
	Base      Base    `toml:"base"`
	Partition Divider `toml:"partition"` // the uprights between bays
	Divider   Divider `toml:"divider"`   // the fixed panels between the openings of a bay
	Shelf     Shelf   `toml:"shelf"`
	Drawer    Drawer  `toml:"drawer"`
	Door      Door    `toml:"door"`
	// Edgings are strips of wood on the edges of panels, one for each kind of
	// panel.
	Edgings []Edging `toml:"edging"`
	// Joinery that is cut with the rest.
	LooseTenon LooseTenon `toml:"loose_tenon"`
	Spline     Joinery    `toml:"spline"`
	GlueBlock  Joinery    `toml:"glue_block"`
	Finish     Coating    `toml:"finish"`

	// Bays stand side by side, from the left. None means a single, open bay.
	Bays []Bay `toml:"bay"`
}

// Carcass is the box of panels: [case.carcass].
type Carcass struct {
	Line int `toml:"-"`

	Material Word `toml:"material"`
	// Thickness may be left out where the material has one thickness only. So
	// it may in every table below.
	Thickness Length `toml:"thickness"`
	// Top is "between" the sides (the default) or "over" their ends.
	Top Word `toml:"top" words:"between over"`
	// Bottom is "between" the sides (the default) or "under" their ends.
	Bottom Word `toml:"bottom" words:"between under"`
	// Joint joins the four corners.
	Joint Word `toml:"joint" joint:"carcass"`
	// JointDepth is how deep the joint is cut: into the sides where top or
	// bottom stand between them, else into top and bottom.
	JointDepth Length `toml:"joint_depth"`
}

// Frame is the front and the back frame of a framed case: [case.frame].
type Frame struct {
	Line int `toml:"-"`

	Material  Word   `toml:"material"`
	Thickness Length `toml:"thickness"` // front to back
	// StileWidth and RailWidth are the faces of the uprights and of the level
	// members.
	StileWidth Length `toml:"stile_width"`
	RailWidth  Length `toml:"rail_width"`
	// MidStileWidth is the face of the stiles in front of partitions; default stile_width.
	MidStileWidth Length `toml:"mid_stile_width"`
	// MidRailWidth is the face of the rails in front of dividers, in the front frame alone; 0 for
	// none. Default: rail_width where a bay has two openings above one another that doors or false
	// fronts close within the frame, else none.
	MidRailWidth Length `toml:"mid_rail_width" zero:"allowed"`
	// Corner is the joint of stiles and rails.
	Corner Word `toml:"corner" joint:"frame"`
	// TenonLength is the length of one tenon, shoulder to end.
	TenonLength Length `toml:"tenon_length"`
	// FingerWidth is the width of a finger of box joints, across the thickness. Default: suggested,
	// see Mark.
	FingerWidth Length `toml:"finger_width"`
	// Inset is how far the panels lie inside the frames' outer edges, so that
	// nothing stands proud. Default 0: flush.
	Inset Length `toml:"inset" zero:"allowed"`
}

// Back closes the case behind: [case.back]. In a framed case rabbet and groove
// are cut in the back frame.
type Back struct {
	Line int `toml:"-"`

	// Fit is "none", "applied" (on the rear edges, over the whole case) or the joint that it
	// lies in.
	Fit       Word   `toml:"fit" joint:"back"`
	Material  Word   `toml:"material"`
	Thickness Length `toml:"thickness"`
	// Depth is how far the back reaches into rabbet or groove, per edge.
	Depth Length `toml:"depth"`
	// SetIn is the distance of a grooved back from the rear edges, which is the wall
	// behind it. Default 6 mm (1/4 in).
	SetIn Length `toml:"set_in" zero:"allowed"`
	// Clearance is the difference between the back and its rabbets or grooves, over the whole width
	// and over the whole height. Default 1.5 mm (1/16 in).
	Clearance Length `toml:"clearance" zero:"allowed"`
}

// Divider is a fixed panel that parts the inside: [case.partition] stands
// between top and bottom, [case.divider] lies between the uprights.
type Divider struct {
	Line int `toml:"-"`

	Material  Word   `toml:"material"` // default: the carcass's
	Thickness Length `toml:"thickness"`
	// Joint joins both its ends.
	Joint      Word   `toml:"joint" joint:"divider"`
	JointDepth Length `toml:"joint_depth"`
}

// Shelf is how the shelves within openings are made: [case.shelf].
type Shelf struct {
	Line int `toml:"-"`

	Material  Word   `toml:"material"` // default: the carcass's
	Thickness Length `toml:"thickness"`
	// Held is "pins" (the shelf lies loose) or the joint of both ends.
	Held       Word   `toml:"held" joint:"shelf"`
	JointDepth Length `toml:"joint_depth"` // of dados
	// Clearance is the difference between the bay and a loose shelf, in length. Default 3 mm (1/8
	// in).
	Clearance Length `toml:"clearance" zero:"allowed"`
	// SetBack is how far a shelf's front edge lies behind the carcass's front.
	// Default 0.
	SetBack Length `toml:"set_back" zero:"allowed"`
	// Load is the load that shelves and dividers are checked for, in kg/m2, in a job in inches in
	// lb/ft2. Default 50 lb/ft2 (244 kg/m2).
	Load Count `toml:"load"`
	// PinInset is how far the rows of pins lie from the front and the back edge
	// of a loose shelf. Default 37 mm (1 1/2 in).
	PinInset Length `toml:"pin_inset"`
	// PinPitch is the distance of the holes in a row. Default 32 mm (1 1/4 in).
	PinPitch Length `toml:"pin_pitch"`
	// PinHoles is their number for each shelf, in each row. Default 5; an even
	// number counts as one more.
	PinHoles Count `toml:"pin_holes"`
	// PinDiameter is that of the holes. Default 5 mm (1/4 in).
	PinDiameter Length `toml:"pin_diameter"`
}

// Drawer describes all drawers: [case.drawer].
type Drawer struct {
	Line int `toml:"-"`

	// SideClearance is the room for a slide on each side. Default 1/2 in (12.7 mm), a side-mount
	// slide's.
	SideClearance Length `toml:"side_clearance" zero:"allowed"`
	// Gap is left between drawers or their fronts. Default 3 mm (1/8 in); for
	// inset fronts, which have it all round, 2 mm (1/16 in).
	Gap Length `toml:"gap" zero:"allowed"`
	// GapAbove and GapBelow are left at the ends of a stack of measured
	// drawers, or of drawers without false fronts. Default: gap.
	GapAbove Length `toml:"gap_above" zero:"allowed"`
	GapBelow Length `toml:"gap_below" zero:"allowed"`
	// GapBehind is left between drawer and back. Default 0.
	GapBehind Length `toml:"gap_behind" zero:"allowed"`
	// GapBefore is left between the inner face of a door and the drawers behind
	// it. Default 30 mm (1 1/4 in), room for a handle.
	GapBefore Length `toml:"gap_before" zero:"allowed"`
	// HingeClearance is left for an open door on each side that has hinges.
	// Default: what a door takes that stands open at a right angle, an inset one
	// thickness + gap, an overlay one thickness - overlay.
	HingeClearance Length `toml:"hinge_clearance" zero:"allowed"`
	// SlideLine is how far above the box's lower edge a slide's line is marked.
	// Default 0.
	SlideLine Length `toml:"slide_line" zero:"allowed"`
	// SlideLength is the length of the slides. Default: the longest usual one that goes in is
	// suggested.
	SlideLength Length `toml:"slide_length"`

	// The keys below are for drawers to be made.

	// Front is "none" (the default; the box's own front shows), "inset" or
	// "overlay": a false front within the opening, or over its edges; behind
	// doors, where none can reach over, "overlay" is as "none".
	Front          Word   `toml:"front" words:"none inset overlay"`
	FrontMaterial  Word   `toml:"front_material"` // default: the carcass's
	FrontThickness Length `toml:"front_thickness"`
	// Overlay is how far a front reaches over each edge of the opening.
	Overlay Length `toml:"overlay"`

	Material  Word   `toml:"material"` // of the box's four sides
	Thickness Length `toml:"thickness"`
	// Corner is the joint of its front and back with the sides.
	Corner      Word   `toml:"corner" joint:"drawer"`
	CornerDepth Length `toml:"corner_depth"` // of rabbets, into the sides
	// FingerWidth is the width of a finger of box joints. Default: suggested, see Mark.
	FingerWidth Length `toml:"finger_width"`
	// HandleSpacing is the distance of a handle's two holes. Default: one hole.
	HandleSpacing Length `toml:"handle_spacing"`
	// BoxDepth is the box's size front to back. Default: all there is.
	BoxDepth Length `toml:"box_depth"`
	// HeightClearance is how much lower a box behind a false front is than its share of the
	// opening. Default 1/2 in (12.7 mm).
	HeightClearance Length `toml:"height_clearance" zero:"allowed"`

	BottomMaterial  Word   `toml:"bottom_material"`
	BottomThickness Length `toml:"bottom_thickness"`
	// GrooveDepth is how far the bottom reaches into each of the box's sides.
	GrooveDepth Length `toml:"groove_depth"`
	// UnderBottom is the distance from the box's lower edge to its bottom. Default
	// 10 mm (3/8 in).
	UnderBottom Length `toml:"under_bottom" zero:"allowed"`
	// BottomClearance is the difference between the bottom and its grooves, over the whole width
	// and over the whole depth. Default 1.5 mm (1/16 in).
	BottomClearance Length `toml:"bottom_clearance" zero:"allowed"`
}
