package job

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/fault"
)

// Changes turn a job into another, as if its file were different: a what-if. The zero value
// changes nothing.
type Changes struct {
	// Without are parts to leave out, by name, with the numbered ones of that name.
	// "back", "base" and "doors" leave these out of a case design, whose sizes follow.
	Without []string
	// Spare is how many more to make of each small part: one that would itself not
	// be an offcut worth keeping.
	Spare int
	// Counts are of parts, each "name=3".
	Counts []string
	// Thicknesses are of sheets and boards as they really measure, each
	// "material=17.7" or with a unit; a case design follows.
	Thicknesses []string
	// Smaller are sizes that become less, each "height=6 mm": "width", "height" or "depth"
	// of a case, given outside or inside, whose parts follow; of a part its length, by name.
	Smaller []string
	// Added are parts more, each "shelf: 600 x 300, birch ply 18, 2, grain width", the
	// count and the grain as for a [[part]] if they are left out. Sizes are of parts, each
	// "shelf=620 x 300": length and width. Kerf replaces the kerf of the saw. Only a job under
	// way has these: see recut.
	Added []string
	Sizes []string
	Kerf  string
}

// examples show a name and a value for each flag.
var examples = map[string]string{"--count": "shelf=3", "--thickness": "birch ply=17.7", "--smaller": "height=6 mm", "--size": "shelf=620 x 300"}

// setting parts "name=value".
func (r *reader) setting(flag, written string) (name, value string, at place, ok bool) {
	name, value, ok = strings.Cut(written, "=")
	name, value = strings.TrimSpace(name), strings.TrimSpace(value)
	at = place{file: flag + " " + written}
	if !ok || name == "" || value == "" {
		r.fault(at, fault.New("a name, = and a value are wanted", fmt.Sprintf("write it like %s %q", flag, examples[flag])))
		return "", "", at, false
	}
	return name, value, at, true
}

// remeasure changes the offers to what they really measure, and returns how thick the
// sheets of each material were.
func (c Changes) remeasure(r *reader, offers []offer) map[string][]stock.Length {
	were := make(map[string][]stock.Length)
	for _, written := range c.Thicknesses {
		material, value, at, ok := r.setting("--thickness", written)
		if !ok {
			continue
		}
		thickness, found := typedLength(value, r.ruler.Units)
		if !found.Found() && (thickness <= 0 || thickness > thickestBoard) {
			found = fault.New(r.ruler.PrintUnit(thickness)+" is no thickness of a sheet or board", "measure the material")
		}
		if found.Found() {
			r.fault(at, found)
			continue
		}
		of := ofMaterial(offers, material)
		if len(of) == 0 {
			r.fault(at, nothingCalled("material", material, materialsOf(offers, nil)))
			continue
		}
		if all := thicknesses(of); len(all) > 1 {
			r.fault(at, fault.New(material+" comes in several thicknesses: "+strings.Join(exactly(all, r.ruler), ", "), "change that of each offer in the job"))
			continue
		}
		for i := range offers {
			if o := &offers[i]; o.Material == material {
				if o.Kind == stock.Sheet { // parts of boards are planed to what is asked
					were[material] = append(were[material], o.Thickness)
				}
				o.Thickness = thickness
			}
		}
	}
	return were
}

// reduction splits "height=6 mm". It reports faults only if tell is set.
func (r *reader) reduction(written string, tell bool) (name string, by stock.Length, at place, ok bool) {
	quiet := *r
	if !tell {
		r = &quiet
	}
	name, value, at, ok := r.setting("--smaller", written)
	if !ok {
		return "", 0, at, false
	}
	by, found := typedLength(value, r.ruler.Units)
	if !found.Found() && by <= 0 {
		found = fault.New(r.ruler.PrintUnit(by)+" is no less", "give a length, such as 6 mm")
	}
	if found.Found() {
		r.fault(at, found)
		return "", 0, at, false
	}
	return name, by, at, true
}

// reduceCase reduces sizes of a case, and returns their names.
func (c Changes) reduceCase(r *reader, d *casework.Design) (made []string) {
	for _, written := range c.Smaller {
		name, by, _, ok := r.reduction(written, false)
		if !ok {
			continue
		}
		for _, size := range []struct {
			name            string
			outside, inside *casework.Length
		}{
			{"width", &d.OutsideWidth, &d.InsideWidth},
			{"height", &d.OutsideHeight, &d.InsideHeight},
			{"depth", &d.OutsideDepth, &d.InsideDepth},
		} {
			switch {
			case size.name != name:
				continue
			case size.outside.Set:
				size.outside.Value -= by
			case size.inside.Set:
				size.inside.Value -= by
			default:
				continue // it follows from the sizes of other things
			}
			made = append(made, name)
		}
	}
	return made
}

