package checks

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

const (
	// tallCase is the height from which free-standing clothing storage comes under
	// 16 CFR part 1261 and ASTM F2057-23: 27 in.
	tallCase = 27 * stock.Inch
	// childWeight is the test weight of ASTM F2057-23, 60 lb.
	childWeight stock.Grams = 27_216
	// clothing fills a drawer, in kg/m3: 8.5 lb/ft3, confirmed for the rule of November 2022; for
	// ASTM F2057-23 from memory.
	clothing = 136.2
	// pull is 10 lbf forward at the highest hand-hold, but not above highestHold:
	// ASTM F2057-23, from memory. It is in grams of weight.
	pull        stock.Grams = 4536
	highestHold             = 56 * stock.Inch
	// carpet is by how much the rear of the case is raised, 0.43 in: ASTM F2057-23,
	// from memory.
	carpet = 43 * stock.Inch / 100
)

// footing is how a case stands on the floor: its front and rear support, and
// where the floor is.
type footing struct {
	front, rear, floor stock.Length
}

// standsOn finds the lowest pieces: sides, stiles or feet, wherever these reach.
func standsOn(solids []solid.Solid) footing {
	var s footing
	for i, p := range solids {
		switch {
		case p.Drawer > 0:
			continue
		case i == 0 || p.At[solid.Z] < s.floor:
			s = footing{p.At[solid.Y], p.End()[solid.Y], p.At[solid.Z]}
		case p.At[solid.Z] == s.floor:
			s.front, s.rear = min(s.front, p.At[solid.Y]), max(s.rear, p.End()[solid.Y])
		}
	}
	return s
}

// opens is a drawer that can be pulled out.
type opens struct {
	empty, filled load
	// front and top are the upper edge of its front, where a child climbs on and
	// a hand pulls.
	front, top stock.Length
	travel     stock.Length // out to where it is fully open: the depth of its box
}

// drawers are those of the case, from the first, each filled with clothing or what
// it is loaded with, if that weighs more; and the loads of all else, the doors open
// at a right angle: that tips more.
func drawers(c *pieces.Standing, loaded []stock.Grams) (all []opens, rest []load) {
	loads := loads(c)
	var leaf stock.Length // the widest
	for _, s := range c.Solids {
		if s.Role == "door" {
			leaf = max(leaf, s.Size[solid.X])
		}
	}
	pieces, own := make(map[int][]solid.Solid), make(map[int][]load)
	last := 0
	for i, s := range c.Solids {
		if s.Drawer == 0 {
			if s.Role == "door" || s.Role.On("door") { // open at a right angle
				loads[i].at[solid.Y] = float64(s.At[solid.Y] - leaf/2)
			}
			rest = append(rest, loads[i])
			continue
		}
		pieces[s.Drawer], own[s.Drawer] = append(pieces[s.Drawer], s), append(own[s.Drawer], loads[i])
		last = max(last, s.Drawer)
	}
	for number := 1; number <= last; number++ {
		d := opens{empty: together(own[number]), front: pieces[number][0].At[solid.Y]}
		for _, s := range pieces[number] {
			d.front, d.top, d.travel = min(d.front, s.At[solid.Y]), max(d.top, s.End()[solid.Z]), max(d.travel, s.Size[solid.Y])
		}
		filling := weigh(design.Property{Value: clothing}, roomIn(pieces[number]))
		if number <= len(loaded) {
			filling = max(filling, loaded[number-1])
		}
		d.filled = d.empty
		d.filled.weight += filling
		all = append(all, d)
	}
	return all, rest
}

// roomIn is that in a drawer: between its sides, between its ends, and from the bottom to the upper
// edge. For a finished one it is the whole outside.
func roomIn(of []solid.Solid) solid.Point {
	from, to := solid.Point{}, solid.Point{stock.Longest, stock.Longest, stock.Longest}
	for _, s := range of {
		switch s.Role {
		case "drawer":
			return s.Size
		case "drawer side":
			from[solid.X], to[solid.X], to[solid.Z] = max(from[solid.X], s.At[solid.X]), min(to[solid.X], s.End()[solid.X]), s.End()[solid.Z]
		case "drawer front and back":
			from[solid.Y], to[solid.Y] = max(from[solid.Y], s.At[solid.Y]), min(to[solid.Y], s.End()[solid.Y])
		case "drawer bottom":
			from[solid.Z] = s.End()[solid.Z]
		}
	}
	return solid.Point{from[solid.X] - to[solid.X], from[solid.Y] - to[solid.Y], to[solid.Z] - from[solid.Z]}
}

