// Package casework turns the design of a case into its parts.
//
// A case is a box of panels, its carcass, that is divided: bays stand side by
// side with partitions between, a bay is a stack of openings with dividers
// between, and an opening holds shelves, or drawers, or nothing, and may have
// doors before them. A framed case has the same box between a front and a back frame of lumber.
//
//	    outside width
//	|<----------------->|
//	 ___________________
//	|s|______top______|s|   outside height, from top to bottom
//	|i| opening | p |  |i|
//	|d|_________| a |o |d|   bay 1 | partition | bay 2
//	|e| divider | r |p |e|
//	| |---------| t |e | |
//	| | opening | . |n | |
//	|_|_____bottom____|_|
//	   |<- inside  ->|
//
// # Packages
//
// Each imports only those before it:
//
//	design, solid   what is written, and what is wrong with it; boxes, faces, marks
//	joints          the joints, one in a file
//	construction    how the case is made
//	sizes, pieces   its sizes; its pieces and where they stand
//	marks, checks, assembly
//
// # Lines
//
// Each direction is settled by itself, and all of it by one rule: what stands
// in a line adds up to what it stands in.
//
//	outside width  = side + inside width + side        framed: stiles for sides
//	inside width   = bays + partitions between         framed: mid stiles
//	outside height = top + inside height + bottom      framed: rails
//	                 + base
//	inside height  = openings + dividers between       in every bay; framed: or mid rails
//	opening height = drawers + gaps
//	              >= rows + shelves between + clearance in each space, for contents
//	graded fronts  = top, top + graded, top + 2 x graded ...
//	outside depth  = inside depth + back               framed: + back frame
//	bay width      = drawer + 2 side clearances        if it was measured
//	                 + hinge clearances                behind doors
//	              >= pieces across + clearance        for contents
//	inside depth  >= pieces behind one another + clearance + what the front takes
//	inside depth   = drawer + gap behind               and behind doors
//	                 + inset door + gap before
//	doors' width   = bay width - gaps                  or + 2 overlays
//
// So a case may be derived inwards, from its outside sizes, or outwards, from drawers that stand on
// the bench or other contents, or both. Members of a line that nothing settles share what is left
// equally; if there are none, those do that have more than contents need. A line that nothing
// settles at all is a fault, and so are two sizes that cannot both hold.
//
// # Joints
//
// A joint makes the panel that enters longer, by its depth at each end, and
// changes nothing else:
//
//	top between sides     inside width + 2 depths
//	side under a top      outside height - top + depth
//	shelf in dados        bay width + 2 depths
//	back in a rabbet      inside + 2 depths - clearance, both ways
//	rail with tenons      outside width - 2 stiles + 2 tenons
//	dowels                as a butt joint
//	loose tenons          as a butt joint; strips of tenons + kerfs between
//
// Every size is kept as the sum that it came from, a stock.Derivation, so the
// arithmetic that is printed is the one that is cut.
//
// # Base
//
// A case stands on the floor, on a plinth or on four feet, or it hangs on a wall. The
// outside height includes what lifts it; what reaches forward stands before the outside
// depth.
//
//	plinth front, back  outside width
//	plinth cross piece  outside depth - set back - 2 thicknesses
//	front foot          depth + forward
//	hanging rail        inside width behind the back, bay width before it
//
// # Edging
//
// Strips stand on the edges of panels, as wide as these are thick. Those that
// are taken off change no size but their panels':
//
//	front edge   strip = panel's length - its joints; panel's width - strip
//	all round    panel - 2 strips both ways; end strips - 2 strips unless mitered
//	round a top  length - 2 strips, width - strip
//
// A strip runs past a panel that is housed in the edge it is on. One that reaches
// as far forward has its corner notched there, which changes no size of it:
//
//	notch        strip - how far the panel stands back, and as deep as the joint
//
// # Dry fit
//
// Backs, drawer bottoms, false fronts, doors, edging and trim go into what others
// have made, errors and all. They are best cut when that was put together dry and
// measured, and are marked so.
//
// # Marks
//
// Marks follow from where the pieces stand. Two pieces that are joined take up the same room, and a
// [Mark] says where on each of them that room is. Each kind of mark has a file of its own: housings
// (dados, rabbets, grooves), notches, slides, fingers, frame joints, pegs (dowels and loose
// tenons), pins and handles. A position is exact, from one edge, and never the sum of others.
//
// # Framed cases
//
// The box lies between the frames, and inside their edges by an inset. The clear size is the
// frame's opening; the panels stand back from it:
//
//	outside |<- stile ->|   opening
//	        |inset|panel|<- behind the stile
//
// A partition stands in the middle behind its mid stile, a divider behind its mid
// rail if it has one.
//
// # Takeoff and checks
//
// Every piece stands somewhere, as a [Solid], and a material may have
// [Properties]. From these two follow weights and the center of gravity, what is
// to be finished or edged, and the checks: the sag of shelves, the movement of
// wide lumber, and tipping, by moments about the front support
//
//	sum of weight x (y cos a - z sin a) - pull x height,   sin a = rear raised / depth
//
// with y behind the front of what stands lowest and z above the floor. They are estimates in
// floating point; no size of a part follows from them. A check that lacks a figure is left out, and
// a [Caution] names the figure.
package casework
