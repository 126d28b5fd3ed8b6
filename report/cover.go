package report

import (
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
)

// Up to mostNamed parts are named; more go by their marks.
const mostNamed = 10

// cover says what of the job could be cut again from what is kept; nothing
// where nothing is cut.
func cover(p *cutplan.Plan) string {
	c := p.Cover
	from := "the offcuts"
	switch {
	case c.Offcuts && c.Rack:
		from = "the offcuts and what stays on hand"
	case c.Rack:
		from = "what stays on hand"
	}
	switch {
	case c.Parts == 0:
		return ""
	case c.Covered == 0:
		return "No part could be recut from what is kept: each spoiled one takes another trip."
	case c.Covered == c.Parts && c.Parts == 1:
		return "The part could be recut from " + from + "."
	case c.Covered == c.Parts:
		return fmt.Sprintf("Any one of the %d parts could be recut from %s.", c.Parts, from)
	}
	var not []string
	comma := ", "
	for _, u := range c.Uncovered {
		name := p.Bill[u.Blank].Part.Name
		if len(c.Uncovered) > mostNamed {
			name = p.Bill[u.Blank].Mark
		}
		if strings.Contains(name, ",") {
			comma = "; "
		}
		if u.Count > 1 {
			name = fmt.Sprintf("%s (%d)", name, u.Count)
		}
		not = append(not, name)
	}
	return fmt.Sprintf("%d of %d parts could be recut from %s; not: %s.", c.Covered, c.Parts, from, strings.Join(not, comma))
}
