package casework

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
)

// edging is one kind of strips.
type edging struct {
	panel
	at    at
	fitAt at
	on    string
	added bool
	mitre bool
}

// roles are those of the panels that the edging is on.
func (e edging) roles() []Role {
	switch e.on {
	case "carcass":
		return []Role{"side", "top", "bottom"}
	case "shelves":
		return []Role{"shelf"}
	case "fronts":
		return []Role{"door", "false front"}
	}
	return []Role{Role(strings.TrimSuffix(e.on, "s"))}
}

// buildEdgings reads all edgings. Whether they fit shows when the sizes of the
// panels are known.
func (r *reckoner) buildEdgings() {
	for i, d := range r.design.Edgings {
		a := r.place.nth(d.Line, "edging", i+1)
		if r.doubtful(a.path + ".on") {
			continue
		}
		e := edging{
			panel: r.panel(a, "", d.Material, d.Thickness, nil),
			at:    a.under(d.On.Line, "on"), fitAt: a.under(d.Fit.Line, "fit"), on: or(d.On, "carcass"),
			added: d.Fit.Value == "added", mitre: d.Corner.Value == "mitre",
		}
		if r.edgingOn(e.on) {
			r.fault(e.at, fmt.Sprintf("two edgings are on the %s", e.on), "leave one of the two out")
		}
		r.edgingFits(a, d, e)
		r.made.edgings = append(r.made.edgings, e)
	}
}

func (r *reckoner) edgingOn(on string) bool {
	return slices.ContainsFunc(r.made.edgings, func(e edging) bool { return e.on == on })
}

// edgingPieces put strips on the panels that are there, in the order of the
// design.
func (r *reckoner) edgingPieces() {
	panels := len(r.pieces)
	r.unedged = r.solids()
	for _, e := range r.made.edgings {
		found := false
		for n := range panels {
			role := r.pieces[n].role
			if !slices.Contains(e.roles(), role) || e.on == "carcass" && role == "top" && r.edgingOn("top") {
				continue
			}
			found = true
			switch e.on {
			case "top":
				r.trim(n, e)
			case "fronts":
				r.edgeAllRound(n, e)
			default:
				r.edgeFront(n, e)
			}
		}
		if !found {
			r.fault(e.at, fmt.Sprintf("there is no panel for it: %s", e.on), "leave the edging out")
		}
	}
	r.joinStrips()
}

// joinStrips makes one part of strips out of boards that are alike on different panels,
// so that they are resawn together: "top and bottom edging". Each keeps its role where
// it stands.
func (r *reckoner) joinStrips() {
	var all []piece
	roles := make(map[int][]Role) // of those joined, by their index in all
	for _, p := range r.pieces {
		n := slices.IndexFunc(all, func(q piece) bool { return p.strip && q.strip && p.role.Strip() && q.role.Strip() && p.likeSize(q) })
		if n < 0 {
			all = append(all, p)
			continue
		}
		q := &all[n]
		if roles[n] == nil {
			roles[n] = []Role{q.role}
			q.stands = called(q.stands, q.role)
		}
		roles[n] = append(roles[n], p.role)
		q.stands = append(q.stands, called(p.stands, p.role)...)
		q.count += p.count
		q.places = append(q.places, p.places...)
	}
	for n, joined := range roles {
		all[n].role = oneName(joined)
	}
	r.pieces = all
}

// called gives the solids of a part that has several roles theirs.
func called(stands []Solid, role Role) []Solid {
	all := slices.Clone(stands)
	for i := range all {
		all[i].Role = role
	}
	return all
}

// oneName takes words that end alike together: "top and bottom edging".
func oneName(roles []Role) Role {
	first := string(roles[0])
	last := first[strings.LastIndex(first, " "):]
	said := make([]string, len(roles))
	for i, role := range roles {
		said[i] = string(role)
		if i < len(roles)-1 && strings.HasSuffix(string(roles[i+1]), last) { // else "top trim and bottom edging"
			said[i] = strings.TrimSuffix(said[i], last)
		}
	}
	return Role(strings.Join(said, " and "))
}

