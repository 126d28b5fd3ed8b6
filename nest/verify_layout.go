package nest

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// inspection walks the tree of one layout from the whole piece down, as the saw does.
type inspection struct {
	problem    Problem
	stock      Stock
	index      int      // of stock
	parts      []int    // the blank of every part met
	area       *big.Int // of parts, offcuts, waste and kerf met
	violations []string
}

// inspect checks one piece of stock that is divided as root says. It assumes only that the
// index is valid.
func inspect(p Problem, stock int, root Node) inspection {
	in := inspection{problem: p, stock: p.Stock[stock], index: stock, area: new(big.Int)}
	in.root(root)
	in.account()
	return in
}

// report names a node by its path from the root.
func (in *inspection) report(path []int, format string, args ...any) {
	at := "root"
	if len(path) > 0 {
		steps := make([]string, len(path))
		for i, child := range path {
			steps[i] = strconv.Itoa(child)
		}
		at = "node " + strings.Join(steps, ".")
	}
	in.violations = append(in.violations, at+": "+fmt.Sprintf(format, args...))
}

func (in *inspection) root(n Node) {
	usable := in.stock.Usable()
	if n.Length != usable.Length || n.Width != usable.Width {
		in.report(nil, "%d x %d, stock %d less its trim is %d x %d",
			n.Length, n.Width, in.index, usable.Length, usable.Width)
	}
	if n.Length < 1 || n.Width < 1 {
		in.report(nil, "%d x %d is no piece", n.Length, n.Width)
		return
	}
	if first := in.stock.FirstCut; n.Use == Split && first != AnyCut && n.Cut != first {
		in.report(nil, "the first cut is a %s, stock %d asks for a %s", cutWord(n.Cut), in.index, cutWord(first))
	}
	in.alone(n)
	in.node(n, nil, AnyCut, corner{in.stock.TrimLength, in.stock.TrimWidth})
}

// corner is where a node begins, measured from the reference corner of the untrimmed stock.
type corner struct{ along, across int64 }

// node checks a node of positive size, in its place, that came off a cut in direction under.
func (in *inspection) node(n Node, path []int, under Cut, at corner) {
	if under == Rip && n.Use != Waste && n.Width < in.stock.NarrowestRip {
		in.report(path, "ripped %d wide, the narrowest rip is %d", n.Width, in.stock.NarrowestRip)
	}
	if n.Use == Split {
		in.split(n, path, under, at)
		return
	}
	if len(n.Children) > 0 {
		in.report(path, "has children, but is no split")
	}
	switch n.Use {
	case Part:
		in.part(n, path)
		in.clear(n, path, at)
	case Offcut, Waste:
		in.leftover(n, path, at)
		in.clear(n, path, at)
	default:
		in.report(path, "use %d is unknown", n.Use)
	}
	in.area.Add(in.area, exact(n.Length, n.Width))
}

// part checks the size and orientation of n against its blank.
func (in *inspection) part(n Node, path []int) {
	if n.Blank < 0 || n.Blank >= len(in.problem.Blanks) {
		in.report(path, "blank %d, there are %d", n.Blank, len(in.problem.Blanks))
		return
	}
	in.parts = append(in.parts, n.Blank)
	blank := in.problem.Blanks[n.Blank]
	length, width, orientations := blank.Length, blank.Width, "upright"
	if n.Turned {
		length, width, orientations = blank.Width, blank.Length, "turned"
	}
	if n.Length != length || n.Width != width {
		in.report(path, "%d x %d, blank %d %s is %d x %d", n.Length, n.Width, n.Blank, orientations, length, width)
	}
	for _, from := range blank.From {
		if from.Stock == in.index && (n.Turned && from.Turned || !n.Turned && from.Upright) {
			return
		}
	}
	in.report(path, "blank %d may not come %s from stock %d", n.Blank, orientations, in.index)
}

// defect returns the first defect that a node holds some of, or -1.
func (in *inspection) defect(n Node, at corner) int {
	for i, d := range in.stock.Defects {
		apart := d.X-at.along >= n.Length || at.along-d.X >= d.Length || d.Y-at.across >= n.Width || at.across-d.Y >= d.Width
		if !apart {
			return i
		}
	}
	return -1
}

// clear refuses a defect in what is used or kept.
func (in *inspection) clear(n Node, path []int, at corner) {
	if i := in.defect(n, at); i >= 0 && n.Use != Waste {
		in.report(path, "a part or an offcut at %d, %d holds some of defect %d of stock %d", at.along, at.across, i, in.index)
	}
}

