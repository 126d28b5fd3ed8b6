package marksheet

import (
	"cmp"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// figure is one face of a piece with its marks, or of several pieces alike.
type figure struct {
	view
	solid   casework.Solid // that is drawn
	face    casework.Face
	marks   []casework.Mark
	members []member
	edged   []casework.Face // edges and ends that get edging
	// varied are the axes along which alike pieces differ in size; the figure is
	// broken there.
	varied [3]bool
}

// member is a piece that a figure stands for.
type member struct {
	solid, part int
	name        string // "left"; "" where pieces need not be told apart
	mirrored    bool   // it looks like the figure in a mirror
}

// pair is two mates of a box joint: the one that starts with a finger, and the
// one that starts with a gap.
type pair [2]figure

// same reports whether two marks are laid out alike, whatever part they are on.
func same(k, l casework.Mark) bool {
	return k.What == l.What && sameMeasure(k.Measure, l.Measure) && sameMeasure(k.Across, l.Across) && k.Width == l.Width && k.Depth == l.Depth && k.Diameter == l.Diameter &&
		k.Stops == l.Stops && k.GapFirst == l.GapFirst && k.Note == l.Note && slices.Equal(k.Spacers, l.Spacers)
}

func sameMeasure(m, n casework.Measure) bool { return m.From == n.From && slices.Equal(m.At, n.At) }

// fingers reports whether a mark shows a box joint's fingers: edges that both ends of a piece and
// their mates share.
func fingers(k casework.Mark) bool { return strings.HasSuffix(k.What, "fingers") }

// figures sorts the marks by the faces that they are on, in the order of the pieces. It returns
// marks that cannot be drawn as left.
func (s Subject) figures() (faces []figure, pairs []pair, left []casework.Mark) {
	var joints []figure
	for _, k := range s.Marks {
		shown := false
		for _, spot := range k.Spots {
			if spot.Solid >= len(s.Solids) {
				continue
			}
			piece := s.Solids[spot.Solid]
			for _, normal := range planes(k, spot, piece) {
				shown = true
				v := viewOf(piece, normal, towards(spot.Face.Side, normal, piece, s.Solids))
				to := &faces
				if fingers(k) {
					to = &joints
				}
				at := slices.IndexFunc(*to, func(f figure) bool {
					return f.members[0].solid == spot.Solid && f.face == spot.Face && f.normal == normal
				})
				if at < 0 {
					at = len(*to)
					*to = append(*to, figure{view: v, solid: piece, face: spot.Face, edged: s.Edged(spot.Solid), members: []member{{solid: spot.Solid, part: piece.Part, name: spot.Piece}}})
				}
				(*to)[at].marks = append((*to)[at].marks, k)
			}
		}
		if !shown {
			left = append(left, k)
		}
	}
	for _, all := range [][]figure{faces, joints} {
		slices.SortStableFunc(all, func(a, b figure) int { return cmp.Compare(a.members[0].solid, b.members[0].solid) })
	}
	pairs, unpaired := mated(alike(joints), s.Solids)
	for _, f := range unpaired {
		left = append(left, f.marks...)
	}
	return alike(faces), pairs, left
}

// alike makes one figure of those that differ in nothing but the pieces.
func alike(faces []figure) []figure {
	var all []figure
	for _, f := range faces {
		at := slices.IndexFunc(all, func(g figure) bool { return g.takes(f) })
		if at < 0 {
			all = append(all, f)
			continue
		}
		g := &all[at]
		for _, m := range f.members {
			m.mirrored = f.levelTurned != g.levelTurned && g.matters(g.level) || f.uprightTurned != g.uprightTurned && g.matters(g.upright)
			g.members = append(g.members, m)
		}
		for _, a := range []casework.Axis{f.level, f.upright} {
			if f.solid.Size[a] != g.solid.Size[a] {
				g.varied[a] = true
				g.solid.Size[a] = min(f.solid.Size[a], g.solid.Size[a])
			}
		}
	}
	return all
}

// takes reports whether f can be drawn as g: the same marks on pieces that lie alike. Their sizes
// may differ along a direction in which the marks leave a stretch free.
func (g figure) takes(f figure) bool {
	if f.face != g.face || f.level != g.level || f.upright != g.upright || !slices.EqualFunc(f.marks, g.marks, same) || !slices.Equal(f.edged, g.edged) {
		return false
	}
	for _, a := range []casework.Axis{g.level, g.upright} {
		if least := min(f.solid.Size[a], g.solid.Size[a]); f.solid.Size[a] != g.solid.Size[a] {
			if from, to := g.open(a, least); to-from < least/3 {
				return false
			}
		}
	}
	return true
}

// open is the stretch of a piece of that size between the marks measured from its near edge and
// those from its far one. It can be broken there.
func (g figure) open(a casework.Axis, size stock.Length) (from, to stock.Length) {
	to = size
	for _, k := range g.marks {
		for _, m := range []casework.Measure{k.Measure, k.Across} {
			axis, ok := measured(m)
			if !ok || axis != a {
				continue
			}
			reach := slices.Max(m.At)
			if sameMeasure(m, k.Measure) {
				reach += k.Width
			}
			if _, far, _ := m.From.Side.Axis(); far {
				to = min(to, size-reach)
			} else {
				from = max(from, reach)
			}
		}
	}
	return from, to
}

// mated pairs the mates of box joints: their edges are the same, and pieces of
// both belong together.
func mated(joints []figure, solids []casework.Solid) (pairs []pair, unpaired []figure) {
	used := make([]bool, len(joints))
	for j, gap := range joints {
		if !gap.marks[0].GapFirst {
			continue
		}
		for i, finger := range joints {
			if !finger.marks[0].GapFirst && sameMeasure(finger.marks[0].Measure, gap.marks[0].Measure) &&
				solids[finger.members[0].solid].Drawer == solids[gap.members[0].solid].Drawer {
				used[i], used[j] = true, true
				pairs = append(pairs, pair{finger, gap})
				break
			}
		}
	}
	for i, f := range joints {
		if !used[i] {
			unpaired = append(unpaired, f)
		}
	}
	return pairs, unpaired
}
