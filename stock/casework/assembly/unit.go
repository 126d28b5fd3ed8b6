package assembly

import (
	"slices"
	"strings"

	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// Unit is a sub-assembly: pieces that are put together before they join the
// rest, or several units alike.
type Unit struct {
	Name  string // "carcass", "drawer"
	Count int    // so many alike
	// Drawers are the numbers of alike drawers, as in Solid.Drawer; else nil.
	Drawers []int
	// Items are the parts of one unit, in the order of Case.Parts; none of a
	// drawer that stands on the bench.
	Items []Item
	// Finished is the size of such a drawer, along the axes.
	Finished solid.Point
}

// Item is a part in a unit.
type Item struct {
	Part  int // an index into Case.Parts
	Count int // in one unit
}

// unitNames are the units in the order they are made in. Drawers come before
// the shelves.
var unitNames = []string{"carcass", "frames", "back", "shelves", "doors", "base", "edging", "joinery"}

// Units sorts the pieces of the case into sub-assemblies. Alike drawers are one.
// All units as often as they are counted hold every part as often as it is
// wanted.
func Units(c *pieces.Standing) []Unit {
	left := make([]int, len(c.Parts)) // what is in no drawer
	for i, p := range c.Parts {
		left[i] = p.Count
	}
	drawers := drawerUnits(c)
	for _, u := range drawers {
		for _, it := range u.Items {
			left[it.Part] -= u.Count * it.Count
		}
	}
	var units []Unit
	for _, name := range unitNames {
		if name == "shelves" {
			units = append(units, drawers...)
		}
		u := Unit{Name: name, Count: 1}
		for i, p := range c.Parts {
			role, _, _ := strings.Cut(p.Name, ",")
			if left[i] > 0 && solid.Role(role).Unit() == name {
				u.Items = append(u.Items, Item{i, left[i]})
			}
		}
		if u.Items != nil {
			units = append(units, u)
		}
	}
	return units
}

// drawers are the different drawers of the case, by their first.
func drawerUnits(c *pieces.Standing) []Unit {
	last := 0
	for _, s := range c.Solids {
		last = max(last, s.Drawer)
	}
	var units []Unit
	for number := 1; number <= last; number++ {
		one := drawer(c, number)
		at := slices.IndexFunc(units, func(u Unit) bool {
			return u.Finished == one.Finished && slices.Equal(u.Items, one.Items)
		})
		if at < 0 {
			units = append(units, one)
			continue
		}
		units[at].Count++
		units[at].Drawers = append(units[at].Drawers, number)
	}
	return units
}

// drawer gathers what belongs to one.
func drawer(c *pieces.Standing, number int) Unit {
	u := Unit{Name: "drawer", Count: 1, Drawers: []int{number}}
	for _, s := range c.Solids {
		if s.Drawer != number {
			continue
		}
		if s.Part < 0 {
			u.Finished = s.Size
			continue
		}
		at, found := slices.BinarySearchFunc(u.Items, s.Part, func(it Item, part int) int { return it.Part - part })
		if !found {
			u.Items = slices.Insert(u.Items, at, Item{Part: s.Part})
		}
		u.Items[at].Count++
	}
	return u
}