// shortenParts shortens the parts that are named.
func (c Changes) shortenParts(r *reader, all []wanted, names, left []string) {
	for _, written := range c.Smaller {
		name, by, at, ok := r.reduction(written, true)
		if !ok || slices.Contains(left, name) {
			continue
		}
		some := false
		for i := range all {
			if p := &all[i]; p.Name == name {
				some = true
				if p.Length <= by {
					r.fault(at, fault.New(fmt.Sprintf("part %q is %s long", name, r.ruler.PrintUnit(p.Length)), "make it less shorter"))
					break
				}
				p.Length -= by
			}
		}
		if !some {
			found := nothingCalled("part", name, names)
			if slices.Contains([]string{"width", "height", "depth"}, name) {
				found = fault.New("no "+name+" of a case is given that could be less", "change the sizes of what it follows from")
			}
			r.fault(at, found)
		}
	}
}

// leaveOut leaves components out of a case design, and tells which.
func (c Changes) leaveOut(d *casework.Design) (left []string) {
	for _, name := range c.Without {
		switch {
		case name == "back" && d.Back != (casework.Back{}):
			d.Back = casework.Back{}
		case name == "base" && d.Base != (casework.Base{}):
			d.Base = casework.Base{}
		case name == "doors" && leaveDoors(d):
		default:
			continue
		}
		left = append(left, name)
	}
	return left
}

func leaveDoors(d *casework.Design) (some bool) {
	for _, b := range d.Bays {
		for i := range b.Openings {
			some = some || b.Openings[i].Doors.Value > 0
			b.Openings[i].Doors, b.Openings[i].Hinged = casework.Count{}, casework.Word{}
		}
	}
	if some {
		d.Door = casework.Door{}
	}
	return some
}

// parts changes the parts; left lists the components that a case design has lost already.
func (c Changes) parts(r *reader, all []wanted, were map[string][]stock.Length, left []string, offcut stock.Offcut) []wanted {
	for i := range all {
		if slices.Contains(were[all[i].Material], all[i].Thickness) {
			all[i].Thickness = 0 // as its material measures
		}
	}
	for _, name := range c.Without {
		before := len(all)
		all = deleteCalled(all, name)
		if before == len(all) && !slices.Contains(left, name) {
			r.fault(place{file: "--without " + name}, nothingCalled("part", name, partNames(all)))
		}
	}
	names := partNames(all)
	for _, written := range c.Counts {
		name, value, at, ok := r.setting("--count", written)
		if !ok {
			continue
		}
		count, some := 0, false
		if n, err := fmt.Sscanf(value, "%d", &count); n != 1 || err != nil || fmt.Sprint(count) != value || count < 0 || count > mostPieces {
			r.fault(at, fault.New(fmt.Sprintf("%q is no count", value), fmt.Sprintf("give a whole number from 0 to %d", mostPieces)))
			continue
		}
		for i := range all {
			if all[i].Name == name {
				all[i].Count, some = count, true
			}
		}
		if !some {
			r.fault(at, nothingCalled("part", name, names))
		}
	}
	c.resizeParts(r, all, names)
	c.shortenParts(r, all, names, left)
	all = slices.DeleteFunc(all, func(w wanted) bool { return w.Count == 0 && w.sound })
	for i := range all {
		if p := all[i].Part; c.Spare > 0 && !offcut.Keeps(p.Length, p.Width) {
			all[i].Count += c.Spare
		}
	}
	return all
}

func partNames(all []wanted) []string {
	return mapped(all, func(w wanted) string { return w.Name })
}

func deleteCalled(all []wanted, name string) []wanted {
	return slices.DeleteFunc(all, func(w wanted) bool {
		rest, called := strings.CutPrefix(w.Name, name)
		return called && (rest == "" || strings.HasPrefix(rest, ", ") || strings.Trim(rest, " 0123456789") == "" && strings.HasPrefix(rest, " "))
	})
}

func nothingCalled(what, name string, known []string) fault.Fault {
	cause := fmt.Sprintf("there is no %s %q", what, name)
	if near, ok := stock.Nearest(name, known); ok {
		return fault.New(cause, fmt.Sprintf("did you mean %q?", near))
	}
	known = slices.Clone(known)
	slices.Sort(known)
	known = slices.Compact(known)
	const shown = 10
	switch n := len(known); {
	case n == 0:
		return fault.New(cause, "take one that the job has")
	case n > shown:
		return fault.New(cause, "take one that the job has: "+strings.Join(known[:shown], ", ")+fmt.Sprintf(" or one of %d more", n-shown))
	}
	return fault.New(cause, "take one that the job has: "+strings.Join(known, ", "))
}
