package stock

import (
	"fmt"
	"slices"
	"testing"
)

func TestMillingListsSettingsInOrder(t *testing.T) {
	const mm = Millimeter
	part := func(a Allowance) Part {
		return Part{Length: 400 * mm, Width: 60 * mm, Thickness: 20 * mm, Allowance: a}
	}
	resawn := func(p Part) Part {
		p.Resaw = true
		return p
	}
	all := Allowance{Edge: 2 * mm, Edges: 2, Face: mm, Faces: 2, End: 10 * mm, Ends: 2}
	one := Allowance{Edge: 2 * mm, Edges: 1, Face: mm, Faces: 1, End: 10 * mm, Ends: 1}
	saw := Saw{Kerf: 3 * mm, ResawKerf: 2 * mm}
	for _, test := range []struct {
		reason       string
		part         Part
		gang, layers int
		least, from  Length
		want         []string
	}{
		{"ripped over-wide, an edge trued, turned, the other trued", part(all), 1, 1, 0, 22 * mm, []string{
			"plane 21 off 1", "plane 20 off 1", "true edge 62 off 2", "true edge 60 off 2", "square end 410 off 10", "cut to length 400 off 10"}},
		{"one of each", part(one), 1, 1, 0, 21 * mm, []string{
			"plane 20 off 1", "true edge 60 off 2", "cut to length 400 off 10"}},
		{"nothing is allowed for", part(Allowance{Edges: 2, Faces: 2, Ends: 2}), 1, 1, 0, 20 * mm, nil},
		{"a thicker board loses as much on either face", part(all), 1, 1, 0, 27 * mm, []string{
			"plane 23.5 off 3.5", "plane 20 off 3.5", "true edge 62 off 2", "true edge 60 off 2", "square end 410 off 10", "cut to length 400 off 10"}},
		{"a thicker board, no face counted", part(Allowance{}), 1, 1, 0, 27 * mm, []string{"plane 20 off 7"}},
		{"a gang is parted last", part(one), 3, 1, 0, 21 * mm, []string{
			"plane 20 off 1", "true edge 60 off 2", "square end 1206 off 10", "cut to length 400 off 6 x 3"}},
		{"longer than need be", part(one), 1, 1, 500 * mm, 21 * mm, []string{
			"plane 20 off 1", "true edge 60 off 2", "cut to length 400 off 100"}},
		{"resawn on its true edge", part(all), 1, 2, 0, 50 * mm, []string{
			"plane 46 off 4", "true edge 62 off 2", "true edge 60 off 2", "resaw 22 off 2 x 2", "plane 21 off 1", "plane 20 off 1",
			"square end 410 off 10", "cut to length 400 off 10"}},
		{"resawn off, and the rest is kept: 60 - 1 - 2 x 22 - 2 x 2", resawn(part(all)), 1, 2, 0, 60 * mm, []string{
			"plane 59 off 1", "true edge 62 off 2", "true edge 60 off 2", "resaw 22 off 15 x 2, 11 kept", "plane 21 off 1", "plane 20 off 1",
			"square end 410 off 10", "cut to length 400 off 10"}},
		{"alone, no face counted", resawn(part(Allowance{})), 1, 1, 0, 28 * mm, []string{"resaw 20 off 8, 6 kept"}},
		{"what would be left is too thin", resawn(part(Allowance{})), 1, 1, 0, 28*mm - 1, []string{"plane 20 off 7.999975"}},
		{"not to be resawn", part(Allowance{}), 1, 1, 0, 60 * mm, []string{"plane 20 off 40"}},
		{"mitered, from a gang", part(Allowance{Miter: 2 * mm, Miters: 2}), 2, 1, 0, 20 * mm, []string{
			"cut to length 404 off 3 x 2", "miter 402 off 2", "miter 400 off 2"}},
	} {
		var got []string
		for _, m := range test.part.inOne(Board, test.gang, test.layers, saw, test.least).Milling(test.from) {
			line := fmt.Sprintf("%v %s off %s", m.Operation, m.Setting.Decimal(), m.Off.Decimal())
			if m.Pieces > 1 {
				line += fmt.Sprintf(" x %d", m.Pieces)
			}
			if m.Rest > 0 {
				line += fmt.Sprintf(", %s kept", m.Rest.Decimal())
			}
			got = append(got, line)
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.reason, got, test.want)
		}
	}
}
