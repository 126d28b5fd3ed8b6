package nest_test

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"sawbill/nest"
)

func TestVerifyAcceptsPlansThatAreRightByConstruction(t *testing.T) {
	for seed := range uint64(2000) {
		p, plan := randomPlan(seed)
		if err := nest.Verify(p, plan); err != nil {
			t.Fatalf("seed %d: %v\n%+v\n%+v", seed, err, p, plan)
		}
	}
}

// randomPlan cuts a few pieces of stock up at random and then wants what came
// off, so that the plan is right by construction. Equal seeds give equal plans.
func randomPlan(seed uint64) (nest.Problem, nest.Plan) {
	g := &generator{Rand: rand.New(rand.NewPCG(seed, 1))}
	g.problem.Kerf = g.Int64N(5)
	g.problem.Keep = nest.Size{Length: g.maybe(12), Width: g.maybe(12)}
	for range 1 + g.IntN(3) {
		s := nest.Stock{TrimLength: g.maybe(3), TrimWidth: g.maybe(3), Price: g.Int64N(10)}
		s.Length = 2*s.TrimLength + 1 + g.Int64N(50)
		s.Width = 2*s.TrimWidth + 1 + g.Int64N(30)
		if s.OnHand = g.IntN(4) == 0; s.OnHand {
			s.Price = 0
		}
		g.problem.Stock = append(g.problem.Stock, s)
	}
	for range 1 + g.IntN(4) {
		g.layout()
	}
	g.limit()
	g.wantWhatWasCut()
	g.wantMore()
	g.priceIt()
	return g.problem, g.plan
}

type generator struct {
	*rand.Rand
	problem nest.Problem
	plan    nest.Plan
	stock   int // of the layout at work
}

// maybe is 0 half of the time, else 1 to most.
func (g *generator) maybe(most int64) int64 {
	if g.IntN(2) == 0 {
		return 0
	}
	return 1 + g.Int64N(most)
}

func (g *generator) layout() {
	g.stock = g.IntN(len(g.problem.Stock))
	usable := g.problem.Stock[g.stock].Usable()
	root := g.piece(usable, nest.AnyCut, g.IntN(5), true)
	if !holdsPart(root) {
		root = g.part(usable)
	}
	for i := range g.plan.Layouts {
		if l := &g.plan.Layouts[i]; l.Stock == g.stock && reflect.DeepEqual(l.Root, root) {
			l.Repeat++
			return
		}
	}
	g.plan.Layouts = append(g.plan.Layouts, nest.Layout{Stock: g.stock, Repeat: 1 + g.IntN(3), Root: root})
}

// piece is what becomes of a piece that came off a cut in direction under.
func (g *generator) piece(size nest.Size, under nest.Cut, levels int, mayBeLeft bool) nest.Node {
	cut := nest.Rip
	if under == nest.Rip || under == nest.AnyCut && g.IntN(2) == 0 {
		cut = nest.Crosscut
	}
	along := size.Length
	if cut == nest.Rip {
		along = size.Width
	}
	switch {
	case levels > 0 && along > 1 && g.IntN(4) > 0:
		return nest.Node{Length: size.Length, Width: size.Width, Use: nest.Split, Cut: cut, Children: g.saw(size, along, cut, levels)}
	case mayBeLeft && g.IntN(3) == 0:
		return g.leftover(size)
	}
	return g.part(size)
}

// saw takes pieces off until the end is reached, or the blade runs off it.
func (g *generator) saw(size nest.Size, along int64, cut nest.Cut, levels int) []nest.Node {
	var children []nest.Node
	take := func(amount int64, mayBeLeft bool) {
		child := nest.Size{Length: amount, Width: size.Width}
		if cut == nest.Rip {
			child = nest.Size{Length: size.Length, Width: amount}
		}
		children = append(children, g.piece(child, cut, levels-1, mayBeLeft))
	}
	for rest := along; ; {
		amount := 1 + g.Int64N(rest)
		if len(children) == 0 {
			amount = 1 + g.Int64N(rest-1)
		}
		switch after := rest - amount; {
		case after == 0:
			take(amount, true)
			return children
		case after <= g.problem.Kerf:
			take(amount, false)
			return children
		default:
			take(amount, true)
			rest = after - g.problem.Kerf
		}
	}
}

func (g *generator) leftover(size nest.Size) nest.Node {
	if size.Length >= g.problem.Keep.Length && size.Width >= g.problem.Keep.Width {
		return offcut(size.Length, size.Width)
	}
	return waste(size.Length, size.Width)
}

