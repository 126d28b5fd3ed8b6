package elevation

import (
	"slices"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock/casework"
)

// Of drawers behind two doors no handle shows in the gap between these.
func TestHandlesBehindTwoDoorsAreHidden(t *testing.T) {
	d := box()
	d.Bays = []casework.Bay{{Openings: []casework.Opening{{Doors: given(2), Drawers: []casework.DrawerBox{{Count: given(2)}}}}}}
	d.Door = casework.Door{Fit: given("inset"), Gap: size(2), HandleInset: size(40)}
	d.Drawer = casework.Drawer{Material: given("box"), BottomMaterial: given("thin"), GrooveDepth: size(5), Gap: size(4)}
	d.Back = casework.Back{}
	// Doors of (560 - 2) / 2 = 279: handles at 20 + 279 - 40 = 259 and 20 + 279 + 2 + 40 = 341.
	if got, want := subject(t, d).handles(), []place{{259 * mm1, 200 * mm1}, {341 * mm1, 200 * mm1}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// The box of 600 x 400 with an inset door: between sides of 18 with gaps of 2 it is 560 wide,
// and its handle is 40 from the edge that opens, half-way up: at 18 + 2 + 560 - 40 = 540 from
// the left, or 60 where it is hinged on the right, and at 200. Drawers behind it hide theirs.
func TestHandlesAreSeenFromTheFront(t *testing.T) {
	for hinged, want := range map[string][]place{"left": {{540 * mm1, 200 * mm1}}, "right": {{60 * mm1, 200 * mm1}}} {
		d := box()
		d.Back = casework.Back{}
		d.Bays = []casework.Bay{{Openings: []casework.Opening{{Doors: given(1), Hinged: given(hinged), Drawers: []casework.DrawerBox{{Count: given(2)}}}}}}
		d.Door = casework.Door{Fit: given("inset"), Gap: size(2), HandleInset: size(40)}
		d.Drawer = casework.Drawer{Material: given("box"), BottomMaterial: given("thin"), GrooveDepth: size(5), Gap: size(4)}
		s := subject(t, d)
		if got := s.handles(); !slices.Equal(got, want) {
			t.Errorf("hinged %s: %v, want %v", hinged, got, want)
		}
		for _, v := range Views {
			circles := 0
			for _, m := range s.Draw(v, 4).Marks {
				if c, ok := m.(drawing.Disc); ok && c.Fill == drawing.White {
					circles++
				}
			}
			if seen := map[View]int{Front: 1}[v]; circles != seen {
				t.Errorf("hinged %s, %s: %d handles", hinged, v.Name(), circles)
			}
		}
	}
}
