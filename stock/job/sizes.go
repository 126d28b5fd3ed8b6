package job

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// tradeNames are the keys that give a size by the trade's name for it.
var tradeNames = []string{"nominal", "sawn", "quarter"}

// bySize fills in the thickness and width that the trade's name of a size
// stands for, where none was measured: a measured size is nearer the truth. It
// returns the measure that gives the board feet.
func (r *reader) bySize(rec *record) stock.Measure {
	named := slices.DeleteFunc(slices.Clone(tradeNames), func(key string) bool { return !rec.given(key) })
	if len(named) > 1 {
		r.refuse(rec, named[1], fault.New("the board has a size by "+named[0]+" too",
			"nominal and sawn are softwood's, quarter is hardwood's: keep one of them"))
		return stock.Measure{}
	}
	if rec.given("surfaced") && !rec.given("sawn") && !rec.given("quarter") {
		r.refuse(rec, "surfaced", fault.New("this tells what is left of a size as sawn", `add quarter = "4/4" or sawn = "47x100" or the like, or delete it`))
	}
	if len(named) == 0 || rec.text(named[0]) == "" {
		return stock.Measure{}
	}
	size, key, err := sizeOf(*rec, named[0])
	if err != nil {
		measured := rec.given("thickness") && (rec.given("width") || named[0] == "quarter")
		if key == named[0] || !measured {
			text := rec.text(key)
			if key == "surfaced" {
				text = surfacingOf(text).String()
			}
			r.refuse(rec, key, unreadable(text, err))
		}
	}
	rec.fill("thickness", size.thickness)
	rec.fill("width", size.width)
	return size.measure
}

// size is the meaning of a trade name; a quarter settles no width.
type size struct {
	thickness, width stock.Length
	measure          stock.Measure
}

// sizeOf reads the size that key names. An error is that of the key returned.
func sizeOf(rec record, named string) (of size, key string, err error) {
	surfacing := surfacingOf(rec.text("surfaced"))
	switch named {
	case "nominal":
		n, err := stock.ParseNominal(rec.text(named))
		if err != nil {
			return of, named, err
		}
		of.thickness, of.width = n.Dressed()
		of.measure = n.Measure()
	case "sawn":
		s, err := stock.ParseSawn(rec.text(named))
		if err != nil {
			return of, named, err
		}
		of.thickness, of.width, err = s.Surfaced(surfacing)
		return of, "surfaced", err
	case "quarter":
		q, err := stock.ParseQuarter(rec.text(named))
		if err != nil {
			return of, named, err
		}
		of.thickness, err = q.Surfaced(surfacing)
		of.measure = q.Measure(rec.length("width"))
		return of, "surfaced", err
	}
	return of, named, nil
}

// surfacingOf is the meaning of a word of the key surfaced.
func surfacingOf(word string) stock.Surfacing {
	for _, s := range []stock.Surfacing{stock.OneSide, stock.TwoSides, stock.AllRound} {
		if word == s.String() {
			return s
		}
	}
	return stock.AsSawn
}
