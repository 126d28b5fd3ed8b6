package casework

import (
	"regexp"
	"slices"
	"strings"
)

// What could not be read leaves the rest to be judged: a fault that follows from a
// value in doubt is not told, every other one is. In doubt are the places that the
// job reader names, with all that lies under them, and those whose value is missing
// or no good.

// widthInputs, heightInputs and depthInputs are what each direction hangs on, as
// places without numbers. Where one is in doubt its direction is left unsettled.
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
var apart = []string{"finish", "shelf.load", "shelf.pin_inset", "shelf.pin_pitch", "shelf.pin_holes",
	"drawer.slide_line", "drawer.slide_length", "drawer.handle_spacing", "bay.opening.drawer.weight", "bay.opening.drawer.load", "bay.opening.contents.weight", "bay.opening.contents.name"}

// partsFollow reports whether the parts can be reckoned: none of their sizes hangs
// on what is in doubt.
func (r *reckoner) partsFollow() bool {
	hangs := func(d string) bool {
		return !slices.ContainsFunc(apart, func(key string) bool { return covers(r.place.path+"."+key, unnumbered(d)) })
	}
	return !slices.ContainsFunc(r.from.Doubts, hangs) && !slices.ContainsFunc(r.doubts, hangs)
}

// settles reports whether a direction can be settled: none of its inputs is in
// doubt.
func (r *reckoner) settles(inputs []string) bool {
	// Doors take room of what is behind them, if that claims any.
	doors := r.anyOpening(func(o opening) bool { return o.drawersBehindDoors() || o.doors > 0 && o.contents != nil })
	for _, key := range inputs {
		if strings.HasPrefix(key, "door.") && !doors {
			continue
		}
		if r.doubtful(r.place.path + "." + key) {
			return false
		}
	}
	return true
}

// unread reports whether what is written at a path could not be read: with numbers
// there, without them anywhere.
func (r *reader) unread(path string) bool {
	return slices.ContainsFunc(r.from.Doubts, func(d string) bool {
		return covers(d, path) || covers(unnumbered(d), path) || covers(d, unnumbered(path))
	})
}

// doubtful reports whether it could not be read, or is missing or no good.
func (r *reader) doubtful(path string) bool {
	return r.unread(path) || slices.ContainsFunc(r.doubts, func(d string) bool { return d == path || unnumbered(d) == path })
}

// doubtfulWithin reports whether a table is in doubt, or anything in it.
func (r *reader) doubtfulWithin(table string) bool {
	within := func(d string) bool { return strings.HasPrefix(d, table+".") || strings.HasPrefix(d, table+" ") }
	return r.doubtful(table) || slices.ContainsFunc(r.from.Doubts, within) || slices.ContainsFunc(r.doubts, within)
}

// covers reports whether a path is that of a key or table, or lies under it.
func covers(table, path string) bool { return path == table || strings.HasPrefix(path, table+".") }

var number = regexp.MustCompile(` \d+`)

// unnumbered is a path that stands for all of its like: "case.bay.width".
func unnumbered(path string) string { return number.ReplaceAllString(path, "") }
