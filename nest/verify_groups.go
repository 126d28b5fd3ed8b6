package nest

// groupOf returns the group of a blank, or -1.
func (p Problem) groupOf(blank int) int {
	for i, g := range p.Groups {
		for _, b := range g.Blanks {
			if b == blank {
				return i
			}
		}
	}
	return -1
}

// runs checks that the grouped blanks among the children of a split are whole runs: one child
// after another, in order, all lying the same way, and divided in the direction of the run.
// fill sees to the one kerf between them.
func (in *inspection) runs(n Node, path []int) {
	for i := 0; i < len(n.Children); i++ {
		c := n.Children[i]
		if c.Use != Part {
			continue
		}
		group := in.problem.groupOf(c.Blank)
		if group < 0 {
			continue
		}
		if length := in.runAt(n, i, in.problem.Groups[group]); length > 0 {
			i += length - 1
		} else {
			in.report(append(path, i), "blank %d is not within a run of group %d", c.Blank, group)
		}
	}
}

// runAt returns the length of the run of g that begins with child i of n; 0 if there is none.
func (in *inspection) runAt(n Node, i int, g Group) int {
	along := Rip
	if g.Lengthwise != n.Children[i].Turned {
		along = Crosscut
	}
	if n.Cut != along {
		return 0
	}
	for m, b := range g.Blanks {
		if i+m >= len(n.Children) {
			return 0
		}
		c := n.Children[i+m]
		if c.Use != Part || c.Blank != b || c.Turned != n.Children[i].Turned {
			return 0
		}
	}
	return len(g.Blanks)
}

// alone refuses a part that is a whole piece, if it belongs in a run.
func (in *inspection) alone(n Node) {
	if n.Use != Part {
		return
	}
	if group := in.problem.groupOf(n.Blank); group >= 0 {
		in.report(nil, "blank %d is not within a run of group %d", n.Blank, group)
	}
}

// groupReason is reason for a blank in a group, of which the run as a whole counts. Only where
// no rule limits the cuts does it see whether a run could still be cut.
func (v *verifier) groupReason(i int, u Unplaced, g Group) {
	fits, possible := false, false
	for s, st := range v.problem.Stock {
		for _, turned := range []bool{false, true} {
			if !v.runFits(s, g, turned) {
				continue
			}
			fits = true
			free := v.problem.Stages == 0 && st.FirstCut == AnyCut && st.NarrowestRip <= 0 && len(st.Defects) == 0
			possible = possible || free && v.left(s)
		}
	}
	switch {
	case u.Reason < TooLarge || u.Reason > AgainstRules:
		v.report("unplaced %d: blank %d has reason %d, which is unknown", i, u.Blank, u.Reason)
	case possible:
		v.report("unplaced %d: the run of blank %d can be cut from stock of which some is left", i, u.Blank)
	case fits && u.Reason == TooLarge:
		v.report("unplaced %d: the run of blank %d is called too large, but is no larger than a stock it may come from", i, u.Blank)
	case !fits && u.Reason != TooLarge:
		v.report("unplaced %d: the run of blank %d is larger than any stock it may come from, another reason is given", i, u.Blank)
	}
}

// runFits reports whether every blank of g may lie so in a stock, and all of them with the kerfs
// between are no larger than it.
func (v *verifier) runFits(stock int, g Group, turned bool) bool {
	var along, across int64
	for n, b := range g.Blanks {
		if b < 0 || b >= len(v.problem.Blanks) {
			return false
		}
		blank, may := v.problem.Blanks[b], false
		for _, from := range blank.From {
			may = may || from.Stock == stock && (turned && from.Turned || !turned && from.Upright)
		}
		if !may {
			return false
		}
		if n > 0 {
			along += v.problem.Kerf
		}
		if g.Lengthwise {
			along, across = along+blank.Length, blank.Width
		} else {
			along, across = along+blank.Width, blank.Length
		}
	}
	usable := v.problem.Stock[stock].Usable()
	if g.Lengthwise != turned {
		return along <= usable.Length && across <= usable.Width
	}
	return along <= usable.Width && across <= usable.Length
}
