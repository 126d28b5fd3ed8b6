package pieces

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// Piece is a part before it has its name.
type Piece struct {
	Role   solid.Role
	places []string // "bay 2": tell it from others of its role
	Panel  design.Panel
	Count  int
	Length stock.Sum // along the grain
	Width  stock.Sum
	// thickness has its own arithmetic where it is not the panel's.
	thickness stock.Sum
	way       solid.Way
	miters    int           // ends of each that are mitered
	dryFit    bool          // best cut after a dry fit
	strip     bool          // sawn off a board as one of several
	Stands    []solid.Solid // where, one for each of count; with a role where one part has several
	Bears     bears         // of shelves and dividers
}

// sameSize reports whether two pieces are one part, as often as both together.
func (p Piece) sameSize(q Piece) bool { return p.Role == q.Role && p.likeSize(q) }

// likeSize reports the same, whatever their roles.
func (p Piece) likeSize(q Piece) bool {
	return p.Panel == q.Panel && p.way == q.way && p.miters == q.miters &&
		p.Length.Total() == q.Length.Total() && p.Width.Total() == q.Width.Total()
}

// add takes a piece into the case. Pieces of one role and size are one part; the first gives its
// arithmetic.
func (r *Maker) add(p Piece) {
	for _, size := range []struct {
		name string
		sum  stock.Sum
	}{{"length", p.Length}, {"width", p.Width}} {
		if size.sum.Total() <= 0 {
			r.In.Fault(r.culprit(p.Role, size.sum), fmt.Sprintf("nothing is left for the %s of a %s: %s", size.name, p.Role, r.In.Explained(size.sum)),
				"make the case larger, or what is taken off smaller")
			return
		}
	}
	for i := range r.Pieces {
		if r.Pieces[i].sameSize(p) {
			r.Pieces[i].Count += p.Count
			r.Pieces[i].places = append(r.Pieces[i].places, p.places...)
			r.Pieces[i].Stands = append(r.Pieces[i].Stands, p.Stands...)
			r.Pieces[i].Bears = r.Pieces[i].Bears.and(p.Bears)
			return
		}
	}
	r.Pieces = append(r.Pieces, p)
}

// parts names the pieces: by their role alone where it has one size, else by
// their places as well.
func (r *Maker) parts() []stock.Part {
	sizes := make(map[solid.Role]int)
	for _, p := range r.Pieces {
		sizes[p.Role]++
	}
	parts := make([]stock.Part, len(r.Pieces))
	for i, p := range r.Pieces {
		name := string(p.Role)
		if sizes[p.Role] > 1 {
			name += ", " + p.where()
		}
		parts[i] = p.part(name)
	}
	return parts
}

func (p Piece) part(name string) stock.Part {
	thickness := p.thickness
	if thickness == nil {
		thickness = sums.Of(p.Panel.Thickness, p.Panel.Material)
	}
	return stock.Part{
		Name: name, Material: p.Panel.Material, Count: p.Count,
		Length: p.Length.Total(), Width: p.Width.Total(), Thickness: thickness.Total(),
		Grain:     stock.GrainLength,
		Allowance: stock.Allowance{Miters: p.miters},
		DryFit:    p.dryFit,
		Resaw:     p.strip,
		From:      "case",
		How: []stock.Derivation{
			{Dimension: "length", Sum: p.Length},
			{Dimension: "width", Sum: p.Width},
			{Dimension: "thickness", Sum: thickness},
		},
	}
}
