package report

import "sawbill/stock"

// trimmedOff says where s is trimmed: "off every edge", "off both ends", "off the far
// end", or "off every edge, but 6 off the far end". The least is what comes off where
// no figure stands.
func trimmedOff(s stock.Stock, r stock.Ruler) string {
	t := s.Trims()
	ends, edges := sidesOff(t.NearEnd, t.FarEnd, "end"), sidesOff(t.NearEdge, t.FarEdge, "edge")
	said := "off " + ends
	switch {
	case ends == "both ends" && edges == "both edges":
		said = "off every edge"
	case ends == "":
		said = "off " + edges
	}
	least := t.Least()
	for _, more := range []struct {
		near, far stock.Length
		side      string
	}{{t.NearEnd, t.FarEnd, "end"}, {t.NearEdge, t.FarEdge, "edge"}} {
		if more.near > least {
			said += ", but " + r.Print(more.far) + " off both " + more.side + "s"
		} else if more.far > least {
			said += ", but " + r.Print(more.far) + " off the far " + more.side
		}
	}
	return said
}

// sidesOff names those of two opposite sides that are trimmed.
func sidesOff(near, far stock.Length, side string) string {
	switch {
	case near > 0:
		return "both " + side + "s"
	case far > 0:
		return "the far " + side
	}
	return ""
}
