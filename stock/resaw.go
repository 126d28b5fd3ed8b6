package stock

// layersIn is how many pieces of p, one on another, a board of s can be resawn
// into, none more than are wanted; 0 where not even one fits. A part that is
// not to be resawn is one layer of whatever it comes from.
func (j Job) layersIn(p Part, s Stock) int {
	if !p.Resaw || s.Kind == Sheet {
		return 1
	}
	each := p.Blank(Board).Thickness
	fit := (s.Thickness + j.Saw.ResawKerf) / (each + j.Saw.ResawKerf)
	return int(min(fit, Length(p.Count)))
}

// layers is how many pieces of p are resawn from one blank: the number that a
// board large enough gives which wastes the smallest share of its thickness,
// and of equals the smaller one. Only boards that give this number serve p.
func (j Job) layers(p Part) int {
	best, of := 1, Length(0)
	if !p.Resaw {
		return best
	}
	for _, s := range j.Stock {
		if s.Kind == Sheet || s.Material != p.Material || !s.HasRoom(p.Blank(Board)) {
			continue
		}
		n := j.layersIn(p, s)
		gain := Length(n)*of - Length(best)*s.Thickness // n/s.Thickness against best/of
		if n > 0 && (of == 0 || gain > 0 || gain == 0 && n < best) {
			best, of = n, s.Thickness
		}
	}
	return best
}
