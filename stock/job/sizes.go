package job

import "sawbill/stock"

// bySize fills in the thickness and width that the trade's name of a size
// stands for, where none was measured: a measured size is nearer the truth. It
// returns by what board feet are reckoned.
func (r *reader) bySize(rec *record) stock.Measure {
	wrong := func(key string, found problem) {
		r.fault(rec.where(key).of(key), found)
		rec.sound = false
	}
	// named tells keys that are given and could be read.
	named := func(key string) bool { return rec.given(key) && rec.text(key) != "" }
	if rec.given("nominal") && rec.given("quarter") {
		wrong("quarter", problem{"the board has a nominal size too", "softwood is sold by nominal size, hardwood by quarter: delete one of them"})
		return stock.Measure{}
	}
	if rec.given("surfaced") && !rec.given("quarter") {
		wrong("surfaced", problem{"this tells the thickness of hardwood sold by quarter", `add quarter = "4/4" or the like, or delete it`})
	}
	switch {
	case named("nominal"):
		n, err := stock.ParseNominal(rec.text("nominal"))
		if err != nil {
			wrong("nominal", problemOf(err))
			return stock.Measure{}
		}
		thickness, width := n.Dressed()
		rec.fill("thickness", thickness)
		rec.fill("width", width)
		return n.Measure()
	case named("quarter"):
		q, err := stock.ParseQuarter(rec.text("quarter"))
		if err != nil {
			wrong("quarter", problemOf(err))
			return stock.Measure{}
		}
		thickness, err := q.Surfaced(surfacingOf(rec.text("surfaced")))
		if err != nil && !rec.given("thickness") {
			wrong("surfaced", problemOf(err))
		}
		rec.fill("thickness", thickness)
		return q.Measure(rec.length("width"))
	}
	return stock.Measure{}
}

// surfacingOf is what a word of the key surfaced stands for.
func surfacingOf(word string) stock.Surfacing {
	for _, s := range []stock.Surfacing{stock.OneSide, stock.TwoSides, stock.AllRound} {
		if word == s.String() {
			return s
		}
	}
	return stock.AsSawn
}
