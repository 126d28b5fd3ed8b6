package checks

import (
	"sawbill/stock"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// edgeLength is the length of the edges of sheets that show, with a tenth to spare. It counts the
// front edge of every panel of the carcass, and all four of a front or a door. An edge that is
// covered over its whole length, as by a frame or a strip, takes none; what shuts a case does not
// cover it.
func edgeLength(c *pieces.Standing) stock.Length {
	var all stock.Length
	still := pieces.Standing{} // what does not open
	for _, s := range c.Solids {
		if s.Drawer == 0 && s.Role != "door" {
			still.Solids = append(still.Solids, s)
		}
	}
	sheet := func(s solid.Solid) bool {
		return s.Part >= 0 && s.Role.Unit() != "edging" && c.Materials[c.Parts[s.Part].Material].Kind == stock.Sheet
	}
	for _, s := range c.Solids {
		if sheet(s) && (s.Role == "false front" || s.Role == "door") {
			all += bareEdges(c, s)
		}
	}
	for i, s := range still.Solids {
		if sheet(s) && s.Through != solid.Y && shows(&still, i, side{solid.Y, false}) {
			all += s.Size[solid.X+solid.Z-s.Through] // the axis along the front edge
		}
	}
	return all + all/10
}

// bareEdges is the length of the edges of a front or a door that have no strip.
func bareEdges(c *pieces.Standing, front solid.Solid) stock.Length {
	edged := pieces.Standing{Solids: []solid.Solid{front}}
	for _, s := range c.Solids {
		if s.Role.On(front.Role) {
			edged.Solids = append(edged.Solids, s)
		}
	}
	var bare stock.Length
	for _, across := range []solid.Axis{front.Along, front.Across} {
		for _, beyond := range []bool{false, true} {
			if shows(&edged, 0, side{across, beyond}) {
				bare += front.Size[front.Along+front.Across-across]
			}
		}
	}
	return bare
}

// shows reports whether any of a face is not covered.
func shows(c *pieces.Standing, i int, of side) bool {
	var s Surfaces
	measure(c, &s, i, of)
	return s != Surfaces{}
}
