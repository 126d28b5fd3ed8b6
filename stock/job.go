package stock

// Job is one project, ready to plan: every length resolved, every part named
// once, every material offered by somebody.
type Job struct {
	Title  string
	Units  Units
	Saw    Saw
	Offcut Offcut
	Stock  []Stock
	Parts  []Part
}

// Saw is what cuts, with its limits. Zero means no limit where a limit is meant.
type Saw struct {
	Kerf             Length
	RipCapacity      Length // the fence's reach; a wider rip is a breakdown cut
	CrosscutCapacity Length
	NarrowestRip     Length // no part, offcut or split of a sheet is ripped narrower
	Stages           int    // at most so many levels of cuts
	FirstCut         FirstCut
}

// FirstCut is the direction of the first cuts of every sheet.
type FirstCut int

const (
	FirstAny FirstCut = iota
	FirstRip
	FirstCrosscut
)

// Offcut is the least size worth keeping; a leftover smaller in either
// direction is waste.
type Offcut struct {
	Length, Width Length
}

// Keeps reports whether a leftover is worth keeping.
func (o Offcut) Keeps(length, width Length) bool {
	return length >= o.Length && width >= o.Width
}

// KindOf returns whether material is offered as sheets or as boards. A job
// offers each material as one kind only.
func (j Job) KindOf(material string) Kind {
	for _, s := range j.Stock {
		if s.Material == material {
			return s.Kind
		}
	}
	return Sheet
}

// Blanks is the cutting bill: one blank for each part, in the parts' order.
func (j Job) Blanks() []Blank {
	blanks := make([]Blank, len(j.Parts))
	for i, p := range j.Parts {
		blanks[i] = p.Blank(j.KindOf(p.Material))
	}
	return blanks
}
