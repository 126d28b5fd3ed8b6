package casework

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// One of a thing is not said in the plural, wherever numbers are put in words.
func TestOneIsSingular(t *testing.T) {
	one := func(o Opening) *Case {
		d := plain()
		d.Bays = []Bay{{Openings: []Opening{o}}}
		return derive(t, d, workshop(stock.Millimeters))
	}
	for _, test := range []struct {
		in   Opening
		want string
	}{
		{Opening{Doors: count(1), Shelves: count(1)}, "1 door, 1 shelf"},
		{Opening{Contents: Contents{Width: metric("80")}}, "1 piece"},
		{Opening{Contents: Contents{Width: metric("80"), Across: count(2)}}, "2 pieces"},
		{Opening{Contents: Contents{Name: word("bottles"), Width: metric("80"), Across: count(2)}}, "2 bottles"},
		{Opening{Contents: Contents{Name: word("sewing machine"), Width: metric("80")}}, "sewing machine"},
		{Opening{Contents: Contents{Height: metric("80")}}, "pieces"},
	} {
		if got := one(test.in).Openings[0].Holds; got != test.want {
			t.Errorf("holds %q, want %q", got, test.want)
		}
	}

	for _, test := range []struct {
		in   Opening
		want string
	}{
		{Opening{Shelves: count(1), Contents: Contents{Height: metric("80"), High: count(1)}},
			"1 shelf makes 2 spaces, each for one row, and 1 row is given"},
		{Opening{Height: metric("15"), Shelves: count(1)}, "1 shelf 18 mm thick fills an opening 15 mm high"},
		{Opening{Height: metric("75"), Contents: Contents{Height: metric("80")}}, "the contents need 90 = 80 (piece) + 10 (clearance)"},
	} {
		d := plain()
		d.Bays = []Bay{{Openings: []Opening{test.in}}}
		d.OutsideHeight = Length{}
		_, faults := Derive(d, workshop(stock.Millimeters))
		if got := strings.Join(spelled(faults), "\n"); !strings.Contains(got, test.want) {
			t.Errorf("faults are %q, want %q", got, test.want)
		}
	}

	hardware := one(Opening{Doors: count(1)}).Hardware
	if hardware[0].Name != "handle" || hardware[0].Count != 1 {
		t.Errorf("hardware begins with %d %s, want 1 handle", hardware[0].Count, hardware[0].Name)
	}
}
