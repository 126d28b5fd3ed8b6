package drawing

import (
	"strings"
	"testing"
)

// Each row draws around one text, which covers about 20 to 27 by 17 to 20 mm.
func TestCheckLegible(t *testing.T) {
	word := Text{At: Point{20, 20}, String: "1200", Size: 9}
	grounded := word
	grounded.Ground = true
	reversed := word
	reversed.Reversed = true
	across := func(d *Drawing) { d.Line(Point{10, 19}, Point{40, 19}, Fine) }
	for _, c := range []struct {
		reason string
		draw   func(d *Drawing)
		want   string // in the error; "" for none
	}{
		{"a text alone", func(d *Drawing) { d.Text(word) }, ""},
		{"a line below its base line", func(d *Drawing) { d.Text(word); d.Line(Point{10, 20.3}, Point{40, 20.3}, Fine) }, ""},
		{"a line as wide as the gap", func(d *Drawing) { d.Text(word); d.Line(Point{10, 20.3}, Point{40, 20.3}, Outline) }, "a line"},
		{"a line through it", func(d *Drawing) { across(d); d.Text(word) }, "a line"},
		{"a short line within it", func(d *Drawing) { d.Text(word); d.Line(Point{22, 18}, Point{22.4, 19}, Fine) }, "a line"},
		{"a line that gives way", func(d *Drawing) { across(d); d.Text(grounded) }, ""},
		{"a line drawn over the ground", func(d *Drawing) { d.Text(grounded); across(d) }, "a line"},
		{"a line below a white area", func(d *Drawing) { across(d); d.Box(Rect{15, 15, 20, 8}, NoPen, White); d.Text(word) }, ""},
		{"a line below half a white area", func(d *Drawing) { across(d); d.Box(Rect{22, 15, 20, 8}, NoPen, White); d.Text(word) }, "a line"},
		{"a white area over it leaves nothing to read", func(d *Drawing) { d.Text(word); d.Box(Rect{15, 15, 20, 8}, NoPen, White) }, "a shape"},
		{"hatching below it", func(d *Drawing) { d.Hatch(Rect{15, 15, 20, 8}); d.Text(word) }, "hatching"},
		{"hatching beside it", func(d *Drawing) { d.Hatch(Rect{30, 15, 20, 8}); d.Text(word) }, ""},
		{"the head of an arrow", func(d *Drawing) { d.Arrow(Point{21, 19}, Point{10, 19}); d.Text(word) }, "a shape"},
		{"a dot on it", func(d *Drawing) { d.Text(word); d.Disc(Point{22, 19}, 0.4, NoPen, Black) }, "a shape"},
		{"a ring around it", func(d *Drawing) { d.Text(word); d.Disc(Point{23, 19}, 8, Fine, NoFill) }, ""},
		{"black below it", func(d *Drawing) { d.Box(Rect{15, 15, 20, 8}, NoPen, Black); d.Text(word) }, "a shape"},
		{"white letters on black", func(d *Drawing) { d.Box(Rect{15, 15, 20, 8}, NoPen, Black); d.Text(reversed) }, ""},
		{"a number on a line", func(d *Drawing) { across(d); d.Number(Point{23, 19}, "12") }, ""},
		{"a dimension", func(d *Drawing) { d.LevelDimension(10, 40, 30, 40, "30", 9) }, ""},
		{"two figures as far apart as letters", func(d *Drawing) {
			d.Text(word)
			d.Text(Text{At: Point{20 + word.Width() + 0.3, 20}, String: "3", Size: 9})
		}, "read as one"},
		{"two figures well apart", func(d *Drawing) {
			d.Text(word)
			d.Text(Text{At: Point{20 + word.Width() + 1.5, 20}, String: "3", Size: 9})
		}, ""},
		{"a figure and a word", func(d *Drawing) {
			d.Text(word)
			d.Text(Text{At: Point{20 + word.Width() + 0.8, 20}, String: "mm", Size: 9})
		}, ""},
		{"two turned figures, one above the other", func(d *Drawing) {
			d.Text(Text{At: Point{20, 40}, String: "11", Size: 9, Turned: true})
			d.Text(Text{At: Point{20, 40 - Width("11", Regular, 9) - 0.3}, String: "3", Size: 9, Turned: true})
		}, "read as one"},
		{"two texts at one place", func(d *Drawing) { d.Text(word); d.Text(word) }, "lies over"},
	} {
		d := Drawing{Width: 60, Height: 60}
		c.draw(&d)
		err := CheckLegible(d)
		if said := ""; err != nil {
			if said = err.Error(); c.want == "" || !strings.Contains(said, c.want) {
				t.Errorf("%s: %s, want %q", c.reason, said, c.want)
			}
		} else if c.want != "" {
			t.Errorf("%s: not found, want %q", c.reason, c.want)
		}
	}
}