// edgingFits refuses strips that have no room, or no sense, whatever the sizes.
func (r *reckoner) edgingFits(a at, d Edging, e edging) {
	switch {
	case r.made.frame != nil && e.on != "shelves" && e.on != "fronts":
		r.fault(e.at, "the front edges of its panels lie behind the frame", `leave it out, or put it on "shelves" or "fronts"`)
	case e.added && e.on == "fronts":
		r.fault(e.fitAt, "strips added to a front would fill its gaps", `set fit = "taken-off"`)
	case e.on == "top" && !r.made.topOver && r.doubtful(r.place.path+".carcass.top"):
	case e.on == "top" && !r.made.topOver:
		r.fault(e.at, "a top between the sides shows its front edge alone", `set top = "over", or put the edging on the "carcass"`)
	case e.on == "top" && !e.added && r.made.corner.depth > 0:
		var uncut []string
		for _, j := range CarcassCorner.joints() {
			if j.Reach(CarcassCorner) == Between {
				uncut = append(uncut, j.Name())
			}
		}
		r.fault(e.at, fmt.Sprintf("the sides rise %s into the top, where its strips would be", r.print(r.made.corner.depth)),
			`set the carcass's joint = `+oneOf(uncut)+`, or fit = "added"`)
	case d.Corner.Set && e.on != "top" && e.on != "fronts":
		r.fault(a.under(d.Corner.Line, "corner"), fmt.Sprintf("strips on the %s meet at no corner", e.on), "leave it out")
	}
}

// edgeFront puts a strip on the front edge of panel n. Where the panel is housed
// in another the strip stops before that one, which may have a strip of its own:
//
//	strip      length = the panel's - its joints
//	taken off  panel's width - strip
func (r *reckoner) edgeFront(n int, e edging) {
	p := r.pieces[n]
	way := way{p.way[0], p.way[2], Y}
	at := slices.Clone(p.stands)
	if e.added {
		move(at, Y, -e.thickness)
	} else {
		if !r.takeOff(n, 0, 1, e) {
			return
		}
		move(r.pieces[n].stands, Y, e.thickness)
	}
	joint, near, far := r.housedBy(p.role)
	move(at, p.way[0], stock.Length(near)*joint.depth)
	r.addStrips(e, piece{role: p.role + " edging", places: p.places, count: p.count,
		length: plus(p.length, joint.term(-near-far)),
		width:  given(p.panel.thickness, string(p.role)), way: way, stands: at})
}

// housedBy is the joint of a panel of that role, and how many there are at its
// lower or left end and at the other.
func (r *reckoner) housedBy(role Role) (j connection, near, far int) {
	b, at := r.made, func(end bool) int {
		if end {
			return 1
		}
		return 0
	}
	switch role {
	case "side":
		return b.corner, at(b.bottomUnder), at(b.topOver)
	case "top":
		return b.corner, at(!b.topOver), at(!b.topOver)
	case "bottom":
		return b.corner, at(!b.bottomUnder), at(!b.bottomUnder)
	case "partition":
		return b.partition.joint, 1, 1
	case "divider":
		return b.divider.joint, 1, 1
	}
	return b.shelf.joint, 1, 1
}

