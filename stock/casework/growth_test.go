package casework

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// openingOf is the opening that the middle of a solid lies in, -1 where it lies in none.
func openingOf(c *Case, s Solid) int {
	for i, o := range c.Openings {
		x, z := s.At[X]+s.Size[X]/2-o.At[X], s.At[Z]+s.Size[Z]/2-o.At[Z]
		if x > 0 && x < o.Width && z > 0 && z < o.Height {
			return i
		}
	}
	return -1
}

// What lies across a bay grows by as much as the bay; of two doors each by half,
// rounded down; what runs from front to back, or stands, keeps its width.
func TestABayGrowsWhatLiesAcrossIt(t *testing.T) {
	const grown = 60 * stock.Millimeter
	grew := make(map[string]int)
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		d.OutsideWidth.Value += grown
		wider := derive(t, d, from)
		for i, s := range c.Solids {
			k := openingOf(c, s)
			if k < 0 || strings.Contains(string(s.Role), "edging") {
				continue
			}
			o := c.Openings[k]
			got, want := wider.Solids[i].Size[X]-s.Size[X], wider.Openings[k].Width-o.Width
			slack := stock.Length(0)
			switch s.Role {
			case "shelf", "drawer front and back", "drawer bottom", "false front":
			case "door":
				if d.Bays[o.Bay-1].Openings[o.Number-1].Doors.Value == 2 {
					want, slack = want/2, 1
				}
			case "drawer side":
				want = 0
			default:
				continue
			}
			if got < want-slack || got > want+slack || wider.Solids[i].Role != s.Role {
				t.Errorf("bay %d opening %d: a %s grew by %d, want %d", o.Bay, o.Number, s.Role, got, want)
			}
			grew[string(s.Role)]++
		}
	})
	for _, role := range []string{"shelf", "drawer front and back", "drawer bottom", "false front", "door", "drawer side"} {
		if grew[role] < 50 {
			t.Errorf("only %d times a %s was looked at", grew[role], role)
		}
	}
}

// The fronts of a stack fill their opening from top to bottom and from side to
// side, with the gaps that were given, or reach over it; behind doors they leave the
// room of these besides. Rounding leaves less than a step for each front and for the opening, of
// exact sizes a unit, which gaps share alike.
func TestFrontsFillTheirOpenings(t *testing.T) {
	looked := 0
	eachRandomCase(t, func(t *testing.T, from Context, d Design, c *Case) {
		for _, e := range d.Edgings {
			if e.On.Value == "fronts" {
				return // fronts are then smaller by their strips
			}
		}
		for k, o := range c.Openings {
			in := d.Bays[o.Bay-1].Openings[o.Number-1]
			front := d.Drawer.Front.Value
			if in.Doors.Value > 0 && front == "overlay" {
				front = "none"
			}
			role, above := "false front", d.Drawer.Gap.Value
			beside := above
			switch front {
			case "none":
				role, beside = "drawer front and back", d.Drawer.SideClearance.Value
			case "overlay":
				above, beside = -d.Drawer.Overlay.Value, -d.Drawer.Overlay.Value
			}
			hinge := thicknessOpen(d.Door)
			left, right := beside, beside
			if n := in.Doors.Value; n == 2 || n == 1 && in.Hinged.Value != "right" {
				left += hinge
			}
			if n := in.Doors.Value; n == 2 || n == 1 && in.Hinged.Value == "right" {
				right += hinge
			}
			upper, count, wider := o.At[Z]+o.Height-above, stock.Length(0), stock.Length(0)
			last, first := -1, true
			// Boxes without fronts lie on the step: their gaps are no less than given, and
			// differ by less than a step.
			moved := stock.Length(0)
			if front == "none" {
				moved = from.Tools.Step
			}
			for _, s := range c.Solids {
				if s.Role != Role(role) || openingOf(c, s) != k || s.Drawer == last {
					continue
				}
				last = s.Drawer
				looked++
				if count > 0 {
					upper -= d.Drawer.Gap.Value
				}
				count++
				if gap := upper - s.End()[Z]; moved > 0 {
					if gap < 0 || gap > 2*moved {
						t.Errorf("bay %d opening %d: the gap above box %d is wider by %d", o.Bay, o.Number, count, gap)
					}
				} else if first && (front != "overlay" || count > 1) {
					wider, first = gap, false
				} else if gap != wider && (front != "overlay" || count > 1) {
					t.Errorf("bay %d opening %d: front %d ends at %d, %d below %d, other gaps are wider by %d", o.Bay, o.Number, count, s.End()[Z], gap, upper, wider)
				}
				upper = s.At[Z]
				if s.Role == "drawer front and back" && d.Drawer.Corner.Value != "box-joint" {
					continue // between the sides
				}
				gotLeft, gotRight := s.At[X]-o.At[X]-left, o.At[X]+o.Width-s.End()[X]-right
				if off := gotLeft - gotRight; off < -1 || off > 1 || gotLeft < 0 || 2*gotLeft > from.Tools.Step {
					t.Errorf("bay %d opening %d: %d more left of a front, %d right of it", o.Bay, o.Number, gotLeft, gotRight)
				}
			}
			over := upper - (o.At[Z] + above)
			if front != "overlay" {
				over -= wider
			}
			most := max(count+1, from.Tools.Step)
			if front == "overlay" { // n fronts have n - 1 gaps
				most *= 2
			}
			if count > 0 && (over < 0 || over > max(count+1, 2*moved) || wider < 0 || wider > most) {
				t.Errorf("bay %d opening %d: %d are left below %d fronts", o.Bay, o.Number, over, count)
			}
		}
	})
	if looked < 100 {
		t.Errorf("only %d fronts were looked at", looked)
	}
}

// thicknessOpen is what an open door of 18 mm takes of its opening.
func thicknessOpen(d Door) stock.Length {
	if d.Fit.Value == "overlay" {
		return metric("18").Value - d.Overlay.Value
	}
	return metric("18").Value + d.Gap.Value
}
