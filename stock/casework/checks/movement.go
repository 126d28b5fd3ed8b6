package checks

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/pieces"
)

const (
	// moistureSwing is by how many percent the moisture of wood changes over a
	// year in a heated room: 6 to 11 % is common practice, no source; 4 is the
	// usual figure.
	moistureSwing = 4
	// wideLumber is the least width that is checked for movement: 4 in. Common practice, no source.
	wideLumber = 4 * stock.Inch
)

// checkMovement computes how much wide lumber swells and shrinks. Sheets and the length of lumber
// hardly do.
func (r *checker) checkMovement() {
	var unknown []string
	for i, p := range r.Pieces {
		m := r.In.From.Materials[p.Panel.Material]
		if m.Kind != stock.Board || p.Width.Total() < wideLumber {
			continue
		}
		if !m.Tangential.Known() {
			if !slices.Contains(unknown, p.Panel.Material) {
				unknown = append(unknown, p.Panel.Material)
				r.In.Caution("wood movement", fmt.Sprintf("A %s is %s wide, of lumber that swells and shrinks across the grain: leave it room and fasten it so that it can move. "+
					"Its movement is not reckoned, since no figure is known of %s: give the [[material]] a wood that has one.", p.Role, r.In.Print(p.Width.Total()), p.Panel.Material))
			}
			continue
		}
		r.found(r.movement(r.Parts[i], p, m.Properties))
	}
}

// change is dimension x coefficient x change of moisture: Wood Handbook, chapter
// 13, valid from 6 to 14 % moisture.
func change(width stock.Length, coefficient float64, percent float64) stock.Length {
	return ofMillimeters(inMillimeters(width) * coefficient * percent)
}

func (r *checker) movement(part stock.Part, p pieces.Piece, m design.Properties) Check {
	wide := p.Width.Total()
	flat, quarter := change(wide, m.Tangential.Value, moistureSwing), change(wide, m.Radial.Value, moistureSwing)
	return Check{
		Subject: "wood movement", Of: part.Name, Verdict: AllowFor,
		Text: fmt.Sprintf("A %s %s wide swells or shrinks by %s across the grain if it is flat-sawn, by %s if quarter-sawn, when its moisture changes by %d %%. "+
			"Leave that room, and fasten it so that it can move.", p.Role, r.In.Print(wide), r.sagged(flat), r.sagged(quarter), moistureSwing),
		Inputs: []Figure{millimeters("width", wide), {"tangential coefficient", fixed(m.Tangential.Value, 5), "per %"},
			{"radial coefficient", fixed(m.Radial.Value, 5), "per %"}, {"change of moisture", fixed(moistureSwing, 0), "%"}},
		Results: []Figure{millimeters("change, flat-sawn", flat), millimeters("change, quarter-sawn", quarter)},
		Assumptions: []string{
			"The moisture stays between 6 and 14 %, and changes by 4 % over a year, as it may in a heated room.",
			"Movement along the grain is left out: it is a small part of this.",
		},
		Source: "change = width x coefficient x change of moisture, " + m.Tangential.Source,
	}
}
