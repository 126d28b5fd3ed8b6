package stock

// LayersIn is how many pieces of p, one on another, a board of s can be resawn
// into, none more than are wanted; 0 where not even one fits. A part that is
// not to be resawn is one layer of whatever it comes from.
func (j Job) LayersIn(p Part, s Stock) int {
	if !p.Resaw || s.Kind == Sheet {
		return 1
	}
	each := p.Blank(Board).Thickness
	fit := (s.Thickness + j.Saw.ResawKerf) / (each + j.Saw.ResawKerf)
	return int(min(fit, Length(p.Count)))
}

// layers is how many pieces of p are resawn from one blank: the number that a
// board large enough gives which wastes the smallest share of its thickness.
// Only boards that give this number serve p, so those that are for sale without
// limit are asked first: there are enough of them. Rough lumber comes last, for
// what boards on hand do not give of it is made into blanks anew.
func (j Job) layers(p Part) int {
	if !p.Resaw {
		return 1
	}
	var unlimited, limited, rough []Stock
	for _, s := range j.Stock {
		switch {
		case s.Kind == Sheet || s.Material != p.Material || !s.HasRoom(p.Blank(Board)):
		case s.Unlimited():
			unlimited = append(unlimited, s)
		default:
			limited = append(limited, s)
		}
	}
	for _, r := range j.Rough {
		if r.Material == p.Material {
			rough = append(rough, r.Largest())
		}
	}
	for _, boards := range [][]Stock{unlimited, limited, rough} {
		if n := j.leastWaste(p, boards); n > 0 {
			return n
		}
	}
	return 1
}

// leastWaste is the number of layers of p that wastes the smallest share of one
// of the boards, of equals the smaller one; 0 where none is thick enough.
func (j Job) leastWaste(p Part, boards []Stock) int {
	best, of := 0, Length(0)
	for _, s := range boards {
		n := j.LayersIn(p, s)
		gain := Length(n)*of - Length(best)*s.Thickness // n/s.Thickness against best/of
		if n > 0 && (of == 0 || gain > 0 || gain == 0 && n < best) {
			best, of = n, s.Thickness
		}
	}
	return best
}
