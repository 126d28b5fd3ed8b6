package casework

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
)

// extent is one direction of the case.
type extent struct {
	outside stock.Length
	clear   stock.Length // inside
	panels  stock.Length // between the panels; framed: more than is clear
}

// claim is a reason for an inside size to be what it is.
type claim struct {
	size stock.Sum
	of   string // "bay 1"
	at   at
}

// axis is one direction, and what is known of it before it is settled.
type axis struct {
	name            string // "width"
	outside, inside Length // as given
	ends            stock.Sum
	others          []claim // by what goes in
	missing         string  // what else would settle it
}

// settle finds the sizes of one direction. They are related by
//
//	outside = inside + ends
//
// and whatever is given or goes in claims one of the two. There must be a
// claim, and all must agree.
func (r *reckoner) settle(x axis) (extent, bool) {
	table := r.place
	outsideKey, insideKey := "outside_"+x.name, "inside_"+x.name
	var claims []claim
	if x.outside.Set {
		claims = append(claims, claim{minus(given(x.outside.Value, "outside "+x.name), x.ends), outsideKey,
			table.under(x.outside.Line, outsideKey)})
	}
	if x.inside.Set {
		claims = append(claims, claim{given(x.inside.Value, "given"), insideKey, table.under(x.inside.Line, insideKey)})
	}
	claims = append(claims, x.others...)
	if len(claims) == 0 {
		ways := []string{outsideKey, insideKey}
		if x.missing != "" {
			ways = append(ways, x.missing)
		}
		r.fault(table, "the "+x.name+" is not settled: neither "+outsideKey+" nor "+insideKey+" is given, nor what goes in",
			"give "+alternatives(ways))
		return extent{}, false
	}
	first, agreed := claims[0], true
	for _, c := range claims[1:] {
		if c.size.Total() != first.size.Total() {
			r.conflict(x, first, c)
			agreed = false
		}
	}
	clear := first.size.Total()
	if agreed && clear <= 0 {
		r.fault(first.at, "nothing is left inside: "+r.reckoned(first.size), "make the case larger, or its members thinner")
		agreed = false
	}
	outside := plus(given(clear, "inside "+x.name), x.ends...)
	if x.outside.Set {
		outside = given(x.outside.Value, "given")
	}
	r.record("outside "+x.name, outside)
	r.record("inside "+x.name, first.size)
	return extent{outside: outside.Total(), clear: clear, panels: clear}, agreed
}

// conflict tells which two sizes cannot both hold. Outside sizes are compared
// outside, so that the numbers are those that were written.
func (r *reckoner) conflict(x axis, first, other claim) {
	ends := x.ends.Total()
	has, needs := first.size.Total(), other.size.Total()
	switch {
	case x.outside.Set:
		has, needs = has+ends, needs+ends
		r.fault(first.at, fmt.Sprintf("outside %s %s is given, but %s needs %s: inside it is %s, and leaves %s", x.name,
			r.print(has), other.of, r.print(needs), r.reckoned(other.size), r.reckoned(first.size)),
			fmt.Sprintf("make %s %s, or leave out one of the two", first.of, r.print(needs)))
	case x.inside.Set:
		r.fault(first.at, fmt.Sprintf("inside %s %s is given, but %s needs %s: %s", x.name, r.print(has), other.of,
			r.print(needs), r.reckoned(other.size)),
			fmt.Sprintf("make %s %s, or leave out one of the two", first.of, r.print(needs)))
	default:
		r.fault(other.at, fmt.Sprintf("%s needs an inside %s of %s, but %s needs %s", other.of, x.name, r.print(needs),
			first.of, r.print(has)), "leave out one "+x.name+" in the smaller of the two, or add an open space to it")
	}
}

// member is one of those that stand in a line; one that is not settled shares
// what the others leave.
type member struct {
	name    string
	size    stock.Sum
	settled bool
}

// share settles the members of a line that fill whole less fixed, and reports
// how it was done. The others' shares are equal, rounded down to the unit of
// Length, so the line may fall short by fewer units than there are shares.
func (r *reckoner) share(a at, whole, fixed stock.Sum, members []member) bool {
	left := minus(whole, fixed)
	open := 0
	var names []string
	for _, m := range members {
		if m.settled {
			left = plus(left, stock.Term{Times: -1, Value: m.size.Total(), Label: m.name})
			continue
		}
		open++
		if !slices.Contains(names, m.name) {
			names = append(names, m.name)
		}
	}
	if open == 0 {
		return true
	}
	if left.Total() <= 0 {
		r.fault(a, fmt.Sprintf("nothing is left for %s, which has no size of its own: %s", strings.Join(names, " and "), r.reckoned(left)),
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

// lineClaim is the length of a line whose members are all settled, or else the
// names of those that are not. A single member's arithmetic is kept.
func lineClaim(members []member, between stock.Term) (line stock.Sum, missing string) {
	var open []string
	var terms []stock.Term
	for _, m := range members {
		if !m.settled {
			open = append(open, m.name)
		}
		terms = append(terms, stock.Term{Times: 1, Value: m.size.Total(), Label: m.name})
	}
	if open != nil {
		return nil, strings.Join(open, " and ")
	}
	if len(members) == 1 {
		return members[0].size, ""
	}
	return plus(row(terms...), between), ""
}
