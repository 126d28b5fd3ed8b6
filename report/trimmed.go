package report

import "sawbill/stock"

// trimmedOff says where s is trimmed: "off every edge", "off both ends", "off the far
// end and both edges", or "off every edge, but 6 off the far end". The least is what
// comes off where no figure stands.
func trimmedOff(s stock.Stock, r stock.Ruler) string {
	t := s.Trims()
	ends, edges := sidesOff(t.NearEnd, t.FarEnd, "end"), sidesOff(t.NearEdge, t.FarEdge, "edge")
	said := "off "
	switch {
	case ends == "both ends" && edges == "both edges":
		said += "every edge"
	case ends != "" && edges != "":
		said += ends + " and " + edges
	default:
		said += ends + edges
	}
	least := t.Least()
	for _, of := range []struct {
		near, far stock.Length
		side      string
	}{{t.NearEnd, t.FarEnd, "end"}, {t.NearEdge, t.FarEdge, "edge"}} {
		if of.near > least && of.near == of.far {
			said += ", but " + r.Print(of.near) + " off both " + of.side + "s"
			continue
		}
		if of.near > least {
			said += ", but " + r.Print(of.near) + " off the near " + of.side
		}
		if of.far > least {
			said += ", but " + r.Print(of.far) + " off the far " + of.side
		}
	}
	return said
}

// sidesOff names those of two opposite sides that are trimmed.
func sidesOff(near, far stock.Length, side string) string {
	switch {
	case near > 0 && far > 0:
		return "both " + side + "s"
	case near > 0:
		return "the near " + side
	case far > 0:
		return "the far " + side
	}
	return ""
}
