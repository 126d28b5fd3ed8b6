package stock

import "slices"

// ShortestPlaned is the shortest piece that goes through a planer where a job
// does not say otherwise: both feed rollers must hold it. About 12 in is the
// usual advice, confirmed with a maker's teaching page; makers' manuals give 7
// to 14 in. Over a jointer the same is common practice, no source.
const ShortestPlaned = 12 * Inch

// Planer is what planes and joints. Zero means no limit.
type Planer struct {
	Shortest Length // the shortest piece that it can safely take
}

// Blanks is the cutting bill, in the parts' order: one blank for each part, or
// several where its pieces do not divide evenly into gangs.
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
	if kind == Board && p.Grain != GrainWidth && !p.Alone && j.shortForPlaner(p.inOne(kind, 1, layers, j.Saw, 0)) {
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
// are long enough for the planer; more where they would be longer than any
// board, and those that are too short then are cut longer than they need be.
func (j Job) gangs(p Part, columns, layers int) (blanks int, least Length) {
	alone := p.inOne(Board, 1, layers, j.Saw, 0)
	ends := Length(p.Allowance.Ends) * p.Allowance.End
	pitch := alone.Length - ends + j.Saw.Kerf // from one part of a gang to the next
	longest := j.longest(alone)
	if longest < alone.Length {
		return columns, 0 // it fits nothing, ganged or not
	}
	enough := int((j.Planer.Shortest - ends + j.Saw.Kerf + pitch - 1) / pitch)
	most := int((longest - ends + j.Saw.Kerf) / pitch)
	blanks = max(columns/enough, divideUp(columns, most))
	if longest < j.Planer.Shortest {
		return blanks, 0 // longer is safer, but nothing makes it safe
	}
	return blanks, j.Planer.Shortest
}

// longest is the usable length of the longest stock that b may come from and
// that is wide enough.
func (j Job) longest(b Blank) Length {
	var longest Length
	for _, i := range j.Sources(b) {
		if length, width := j.Stock[i].Usable(); width >= b.Width {
			longest = max(longest, length)
		}
	}
	return longest
}

// ShortForPlaner reports whether b is to be planed and shorter than the planer
// can safely take.
func (j Job) ShortForPlaner(b Blank) bool {
	return j.KindOf(b.Part.Material) == Board && j.shortForPlaner(b)
}

// shortForPlaner is ShortForPlaner of a blank that comes from boards. One without
// an allowance on its faces is planed where all boards are thicker than it is.
func (j Job) shortForPlaner(b Blank) bool {
	if b.Length >= j.Planer.Shortest {
		return false
	}
	if a := b.Part.Allowance; a.Faces > 0 && a.Face > 0 {
		return true
	}
	from := j.Sources(b)
	asThick := func(i int) bool { return j.Stock[i].Thickness == b.Thickness }
	return len(from) > 0 && !slices.ContainsFunc(from, asThick)
}

func divideUp(n, by int) int { return (n + by - 1) / by }