// state is a case with its drawers somehow open.
type state struct {
	name   string
	loads  []load
	pull   stock.Length // how high a hand pulls, above the floor; 0 if none does
	raised bool         // its rear, by what a carpet does
}

// moments are those about the front support, in grams x units of length: what
// holds the case down, and what tips it.
func (on footing) moments(s state) (holding, tipping float64) {
	sin := 0.0
	if depth := on.rear - on.front; s.raised && depth > carpet {
		sin = float64(carpet) / float64(depth)
	}
	cos := math.Sqrt(1 - float64(sin*sin))
	for _, l := range s.loads {
		arm := float64((l.at[solid.Y]-float64(on.front))*cos) - float64((l.at[solid.Z]-float64(on.floor))*sin)
		if moment := float64(float64(l.weight) * arm); moment > 0 {
			holding += moment
		} else {
			tipping -= moment
		}
	}
	return holding, tipping + float64(float64(pull)*float64(s.pull))
}

// states are those that a chest is judged in. The figures come from the tests of ASTM F2057-23, but
// these are not its tests.
//
// Contents behind the front support hold the case down, and may be taken out. All states are
// without them, and one more is with them.
func states(drawers []opens, rest, contents []load, hold stock.Length, filling string) []state {
	out := func(l load, by stock.Length) load {
		l.at[solid.Y] -= float64(by)
		return l
	}
	all := func(from func(opens) load) []load {
		loads := slices.Clone(rest)
		for _, d := range drawers {
			loads = append(loads, from(d))
		}
		return loads
	}
	if len(drawers) == 0 {
		const pulled = "pulled forward with 10 lbf (44.5 N) at its top, at most 56 in (1422.4 mm) up"
		found := []state{{name: pulled, loads: rest, pull: hold}}
		if contents != nil {
			found = append(found, state{name: "with its contents, and " + pulled, loads: append(slices.Clone(rest), contents...), pull: hold})
		}
		return found
	}
	child := func(d opens) load {
		return load{childWeight, [3]float64{0, float64(d.front - d.travel), float64(d.top)}}
	}
	open := all(func(d opens) load { return out(d.empty, d.travel) })
	found := []state{
		{name: "all drawers fully open, empty", loads: open},
		{name: "all drawers open by 2/3, filled with " + filling, loads: all(func(d opens) load { return out(d.filled, d.travel*2/3) })},
		{name: "all drawers fully open, filled with " + filling, loads: all(func(d opens) load { return out(d.filled, d.travel) })},
		{name: "all drawers fully open, empty, and pulled forward with 10 lbf (44.5 N) at the highest, at most 56 in (1422.4 mm) up", loads: open, pull: hold},
	}
	farthest := drawers[0] // which tips most under a child, of equals the highest
	for _, d := range drawers[1:] {
		if reach, far := d.front-d.travel, farthest.front-farthest.travel; reach < far || reach == far && d.top > farthest.top {
			farthest = d
		}
	}
	one := append(all(func(d opens) load {
		if d == farthest {
			return out(d.empty, d.travel)
		}
		return d.empty
	}), child(farthest))
	climbed := append(slices.Clone(open), child(farthest))
	if contents != nil {
		found = append(found, state{name: "with its contents, all drawers fully open, filled with " + filling,
			loads: append(all(func(d opens) load { return out(d.filled, d.travel) }), contents...)})
	}
	return append(found,
		state{name: "one drawer fully open, empty, with a child of 60 lb (27.2 kg) on its front", loads: one},
		state{name: "all drawers fully open, empty, with a child of 60 lb (27.2 kg) on the front of one, the rear raised by 0.43 in (10.9 mm) as on a carpet",
			loads: climbed, raised: true},
		state{name: "all drawers fully open, filled with " + filling + ", with a child of 60 lb (27.2 kg) on the front of one, the rear raised by 0.43 in (10.9 mm) as on a carpet",
			loads: append(all(func(d opens) load { return out(d.filled, d.travel) }), child(farthest)), raised: true})
}

