package joints

import (
	"fmt"
	"math/big"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// hole is bored or cut for one peg into one piece: a cylinder for a dowel, a box for a loose tenon.
//
//	 _______
//	|_______|  box, along the axis of boring
type hole struct {
	box   solid.Solid // its room; of a cylinder the least box around it
	along solid.Axis
	round bool
	mate  solid.Role // of the other piece
	inEnd bool
	fault design.Place
}

// holes lists those of every joint by the solid that they are in.
func (m *Marker) holes(joints []Pegged) map[int][]hole {
	in := make(map[int][]hole)
	for _, p := range joints {
		end, into := m.Solids[p.end], m.Solids[p.into]
		deep, face := p.depths(end, into)
		for _, c := range p.Centers {
			h := hole{along: end.Along, round: p.round, fault: p.lengthAt}
			h.box.Size[end.Across], h.box.Size[end.Through] = p.across, p.Thick
			h.box.At[end.Across] = c - p.across/2
			h.box.At[end.Through] = solid.Middle(p.room, end.Through) - p.Thick/2
			plane := p.room.At[end.Along]
			high := plane > end.At[end.Along] // the joint is at the upper end
			in[p.end] = append(in[p.end], h.bored(plane, deep, !high, into.Role, true))
			in[p.into] = append(in[p.into], h.bored(plane, face, high, end.Role, false))
		}
	}
	return in
}

// bored is the hole from the plane of the joint, so deep, to where the axis points or
// against it.
func (h hole) bored(plane, deep stock.Length, forward bool, mate solid.Role, inEnd bool) hole {
	if !forward {
		plane -= deep
	}
	h.box.At[h.along], h.box.Size[h.along] = plane, deep
	h.mate, h.inEnd = mate, inEnd
	return h
}

// keepApart refuses holes that meet inside a piece, or open into what is cut out of
// it for another. It reports one meeting for each two kinds of mates.
func (m *Marker) keepApart(joints []Pegged) {
	in := m.holes(joints)
	told := make(map[[3]solid.Role]bool)
	tell := func(piece solid.Solid, a, b hole, cause string) {
		mates := [3]solid.Role{piece.Role, min(a.mate, b.mate), max(a.mate, b.mate)}
		if told[mates] {
			return
		}
		told[mates] = true
		m.In.Fault(a.fault, cause, fmt.Sprintf("move the %s and the %s %s farther apart, or use another joint for one of them",
			a.mate, b.mate, m.In.Print(a.tooClose(b))))
	}
	for i, s := range m.Solids {
		for n, a := range in[i] {
			for _, b := range in[i][:n] {
				if a.meets(b) {
					tell(s, a, b, fmt.Sprintf("holes meet inside a %s: %s for a %s, %s for a %s", s.Role, m.boredInto(a), a.mate, m.boredInto(b), b.mate))
				}
			}
			for k, other := range m.Solids {
				cut, _ := solid.Shared(s, other)
				if k == i || min(cut.Size[solid.X], cut.Size[solid.Y], cut.Size[solid.Z]) == 0 {
					continue
				}
				if housing := (hole{box: cut, mate: other.Role}); a.meets(housing) {
					tell(s, a, housing, fmt.Sprintf("a hole %s of a %s, for a %s, opens into what is cut there for a %s", m.boredInto(a), s.Role, a.mate, other.Role))
				}
			}
		}
	}
}

// boredInto says how far a hole goes in, and where: "28 mm into the end".
func (m *Marker) boredInto(h hole) string {
	where := "face"
	if h.inEnd {
		where = "end"
	}
	return m.In.Print(h.box.Size[h.along]) + " into the " + where
}

// tooClose is by how much two holes that meet reach past each other along that in
// the end of the piece.
func (h hole) tooClose(other hole) stock.Length {
	along := h.along
	if other.inEnd {
		along = other.along
	}
	return min(h.box.End()[along], other.box.End()[along]) - max(h.box.At[along], other.box.At[along])
}

// meets reports whether two holes share room, by their true shapes.
func (h hole) meets(other hole) bool {
	if !h.box.Overlaps(other.box) {
		return false
	}
	switch {
	case !h.round && !other.round:
		return true
	case !h.round:
		return other.roundMeetsBox(h.box)
	case !other.round:
		return h.roundMeetsBox(other.box)
	case h.along == other.along: // so do circles
		u, v := (h.along+1)%3, (h.along+2)%3
		apart := h.box.Size[u] + other.box.Size[u]
		du, dv := twiceApart(h.box, other.box, u), twiceApart(h.box, other.box, v)
		return du*du+dv*dv < apart*apart
	}
	return h.crosses(other)
}

// roundMeetsBox: a cylinder meets a box that its own box meets if the box comes
// nearer to its axis than the radius. All is in halves of a unit, for centers may lie
// on those.
func (h hole) roundMeetsBox(box solid.Solid) bool {
	var square stock.Length
	for _, a := range []solid.Axis{(h.along + 1) % 3, (h.along + 2) % 3} {
		d := twiceFrom(h.box, box, a)
		square += d * d
	}
	diameter := h.box.Size[(h.along+1)%3]
	return square < diameter*diameter
}

// crosses reports whether two cylinders at right angles meet. On a level at c along
// the third axis each is a strip, so wide as its circle is there, and they meet if
// each strip reaches the end of the other: with d how far the one's axis lies beyond
// the other's end, if the level is nearer to its own axis than sqrt(r^2 - d^2). So
// there is a level for both if their axes are nearer than the sum of both roots.
func (h hole) crosses(other hole) bool {
	reach := func(of, by hole) stock.Length {
		d := twiceFrom(of.box, by.box, by.along)
		diameter := of.box.Size[by.along]
		return diameter*diameter - d*d
	}
	p, q := reach(h, other), reach(other, h)
	if p <= 0 || q <= 0 {
		return false
	}
	apart := twiceApart(h.box, other.box, solid.X+solid.Y+solid.Z-h.along-other.along)
	return lessThanRoots(apart, p, q)
}

// lessThanRoots reports whether a < sqrt(p) + sqrt(q), exactly: whether a^2 - p - q is
// negative, or its square less than 4 p q.
func lessThanRoots(a, p, q stock.Length) bool {
	rest := a*a - p - q
	if rest < 0 {
		return true
	}
	square := new(big.Int).Mul(big.NewInt(int64(rest)), big.NewInt(int64(rest)))
	product := new(big.Int).Mul(big.NewInt(int64(p)), big.NewInt(int64(q)))
	return square.Cmp(product.Lsh(product, 2)) < 0
}

// twiceApart is twice the distance of the middles of two boxes along an axis.
func twiceApart(a, b solid.Solid, along solid.Axis) stock.Length {
	return solid.Distance(2*a.At[along]+a.Size[along], 2*b.At[along]+b.Size[along])
}

// twiceFrom is twice how far the middle of a lies outside b along an axis, 0 if it
// lies within.
func twiceFrom(a, b solid.Solid, along solid.Axis) stock.Length {
	middle := 2*a.At[along] + a.Size[along]
	return max(0, 2*b.At[along]-middle, middle-2*b.End()[along])
}
