// Package setcover solves set covering by branch and bound. It decides whether given numbers of
// pieces of each stock can meet the demand, with patterns from a list.
//
// A search is depth first with an LP relaxation at each node, for a proof, or restarts at
// random, for a solution only: Gomes, Selman and Kautz, AAAI 1998. At the root it may add
// {0,1/2}-Chvatal-Gomory cuts: Caprara and Fischetti, Math. Program. 74, 1996. From memory.
package setcover

import (
	"slices"

	"sawbill/nest/internal/halt"
)

// Pattern is a way to cut one piece of a stock.
type Pattern struct {
	Stock  int
	Counts []Count
}

// NewPattern returns the pattern of a stock that holds so many parts of each kind.
func NewPattern(stock int, counts []int) Pattern {
	kinds := 0
	for _, n := range counts {
		kinds += min(n, 1)
	}
	p := Pattern{Stock: stock, Counts: make([]Count, 0, kinds)}
	for k, n := range counts {
		if n > 0 {
			p.Counts = append(p.Counts, Count{Kind: k, Times: n})
		}
	}
	return p
}

// Count is how often a pattern holds a kind.
type Count struct{ Kind, Times int }

// Search works in portions and takes the same course on every machine.
//
// At every node the LP relaxation gives duals. They prune the node, or exclude patterns whose
// reduced cost exceeds the slack. Before, the duals of the last node at the same depth are
// tried.
//
// Every solution covers the kind that the fewest patterns hold, so the search branches on the
// patterns that hold it. A pattern whose branch has no solution is excluded from the branches
// after it. Nodes without a solution are kept as nogoods.
type Search struct {
	// Halt makes Advance return soon, though there is work left.
	Halt halt.Signal

	patterns []Pattern
	prices   []Prices
	stack    []node
	depth    int // index of the present node in stack
	opened   bool
	nogoods  nogoods
	outcome  outcome
	chosen   []int

	contrib     []int // per count of the present pattern: what it adds to the cover
	coverers    []int // per kind: the patterns that hold it
	maxContrib  []int // per kind and stock: the most that a pattern adds
	losses      []int64
	rows        []int  // of a relaxation, per kind
	inLP        []bool // per option: it is a column of the relaxation
	inSupport   []bool // per pattern; used while a relaxation starts
	entering    []enteringOption
	relaxations int          // solved so far
	rootCuts    zeroHalfCuts // cuts that the root begins with
	randomized  *randomized
}

type outcome uint8

const (
	searching outcome = iota
	solved
	infeasible
)

// node is a residual problem and its branches.
type node struct {
	demand     []int     // per kind
	pieces     []int     // per stock
	prices     []*Prices // those of the search, then those of the last relaxation
	slack      []int64   // per prices: what patterns may lose in all
	lpPrices   Prices
	parity     uint64         // a bit for each cut of the last prices with odd demand
	support    []supportEntry // of the last relaxation, here or in an ancestor
	options    []option       // patterns that may be in a solution, the branches first
	branches   int            // how many options are branches
	nextBranch int            // the branch to try next
}

type option struct {
	pattern int32
	loss    int64 // by the last prices
}

func optionOf(pattern int) option { return option{pattern: int32(pattern)} }

// supportEntry is a pattern in the solution of a relaxation.
type supportEntry struct {
	pattern int32
	times   float64
}

// New returns a search for a cover of demand by pieces of stock. The patterns must include
// every pattern that may be part of a solution, or one that dominates it. There must be prices;
// the first should leave the least slack. No number of parts or pieces may exceed 65,535.
func New(demand, pieces []int, patterns []Pattern, prices []Prices) *Search {
	s := &Search{
		patterns: patterns, prices: prices,
		nogoods:    newNogoods(len(demand) + len(pieces)),
		coverers:   make([]int, len(demand)),
		maxContrib: make([]int, len(demand)*len(pieces)),
		losses:     make([]int64, len(prices)+1),
		rows:       make([]int, len(demand)),
		inSupport:  make([]bool, len(patterns)),
	}
	nd := s.nodeAt(0)
	nd.demand = append(nd.demand[:0], demand...)
	nd.pieces = append(nd.pieces[:0], pieces...)
	for i := range prices {
		slack := prices[i].Slack(demand, pieces)
		nd.prices = append(nd.prices, &prices[i])
		nd.slack = append(nd.slack, slack)
		if slack < 0 {
			s.outcome = infeasible
		}
	}
	return s
}

// inheritedCuts returns the cuts of a node's last prices that have odd demand.
func (s *Search) inheritedCuts(nd *node) zeroHalfCuts {
	last := &s.rootCuts
	if len(nd.prices) > len(s.prices) {
		last = &nd.prices[len(s.prices)].cuts
	}
	cuts := zeroHalfCuts{size: last.size, members: make([]uint64, len(nd.demand))}
	copy(cuts.members, last.members)
	cuts.retain(last.parity(nd.demand))
	return cuts
}

