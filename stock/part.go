package stock

// Part is a finished piece, as often as it is wanted.
type Part struct {
	Name     string
	Material string
	// Length runs along the grain unless Grain says otherwise.
	Length, Width, Thickness Length
	Count                    int
	Grain                    Grain
	Allowance                Allowance
	// From says where the part is wanted: "potting-bench.toml:31", or "case".
	From string
	// How says how the sizes came about, for parts that were derived.
	How []Derivation
	// Note is the maker's own remark, printed and otherwise left alone.
	Note string
}

// Allowance is what is added to a part before it is cut, so that milling can
// take it off again.
type Allowance struct {
	Edge Length // per edge trued on the fence or the jointer
	Face Length // per planed face; boards only
	End  Length // per end squared

	Edges, Faces, Ends int // how many of each: 0, 1 or 2
}

// Blank is a part plus its allowances: what the saw must deliver.
type Blank struct {
	Part                     Part
	Length, Width, Thickness Length
}

// Blank adds the allowances of p, which is to be cut from stock of kind from.
// The faces of a sheet are not planed.
func (p Part) Blank(from Kind) Blank {
	a := p.Allowance
	b := Blank{
		Part:      p,
		Length:    p.Length + Length(a.Ends)*a.End,
		Width:     p.Width + Length(a.Edges)*a.Edge,
		Thickness: p.Thickness,
	}
	if from == Board {
		b.Thickness += Length(a.Faces) * a.Face
	}
	return b
}