// unweighed names what is missing for the weight of the case.
func unweighed(c *pieces.Standing) (missing []string) {
	_, unknown := weights(c)
	for _, m := range unknown {
		missing = append(missing, fmt.Sprintf("the [[material]] %q a wood or a density", m))
	}
	for _, s := range c.Solids {
		if s.Part < 0 && s.Weight == 0 {
			return append(missing, "every measured drawer its weight")
		}
	}
	return missing
}

// checkTipping computes the moments of a case that may tip.
func (r *checker) checkTipping() {
	why := r.tips()
	if why == nil {
		return
	}
	if missing := unweighed(&r.Standing); missing != nil {
		r.cautionTipping(why, missing)
		return
	}
	drawers, rest := drawers(&r.Standing, r.DrawerLoads)
	contents := r.contentsLoads()
	on := standsOn(r.Solids)
	hold := r.Sizes.Height.Outside
	if len(drawers) > 0 {
		hold = 0
		for _, d := range drawers {
			hold = max(hold, d.top)
		}
	}
	hold = min(hold-on.floor, highestHold)
	whole := together(loads(&r.Standing))
	k := Check{
		Subject: "tipping", Of: "case", Verdict: Stands,
		Inputs: []Figure{
			{"weight", fixed(float64(whole.weight)/1000, 3), "kg"},
			{"center of gravity, behind the front support", fixed(inMillimeters(nearestMillimeter(whole.at[solid.Y])-on.front), 1), "mm"},
			{"center of gravity, above the floor", fixed(inMillimeters(nearestMillimeter(whole.at[solid.Z])-on.floor), 1), "mm"},
			millimeters("front support to rear support", on.rear-on.front),
		},
		Assumptions: []string{
			"Weights are estimates; hardware, finish and what stands on the case are not counted.",
			"The front support is the front edge of what stands lowest; the floor is level and hard. Doors stand open at a right angle.",
		},
		Source: "moments about the front support; height and child's weight: 16 CFR part 1261 and ASTM F2057-23; clothing, pull and carpet after the same, from memory",
	}
	k.Assumptions = append(k.Assumptions, usRule, europeanRule)
	if len(drawers) > 0 {
		k.Assumptions = append(k.Assumptions,
			"A drawer is fully open when it is out by the whole depth of its box: slides that open less tip less.",
			"Clothing weighs 8.5 lb/ft3 (136.2 kg/m3) of drawer.")
	}
	if r.Built.AnyOpening(construction.Opening.DrawersBehindDoors) {
		k.Assumptions = append(k.Assumptions, "Drawers behind doors are pulled through doors that stand open.")
	}
	filling := "clothing"
	if slices.ContainsFunc(r.DrawerLoads, func(g stock.Grams) bool { return g > 0 }) {
		filling = "clothing or their load"
		k.Assumptions = append(k.Assumptions, "The load of a drawer is what the job file says, in the middle of its box; where clothing weighs more, it is filled with that.")
	}
	if contents != nil {
		k.Assumptions = append(k.Assumptions, fmt.Sprintf("Contents weigh %s, as the job file says, the same in every row, and stand at the front of their openings, or in the middle where their depth is not known. "+
			"They may be taken out, so the case is judged without them as well.", together(contents).weight.PrintUnit(r.In.From.Ruler.Units)))
	}
	for _, s := range states(drawers, rest, contents, hold, filling) {
		holding, tipping := on.moments(s)
		k.Results = append(k.Results, Figure{s.name + ": holding", kilogramMeters(holding), "kg m"}, Figure{s.name + ": tipping", kilogramMeters(tipping), "kg m"})
		stands := "nothing tips it"
		if tipping > 0 {
			margin := math.Floor(holding/tipping*100) / 100 // never 1.00 of what tips
			k.Results = append(k.Results, Figure{s.name + ": margin", fixed(margin, 2), ""})
			stands = fmt.Sprintf("margin %s", fixed(margin, 2))
		}
		if holding <= tipping {
			k.Verdict = Tips
			stands += ", it tips"
		}
		k.States = append(k.States, fmt.Sprintf("%s: %s", s.name, stands))
	}
	k.Text = "This case can tip: " + strings.Join(why, "; ") + ". The margin below is what holds it down over what tips it, both moments about its front support; up to 1 it tips. " +
		"This is an estimate and no substitute for the test of ASTM F2057 or EN 14749: anchor it to the wall." + defers
	r.found(k)
}

// kilogramMeters writes a moment in grams x units of length.
func kilogramMeters(moment float64) string {
	return fixed(moment/1000/float64(1000*stock.Millimeter), 3)
}