// WarmStart sets the patterns and the cuts, or nil, that the root's relaxation begins with.
func (s *Search) WarmStart(patterns []int, cuts *Cuts) {
	if cuts != nil {
		s.rootCuts = cuts.clone()
	}
	nd := &s.stack[0]
	nd.support = nd.support[:0]
	for _, n := range patterns {
		nd.support = append(nd.support, supportEntry{pattern: int32(n)})
	}
}

// Support returns the patterns in the solution of the root's relaxation; before it, those of
// WarmStart.
func (s *Search) Support() (patterns []int) {
	for _, u := range s.stack[0].support {
		patterns = append(patterns, int(u.pattern))
	}
	return patterns
}

// Solution returns the patterns of a solution, if there is one. They may exceed the demand.
func (s *Search) Solution() (patterns []int, ok bool) { return s.chosen, s.outcome == solved }

// Infeasible reports whether it is proven that there is no solution.
func (s *Search) Infeasible() bool { return s.outcome == infeasible }

// Advance takes about work steps more. It returns the rest of work, which may be negative, and
// whether the search has ended.
func (s *Search) Advance(work int64) (left int64, done bool) {
	for work > 0 && s.outcome == searching && !s.Halt.On() {
		switch {
		case s.randomized != nil:
			work -= s.randomizedStep()
		case !s.opened:
			work -= s.openRoot()
		default:
			work -= s.branch()
		}
	}
	return work, s.outcome != searching
}

// openRoot expands the root.
func (s *Search) openRoot() (work int64) {
	s.opened = true
	all := make([]option, len(s.patterns))
	for n := range all {
		all[n] = optionOf(n)
	}
	return s.expand(0, all)
}

// branch tries the next branch of the present node.
func (s *Search) branch() (work int64) {
	nd := &s.stack[s.depth]
	if nd.nextBranch == nd.branches {
		s.nogoods.add(nd.demand, nd.pieces)
		if s.depth == 0 {
			s.outcome = infeasible
			return 1
		}
		s.depth--
		s.stack[s.depth].nextBranch++
		if s.hasCallback() && s.depth > 0 {
			return s.restart()
		}
		return int64(len(nd.demand))
	}
	child := s.nodeAt(s.depth + 1)
	nd = &s.stack[s.depth]
	p := &s.patterns[nd.options[nd.nextBranch].pattern]
	s.affordable(nd, p)
	child.demand = append(child.demand[:0], nd.demand...)
	child.pieces = append(child.pieces[:0], nd.pieces...)
	child.prices = append(child.prices[:0], nd.prices...)
	child.slack = child.slack[:0]
	child.support = append(child.support[:0], nd.support...)
	for i, slack := range nd.slack {
		child.slack = append(child.slack, slack-s.losses[i])
	}
	child.pieces[p.Stock]--
	left := 0
	for n, c := range p.Counts {
		child.demand[c.Kind] -= s.contrib[n]
	}
	for _, n := range child.demand {
		left += n
	}
	work = int64(2 * len(nd.demand))
	switch {
	case left == 0:
		s.outcome = solved
		for i := range s.depth + 1 {
			s.chosen = append(s.chosen, int(s.stack[i].options[s.stack[i].nextBranch].pattern))
		}
	case s.nogoods.has(child.demand, child.pieces):
		nd.nextBranch++
	default:
		s.depth++
		work += s.expand(s.depth, nd.options[nd.nextBranch:])
	}
	return work
}

// nodeAt returns the node at a depth.
func (s *Search) nodeAt(depth int) *node {
	if depth == len(s.stack) {
		s.stack = append(s.stack, node{})
	}
	return &s.stack[depth]
}

// affordable computes what a pattern adds to the cover, and what it loses by each of the
// prices. It is not ok, and incomplete, if a loss exceeds the slack.
func (s *Search) affordable(nd *node, p *Pattern) (ok bool) {
	s.contrib = s.contrib[:0]
	for _, c := range p.Counts {
		s.contrib = append(s.contrib, min(c.Times, nd.demand[c.Kind]))
	}
	for i := len(nd.prices) - 1; i >= 0; i-- { // those of the last relaxation exclude most
		prices := nd.prices[i]
		loss := prices.Capacity[p.Stock]
		for n, c := range p.Counts {
			loss -= prices.Values[c.Kind] * int64(s.contrib[n])
		}
		if prices.cuts.size > 0 {
			of := prices.cuts.totalsOf(p, nd.demand)
			for n, v := range prices.cutValues {
				// By so much the rounded-up half of the demand falls.
				loss -= v * int64((of[n]+int(nd.parity>>n&1))/2)
			}
		}
		if s.losses[i] = loss; loss > nd.slack[i] {
			return false
		}
	}
	return true
}

// Prices returns those of the root's relaxation; nil before it.
func (s *Search) Prices() *Prices {
	nd := &s.stack[0]
	if len(nd.lpPrices.Values) == 0 {
		return nil
	}
	return &Prices{Values: slices.Clone(nd.lpPrices.Values), Capacity: slices.Clone(nd.lpPrices.Capacity), cuts: nd.lpPrices.cuts.clone(), cutValues: slices.Clone(nd.lpPrices.cutValues)}
}