// part makes size a blank, or one more of a blank there is already.
func (g *generator) part(size nest.Size) nest.Node {
	n := nest.Node{Length: size.Length, Width: size.Width, Use: nest.Part, Turned: g.IntN(3) == 0}
	if n.Turned {
		size.Length, size.Width = size.Width, size.Length
	}
	for n.Blank = range g.problem.Blanks {
		if b := g.problem.Blanks[n.Blank]; b.Length == size.Length && b.Width == size.Width && g.IntN(4) > 0 {
			g.allow(n.Blank, g.stock, n.Turned)
			return n
		}
	}
	n.Blank = len(g.problem.Blanks)
	g.problem.Blanks = append(g.problem.Blanks, nest.Blank{Length: size.Length, Width: size.Width})
	g.allow(n.Blank, g.stock, n.Turned)
	return n
}

func (g *generator) allow(blank, stock int, turned bool) {
	b := &g.problem.Blanks[blank]
	i := 0
	for i < len(b.From) && b.From[i].Stock != stock {
		i++
	}
	if i == len(b.From) {
		b.From = append(b.From, nest.Source{Stock: stock})
	}
	if turned {
		b.From[i].Turned = true
	} else {
		b.From[i].Upright = true
	}
}

// limit sets limits that the cuts made happen to keep, often only just.
func (g *generator) limit() {
	deepest := 0
	for s := range g.problem.Stock {
		stock := &g.problem.Stock[s]
		narrowest, taken := int64(100), 0
		first := map[nest.Cut]bool{}
		for _, l := range g.plan.Layouts {
			if l.Stock != s {
				continue
			}
			taken += l.Repeat
			if l.Root.Use == nest.Split {
				first[l.Root.Cut] = true
			}
			for _, at := range sitesOf(&l.Root) {
				deepest = max(deepest, at.level)
				if at.parent != nil && at.parent.Cut == nest.Rip && at.node.Use != nest.Waste {
					narrowest = min(narrowest, at.node.Width)
				}
			}
		}
		if g.IntN(2) == 0 {
			stock.NarrowestRip = g.Int64N(narrowest + 1)
		}
		if g.IntN(2) == 0 {
			stock.Count = taken + g.IntN(2)
		}
		if len(first) == 1 && g.IntN(2) == 0 {
			for cut := range first {
				stock.FirstCut = cut
			}
		}
	}
	if g.IntN(2) == 0 {
		g.problem.Stages = deepest + g.IntN(2)
	}
}

func (g *generator) wantWhatWasCut() {
	for _, l := range g.plan.Layouts {
		for _, at := range sitesOf(&l.Root) {
			if at.node.Use == nest.Part {
				g.problem.Blanks[at.node.Blank].Count += l.Repeat
			}
		}
	}
}

// wantMore adds blanks that cannot be cut: more of those whose stock is used
// up, and some that are larger than any stock.
func (g *generator) wantMore() {
	for i := range g.problem.Blanks {
		b := &g.problem.Blanks[i]
		usedUp := true
		for _, from := range b.From {
			stock := g.problem.Stock[from.Stock]
			usedUp = usedUp && stock.Count > 0 && stock.Count == taken(g.plan, from.Stock)
		}
		if more := g.IntN(3); usedUp && more > 0 {
			b.Count += more
			g.plan.Unplaced = append(g.plan.Unplaced, nest.Unplaced{Blank: i, Count: more, Reason: nest.StockUsedUp})
		}
	}
	if g.IntN(3) == 0 {
		large := either(want(1+g.IntN(3), 1+g.Int64N(90), 60+g.Int64N(9), 0))
		g.plan.Unplaced = append(g.plan.Unplaced, nest.Unplaced{Blank: len(g.problem.Blanks), Count: large.Count, Reason: nest.TooLarge})
		g.problem.Blanks = append(g.problem.Blanks, large)
	}
}

func (g *generator) priceIt() {
	for s, stock := range g.problem.Stock {
		g.plan.Cost += stock.Price * int64(taken(g.plan, s))
	}
	g.plan.Bound = g.Int64N(g.plan.Cost + 1)
	if !g.plan.Complete() {
		g.plan.Bound += g.Int64N(100)
	}
}

func taken(plan nest.Plan, stock int) int {
	sum := 0
	for _, l := range plan.Layouts {
		if l.Stock == stock {
			sum += l.Repeat
		}
	}
	return sum
}

// site is a node and where it is: the child numbered index of parent.
type site struct {
	node, parent *nest.Node
	index        int
	level        int // splits from the root down to node, itself included
}

// sitesOf lists root and all below it.
func sitesOf(root *nest.Node) []site {
	var sites []site
	var visit func(site)
	visit = func(at site) {
		if at.node.Use == nest.Split {
			at.level++
		}
		sites = append(sites, at)
		for i := range at.node.Children {
			visit(site{&at.node.Children[i], at.node, i, at.level})
		}
	}
	visit(site{node: root})
	return sites
}

func holdsPart(root nest.Node) bool {
	for _, at := range sitesOf(&root) {
		if at.node.Use == nest.Part {
			return true
		}
	}
	return false
}
