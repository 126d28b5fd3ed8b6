package checks

import (
	"testing"

	"sawbill/stock"
)

// 900 x 720 x 300 of 18 mm panels, butted, top and bottom between the sides, no
// back, in mm2:
//
//	side, each    outer face 720 x 300 outside, inner face less where top and bottom
//	              stand 684 x 300 inside; front edge 720 x 18 outside, rear inside;
//	              upper end 18 x 300 outside, lower inside
//	top, bottom   864 x 300: upper face wear, lower inside; front edge 864 x 18
//	              outside, rear inside; the ends touch the sides
//	outside       2 x (216000 + 12960 + 5400) + 2 x 15552       =  499824
//	inside        2 x (205200 + 12960 + 5400) + 2 x (259200 + 15552) = 996624
//	wear          2 x 259200                                    =  518400
//
// Two coats, one and three take 999648 + 996624 + 1555200 = 3551472 mm2 of
// coverage: at 10 m2 a liter 0.355, that is 0.4.
func TestSurfacesOfAPlainCase(t *testing.T) {
	c := derive(t, plain(), workshop(stock.Millimeters))
	got := c.TakeOff()
	wantAreas(t, got.Surfaces, 499824, 996624, 518400)
	if tenths := c.Finish.Tenths(got.Surfaces); tenths != 4 {
		t.Errorf("%d tenths of a liter", tenths)
	}
	d := plain()
	d.Finish = Coating{CoatsOutside: count(0), CoatsInside: count(0), CoatsWear: count(10), Coverage: count(1)}
	if c := derive(t, d, workshop(stock.Millimeters)); c.Finish.Tenths(got.Surfaces) != 52 { // 5.184
		t.Errorf("%+v: %d tenths", c.Finish, c.Finish.Tenths(got.Surfaces))
	}
}

// A dado takes the 6 mm of both panels at each corner out of sight: nothing of a
// loose shelf is hidden, but it shades the bottom no less, which is wear all the
// same. 861 x 300 x 18 between: two faces, wear and inside, front edge outside,
// rear edge and the ends, which do not touch, inside.
func TestALooseShelfIsFinishedAllRound(t *testing.T) {
	d := plain()
	d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	got := derive(t, d, workshop(stock.Millimeters)).TakeOff().Surfaces
	const face, edge, end = 861 * 300, 861 * 18, 300 * 18
	wantAreas(t, got, 499824+edge, 996624+face+edge+2*end, 518400+face)
}

// wantAreas compares in mm2.
func wantAreas(t *testing.T, got Surfaces, outside, inside, wear float64) {
	t.Helper()
	for _, a := range []struct {
		name string
		Area
		want float64
	}{{"outside", got.Outside, outside}, {"inside", got.Inside, inside}, {"wear", got.Wear, wear}} {
		if a.in(stock.Millimeter) != a.want {
			t.Errorf("%s: %f mm2, want %f", a.name, a.in(stock.Millimeter), a.want)
		}
	}
}

// Left and right are alike, in whatever order pieces are listed; and all that is
// counted is less than the faces of all pieces.
func TestSurfacesOfAMirroredCaseAreTheSame(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, d Design, c *derived) {
		got := surfaces(&c.Standing)
		mirrored := c.Standing
		mirrored.Solids = nil
		var faces Area
		for i := range c.Solids {
			s := c.Solids[len(c.Solids)-1-i]
			s.At[X] = -s.End()[X]
			mirrored.Solids = append(mirrored.Solids, s)
			for a := range s.Size {
				faces.add(2*s.Size[a], s.Size[(a+1)%3])
			}
		}
		want := surfaces(&mirrored)
		mm := stock.Millimeter
		wantAreas(t, got, want.Outside.in(mm), want.Inside.in(mm), want.Wear.in(mm))
		if sum := got.Outside.in(mm) + got.Inside.in(mm) + got.Wear.in(mm); sum <= 0 || sum >= faces.in(mm) {
			t.Errorf("%f mm2 of %f are finished", sum, faces.in(mm))
		}
	})
}

func BenchmarkSurfacesOfAChest(b *testing.B) {
	d := plain()
	d.OutsideHeight, d.OutsideDepth = metric("1500"), metric("500")
	made(&d, "inset", DrawerBox{Count: count(8)})
	d.Bays = append(d.Bays, d.Bays[0], d.Bays[0])
	c := derive(b, d, workshop(stock.Millimeters))
	for b.Loop() {
		surfaces(&c.Standing)
	}
}
