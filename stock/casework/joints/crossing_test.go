package joints

import (
	"math/rand/v2"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// drilled is a hole of a diameter about the middle of its end at 0, along an axis.
func drilled(along solid.Axis, diameter, from, deep stock.Length, u, v stock.Length) hole {
	h := hole{along: along, round: true}
	a, b := (along+1)%3, (along+2)%3
	h.box.Size[a], h.box.Size[b] = diameter, diameter
	h.box.At[a], h.box.At[b] = u-diameter/2, v-diameter/2
	h.box.At[along], h.box.Size[along] = from, deep
	return h
}

// Two holes of 100 cross. Along solid.X one ends at 0, along solid.Y the other ends at 0. With the one's
// axis 30 beyond the end of the other and the other's 40, they are sqrt(50^2 - 30^2) = 40
// and sqrt(50^2 - 40^2) = 30 wide there: at 69 above each other they meet, at 70 they
// touch, though boxes around them would meet up to 100.
func TestCylindersMeetByTheirShape(t *testing.T) {
	for apart, want := range map[stock.Length]bool{0: true, 69: true, 70: false, 71: false, 99: false} {
		a := drilled(solid.X, 100, -1000, 1000, 30, 0)     // along solid.X, its axis 30 beyond the end along solid.Y
		b := drilled(solid.Y, 100, -1000, 1000, apart, 40) // along solid.Y, its axis 40 beyond the end along solid.X
		if a.meets(b) != want || b.meets(a) != want {
			t.Errorf("%d apart: want %t", apart, want)
		}
	}
	for apart, want := range map[stock.Length]bool{0: true, 99: true, 100: false} { // 60 and 80 across
		a, b := drilled(solid.Z, 100, 0, 10, 0, 0), drilled(solid.Z, 100, 9, 10, 3*apart/5, 4*apart/5)
		if a.meets(b) != want {
			t.Errorf("side by side, %d apart: want %t", apart, want)
		}
	}
}

// Whatever the shapes, holes meet if any point lies in both, and if they do then
// those grown by one have such a point.
func TestHolesMeetWherePointsDo(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 7))
	random := func() hole {
		n := func(low, high int) stock.Length { return stock.Length(low + rnd.IntN(high-low+1)) }
		h := drilled(solid.Axis(rnd.IntN(3)), 2*n(2, 4), n(-8, 2), n(3, 9), n(-6, 6), n(-6, 6))
		h.round = rnd.IntN(3) > 0
		return h
	}
	inside := func(h hole, p [3]float64, more float64) bool {
		square := 0.0
		for a := solid.X; a <= solid.Z; a++ {
			half := float64(h.box.Size[a]) / 2
			off := p[a] - float64(h.box.At[a]) - half
			if off < 0 {
				off = -off
			}
			if off >= half+more {
				return false
			}
			if a != h.along {
				square += off * off
			}
		}
		radius := float64(h.box.Size[(h.along+1)%3])/2 + more
		return !h.round || square < radius*radius
	}
	met := 0
	for range 400 {
		a, b := random(), random()
		points, near := false, false
		low, high := func(axis solid.Axis) float64 { return float64(max(a.box.At[axis], b.box.At[axis]) - 1) },
			func(axis solid.Axis) float64 { return float64(min(a.box.End()[axis], b.box.End()[axis]) + 1) }
		for x := low(solid.X); x <= high(solid.X); x += 0.5 {
			for y := low(solid.Y); y <= high(solid.Y); y += 0.5 {
				for z := low(solid.Z); z <= high(solid.Z); z += 0.5 {
					p := [3]float64{x, y, z}
					points = points || inside(a, p, 0) && inside(b, p, 0)
					near = near || inside(a, p, 1) && inside(b, p, 1)
				}
			}
		}
		got := a.meets(b)
		if points && !got || got && !near {
			t.Errorf("%+v and %+v: meets = %t, points = %t, near = %t", a, b, got, points, near)
		}
		if got {
			met++
		}
	}
	if met < 50 || met > 350 {
		t.Errorf("%d of 400 meet", met)
	}
}
