package stock

import "slices"

// ShortestMilled is the shortest piece that planer, jointer and fence can safely
// take where a job does not say otherwise. Both feed rollers of a planer must
// hold the piece: about 12 in is the usual advice, confirmed with a maker's
// teaching page; makers' manuals give 7 to 14 in. Over a jointer and against a
// fence the same is common practice, no source.
const ShortestMilled = 12 * Inch

// Blanks is the cutting bill, in the parts' order: one blank for each part, or
// several where its pieces do not divide evenly into gangs.
//
// Gangs and layers are made before a plan is sought, so a short piece at the fence does not
// depend on the search. A plan that chose the sizes of gangs might save a board, but nobody
// wants to mill five different gangs of one part.
func (j Job) Blanks() []Blank {
	var all []Blank
	for _, p := range j.Parts {
		all = append(all, j.BlanksOf(p)...)
	}
	return all
}

// BlanksOf are the blanks of p, which together hold as many as are wanted.
func (j Job) BlanksOf(p Part) []Blank {
	if p.Count == 0 {
		return nil
	}
	kind, layers := j.KindOf(p.Material), j.layers(p)
	columns := divideUp(p.Count, layers)
	blanks, least := columns, Length(0)
	if kind == Board && p.Grain != GrainWidth && !p.Alone && j.ShortToMill(p.inOne(kind, 1, layers, j.Saw, 0)) {
		blanks, least = j.gangs(p, columns, layers)
	}
	var all []Blank
	add := func(count, gang, spare int) {
		if count > 0 {
			b := p.inOne(kind, gang, layers, j.Saw, least)
			b.Count, b.Spare = count, spare
			all = append(all, b)
		}
	}
	size, longer := columns/blanks, columns%blanks
	add(longer, size+1, 0)
	if spare := columns*layers - p.Count; spare > 0 {
		add(blanks-longer-1, size, 0)
		add(1, size, spare)
	} else {
		add(blanks-longer, size, 0)
	}
	return all
}

// gangs says in how many blanks to cut so many columns of p, a column being the
// pieces one on another, and how long each must be at least. As many blanks as
// are long enough to be milled; more where they would be longer than any
// board, and those that are too short then are cut longer than they need be.
func (j Job) gangs(p Part, columns, layers int) (blanks int, least Length) {
	alone := p.inOne(Board, 1, layers, j.Saw, 0)
	ends := Length(p.Allowance.Ends) * p.Allowance.End
	pitch := alone.Length - ends + j.Saw.Kerf // from one part of a gang to the next
	longest := j.longest(alone)
	if longest < alone.Length {
		return columns, 0 // it fits nothing, ganged or not
	}
	enough := int((j.Shortest - ends + j.Saw.Kerf + pitch - 1) / pitch)
	most := int((longest - ends + j.Saw.Kerf) / pitch)
	blanks = max(columns/enough, divideUp(columns, most))
	if longest < j.Shortest {
		return blanks, 0 // longer is safer, but nothing makes it safe
	}
	return blanks, j.Shortest
}

// longest is the usable length of the longest board that b may come from and
// that is wide enough.
func (j Job) longest(b Blank) Length {
	var longest Length
	for _, s := range j.Boards(b) {
		if length, width := s.Usable(); width >= b.Width {
			longest = max(longest, length)
		}
	}
	return longest
}

// Boards lists what b may come from: stock, and the largest board of the rough
// lumber that gives it.
func (j Job) Boards(b Blank) []Stock {
	var all []Stock
	for _, i := range j.Sources(b) {
		all = append(all, j.Stock[i])
	}
	if r, found := j.RoughFor(b); found {
		all = append(all, r.Largest())
	}
	return all
}

// ShortToMill reports whether b is to be milled and shorter than planer, jointer
// and fence can safely take. This is the rule by which parts are ganged. What
// comes from a board is milled where faces are planed, edges are trued or it is
// resawn, and where a board that it may come from is thicker or wider, so that
// it may have to be planed or ripped.
func (j Job) ShortToMill(b Blank) bool {
	if j.KindOf(b.Part.Material) != Board || j.Along(b) >= j.Shortest {
		return false
	}
	a := b.Part.Allowance
	if a.Faces > 0 && a.Face > 0 || a.Edges > 0 && a.Edge > 0 || b.Layers > 1 {
		return true
	}
	across := b.Length + b.Width - j.Along(b)
	return slices.ContainsFunc(j.Boards(b), func(s Stock) bool {
		return s.HasRoom(b) && (s.Thickness > b.Thickness || s.Width > across)
	})
}

// Along is how far b reaches along the boards that it comes from. A part that may
// be turned lies with its length along them where one is long enough.
func (j Job) Along(b Blank) Length {
	if b.Part.Grain == GrainWidth || b.Part.Grain == GrainAny && j.longest(b) < b.Length {
		return b.Width
	}
	return b.Length
}

// Lies reports how b may lie in s: as its grain lets it, but not across a board
// where that makes it shorter to mill than is safe.
func (j Job) Lies(b Blank, s Stock) (upright, turned bool) {
	upright, turned = b.Part.Grain.Lies(s.Grain)
	if s.Kind == Board && upright && b.Width < j.Shortest && j.Along(b) == b.Length {
		turned = false
	}
	return upright, turned
}

func divideUp(n, by int) int { return (n + by - 1) / by }
