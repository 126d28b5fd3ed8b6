package stock

import "testing"

func TestSumPrintsHowASizeCameAbout(t *testing.T) {
	const mm = Millimeter
	inside := Sum{{1, 900 * mm, 0, "outside width"}, {-2, 18 * mm, 0, "side"}}
	tests := []struct {
		sum    Sum
		ruler  Ruler
		total  Length
		want   string
		reason string
	}{
		{inside, Ruler{}, 864 * mm, "864 = 900 (outside width) - 2 x 18 (side)", "the example of a case"},
		{Sum{{1, 18 * mm, 0, "side"}}, Ruler{}, 18 * mm, "18 = 18 (side)", "one term"},
		{Sum{{-1, 3 * mm, 0, ""}, {1, 5 * mm, 0, ""}}, Ruler{}, 2 * mm, "2 = -3 + 5", "no labels, a negative start"},
		{Sum{{-2, 3 * mm, 0, ""}}, Ruler{}, -6 * mm, "-6 = -2 x 3", "a negative total"},
		{Sum{{1, 864 * mm, 3, "inside width"}}, Ruler{}, 288 * mm, "288 = 864 / 3 (inside width)", "shared out"},
		{Sum{{1, 100 * mm, 3, "inside"}}, Ruler{}, 1_333_333, "≈33.3 = 100 / 3 (inside)", "a rest of less than 25 nm is dropped"},
		{Sum{{-1, 100 * mm, 3, "inside"}}, Ruler{}, -1_333_333, "≈-33.3 = -100 / 3 (inside)", "towards zero"},
		{Sum{{2, 5, 3, ""}}, Ruler{}, 3, "≈0 = 2 x ≈0 / 3", "times goes before over"},
		{Sum{{1, 18 * mm, 1, ""}}, Ruler{}, 18 * mm, "18 = 18", "over 1 is no division"},
		{Sum{{1, 1000 * mm, 3, "inside"}, {1, 1000 * mm, 3, "inside"}}, Ruler{}, 26_666_666, "≈666.65 = 1000 / 3 (inside) + 1000 / 3 (inside)", "the total is not the sum of rounded figures"},
		{Sum{{1, Foot, 0, "length"}, {1, Inch / 8, 0, "kerf"}}, Ruler{Units: Inches}, Foot + Inch/8, "12 1/8 = 12 (length) + 1/8 (kerf)", "in inches"},
		{nil, Ruler{}, 0, "0", "nothing"},
	}
	for _, test := range tests {
		if got := test.sum.Total(); got != test.total {
			t.Errorf("%s: total %d, want %d", test.reason, got, test.total)
		}
		if got := test.sum.Print(test.ruler); got != test.want {
			t.Errorf("%s: %q, want %q", test.reason, got, test.want)
		}
	}
}
