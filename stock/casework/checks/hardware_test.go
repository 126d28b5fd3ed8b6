package checks

import (
	"fmt"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
)

// 2 x 720 of the sides and 2 x 864 of top and bottom are 3168, a tenth more
// 3484.8. A loose shelf adds 861 x 1.1 = 947.1.
func TestEdgingIsThatOfFrontEdges(t *testing.T) {
	d := plain()
	if got, want := derive(t, d, workshop(stock.Millimeters)).TakeOff().Edging, metric("3484.8").Value; got != want {
		t.Errorf("got %s, want %s", got.Decimal(), want.Decimal())
	}
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	if got, want := derive(t, d, workshop(stock.Millimeters)).TakeOff().Edging, metric("4431.9").Value; got != want {
		t.Errorf("with a shelf: got %s, want %s", got.Decimal(), want.Decimal())
	}
}

// Behind a frame no edge of the carcass shows.
func TestAFrameCoversEdges(t *testing.T) {
	if got := derive(t, framed(), workshop(stock.Millimeters)).TakeOff().Edging; got != 0 {
		t.Errorf("got %s", got.Decimal())
	}
}

// Two drawers to be made and, in the bay beside, three loose shelves; an applied
// back of 900 x 720: 2 x (6 + 5) screws at 152.4 mm or less.
func TestHardwareIsCounted(t *testing.T) {
	d := plain()
	made(&d, "inset", DrawerBox{Count: count(2)})
	d.Bays = append(d.Bays, Bay{Openings: []Opening{{Shelves: count(3)}}})
	d.Back = Back{Fit: word("applied"), Material: word("back")}
	var got []string
	for _, h := range derive(t, d, workshop(stock.Millimeters)).Hardware {
		got = append(got, fmt.Sprint(h.Count, " ", h.Name))
	}
	wantLines(t, []string{"2 pairs of slides", "2 handles", "12 shelf pins", "22 screws or nails for the back", "2 tip restraints"}, got)
}

func TestHingesOfADoor(t *testing.T) {
	for height, want := range map[string]int{"300": 2, "900": 2, "900.1": 3, "1600": 3, "1601": 4, "2000": 4, "2100": 5} {
		if got := construction.Hinges(metric(height).Value); got != want {
			t.Errorf("%s high: %d hinges, want %d", height, got, want)
		}
	}
}

// The case of edgedCase with an overlay door, 684 + 2 x 10 = 704 by 864 + 20 = 884.
// With strips on the carcass and the door only the front edge of the shelf, 861, is
// bare; with a tenth 947.1. Strips on the carcass alone leave the door's edges too,
// as it is: 861 + 2 x (704 + 884) = 4037, with a tenth 4440.7. Strips on the shelf
// alone leave two sides of 720, the top and the bottom, 864, and the door: 1440 + 1728 +
// 3176 = 6344, with a tenth 6978.4.
func TestEdgingIsThatOfBareEdges(t *testing.T) {
	for want, on := range map[string][]string{
		"947.1": {"carcass", "fronts"}, "4440.7": {"carcass"}, "6978.4": {"shelves"},
	} {
		d, from := edgedCase("carcass", "taken-off")
		d.Door.Fit, d.Door.Overlay = word("overlay"), metric("10")
		d.Bays[0].Openings[0].Doors = count(1)
		d.Edgings = nil
		for _, panels := range on {
			d.Edgings = append(d.Edgings, Edging{On: word(panels), Material: word("oak")})
		}
		if got := derive(t, d, from).TakeOff().Edging; got != metric(want).Value {
			t.Errorf("strips on the %v leave %s, want %s", on, from.Ruler.Print(got), want)
		}
	}
}
