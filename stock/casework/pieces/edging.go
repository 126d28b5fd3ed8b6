package pieces

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// edgingPieces put strips on the panels that are there, in the order of the
// design.
func (r *Maker) edgingPieces() {
	panels := len(r.Pieces)
	r.unedged = r.solids()
	for _, e := range r.Built.Edgings {
		found := false
		for n := range panels {
			role := r.Pieces[n].Role
			if !slices.Contains(e.Roles(), role) || e.On == "carcass" && role == "top" && r.Built.EdgingOn("top") {
				continue
			}
			found = true
			switch e.On {
			case "top":
				r.trim(n, e)
			case "fronts":
				r.edgeAllRound(n, e)
			default:
				r.edgeFront(n, e)
			}
		}
		if !found {
			r.In.Fault(e.At, fmt.Sprintf("there is no panel for it: %s", e.On), "leave the edging out")
		}
	}
	r.joinStrips()
}

// joinStrips makes one part of strips out of boards that are alike on different panels,
// so that they are resawn together: "top and bottom edging". Each keeps its role where
// it stands.
func (r *Maker) joinStrips() {
	var all []Piece
	roles := make(map[int][]solid.Role) // of those joined, by their index in all
	for _, p := range r.Pieces {
		n := slices.IndexFunc(all, func(q Piece) bool { return p.strip && q.strip && p.Role.Strip() && q.Role.Strip() && p.likeSize(q) })
		if n < 0 {
			all = append(all, p)
			continue
		}
		q := &all[n]
		if roles[n] == nil {
			roles[n] = []solid.Role{q.Role}
			q.Stands = called(q.Stands, q.Role)
		}
		roles[n] = append(roles[n], p.Role)
		q.Stands = append(q.Stands, called(p.Stands, p.Role)...)
		q.Count += p.Count
		q.places = append(q.places, p.places...)
	}
	for n, joined := range roles {
		all[n].Role = oneName(joined)
	}
	r.Pieces = all
}

// oneName takes words that end alike together: "top and bottom edging".
func oneName(roles []solid.Role) solid.Role {
	first := string(roles[0])
	last := first[strings.LastIndex(first, " "):]
	said := make([]string, len(roles))
	for i, role := range roles {
		said[i] = string(role)
		if i < len(roles)-1 && strings.HasSuffix(string(roles[i+1]), last) { // else "top trim and bottom edging"
			said[i] = strings.TrimSuffix(said[i], last)
		}
	}
	return solid.Role(strings.Join(said, " and "))
}

// edgeFront puts a strip on the front edge of panel n. Where the panel is housed
// in another the strip stops before that one, which may have a strip of its own:
//
//	strip      length = the panel's - its joints
//	taken off  panel's width - strip
func (r *Maker) edgeFront(n int, e construction.Edging) {
	p := r.Pieces[n]
	way := solid.Way{p.way[0], p.way[2], solid.Y}
	at := slices.Clone(p.Stands)
	if e.Added {
		move(at, solid.Y, -e.Thickness)
	} else {
		if !r.takeOff(n, 0, 1, e) {
			return
		}
		move(r.Pieces[n].Stands, solid.Y, e.Thickness)
	}
	joint, near, far := r.housedBy(p.Role)
	move(at, p.way[0], stock.Length(near)*joint.Depth)
	r.addStrips(e, Piece{Role: p.Role + " edging", places: p.places, Count: p.Count,
		Length: sums.Plus(p.Length, joint.Term(-near-far)),
		Width:  sums.Of(p.Panel.Thickness, string(p.Role)), way: way, Stands: at})
}

// housedBy is the joint of a panel of that role, and how many there are at its
// lower or left end and at the other.
func (r *Maker) housedBy(role solid.Role) (j joints.Connection, near, far int) {
	b, at := r.Built, func(end bool) int {
		if end {
			return 1
		}
		return 0
	}
	switch role {
	case "side":
		return b.Corner, at(b.BottomUnder), at(b.TopOver)
	case "top":
		return b.Corner, at(!b.TopOver), at(!b.TopOver)
	case "bottom":
		return b.Corner, at(!b.BottomUnder), at(!b.BottomUnder)
	case "partition":
		return b.Partition.Joint, 1, 1
	case "divider":
		return b.Divider.Joint, 1, 1
	}
	return b.Shelf.Joint, 1, 1
}

