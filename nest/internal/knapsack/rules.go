package knapsack

import "sawbill/nest/internal/instance"

// Rules restrict the cuts, as those of an [instance.Instance] and its stock do.
type Rules struct {
	Stages       int          // maximum number of levels of cuts
	FirstCut     instance.Dir // of the first level; None if free
	NarrowestRip int64        // minimum width off a rip; leftovers are exempt
}

// none reports whether stages and first cut are free.
func (r Rules) none() bool { return r.Stages >= instance.NoLimit && r.FirstCut == instance.None }

// orientations returns those in which an item fits the stock. A square has one.
//
// An item narrower than the narrowest rip comes off no rip, so it must be as wide as the stock.
// That is all the rule asks for: a rectangle is at least as wide as its items.
func (r Rules) orientations(it Item, l, w int64) instance.Orientation {
	fits := func(length, width int64) bool {
		return length <= l && (width == w || width < w && width >= r.NarrowestRip)
	}
	orientations := it.Orientations
	if !fits(it.L, it.W) {
		orientations &^= instance.Upright
	}
	if !fits(it.W, it.L) || it.L == it.W && orientations&instance.Upright != 0 {
		orientations &^= instance.Turned
	}
	return orientations
}

// cuts describes the cuts inside a rectangle.
type cuts struct {
	levels int32
	dir    instance.Dir // of the first level; None for an item
}

// under returns the number of levels below a cut in direction dir that frees the rectangle. A
// first level in that direction is part of it. With slack across the cut, items as wide as the
// rectangle must be trimmed; a first level in the other direction does that too.
func (c *cuts) under(dir instance.Dir, slack bool) int32 {
	levels := c.levels
	if c.dir == dir {
		levels--
	}
	if slack {
		return max(levels, 1)
	}
	return levels
}

// noDeeper reports whether c in place of o gives no pattern more levels, if c holds the same
// and is no larger. A smaller c has slack that o lacks. That matters only if o comes with no
// level at all; but then o is full of items, and nothing smaller holds them.
func (c *cuts) noDeeper(o *cuts) bool {
	return c.under(instance.Crosscut, false) <= o.under(instance.Crosscut, false) &&
		c.under(instance.Rip, false) <= o.under(instance.Rip, false)
}

// beginsWith reports whether the stock's first cut can have the prescribed direction, for a
// rectangle that leaves restL and restW.
func (r Rules) beginsWith(c *cuts, restL, restW int64) bool {
	return r.FirstCut == instance.None || c.dir == r.FirstCut ||
		r.FirstCut == instance.Crosscut && restL > 0 || r.FirstCut == instance.Rip && restW > 0 ||
		c.dir == instance.None && restL == 0 && restW == 0
}

// allow reports whether a rectangle alone is a pattern of the stock.
func (r Rules) allow(c *cuts, restL, restW int64) bool {
	if r.none() {
		return true
	}
	dir := r.first(c, restL, restW)
	slack := restW > 0
	if dir == instance.Rip {
		slack = restL > 0
	}
	return dir == instance.None || r.beginsWith(c, restL, restW) && 1+int(c.under(dir, slack)) <= r.Stages
}

// first returns the direction of the stock's first cut for a rectangle; None for an item that
// is as large as the stock.
func (r Rules) first(c *cuts, restL, restW int64) instance.Dir {
	switch {
	case c.dir == instance.None && restL == 0 && restW == 0:
		return instance.None
	case r.FirstCut != instance.None:
		return r.FirstCut
	case c.dir != instance.None:
		return c.dir
	case restL > 0:
		return instance.Crosscut
	}
	return instance.Rip
}
