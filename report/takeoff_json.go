package report

import (
	"strconv"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// takesFile is what a case takes besides its parts: an estimate. Weights are in
// grams, surfaces in square meters.
type takesFile struct {
	Weight    number       `json:"weight"`
	Weights   []weightFile `json:"weights"`
	Unweighed []string     `json:"unweighed"`
	Center    []number     `json:"centre_of_gravity,omitempty"` // from the left, the front and the floor, or of a hung case its lower edge
	Surfaces  surfacesFile `json:"surfaces"`
	Finish    finishFile   `json:"finish"`
	Edging    number       `json:"edging"`
	Hardware  []fittings   `json:"hardware"`
}

type surfacesFile struct {
	Outside number `json:"outside"`
	Inside  number `json:"inside"`
	Wear    number `json:"wear"`
}

// finishFile is a volume, with the coats of each class and their coverage in
// square meters per liter, or square feet per US gallon.
type finishFile struct {
	Volume   number `json:"volume"`
	Unit     string `json:"unit"`
	Outside  int    `json:"coats_outside"`
	Inside   int    `json:"coats_inside"`
	Wear     int    `json:"coats_wear"`
	Coverage int    `json:"coverage"`
}

type fittings struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	How   string `json:"how"`
}

type weightFile struct {
	Part string `json:"part"`
	Each number `json:"each"`
	All  number `json:"all"`
}

func takesOf(c *casework.Case) *takesFile {
	t := c.TakeOff()
	f := &takesFile{Weight: grams(t.Weight), Weights: []weightFile{}, Unweighed: append([]string{}, t.Unweighed...)}
	for _, w := range t.Weights {
		f.Weights = append(f.Weights, weightFile{c.Parts[w.Part].Name, grams(w.Each), grams(w.All)})
	}
	if g := t.Center; g != nil {
		for _, l := range []stock.Length{g[casework.X], g[casework.Y], g[casework.Z]} {
			f.Center = append(f.Center, mm(l))
		}
	}
	squares := func(a casework.Area) number { return number(strconv.FormatFloat(a.SquareMeters(), 'f', 4, 64)) }
	f.Surfaces = surfacesFile{squares(t.Surfaces.Outside), squares(t.Surfaces.Inside), squares(t.Surfaces.Wear)}
	f.Finish = finishFile{number(finishVolume(c, t)), c.Finish.Unit(), c.Finish.Outside, c.Finish.Inside, c.Finish.Wear, c.Finish.Coverage}
	f.Edging, f.Hardware = mm(t.Edging), []fittings{}
	for _, h := range c.Hardware {
		f.Hardware = append(f.Hardware, fittings(h))
	}
	return f
}

func grams(g stock.Grams) number { return fraction(float64(g)) }
