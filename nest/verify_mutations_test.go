package nest_test

import (
	"slices"

	"sawbill/nest"
)

// mutations spoil every rule at least once.
var mutations = []mutation{
	{"grow the root", `less its trim`, func(v *victim) bool {
		v.layout().Root.Width++
		return true
	}},
	{"untrimmed stock", `less its trim.*(\n.*)*area`, func(v *victim) bool {
		v.problem.Stock[v.layout().Stock].TrimLength++
		return true
	}},
	{"grow a part along", `blank \d+ \w+ is|takes`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return isPart(at) && isChild(at) })
		if ok {
			change(at, 1, true)
		}
		return ok
	}},
	{"grow a split along", `across the cuts|takes`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return isSplit(at) && isChild(at) })
		if ok {
			change(at, 1, true)
		}
		return ok
	}},
	{"grow a child across", `across the cuts`, func(v *victim) bool {
		at, ok := v.pick(isChild)
		if ok {
			change(at, 1, false)
		}
		return ok
	}},
	{"shrink a part", `blank \d+ \w+ is|no piece`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return isPart(at) && isChild(at) })
		if ok {
			change(at, -1, true)
		}
		return ok
	}},
	{"shrink a leftover by more than a kerf", `missing behind|leftover and ends`, func(v *victim) bool {
		by := v.problem.Kerf + 1
		at, ok := v.pick(func(at site) bool {
			return isLeftover(at) && isChild(at) && alongOf(at.node, at.parent.Cut) > by
		})
		if ok {
			change(at, -by, true)
		}
		return ok
	}},
	{"a child of no size", `no piece`, func(v *victim) bool {
		at, ok := v.pick(isSplit)
		if ok {
			none := waste(at.node.Length, at.node.Width)
			if at.node.Cut == nest.Rip {
				none.Width = 0
			} else {
				none.Length = 0
			}
			at.node.Children = append(at.node.Children, none)
		}
		return ok
	}},
	{"drop a child", `missing behind|without children`, func(v *victim) bool {
		at, ok := v.pick(isChild)
		if ok {
			at.parent.Children = slices.Delete(at.parent.Children, at.index, at.index+1)
		}
		return ok
	}},
	{"repeat a child", `takes`, func(v *victim) bool {
		at, ok := v.pick(isChild)
		if ok {
			at.parent.Children = append(at.parent.Children, *at.node)
		}
		return ok
	}},
	{"a leftover behind the last cut", `leftover and ends`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool {
			return isLeftover(at) && isChild(at) && missing(at.parent, v.problem.Kerf) > 0
		})
		if ok {
			c := at.parent.Children
			last := len(c) - 1
			c[at.index], c[last] = c[last], c[at.index]
		}
		return ok
	}},
	{"a wider kerf", `takes`, func(v *victim) bool {
		_, ok := v.pick(func(at site) bool {
			return isSplit(at) && missing(at.node, v.problem.Kerf) == 0
		})
		v.problem.Kerf++
		return ok
	}},
	{"no kerf", `missing behind|leftover and ends`, func(v *victim) bool {
		_, ok := v.pick(isSplit)
		ok = ok && v.problem.Kerf > 0
		v.problem.Kerf = 0
		return ok
	}},
	{"cut in the other direction", `across the cuts`, func(v *victim) bool {
		at, ok := v.pick(isSplit)
		if ok {
			at.node.Cut = nest.Rip + nest.Crosscut - at.node.Cut
		}
		return ok
	}},
	{"no direction", `neither rip nor crosscut`, func(v *victim) bool {
		at, ok := v.pick(isSplit)
		if ok {
			at.node.Cut = nest.AnyCut
		}
		return ok
	}},
	{"a cut that frees nothing", `no cut frees it`, func(v *victim) bool {
		at, ok := v.pick(isPart)
		if ok {
			*at.node = rip(at.node.Length, at.node.Width, *at.node)
		}
		return ok
	}},
	{"two neighbours in a split of their parent's direction", `levels of cuts alternate`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return isSplit(at) && len(at.node.Children) > 2 })
		if ok {
			c := at.node.Children
			pair := nest.Node{Length: c[0].Length, Width: c[0].Width, Use: nest.Split, Cut: at.node.Cut, Children: slices.Clone(c[:2])}
			if pair.Cut == nest.Rip {
				pair.Width += v.problem.Kerf + c[1].Width
			} else {
				pair.Length += v.problem.Kerf + c[1].Length
			}
			at.node.Children = append([]nest.Node{pair}, c[2:]...)
		}
		return ok
	}},
	{"a level too many", `cuts at level`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return at.level > 1 })
		v.problem.Stages = at.level - 1
		return ok
	}},
	{"the other first cut", `the first cut is`, func(v *victim) bool {
		l := v.layout()
		v.problem.Stock[l.Stock].FirstCut = nest.Rip + nest.Crosscut - l.Root.Cut
		return l.Root.Use == nest.Split
	}},
	{"a wider narrowest rip", `the narrowest rip is`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool {
			return isChild(at) && at.parent.Cut == nest.Rip && at.node.Use != nest.Waste
		})
		if ok {
			for i := range v.problem.Stock {
				v.problem.Stock[i].NarrowestRip = at.node.Width + 1
			}
		}
		return ok
	}},
	{"turn a part", `blank \d+ \w+ is|may not come`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return isPart(at) && at.node.Length != at.node.Width })
		if ok {
			at.node.Turned = !at.node.Turned
		}
		return ok
	}},
	{"forbid how a part lies", `may not come`, func(v *victim) bool {
		at, ok := v.pick(isPart)
		if ok {
			from := v.problem.Blanks[at.node.Blank].From
			for i := range from {
				from[i].Turned, from[i].Upright = from[i].Turned && !at.node.Turned, from[i].Upright && at.node.Turned
			}
		}
		return ok
	}},
	{"forbid where a part comes from", `may not come`, func(v *victim) bool {
		at, ok := v.pick(isPart)
		if ok {
			v.problem.Blanks[at.node.Blank].From = nil
		}
		return ok
	}},
	{"another blank", `blank \d+: \d+ cut`, func(v *victim) bool {
		at, ok := v.pick(isPart)
		if ok {
			at.node.Blank = (at.node.Blank + 1) % len(v.problem.Blanks)
		}
		return ok && len(v.problem.Blanks) > 1
	}},
	{"a blank that is not there", `blank (-1|\d+), there are`, func(v *victim) bool {
		at, ok := v.pick(isPart)
		if ok {
			at.node.Blank = []int{-1, len(v.problem.Blanks)}[v.IntN(2)]
		}
		return ok
	}},
	{"a part thrown away", `blank \d+: \d+ cut`, func(v *victim) bool {
		at, ok := v.pick(isPart)
		if ok {
			at.node.Use = nest.Waste
		}
		return ok
	}},
	{"offcut for waste, waste for offcut", `called`, func(v *victim) bool {
		at, ok := v.pick(isLeftover)
		if ok {
			at.node.Use = nest.Offcut + nest.Waste - at.node.Use
		}
		return ok
	}},
	{"keep more", `called waste`, func(v *victim) bool {
		_, ok := v.pick(func(at site) bool { return at.node.Use == nest.Waste })
		v.problem.Keep = nest.Size{}
		return ok
	}},
	{"a leaf with children", `is no split`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return !isSplit(at) })
		if ok {
			at.node.Children = []nest.Node{waste(1, 1)}
		}
		return ok
	}},
	{"an unknown use", `use 4 is unknown`, func(v *victim) bool {
		at, ok := v.pick(func(at site) bool { return !isSplit(at) })
		if ok {
			at.node.Use = 4
		}
		return ok
	}},
	{"a layout twice", `equals layout`, func(v *victim) bool {
		l := v.layout()
		if l.Repeat == 1 {
			return false
		}
		l.Repeat--
		v.plan.Layouts = append(v.plan.Layouts, nest.Layout{Stock: l.Stock, Repeat: 1, Root: l.Root})
		return true
	}},
	{"a layout once more", `blank \d+: \d+ cut`, func(v *victim) bool {
		l := v.layout()
		v.plan.Cost += v.problem.Stock[l.Stock].Price
		l.Repeat++
		return true
	}},
	{"a layout never", `cut 0 times`, func(v *victim) bool {
		v.layout().Repeat = 0
		return true
	}},
	{"a layout dropped", `blank \d+: \d+ cut`, func(v *victim) bool {
		v.plan.Layouts = v.plan.Layouts[1:]
		return true
	}},
	{"a layout without a part", `cuts no part`, func(v *victim) bool {
		s := v.IntN(len(v.problem.Stock))
		usable := v.problem.Stock[s].Usable()
		v.plan.Layouts = append(v.plan.Layouts, nest.Layout{Stock: s, Repeat: 1, Root: offcut(usable.Length, usable.Width)})
		return true
	}},
	{"a stock that is not there", `stock (-1|\d+), there are`, func(v *victim) bool {
		v.layout().Stock = []int{-1, len(v.problem.Stock)}[v.IntN(2)]
		return true
	}},
	{"fewer pieces of stock", `pieces taken, there are`, func(v *victim) bool {
		s := v.layout().Stock
		v.problem.Stock[s].Count = taken(v.plan, s) - 1
		return v.problem.Stock[s].Count > 0
	}},
	{"a penny more", `cost: `, func(v *victim) bool {
		v.plan.Cost++
		return true
	}},
	{"a bound above the cost", `bound: `, func(v *victim) bool {
		v.plan.Bound = v.plan.Cost + 1
		return v.plan.Complete()
	}},
	{"a bound below nothing", `is negative`, func(v *victim) bool {
		v.plan.Bound = -1
		return true
	}},
	{"one more wanted", `blank \d+: \d+ cut`, func(v *victim) bool {
		v.problem.Blanks[v.IntN(len(v.problem.Blanks))].Count++
		return true
	}},
	{"an unplaced blank forgotten", `blank \d+: \d+ cut`, func(v *victim) bool {
		if v.plan.Complete() {
			return false
		}
		v.plan.Unplaced = v.plan.Unplaced[1:]
		return true
	}},
	{"an unplaced blank listed in two lines", `a second time`, func(v *victim) bool {
		u, ok := v.unplaced(nest.StockUsedUp)
		if ok && u.Count > 1 {
			u.Count--
			v.plan.Unplaced = append(v.plan.Unplaced, nest.Unplaced{Blank: u.Blank, Count: 1, Reason: u.Reason})
			return true
		}
		return false
	}},
	{"a blank listed as unplaced no times", `listed 0 times`, func(v *victim) bool {
		large, ok := v.unplaced(nest.TooLarge)
		if ok {
			v.problem.Blanks[large.Blank].Count, large.Count = 0, 0
		}
		return ok
	}},
	{"an unplaced blank that is not there", `unplaced 0: blank -1, there are`, func(v *victim) bool {
		if v.plan.Complete() {
			return false
		}
		v.plan.Unplaced[0].Blank = -1
		return true
	}},
	{"too large called used up", `another reason is given`, func(v *victim) bool {
		u, ok := v.unplaced(nest.TooLarge)
		if ok {
			u.Reason = nest.StockUsedUp
		}
		return ok
	}},
	{"used up called too large", `called too large`, func(v *victim) bool {
		v.unlimited()
		u, ok := v.unplaced(nest.StockUsedUp)
		if ok {
			u.Reason = nest.TooLarge
		}
		return ok
	}},
	{"used up of unlimited stock", `of which some is left`, func(v *victim) bool {
		v.unlimited()
		u, ok := v.unplaced(nest.StockUsedUp)
		if ok {
			v.problem.Stock[v.problem.Blanks[u.Blank].From[0].Stock].Count = 0
		}
		return ok
	}},
	{"used up with a piece to spare", `of which some is left`, func(v *victim) bool {
		v.unlimited()
		u, ok := v.unplaced(nest.StockUsedUp)
		if ok {
			v.problem.Stock[v.problem.Blanks[u.Blank].From[0].Stock].Count++
		}
		return ok
	}},
	{"an unknown reason", `which is unknown`, func(v *victim) bool {
		if v.plan.Complete() {
			return false
		}
		v.plan.Unplaced[0].Reason = 7
		return true
	}},
}
