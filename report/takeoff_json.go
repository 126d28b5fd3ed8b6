package report

import (
	"sawbill/stock"
	"sawbill/stock/casework"
)

// takesFile is what a case takes besides its parts: an estimate. Weights are in
// grams.
type takesFile struct {
	Weight    number       `json:"weight"`
	Weights   []weightFile `json:"weights"`
	Unweighed []string     `json:"unweighed"`
	Centre    []number     `json:"centre_of_gravity,omitempty"` // from the left, the front and the floor
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
	if g := t.Centre; g != nil {
		for _, l := range []stock.Length{g[casework.X], g[casework.Y], g[casework.Z]} {
			f.Centre = append(f.Centre, mm(l))
		}
	}
	return f
}

func grams(g casework.Grams) number { return fraction(float64(g)) }
