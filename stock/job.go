package stock

// Job is one project, ready to plan: every length resolved, every part named
// once, every material offered by somebody.
type Job struct {
	Title string
	Units Units
	Saw   Saw
	// Shortest is the shortest piece that planer, jointer and fence can safely
	// take; 0 is no limit.
	Shortest Length
	Offcut   Offcut
	// Tax is added to what is bought, Worth the share of its price at which what is
	// kept counts where choices are compared; 0 where they are not given.
	Tax, Worth Share
	// Densities are of the materials, in kg/m3, of those that are known.
	Densities map[string]int
	// Transport limits what can be brought home in one piece.
	Transport Transport
	Stock     []Stock
	// Rough is for sale by the board foot: an estimate is made of it, no
	// layout. Of its materials Stock has boards on hand only.
	Rough []Rough
	Parts []Part
	// Kinds has the kinds of materials that may have run out; nil if none can.
	Kinds map[string]Kind
}

// Saw is what cuts, with its limits. Zero means no limit where a limit is meant.
type Saw struct {
	Kerf             Length
	ResawKerf        Length // of the saw that divides the thickness, commonly a band saw
	RipCapacity      Length // the fence's reach; a wider rip is a breakdown cut
	CrosscutCapacity Length // the widest piece that can be cut across, as saws are sold
	NarrowestRip     Length // no part, offcut or split of a sheet is ripped narrower
	Stages           int    // at most so many levels of cuts
	FirstCut         FirstCut
	BoardFirstCut    FirstCut
}

// FirstCut is the direction of the first cuts of every sheet, or of every board.
type FirstCut int

const (
	FirstAny FirstCut = iota
	FirstRip
	FirstCrosscut
)

// String returns the word of the job and plan files: "any", "rip" or "crosscut".
func (f FirstCut) String() string { return [...]string{"any", "rip", "crosscut"}[f] }

// NextCut is how a piece is cut next that is no whole sheet or board any more.
type NextCut int

const (
	NextAsSaid   NextCut = iota // the saw's rules hold: it is whole
	NextAny                     // its first cut was made
	NextRip                     // it comes off a crosscut to be made
	NextCrosscut                // it comes off a rip to be made
)

// FirstCutOf is how s is cut first: as the rule has it for whole stock, unless s was
// begun.
func (s Stock) FirstCutOf(rule FirstCut) FirstCut {
	return [...]FirstCut{NextAsSaid: rule, NextAny: FirstAny, NextRip: FirstRip, NextCrosscut: FirstCrosscut}[s.Next]
}

// Offcut is the least size worth keeping; a leftover smaller in either
// direction is waste.
type Offcut struct {
	Length, Width Length
}

// Keeps reports whether a leftover is worth keeping.
func (o Offcut) Keeps(length, width Length) bool {
	return length >= o.Length && width >= o.Width
}

// PlaningLimit is how much thicker than a blank a board may be when a thinner
// one would do: more is planed away only for want of other stock. Common
// practice, no source.
const PlaningLimit = Inch / 2

// Sources lists the stock that b may come from, by index: what serves it,
// except boards that give another number of layers, and those that are thicker
// by more than PlaningLimit where one that is not is large enough and for sale
// without limit: a few that are thinner may not be enough.
func (j Job) Sources(b Blank) []int {
	var all, near []int
	roomy := false
	for i, s := range j.Stock {
		if !s.Serves(b) || j.LayersIn(b.Part, s) != b.Layers {
			continue
		}
		all = append(all, i)
		if s.Thickness-b.Thickness <= PlaningLimit {
			near = append(near, i)
			roomy = roomy || s.Unlimited() && s.HasRoom(b)
		}
	}
	if roomy {
		return near
	}
	return all
}

// KindOf returns whether material is offered as sheets or as boards. A job
// offers each material as one kind only.
func (j Job) KindOf(material string) Kind {
	for _, s := range j.Stock {
		if s.Material == material {
			return s.Kind
		}
	}
	for _, r := range j.Rough {
		if r.Material == material {
			return Board
		}
	}
	return j.Kinds[material]
}
