package stock

import "fmt"

// Blank is what the saw must deliver: a part plus its allowances, or several
// parts in one piece that milling separates. In a gang they lie end to end, so
// that the piece is long enough to be planed; in layers one on another, to be
// resawn.
type Blank struct {
	Part                     Part
	Length, Width, Thickness Length

	Count  int // so many alike are wanted
	Gang   int // parts end to end, a kerf between
	Layers int // parts one on another, a kerf of the resaw between
	Spare  int // pieces of Gang x Layers that come out beyond what is wanted

	// How says how each size that is not the part's own came about.
	How []Derivation

	// ResawKerf is that of the saw that parts layers, of parts to be resawn.
	ResawKerf Length
}

// Holds is how many of the wanted parts come out of one blank.
func (b Blank) Holds() int { return b.Gang*b.Layers - b.Spare }

// Name returns the part of the piece, and how many of it there are.
func (b Blank) Name() string {
	pieces := b.Gang * b.Layers
	switch {
	case pieces == 1:
		return b.Part.Name
	case b.Layers == 1:
		return fmt.Sprintf("%d x %s, gang", pieces, b.Part.Name)
	case b.Gang == 1:
		return fmt.Sprintf("%d x %s, to resaw", pieces, b.Part.Name)
	}
	return fmt.Sprintf("%d x %s, gang to resaw", pieces, b.Part.Name)
}

// Blank adds the allowances of p, which is to be cut by itself from stock of
// kind from. The faces of a sheet are not planed.
func (p Part) Blank(from Kind) Blank { return p.inOne(from, 1, 1, Saw{}, 0) }

// inOne is the blank that holds so many of p end to end and so many one on
// another, and is least long or longer.
func (p Part) inOne(from Kind, gang, layers int, saw Saw, least Length) Blank {
	a := p.Allowance
	if from == Sheet {
		a.Faces = 0
	}
	length := sumOf(
		Term{Times: gang, Value: p.Length, Label: "part"},
		Term{Times: gang * a.Miters, Value: a.Miter, Label: "miter"},
		Term{Times: gang - 1, Value: saw.Kerf, Label: "kerf"},
		Term{Times: a.Ends, Value: a.End, Label: "end"})
	if short := least - length.Total(); short > 0 {
		length = append(length, Term{Times: 1, Value: short, Label: "extra length"})
	}
	width := sumOf(
		Term{Times: 1, Value: p.Width, Label: "part"},
		Term{Times: a.Edges, Value: a.Edge, Label: "edge"})
	thickness := sumOf(
		Term{Times: layers, Value: p.Thickness, Label: "part"},
		Term{Times: layers * a.Faces, Value: a.Face, Label: "face"},
		Term{Times: layers - 1, Value: saw.ResawKerf, Label: "resaw kerf"})
	b := Blank{
		Part: p, Count: p.Count, Gang: gang, Layers: layers,
		Length: length.Total(), Width: width.Total(), Thickness: thickness.Total(),
	}
	if p.Resaw {
		b.ResawKerf = saw.ResawKerf
	}
	for _, d := range []Derivation{{"width", width}, {"length", length}, {"thickness", thickness}} {
		if len(d.Sum) > 1 || len(d.Sum) == 1 && d.Sum[0].Times > 1 {
			b.How = append(b.How, d)
		}
	}
	return b
}

// sumOf adds up the terms that are not nothing.
func sumOf(terms ...Term) Sum {
	var s Sum
	for _, t := range terms {
		if t.Times > 0 && t.Value > 0 {
			s = append(s, t)
		}
	}
	return s
}
