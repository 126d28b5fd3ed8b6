package checks

import (
	"fmt"
	"strings"

	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/wording"
)

// cautionBehindDoors says how drawers behind the doors of an opening are hung
// and used.
func (r *checker) cautionBehindDoors(b construction.Bay, o construction.Opening) {
	if !o.DrawersBehindDoors() {
		return
	}
	s, side := r.Built.Drawers, "each side"
	if o.Doors == 1 {
		side = "the " + o.Hinged
	}
	text := []string{fmt.Sprintf("In %s %s open the %s to a right angle or further before any drawer.", b.Name, o.Name, wording.Many(o.Doors, "door", "doors"))}
	if s.Doors.Hinge > 0 {
		text = append(text, fmt.Sprintf("Pack the slides out by %s on %s, where an open door stands; try it with the door hung before the packing is fixed.",
			r.In.Print(s.Doors.Hinge), side))
	}
	text = append(text, fmt.Sprintf("Handles behind doors must stand out less than %s.", r.In.Print(s.Doors.Before)))
	if s.Front == "overlay" && !o.Stack[0].Measured {
		text = append(text, "Behind a door a front cannot reach over its opening: these drawers have none but their box's own.")
	}
	r.In.Caution("drawers behind doors", strings.Join(text, " "))
}
