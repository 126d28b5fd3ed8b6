package sizes

import (
	"slices"
	"strings"

	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
)

// A value that could not be read leaves the rest to be judged. Faults that follow from a value in
// doubt are not reported; all others are. In doubt are the places that the job reader names, with
// all that lies under them, and those whose value is missing or no good.

// widthInputs, heightInputs and depthInputs are the keys that each direction depends on, as places
// without numbers. Where one is in doubt its direction is left unsettled.
var (
	widthInputs = append(drawersBehind("width"), "outside_width", "inside_width",
		"frame.stile_width", "frame.mid_stile_width", "frame.inset", "partition.material", "partition.thickness",
		"bay.width", "drawer.side_clearance", "drawer.hinge_clearance",
		"bay.opening.contents.width", "bay.opening.contents.across", "bay.opening.contents.clearance")
	heightInputs = append(drawersBehind("height"), "outside_height", "inside_height",
		"frame.rail_width", "frame.inset", "base.kind", "base.height", "divider.material", "divider.thickness",
		"bay.opening.height", "bay.opening.graded", "bay.opening.drawer.front_height",
		"drawer.gap", "drawer.gap_above", "drawer.gap_below", "drawer.front", "drawer.overlay",
		"shelf.material", "shelf.thickness", "bay.opening.shelves",
		"bay.opening.contents.height", "bay.opening.contents.high", "bay.opening.contents.clearance")
	depthInputs = append(drawersBehind("depth"), "outside_depth", "inside_depth",
		"frame.material", "frame.thickness", "back.fit", "back.material", "back.thickness", "back.set_in",
		"drawer.box_depth", "drawer.gap_behind", "drawer.gap_before", "drawer.front", "drawer.front_material", "drawer.front_thickness",
		"shelf.set_back", "bay.opening.shelves",
		"bay.opening.contents.depth", "bay.opening.contents.deep", "bay.opening.contents.clearance")
)

// drawersBehind are the inputs that every direction has: how the case is made, and
// measured drawers, perhaps behind doors.
func drawersBehind(size string) []string {
	return []string{"construction", "carcass.material", "carcass.thickness",
		"bay.opening.drawer.count", "bay.opening.drawer." + size, "bay.opening.doors",
		"door.material", "door.thickness", "door.fit", "door.gap", "door.overlay"}
}

// apart are the keys and tables that no size of a part hangs on.
var apart = []string{"finish", "shelf.load", "shelf.pin_inset", "shelf.pin_pitch", "shelf.pin_holes", "shelf.pin_diameter",
	"drawer.slide_line", "drawer.slide_length", "drawer.handle_spacing", "bay.opening.drawer.weight", "bay.opening.drawer.load", "bay.opening.contents.weight", "bay.opening.contents.name"}

// partsFollow reports whether the parts can be derived: none of their sizes depends on a value in
// doubt.
func (r *Sizes) partsFollow() bool {
	hangs := func(d string) bool {
		return !slices.ContainsFunc(apart, func(key string) bool { return design.Covers(r.In.Root.Path+"."+key, design.Unnumbered(d)) })
	}
	return !slices.ContainsFunc(r.In.From.Doubts, hangs) && !slices.ContainsFunc(r.In.Doubts, hangs)
}

// settles reports whether a direction can be settled: none of its inputs is in
// doubt.
func (r *Sizes) settles(inputs []string) bool {
	// Doors take room of what is behind them, if that claims any.
	doors := r.Built.AnyOpening(func(o construction.Opening) bool { return o.DrawersBehindDoors() || o.Doors > 0 && o.Contents != nil })
	for _, key := range inputs {
		if strings.HasPrefix(key, "door.") && !doors {
			continue
		}
		if r.In.Doubtful(r.In.Root.Path + "." + key) {
			return false
		}
	}
	return true
}
