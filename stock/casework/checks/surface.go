package checks

import (
	"math/big"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// Surfaces are the areas of a case that can be finished. Faces that touch another piece, in a joint
// or glued on it, do not count.
type Surfaces struct {
	// Wear is the upper face of all that lies level: tops, shelves, the bottoms of
	// case and drawers.
	Wear Area
	// Outside can be seen straight on from in front, from the sides or from above, and is not wear.
	Outside Area
	// Inside is everything else, the rear and the underside of the case too.
	Inside Area
}

// Area is an exact area in squares of the unit of stock.Length. The zero Area is
// nothing.
type Area struct{ squares *big.Int }

// add adds a rectangle.
func (a *Area) add(length, width stock.Length) {
	if a.squares == nil {
		a.squares = new(big.Int)
	}
	a.squares.Add(a.squares, new(big.Int).Mul(big.NewInt(int64(length)), big.NewInt(int64(width))))
}

// in is how many squares of side make a.
func (a Area) in(side stock.Length) float64 {
	if a.squares == nil {
		return 0
	}
	square := big.NewInt(int64(side))
	many, _ := new(big.Rat).SetFrac(a.squares, square.Mul(square, square)).Float64()
	return many
}

// SquareMeters is a in square meters.
func (a Area) SquareMeters() float64 { return a.in(1000 * stock.Millimeter) }

// PrintUnit writes "1.23 m2", or "13.2 ft2" in a job in inches.
func (a Area) PrintUnit(u stock.Units) string {
	if u == stock.Inches {
		return fixed(a.in(stock.Foot), 1) + " ft2"
	}
	return fixed(a.SquareMeters(), 2) + " m2"
}

// side is one of the six faces of a solid.
type side struct {
	axis   solid.Axis
	beyond bool // the one at End, not at At
}

// seen reports whether a side looks where somebody may stand.
func (s side) seen() bool {
	switch s.axis {
	case solid.X:
		return true
	case solid.Y:
		return !s.beyond
	}
	return s.beyond
}

// surfaces measures the surfaces of all pieces that are made.
func surfaces(c *pieces.Standing) Surfaces {
	var all Surfaces
	for i, s := range c.Solids {
		if s.Part < 0 {
			continue
		}
		for axis := solid.X; axis <= solid.Z; axis++ {
			for _, beyond := range []bool{false, true} {
				measure(c, &all, i, side{axis, beyond})
			}
		}
	}
	return all
}

// Unseen reports whether no face of a part can be seen from in front, from the sides or
// from above when all is closed; its edges may.
func Unseen(c *pieces.Standing, part int) bool {
	var all Surfaces
	for i, s := range c.Solids {
		if s.Part != part {
			continue
		}
		for _, beyond := range []bool{false, true} {
			if of := (side{s.Through, beyond}); of.seen() {
				measure(c, &all, i, of)
			}
		}
	}
	return all.Outside.none() && all.Wear.none()
}

func (a Area) none() bool { return a.squares == nil || a.squares.Sign() == 0 }

// Carries reports whether a part is to carry loads and may sag.
func Carries(c *pieces.Standing, part int) bool {
	return slices.ContainsFunc(c.Solids, func(s solid.Solid) bool { return s.Part == part && s.Role.Carries() })
}

// shade is the part of a face that another solid covers: it touches it there, or stands before it.
type shade struct {
	from, to [2]stock.Length
	touches  bool
}

// measure adds one face of solid i. The face is divided where shades begin and
// end, first one way, then in each strip the other, so that every cell is all
// in one class.
func measure(c *pieces.Standing, into *Surfaces, i int, of side) {
	s := c.Solids[i]
	u, v := (of.axis+1)%3, (of.axis+2)%3
	from, to := s.At, s.End()
	var shades []shade
	cuts := []stock.Length{from[u], to[u]}
	for k := range c.Solids {
		other := &c.Solids[k] // not a copy: these are many
		far := other.End()
		if k == i || far[u] <= from[u] || other.At[u] >= to[u] || far[v] <= from[v] || other.At[v] >= to[v] {
			continue
		}
		d, before, flush := shade{}, false, false
		if of.beyond {
			before = far[of.axis] > to[of.axis]
			d.touches = other.At[of.axis] <= to[of.axis]
			flush = far[of.axis] == to[of.axis] && other.At[of.axis] < to[of.axis]
		} else {
			before = other.At[of.axis] < from[of.axis]
			d.touches = far[of.axis] >= from[of.axis]
			flush = other.At[of.axis] == from[of.axis] && far[of.axis] > from[of.axis]
		}
		if flush && keepsFace(*other, k, s, i) {
			before, d.touches = true, true
		}
		if !before {
			continue
		}
		d.from = [2]stock.Length{max(other.At[u], from[u]), max(other.At[v], from[v])}
		d.to = [2]stock.Length{min(far[u], to[u]), min(far[v], to[v])}
		shades = append(shades, d)
		cuts = append(cuts, d.from[0], d.to[0])
	}
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	for n := range len(cuts) - 1 {
		into.strip(shades, of, s.Through == solid.Z, [2]stock.Length{cuts[n], cuts[n+1]}, [2]stock.Length{from[v], to[v]})
	}
}

// keepsFace reports whether a shared face belongs to s where the joint of two pieces ends flush. A
// level piece has it, else the first.
func keepsFace(s solid.Solid, i int, other solid.Solid, k int) bool {
	if level, otherLevel := s.Through == solid.Z, other.Through == solid.Z; level != otherLevel {
		return level
	}
	return i < k
}

// strip adds a strip of a face that shades cover over its whole width or not at
// all.
func (all *Surfaces) strip(shades []shade, of side, level bool, wide, long [2]stock.Length) {
	var within []shade
	cuts := []stock.Length{long[0], long[1]}
	for _, d := range shades {
		if d.from[0] <= wide[0] && d.to[0] >= wide[1] {
			within = append(within, d)
			cuts = append(cuts, d.from[1], d.to[1])
		}
	}
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	for n := range len(cuts) - 1 {
		touched, shaded := false, false
		for _, d := range within {
			if d.from[1] <= cuts[n] && d.to[1] >= cuts[n+1] {
				shaded, touched = true, touched || d.touches
			}
		}
		class := &all.Inside
		switch {
		case touched:
			continue
		case level && of == side{solid.Z, true}:
			class = &all.Wear
		case !shaded && of.seen():
			class = &all.Outside
		}
		class.add(wide[1]-wide[0], cuts[n+1]-cuts[n])
	}
}
