package job

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// cleared cuts a board apart at its defects. Only a board that has been looked
// at can have any: one on hand, and each is one of its own.
func (r *reader) cleared(o offer, kerf stock.Length) offer {
	if !o.given("defects") {
		return o
	}
	if !o.fields["on_hand"].truth {
		r.refuse(&o.record, "defects", fault.New("a board that is still to be bought has not been measured", "set on_hand = true, or delete its defects"))
	}
	if o.given("count") && o.count("count") != 1 {
		r.refuse(&o.record, "count", fault.New(fmt.Sprintf("%d boards do not have the same defects", o.count("count")), "set count = 1, and give each board its own [[board]]"))
	}
	o.Count = 1
	var defects []stock.Zone
	for _, z := range o.fields["defects"].zones {
		zone := stock.Zone{From: z.length("from"), To: z.length("to")}
		switch {
		case !z.sound:
		case zone.To <= zone.From:
			r.fault(z.where("to").of("to"), fault.New(fmt.Sprintf("%s is not beyond from (%s)", r.ruler.PrintUnit(zone.To), r.ruler.PrintUnit(zone.From)), "measure both from the same end, the near one first"))
			o.sound = false
		case o.Length > 0 && zone.To > o.Length:
			r.fault(z.where("to").of("to"), fault.New(fmt.Sprintf("%s is beyond the board's end (length %s)", r.ruler.PrintUnit(zone.To), r.ruler.PrintUnit(o.Length)), "measure from the reference end"))
			o.sound = false
		}
		defects = append(defects, zone)
	}
	if !o.sound {
		return o
	}
	if o.sections = o.ClearSections(defects, kerf); len(o.sections) == 0 {
		r.refuse(&o.record, "defects", fault.New("they leave nothing of the board", "take the board out of the job"))
	}
	return o
}
