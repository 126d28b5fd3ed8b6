package sizes

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/internal/wording"
)

// extent is one direction of the case.
type extent struct {
	Outside stock.Length
	Clear   stock.Length // inside
	Panels  stock.Length // between the panels; framed: more than is clear
}

// claim is a reason for an inside size to be what it is.
type claim struct {
	size stock.Sum
	of   string // "bay 1"
	at   design.Place
	// least: the size may be greater.
	least bool
	// refused are sizes that were given within the line and are no good. The line
	// claims what is needed in their stead.
	refused []refusal
	fixed   bool // nothing in the line may be greater but what was refused
}

// allows reports whether the inside may have a size.
func (c claim) allows(size stock.Length) bool {
	return size == c.size.Total() || c.least && size > c.size.Total()
}

// decisive is the claim that settles a size: the first exact one, or else the
// greatest.
func decisive(claims []claim) claim {
	greatest := claims[0]
	for _, c := range claims {
		if !c.least {
			return c
		}
		if c.size.Total() > greatest.size.Total() {
			greatest = c
		}
	}
	return greatest
}

// axis is one direction, and what is known of it before it is settled.
type axis struct {
	name            string        // "width"
	outside, inside design.Length // as given
	ends            stock.Sum
	others          []claim // by what goes in
	missing         string  // what else would settle it
}

// settle finds the sizes of one direction. They are related by
//
//	outside = inside + ends
//
// and whatever is given or goes in claims one of the two, exactly or at least.
// There must be a claim, and all must agree.
func (r *Sizes) settle(x axis) (extent, bool) {
	table := r.In.Root
	outsideKey, insideKey := "outside_"+x.name, "inside_"+x.name
	var claims []claim
	if x.outside.Set {
		claims = append(claims, claim{size: sums.Minus(sums.Of(x.outside.Value, "outside "+x.name), x.ends), of: outsideKey,
			at: table.Under(x.outside.Line, outsideKey)})
	}
	if x.inside.Set {
		claims = append(claims, claim{size: sums.Of(x.inside.Value, "given"), of: insideKey, at: table.Under(x.inside.Line, insideKey)})
	}
	claims = append(claims, x.others...)
	if len(claims) == 0 {
		ways := []string{outsideKey, insideKey}
		if x.missing != "" {
			ways = append(ways, x.missing)
		}
		r.In.Fault(table, "the "+x.name+" is not settled: neither "+outsideKey+" nor "+insideKey+" is given, nor what goes in",
			"give "+wording.Alternatives(ways))
		return extent{}, false
	}
	first := decisive(claims)
	var against, with []claim
	for _, c := range claims {
		if c.allows(first.size.Total()) {
			with = append(with, c)
			r.tellRefused(c, first)
		} else {
			against = append(against, c)
		}
	}
	agreed := against == nil
	if !agreed {
		r.conflict(x, with, against)
	}
	clear := first.size.Total()
	if agreed && clear <= 0 {
		r.In.Fault(first.at, "nothing is left inside: "+r.In.Explained(first.size), "make the case larger, or its members thinner")
		agreed = false
	}
	outside := sums.Plus(sums.Of(clear, "inside "+x.name), x.ends...)
	if x.outside.Set {
		outside = sums.Of(x.outside.Value, "given")
	}
	r.Record("outside "+x.name, outside)
	r.Record("inside "+x.name, first.size)
	return extent{Outside: outside.Total(), Clear: clear, Panels: clear}, agreed
}

// member is one of those that stand in a line; one that is not settled shares
// what the others leave.
type member struct {
	name    string
	size    stock.Sum
	settled bool
	least   bool // the size may be greater
	refused *refusal
}

// share settles the members of a line that fill whole less fixed, and reports
// whether there is room. Where all are settled, those share the rest whose size is
// the least they need. Shares are equal, rounded down to the unit of Length, so
// the line may fall short by fewer units than there are shares.
func (r *Sizes) share(a design.Place, whole, fixed stock.Sum, members []member) bool {
	left := sums.Minus(whole, fixed)
	open := 0
	var names []string
	for _, m := range members {
		if m.settled {
			left = sums.Plus(left, stock.Term{Times: -1, Value: m.size.Total(), Label: m.name})
			continue
		}
		open++
		name := m.name
		if name == "front" { // of which there are several
			name = "a front"
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if open == 0 {
		widen(members, left.Total())
		return true
	}
	if left.Total() <= 0 {
		r.In.Fault(a, fmt.Sprintf("nothing is left for %s, which has no size of its own: %s", strings.Join(names, " and "), r.In.Explained(left)),
			"make the case larger, or what else stands in line smaller")
		return false
	}
	size := left
	if open > 1 {
		size = stock.Sum{{Times: 1, Value: left.Total(), Over: open, Label: "left to share"}}
	}
	for i := range members {
		if !members[i].settled {
			members[i].size, members[i].settled = size, true
		}
	}
	return true
}

// widen shares what is left of a line among the members that may be greater.
func widen(members []member, left stock.Length) {
	wider := 0
	for _, m := range members {
		if m.least {
			wider++
		}
	}
	for i := range members {
		if m := &members[i]; m.least {
			m.size = sums.Plus(m.size, stock.Term{Times: 1, Value: left, Over: wider, Label: "left over"})
		}
	}
}

// lineClaim claims the length of a line whose members are all settled, or else
// returns the names of those that are not. A single member's arithmetic is kept.
func lineClaim(members []member, between stock.Term) (line claim, missing string) {
	var open []string
	var terms []stock.Term
	line.fixed = true
	for _, m := range members {
		if m.refused != nil {
			line.refused = append(line.refused, *m.refused)
		} else if m.least {
			line.fixed = false
		}
		if !m.settled {
			open = append(open, m.name)
		}
		line.least = line.least || m.least
		terms = append(terms, stock.Term{Times: 1, Value: m.size.Total(), Label: m.name})
	}
	if open != nil {
		return claim{refused: line.refused, least: true}, strings.Join(open, " and ")
	}
	line.size = sums.Plus(sums.Row(terms...), between)
	if len(members) == 1 {
		line.size = members[0].size
	}
	return line, ""
}