// edgeAllRound takes four strips off front n:
//
//	front      length and width - 2 strips
//	strip      length = the front's
//	end strip  length = the front's width, butted - 2 strips
func (r *Maker) edgeAllRound(n int, e construction.Edging) {
	p := r.Pieces[n]
	t := e.Thickness
	along, across := p.way[0], p.way[1]
	low, near := slices.Clone(p.Stands), slices.Clone(p.Stands)
	high, far := slices.Clone(p.Stands), slices.Clone(p.Stands)
	move(high, across, p.Width.Total()-t)
	move(far, along, p.Length.Total()-t)
	ends, miters := p.Width, 2
	if !e.Miter {
		ends, miters = sums.Plus(ends, stock.Term{Times: -2, Value: t, Label: "edging"}), 0
		move(near, across, t)
		move(far, across, t)
	}
	if !r.takeOff(n, 2, 2, e) {
		return
	}
	move(r.Pieces[n].Stands, along, t)
	move(r.Pieces[n].Stands, across, t)
	strip := Piece{places: p.places, Count: 2 * p.Count, Width: sums.Of(p.Panel.Thickness, string(p.Role)), miters: miters}
	strip.Role, strip.Length, strip.way, strip.Stands = p.Role+" edging", p.Length, solid.Way{along, solid.Y, across}, append(low, high...)
	r.addStrips(e, strip)
	strip.Role, strip.Length, strip.way, strip.Stands = p.Role+" end edging", ends, solid.Way{across, solid.Y, along}, append(near, far...)
	r.addStrips(e, strip)
}

// trim puts strips on the front and both side edges of top n:
//
//	taken off  top's length - 2 strips, width - strip
//	front      length = the top's; added + 2 strips
//	side       length = the top's width; added and mitered + strip, butted and
//	           taken off - strip
func (r *Maker) trim(n int, e construction.Edging) {
	p := r.Pieces[n]
	t := e.Thickness
	front, side := p.Length, p.Width
	from := p.Stands[0].At
	right := from[solid.X] + front.Total()
	if e.Added {
		front = sums.Plus(front, stock.Term{Times: 2, Value: t, Label: "trim"})
		from[solid.X], from[solid.Y] = from[solid.X]-t, from[solid.Y]-t
		right += t
	} else {
		if !r.takeOff(n, 2, 1, e) {
			return
		}
		move(r.Pieces[n].Stands, solid.X, t)
		move(r.Pieces[n].Stands, solid.Y, t)
	}
	sideFrom, miters := from[solid.Y], 1
	switch {
	case e.Miter && e.Added:
		side = sums.Plus(side, stock.Term{Times: 1, Value: t, Label: "trim"})
	case !e.Miter:
		sideFrom, miters = from[solid.Y]+t, 0
		if !e.Added {
			side = sums.Plus(side, stock.Term{Times: -1, Value: t, Label: "trim"})
		}
	}
	thick := sums.Of(p.Panel.Thickness, string(p.Role))
	r.addStrips(e, Piece{Role: "top trim", Count: 1, Length: front, Width: thick, miters: 2 * miters, way: solid.Across, Stands: solid.Stands(from)})
	r.addStrips(e, Piece{Role: "top side trim", Count: 2, Length: side, Width: thick, miters: miters, way: solid.Endwise,
		Stands: solid.Stands(solid.Point{from[solid.X], sideFrom, from[solid.Z]}, solid.Point{right - t, sideFrom, from[solid.Z]})})
}

// addStrips takes strips into the case. Those that are added to panels must find
// room before them.
func (r *Maker) addStrips(e construction.Edging, p Piece) {
	p.dryFit, p.strip, p.Panel = true, r.In.Lumber(e.Panel), e.Panel
	if e.Added && e.On != "fronts" { // they have their own fault
		for _, s := range p.solids() {
			if i := slices.IndexFunc(r.unedged, s.Overlaps); i >= 0 {
				r.In.Fault(e.FitAt, "strips added before the panels would be in the way of a "+string(r.unedged[i].Role), `set fit = "taken-off"`)
				return
			}
		}
	}
	r.add(p)
}

// takeOff makes panel n smaller by so many strips in length and in width, and
// reports whether something is left of it.
func (r *Maker) takeOff(n, length, width int, e construction.Edging) bool {
	p := &r.Pieces[n]
	strips := func(times int) stock.Term { return stock.Term{Times: -times, Value: e.Thickness, Label: "edging"} }
	p.Length, p.Width = sums.Plus(p.Length, strips(length)), sums.Plus(p.Width, strips(width))
	if p.Length.Total() > 0 && p.Width.Total() > 0 {
		return true
	}
	r.In.Fault(e.At, fmt.Sprintf("strips %s thick leave nothing of a %s", r.In.Print(e.Thickness), p.Role), "make them thinner")
	return false
}

func move(all []solid.Solid, along solid.Axis, by stock.Length) {
	for i := range all {
		all[i].At[along] += by
	}
}

// called gives the solids of a part that has several roles theirs.
func called(stands []solid.Solid, role solid.Role) []solid.Solid {
	all := slices.Clone(stands)
	for i := range all {
		all[i].Role = role
	}
	return all
}
