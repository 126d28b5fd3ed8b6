package sizes

import (
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/solid"
)

// Space is one opening of a finished case, clear on all sides.
type Space struct {
	Bay, Number          int // both from 1: from the left, from the top
	Width, Height, Depth stock.Length
	At                   solid.Point // where it begins, next to the zero point
	Holds                string      // "3 drawers", "2 doors, 1 shelf, 12 bottles", or "" when open
}

// Spaces lists the openings for the report.
func (r *Sizes) Spaces() []Space {
	var spaces []Space
	for i, b := range r.Built.Bays {
		for k, o := range b.Openings {
			spaces = append(spaces, Space{Bay: i + 1, Number: k + 1,
				Width: b.Width, Height: o.Height, Depth: r.Depth.Clear,
				At: solid.Point{b.Left, 0, o.Floor}, Holds: holds(o)})
		}
	}
	return spaces
}

func holds(o construction.Opening) string {
	var held []string
	if o.Doors > 0 {
		held = append(held, wording.Counted(o.Doors, "door", "doors"))
	}
	if len(o.Stack) > 0 {
		held = append(held, wording.Counted(len(o.Stack), "drawer", "drawers"))
	}
	if o.Shelves > 0 {
		held = append(held, wording.Counted(o.Shelves, "shelf", "shelves"))
	}
	if o.Contents != nil {
		held = append(held, o.Contents.String())
	}
	return strings.Join(held, ", ")
}
