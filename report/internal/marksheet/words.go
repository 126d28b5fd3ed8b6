package marksheet

import (
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// letter is the mark of a part in the bill, "" if it has none.
func (s Subject) letter(part int) string {
	if part >= 0 && part < len(s.Letters) {
		return s.Letters[part]
	}
	return ""
}

// role is the name of a part without its places.
func role(name string) string {
	name, _, _ = strings.Cut(name, ", ")
	return name
}

// parts names the parts of a figure: by their marks in the bill and what they
// are, "G, J, M: drawer side", or by their names alone.
func (s Subject) parts(f figure) string {
	var letters, names, roles []string
	for _, m := range f.members {
		name := s.Parts[m.part].Name
		if slices.Contains(names, name) {
			continue
		}
		names = append(names, name)
		letters = append(letters, s.letter(m.part))
		if r := role(name); !slices.Contains(roles, r) {
			roles = append(roles, r)
		}
	}
	switch {
	case slices.Contains(letters, ""):
		return strings.Join(names, "; ")
	case len(names) == 1:
		return letters[0] + ": " + names[0]
	}
	return strings.Join(letters, ", ") + ": " + strings.Join(roles, ", ")
}

// caption says what a figure shows, and how it is seen.
func (s Subject) caption(f figure) []line {
	where := f.face.String()
	if names := s.pieceNames(f); names != "" {
		where = names + ", " + where
	}
	if seen := f.seen(); seen != "" {
		where += ", " + seen
	}
	if m := s.mirrored(f); m != "" {
		where += "; " + m
	}
	return []line{{text: s.parts(f), bold: true}, {text: s.sizes(f) + "; " + where}}
}

// sizes are the overall sizes of the pieces: length x width x thickness. Where alike
// pieces differ, the sizes stand in the order of their parts.
func (s Subject) sizes(f figure) string {
	var said []string
	for _, axis := range []casework.Axis{f.solid.Along, f.solid.Across, f.solid.Through} {
		var each []string
		var parts []int
		for _, m := range f.members {
			if m.solid < len(s.Solids) && !slices.Contains(parts, m.part) {
				parts = append(parts, m.part)
				each = append(each, s.Ruler.Print(s.Solids[m.solid].Size[axis]))
			}
		}
		if slices.ContainsFunc(each, func(size string) bool { return size != each[0] }) {
			said = append(said, strings.Join(each, ", "))
			continue
		}
		said = append(said, s.Ruler.Print(f.solid.Size[axis]))
	}
	return strings.Join(said, " x ")
}

// pieceNames lists the pieces if only some of their part's pieces have the marks.
func (s Subject) pieceNames(f figure) string {
	var names []string
	all := true
	for _, m := range f.members {
		for i, other := range s.Solids {
			if other.Part == m.part && !slices.ContainsFunc(f.members, func(n member) bool { return n.solid == i }) {
				all = false
			}
		}
		if m.name != "" && !slices.Contains(names, m.name) {
			names = append(names, m.name)
		}
	}
	if all {
		return ""
	}
	return strings.Join(names, " and ")
}

// matters reports whether an axis could be taken the wrong way round: something is
// measured along it, or is stopped at one end of it.
func (f figure) matters(a casework.Axis) bool {
	for _, k := range f.marks {
		axis, _ := measured(k.Measure)
		across, second := measured(k.Across)
		if axis == a || second && across == a || axis != a && k.Stops[0] != k.Stops[1] {
			return true
		}
	}
	return false
}

// seen says where the front is, or the left where it is on the right.
func (f figure) seen() string {
	switch {
	case !f.matters(f.level) && (f.upright != casework.Y || !f.matters(f.upright)):
		return ""
	case f.level == casework.Y && f.levelTurned:
		return "front on the right"
	case f.level == casework.Y:
		return "front on the left"
	case f.upright == casework.Y && f.uprightTurned:
		return "front at the top"
	case f.upright == casework.Y:
		return "front at the bottom"
	case f.levelTurned:
		return "left on the right"
	}
	return ""
}

// mirrored says which of the pieces look like the figure in a mirror.
func (s Subject) mirrored(f figure) string {
	var plain, turned []string
	for _, m := range f.members {
		name := m.name
		if name == "" {
			name = s.letter(m.part)
		}
		if to := &plain; name != "" {
			if m.mirrored {
				to = &turned
			}
			if !slices.Contains(*to, name) {
				*to = append(*to, name)
			}
		}
	}
	some := slices.ContainsFunc(f.members, func(m member) bool { return m.mirrored })
	apart := !slices.ContainsFunc(turned, func(name string) bool { return slices.Contains(plain, name) })
	switch {
	case some && apart && len(turned) > 0:
		return strings.Join(turned, ", ") + ": mirror image"
	case some:
		return "half of them: mirror image"
	case f.face.Side == casework.Both && f.normal == f.solid.Along && f.matters(f.level):
		return "other end: mirror image"
	}
	return ""
}

// notes tell what the figure cannot show: how deep a cut is, and what else is to
// be known of a mark. Those of marks of one kind are one.
func (s Subject) notes(f figure) []line {
	var kinds []string
	said := make(map[string][]string)
	cut := make(map[string]string) // the sizes told last, by kind: alike ones are told once
	for _, k := range f.marks {
		note := s.note(k)
		if sizes := s.cutSizes(f, k); sizes != "" && sizes != cut[k.What] {
			cut[k.What] = sizes
			note = strings.TrimSuffix(sizes+", "+note, ", ")
		}
		if note == "" || slices.Contains(said[k.What], note) {
			continue
		}
		if said[k.What] == nil {
			kinds = append(kinds, k.What)
		}
		said[k.What] = append(said[k.What], note)
	}
	var all []line
	for _, kind := range kinds {
		all = append(all, line{text: kind + ": " + strings.Join(said[kind], "; ")})
	}
	if edges := f.edged; len(edges) > 0 {
		names := make([]string, len(edges))
		for i, e := range edges {
			names[i] = e.String()
		}
		all = append(all, line{text: "edging (wide line) on: " + strings.Join(names, ", ")})
	}
	return all
}

// tools make what is cut or bored, by the kind of mark (common practice, no source).
var tools = map[string]string{
	casework.ShelfPins: "drill", casework.HandleHole: "drill", "dowel hole": "drill",
	"dado": "router or saw", "groove": "router or saw", "rabbet": "router or saw", "half lap": "router or saw",
	casework.Catch: "screws by its own sheet",
	"mortise":      "chisel or router", "mortise center": "router", "open mortise": "saw and chisel", "notch": "saw",
}

// cutSizes are the tool and the sizes of what is cut or bored: "router or saw, 18 wide, 6 deep".
func (s Subject) cutSizes(f figure, k casework.Mark) string {
	var said []string
	tool := tools[k.What]
	if k.What == casework.Hinge {
		tool = "screws" // of its plate or leaf
		if f.solid.Role == "door" {
			tool = "flat-bottomed bit"
		}
	}
	if tool != "" {
		said = append(said, tool)
	}
	if k.Diameter > 0 {
		said = append(said, "diameter "+s.Ruler.Print(k.Diameter))
	}
	switch {
	case k.Width == 0 || k.Depth == 0:
	case len(k.Across.At) == 2: // a mortise between two lines
		said = append(said, s.Ruler.Print(k.Width)+" long, "+s.Ruler.Print(k.Across.At[1]-k.Across.At[0])+" wide")
	default:
		said = append(said, s.Ruler.Print(k.Width)+" wide")
	}
	if k.Depth > 0 {
		said = append(said, s.Ruler.Print(k.Depth)+" deep")
	}
	return strings.Join(said, ", ")
}

func (s Subject) note(k casework.Mark) string {
	var said []string
	if k.Note != "" {
		said = append(said, k.Note)
	}
	if len(k.Spacers) > 0 {
		said = append(said, "spacers "+strings.Join(printed(k.Spacers, s.Ruler), ", "))
	}
	return strings.Join(said, ", ")
}

func printed(lengths []stock.Length, r stock.Ruler) []string {
	said := make([]string, len(lengths))
	for i, l := range lengths {
		said[i] = r.Print(l)
	}
	return said
}
