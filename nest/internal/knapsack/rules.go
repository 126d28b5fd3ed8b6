package knapsack

import "sawbill/nest/internal/instance"

// Rules restrict how the stock is cut, as those of an [instance.Instance] and
// its stock do.
type Rules struct {
	Stages       int          // the greatest number of levels of cuts
	FirstCut     instance.Dir // of the first level; None if free
	NarrowestRip int64        // least width off a rip; rests are exempt
}

// none reports whether every way to cut is as good as another.
func (r Rules) none() bool { return r.Stages >= instance.NoLimit && r.FirstCut == instance.None }

// orientations is how an item may lie and fits the stock. A square lies one way.
//
// What is narrower than the narrowest rip comes off no rip, however it is
// combined, so that it must be as wide as the stock. Nothing else has to be
// said of that rule: a rectangle is no narrower than what is in it.
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

// cuts says how a rectangle is cut into items.
type cuts struct {
	levels int32
	dir    instance.Dir // of the first level; None for an item
}

// under is the number of levels below a cut in direction dir that frees the
// rectangle. Where it is cut in that direction itself its parts are freed at
// once. With slack, across the cut, items that were as wide as the rectangle
// must be trimmed; a first level in the other direction does that too.
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

// noDeeper reports whether c, in the place of o, brings no more levels in any
// pattern, where c holds the same and is no larger. If it is smaller it has
// slack that o has not; but that matters only where o comes with no level at
// all, and then o is full of items and nothing that holds the same is smaller.
func (c *cuts) noDeeper(o *cuts) bool {
	return c.under(instance.Crosscut, false) <= o.under(instance.Crosscut, false) &&
		c.under(instance.Rip, false) <= o.under(instance.Rip, false)
}

// beginsWith reports whether the first cut of the stock can have the direction
// it must have, for a rectangle that leaves so much.
func (r Rules) beginsWith(c *cuts, restL, restW int64) bool {
	return r.FirstCut == instance.None || c.dir == r.FirstCut ||
		r.FirstCut == instance.Crosscut && restL > 0 || r.FirstCut == instance.Rip && restW > 0 ||
		c.dir == instance.None && restL == 0 && restW == 0
}

// allow reports whether a rectangle may be all that is cut of the stock.
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

// first is the direction in which the stock is cut first for a rectangle; None
// for an item that is all of it.
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