func (in *inspection) leftover(n Node, path []int, at corner) {
	keep := in.problem.Keep
	worthKeeping := n.Length >= keep.Length && n.Width >= keep.Width
	if n.Use == Waste && worthKeeping && in.defect(n, at) < 0 {
		in.report(path, "%d x %d is called waste, from %d x %d on it is an offcut", n.Length, n.Width, keep.Length, keep.Width)
	}
	if n.Use == Offcut && !worthKeeping {
		in.report(path, "%d x %d is called an offcut, under %d x %d it is waste", n.Length, n.Width, keep.Length, keep.Width)
	}
}

func (in *inspection) split(n Node, path []int, under Cut, at corner) {
	if n.Cut != Rip && n.Cut != Crosscut {
		in.report(path, "a split by cut %d, which is neither rip nor crosscut", n.Cut)
		return
	}
	if n.Cut == under {
		in.report(path, "a %s within a %s: levels of cuts alternate", cutWord(n.Cut), cutWord(under))
	}
	// Each split on the path is a level. Deeper ones are not reported again.
	if level := len(path) + 1; in.problem.Stages > 0 && level == in.problem.Stages+1 {
		in.report(path, "cuts at level %d, %d are allowed", level, in.problem.Stages)
	}
	if !in.inside(n, path) {
		return
	}
	in.fill(n, path)
	in.runs(n, path)
	for i, child := range n.Children {
		in.node(child, append(path, i), n.Cut, at)
		if n.Cut == Rip {
			at.across += child.Width + in.problem.Kerf
		} else {
			at.along += child.Length + in.problem.Kerf
		}
	}
}

// inside reports whether cuts in direction n.Cut can give every child: as large as n across,
// and smaller along. The walk continues in such children only. They shrink with every level, so
// it ends even if the slices of a broken plan contain themselves.
func (in *inspection) inside(n Node, path []int) bool {
	if len(n.Children) == 0 {
		in.report(path, "a split without children")
		return false
	}
	sound := true
	along, across := measured(n, n.Cut)
	for i, child := range n.Children {
		a, c := measured(child, n.Cut)
		var wrong string
		switch {
		case a < 1 || c < 1:
			wrong = "is no piece"
		case c != across:
			wrong = fmt.Sprintf("measures %d across the cuts, its parent %d", c, across)
		case a >= along:
			wrong = fmt.Sprintf("takes %d of its parent's %d: no cut frees it", a, along)
		default:
			continue
		}
		in.report(append(path, i), "%d x %d %s", child.Length, child.Width, wrong)
		sound = false
	}
	return sound
}

// fill adds up the children from the reference edge, with a kerf before each but the first.
// They end at the far edge. Or the blade of one more cut, after a part or a split, takes the
// rest and runs off the edge.
func (in *inspection) fill(n Node, path []int) {
	kerf := in.problem.Kerf
	rest, across := measured(n, n.Cut)
	for i, child := range n.Children {
		if i > 0 {
			rest -= kerf
			in.area.Add(in.area, exact(kerf, across))
		}
		taken, _ := measured(child, n.Cut)
		if taken > rest {
			in.report(path, "child %d takes %d, behind the children and kerfs before it %d are left", i, taken, rest)
			return
		}
		rest -= taken
	}
	last := n.Children[len(n.Children)-1]
	switch {
	case rest == 0:
	case rest > kerf:
		in.report(path, "%d are missing behind the last child, a kerf takes %d", rest, kerf)
	case last.Use != Part && last.Use != Split:
		in.report(path, "the last child is a leftover and ends %d before the edge, where no cut is made", rest)
	default:
		in.area.Add(in.area, exact(rest, across))
	}
}

// measured returns n's size in the direction that cut divides, and in the other.
func measured(n Node, cut Cut) (along, across int64) {
	if cut == Rip {
		return n.Width, n.Length
	}
	return n.Length, n.Width
}

func cutWord(c Cut) string {
	switch c {
	case Rip:
		return "rip"
	case Crosscut:
		return "crosscut"
	}
	return fmt.Sprintf("cut %d", int(c))
}

// account compares areas: parts, offcuts, waste, kerf and trim add up to the stock. The other
// rules imply it; the sum is a second check.
func (in *inspection) account() {
	s := in.stock
	ends := exact(2, s.TrimLength, s.Width)
	edges := exact(2, s.TrimWidth, s.Length-2*s.TrimLength)
	sum := new(big.Int).Add(ends, edges)
	sum.Add(sum, in.area)
	if whole := exact(s.Length, s.Width); sum.Cmp(whole) != 0 {
		in.report(nil, "parts, offcuts, waste, kerf and trim have an area of %v, the stock of %v", sum, whole)
	}
}
