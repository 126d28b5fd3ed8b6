package casework

import (
	"fmt"

	"sawbill/stock"
)

// piece is a part before it has its name.
type piece struct {
	role   Role
	places []string // "bay 2": tell it from others of its role
	panel  panel
	count  int
	length stock.Sum // along the grain
	width  stock.Sum
	// thickness is given where it was reckoned; else it is the panel's.
	thickness stock.Sum
	way       way
	mitres    int     // ends of each that are mitred
	dryFit    bool    // best cut after a dry fit
	strip     bool    // sawn off a board as one of several
	stands    []Solid // where, one for each of count; with a role where one part has several
	bears     bears   // of shelves and dividers
}

// sameSize reports whether two pieces are one part, as often as both together.
func (p piece) sameSize(q piece) bool { return p.role == q.role && p.likeSize(q) }

// likeSize reports the same, whatever their roles.
func (p piece) likeSize(q piece) bool {
	return p.panel == q.panel && p.way == q.way && p.mitres == q.mitres &&
		p.length.Total() == q.length.Total() && p.width.Total() == q.width.Total()
}

// add takes a piece into the case. Pieces of one role and size are one part;
// its arithmetic is that of the first.
func (r *reckoner) add(p piece) {
	for _, size := range []struct {
		name string
		sum  stock.Sum
	}{{"length", p.length}, {"width", p.width}} {
		if size.sum.Total() <= 0 {
			r.fault(r.culprit(p.role, size.sum), fmt.Sprintf("nothing is left for the %s of a %s: %s", size.name, p.role, r.reckoned(size.sum)),
				"make the case larger, or what is taken off smaller")
			return
		}
	}
	for i := range r.pieces {
		if r.pieces[i].sameSize(p) {
			r.pieces[i].count += p.count
			r.pieces[i].places = append(r.pieces[i].places, p.places...)
			r.pieces[i].stands = append(r.pieces[i].stands, p.stands...)
			r.pieces[i].bears = r.pieces[i].bears.and(p.bears)
			return
		}
	}
	r.pieces = append(r.pieces, p)
}

// parts names the pieces: by their role alone where it has one size, else by
// their places as well.
func (r *reckoner) parts() []stock.Part {
	sizes := make(map[Role]int)
	for _, p := range r.pieces {
		sizes[p.role]++
	}
	parts := make([]stock.Part, len(r.pieces))
	for i, p := range r.pieces {
		name := string(p.role)
		if sizes[p.role] > 1 {
			name += ", " + p.where()
		}
		parts[i] = p.part(name)
	}
	return parts
}

func (p piece) part(name string) stock.Part {
	thickness := p.thickness
	if thickness == nil {
		thickness = given(p.panel.thickness, p.panel.material)
	}
	return stock.Part{
		Name: name, Material: p.panel.material, Count: p.count,
		Length: p.length.Total(), Width: p.width.Total(), Thickness: thickness.Total(),
		Grain:     stock.GrainLength,
		Allowance: stock.Allowance{Mitres: p.mitres},
		DryFit:    p.dryFit,
		Resaw:     p.strip,
		From:      "case",
		How: []stock.Derivation{
			{Dimension: "length", Sum: p.length},
			{Dimension: "width", Sum: p.width},
			{Dimension: "thickness", Sum: thickness},
		},
	}
}
