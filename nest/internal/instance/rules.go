package instance

// Allows reports whether a divided piece of stock obeys the limit on levels of cuts, the
// direction of the first level, and the narrowest rip, and can be arranged around defects.
func (in *Instance) Allows(stock int, root Piece) bool {
	st := in.Stock[stock]
	first := root.Dir
	if len(root.Children) == 0 {
		first = in.runIn(root)
	}
	if first != None && st.FirstCut != None && first != st.FirstCut {
		return false
	}
	if !in.allows(st, root, 0, None) {
		return false
	}
	_, ok := in.Arrange(stock, root)
	return ok
}

// runIn returns the direction of the cuts that divide a leaf; None if there are none.
func (in *Instance) runIn(leaf Piece) Dir {
	if leaf.isLeftover() {
		return None
	}
	return in.Kinds[leaf.Kind].RunIn(leaf.Turned)
}

// allows checks a piece at a level, under a split in direction over. The blanks of a run in the
// direction of the split are cut at its level.
func (in *Instance) allows(st Stock, p Piece, level int, over Dir) bool {
	if len(p.Children) == 0 {
		run := in.runIn(p)
		return run == None || run == over || level < in.Stages
	}
	if level == in.Stages {
		return false
	}
	for _, c := range p.Children {
		if p.Dir == Rip && c.W < st.NarrowestRip && !c.isLeftover() || !in.allows(st, c, level+1, p.Dir) {
			return false
		}
	}
	return true
}

// DropExcess returns p with parts beyond the demand turned into leftovers. counts holds the
// parts placed so far, per kind, and is updated.
func (in *Instance) DropExcess(p Piece, counts []int) Piece {
	if len(p.Children) > 0 {
		children := make([]Piece, len(p.Children))
		for i, c := range p.Children {
			children[i] = in.DropExcess(c, counts)
		}
		p.Children = children
		return p
	}
	if p.Kind != Leftover {
		if counts[p.Kind] == in.Kinds[p.Kind].Demand {
			return Piece{L: p.L, W: p.W, Kind: Leftover}
		}
		counts[p.Kind]++
	}
	return p
}

// CountParts adds the parts of p to counts.
func (p Piece) CountParts(counts []int) {
	for _, c := range p.Children {
		c.CountParts(counts)
	}
	if len(p.Children) == 0 && p.Kind != Leftover {
		counts[p.Kind]++
	}
}