// edgeAllRound takes four strips off front n:
//
//	front      length and width - 2 strips
//	strip      length = the front's
//	end strip  length = the front's width, butted - 2 strips
func (r *reckoner) edgeAllRound(n int, e edging) {
	p := r.pieces[n]
	t := e.thickness
	along, across := p.way[0], p.way[1]
	low, near := slices.Clone(p.stands), slices.Clone(p.stands)
	high, far := slices.Clone(p.stands), slices.Clone(p.stands)
	move(high, across, p.width.Total()-t)
	move(far, along, p.length.Total()-t)
	ends, mitres := p.width, 2
	if !e.mitre {
		ends, mitres = plus(ends, stock.Term{Times: -2, Value: t, Label: "edging"}), 0
		move(near, across, t)
		move(far, across, t)
	}
	if !r.takeOff(n, 2, 2, e) {
		return
	}
	move(r.pieces[n].stands, along, t)
	move(r.pieces[n].stands, across, t)
	strip := piece{places: p.places, count: 2 * p.count, width: given(p.panel.thickness, string(p.role)), mitres: mitres}
	strip.role, strip.length, strip.way, strip.stands = p.role+" edging", p.length, way{along, Y, across}, append(low, high...)
	r.addStrips(e, strip)
	strip.role, strip.length, strip.way, strip.stands = p.role+" end edging", ends, way{across, Y, along}, append(near, far...)
	r.addStrips(e, strip)
}

// trim puts strips on the front and both side edges of top n:
//
//	taken off  top's length - 2 strips, width - strip
//	front      length = the top's; added + 2 strips
//	side       length = the top's width; added and mitred + strip, butted and
//	           taken off - strip
func (r *reckoner) trim(n int, e edging) {
	p := r.pieces[n]
	t := e.thickness
	front, side := p.length, p.width
	from := p.stands[0].At
	right := from[X] + front.Total()
	if e.added {
		front = plus(front, stock.Term{Times: 2, Value: t, Label: "trim"})
		from[X], from[Y] = from[X]-t, from[Y]-t
		right += t
	} else {
		if !r.takeOff(n, 2, 1, e) {
			return
		}
		move(r.pieces[n].stands, X, t)
		move(r.pieces[n].stands, Y, t)
	}
	sideFrom, mitres := from[Y], 1
	switch {
	case e.mitre && e.added:
		side = plus(side, stock.Term{Times: 1, Value: t, Label: "trim"})
	case !e.mitre:
		sideFrom, mitres = from[Y]+t, 0
		if !e.added {
			side = plus(side, stock.Term{Times: -1, Value: t, Label: "trim"})
		}
	}
	thick := given(p.panel.thickness, string(p.role))
	r.addStrips(e, piece{role: "top trim", count: 1, length: front, width: thick, mitres: 2 * mitres, way: across, stands: stands(from)})
	r.addStrips(e, piece{role: "top side trim", count: 2, length: side, width: thick, mitres: mitres, way: endwise,
		stands: stands(Point{from[X], sideFrom, from[Z]}, Point{right - t, sideFrom, from[Z]})})
}

// addStrips takes strips into the case. Those that are added to panels must find
// room before them.
func (r *reckoner) addStrips(e edging, p piece) {
	p.dryFit, p.strip, p.panel = true, r.lumber(e.panel), e.panel
	if e.added && e.on != "fronts" { // they have their own fault
		for _, s := range p.solids() {
			if i := slices.IndexFunc(r.unedged, s.overlaps); i >= 0 {
				r.fault(e.fitAt, "strips added before the panels would be in the way of a "+string(r.unedged[i].Role), `set fit = "taken-off"`)
				return
			}
		}
	}
	r.add(p)
}

// takeOff makes panel n smaller by so many strips in length and in width, and
// reports whether something is left of it.
func (r *reckoner) takeOff(n, length, width int, e edging) bool {
	p := &r.pieces[n]
	strips := func(times int) stock.Term { return stock.Term{Times: -times, Value: e.thickness, Label: "edging"} }
	p.length, p.width = plus(p.length, strips(length)), plus(p.width, strips(width))
	if p.length.Total() > 0 && p.width.Total() > 0 {
		return true
	}
	r.fault(e.at, fmt.Sprintf("strips %s thick leave nothing of a %s", r.print(e.thickness), p.role), "make them thinner")
	return false
}

func move(all []Solid, along Axis, by stock.Length) {
	for i := range all {
		all[i].At[along] += by
	}
}
