package checks

import (
	"fmt"
	"math"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/pieces"
)

const (
	// squareFootLoad is one pound per square foot in N/mm2: a pound-force is
	// 0.45359237 kg x 9.80665 m/s2.
	squareFootLoad = 0.45359237 * 9.80665 / (304.8 * 304.8)
	// squareMeterLoad is one kg per square meter in N/mm2.
	squareMeterLoad = 9.80665e-6
	// sagLimit: a shelf may sag by its length over this, Architectural Woodwork
	// Standards 2009, 1.2.21.3.
	sagLimit = 144
)

// ends is the share of w L^4 / (E I) that a beam under an even load sags by:
// Wood Handbook, Equation 9-2 and Table 9-1.
type ends float64

const (
	resting ends = 5.0 / 384
	clamped ends = 1.0 / 384
)

// bend is how far a shelf sags in the middle over the fourth power of its span, per
// mm3. The load is in N/mm2 of its face, the modulus in N/mm2. With w = load x depth
// and I = depth x t^3 / 12 the depth cancels:
//
//	w L^4 / (E I) = 12 load L^4 / (E t^3)
func (e ends) bend(modulus, load float64, thickness stock.Length) float64 {
	t := inMillimeters(thickness)
	return float64(e) * 12 * load / (modulus * t * t * t)
}

// sag is how far a shelf of a span sags.
func (e ends) sag(modulus, load float64, span, thickness stock.Length) stock.Length {
	l := inMillimeters(span)
	return ofMillimeters(e.bend(modulus, load, thickness) * l * l * l * l)
}

// longest is the span of a shelf that sags by all that sagLimit allows.
func (e ends) longest(modulus, load float64, thickness stock.Length) stock.Length {
	return ofMillimeters(1 / math.Cbrt(sagLimit*e.bend(modulus, load, thickness)))
}

func inMillimeters(l stock.Length) float64 { return float64(l) / float64(stock.Millimeter) }
func ofMillimeters(mm float64) stock.Length {
	return stock.Length(math.Round(mm * float64(stock.Millimeter)))
}

// shelfLoad is the load of a shelf in N/mm2, and its wording.
func (r *checker) shelfLoad() (load float64, said string) {
	given := r.In.Design.Shelf.Load
	switch {
	case given.Set && r.In.From.Ruler.Units == stock.Inches:
		return float64(given.Value) * squareFootLoad, fmt.Sprintf("%d lb/ft2", given.Value)
	case given.Set:
		return float64(given.Value) * squareMeterLoad, fmt.Sprintf("%d kg/m2", given.Value)
	}
	return bookLoad, "50 lb/ft2 (244 kg/m2, a load of books)"
}

// checkDeflection computes the sag of every shelf and divider whose modulus is known, and gives the
// rule of thumb for others.
func (r *checker) checkDeflection() {
	for i, p := range r.Pieces {
		if !p.Role.Carries() {
			continue
		}
		m := r.In.From.Materials[p.Panel.Material].Modulus
		if !m.Known() {
			r.cautionShelf(p)
			continue
		}
		r.found(r.deflection(r.Parts[i], p, m))
	}
}

func (r *checker) deflection(part stock.Part, p pieces.Piece, m design.Property) Check {
	load, said, byContents := r.loadOf(p)
	held := r.Built.Shelf.Joint
	if p.Role == "divider" {
		held = r.Built.Divider.Joint
	}
	span, t := p.Length.Total(), p.Panel.Thickness
	most := span / sagLimit
	loose, stiff := resting.sag(m.Value, load, span, t), clamped.sag(m.Value, load, span, t)
	k := Check{
		Subject: "shelf deflection", Of: part.Name, Verdict: Within,
		Inputs: []Figure{millimeters("span", span), millimeters("thickness", t),
			{"modulus", fixed(m.Value, 0), "N/mm2"}, {"load", fixed(load, 6), "N/mm2"}},
		Results: []Figure{millimeters("sag", loose), millimeters("limit", most)},
		Assumptions: []string{
			"The span is the whole length of the piece, what lies in joints included.",
			"The load lies evenly over the whole face, and the shelf's own weight is not added.",
			fmt.Sprintf("The modulus of %s is %.0f N/mm2 (%s); knots, sloping grain and damp make a shelf softer.", p.Panel.Material, m.Value, m.Source),
			"This is the first loading: sag may grow by half and more over time.",
		},
		Source: "Wood Handbook, Equation 9-2 and Table 9-1; load and limit, 1/144 of the span: Architectural Woodwork Standards 2009, 1.2.21",
	}
	switch {
	case byContents:
		k.Assumptions = append(k.Assumptions, "Contents weigh what the job file says, the same in every row, and a piece is checked for the heaviest row on any of its like.")
		fallthrough
	case r.In.Design.Shelf.Load.Set:
		k.Source = "Wood Handbook, Equation 9-2 and Table 9-1; limit, 1/144 of the span: Architectural Woodwork Standards 2009, 1.2.21.3; load: the job file"
	}
	verdict := fmt.Sprintf("That is within 1/144 of its span, %s.", r.sagged(most))
	if loose > most {
		k.Verdict = Beyond
		verdict = fmt.Sprintf("That is more than 1/144 of its span, %s: make the bay narrower or the shelf thicker, or stiffen its front edge.", r.sagged(most))
	}
	k.Text = fmt.Sprintf("Under %s a %s that spans %s sags by some %s (5 w L^4 / 384 E I, ends that rest). ", said, p.Role, r.In.Print(span), r.sagged(loose))
	if held.Depth > 0 {
		k.Results = append(k.Results, millimeters("sag with clamped ends", stiff))
		k.Text += fmt.Sprintf("Were its ends clamped it would be %s (w L^4 / 384 E I); a glued dado lies between the two, and the greater one is judged. ", r.sagged(stiff))
	}
	k.Text += verdict
	return k
}

// sagged prints a sag to 0.1 mm or 0.01 in: it is no better known, and a fraction
// of an inch would look as if it were.
func (r *checker) sagged(l stock.Length) string {
	if r.In.From.Ruler.Units == stock.Inches {
		return fixed(float64(l)/float64(stock.Inch), 2) + " in"
	}
	return fixed(inMillimeters(l), 1) + " mm"
}

func millimeters(name string, l stock.Length) Figure { return Figure{name, l.Decimal(), "mm"} }

func (r *checker) found(k Check) { r.checks = append(r.checks, k) }
