package nest

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
)

// Verify recomputes plan from p alone and shares no code with the solver. It returns nil, or an
// error that joins one line for every rule broken. Layouts, stock and blanks have the indices
// of their slices; "node 2.0" is the first child of the root's third.
//
// The rules, in the order of the files that hold them:
//
//   - every layout is a tree of cuts that a saw can make from its stock, and accounts for all
//     of its area (verify_layout.go);
//   - blanks of a group are cut in whole runs (verify_groups.go);
//   - layouts are distinct, cut at least one part, and take no more stock than there is; the
//     cost is their price, and the bound does not exceed it (here);
//   - areas and bounds of stock without prices are right (verify_unpriced.go);
//   - every blank is cut or listed as unplaced, as often as its count, and the reason is true
//     (verify_blanks.go).
//
// Verify does not check that the bound is proven: that takes a proof. It does not check p,
// which Solve does; but no plan makes Verify panic.
func Verify(p Problem, plan Plan) error {
	v := &verifier{
		problem: p,
		taken:   make([]big.Int, len(p.Stock)),
		placed:  make([]big.Int, len(p.Blanks)),
	}
	for i, l := range plan.Layouts {
		v.layout(i, l)
	}
	v.distinct(plan.Layouts)
	v.limits()
	v.cost(plan)
	v.unpriced(plan)
	v.blanks(plan.Unplaced)
	return errors.Join(v.violations...)
}

// verifier adds up the layouts and collects the rules broken. Its sums are big, so that no plan
// makes them overflow.
type verifier struct {
	problem    Problem
	taken      []big.Int // pieces, for each stock
	placed     []big.Int // blanks cut, for each blank
	sound      []int     // layouts whose tree breaks no rule
	violations []error
}

func (v *verifier) report(format string, args ...any) {
	v.violations = append(v.violations, fmt.Errorf(format, args...))
}

func (v *verifier) layout(i int, l Layout) {
	if l.Repeat < 1 {
		v.report("layout %d: cut %d times", i, l.Repeat)
	}
	if l.Stock < 0 || l.Stock >= len(v.problem.Stock) {
		v.report("layout %d: stock %d, there are %d", i, l.Stock, len(v.problem.Stock))
		return
	}
	tree := inspect(v.problem, l.Stock, l.Root)
	for _, broken := range tree.violations {
		v.report("layout %d, %s", i, broken)
	}
	if len(tree.violations) == 0 {
		v.sound = append(v.sound, i)
	}
	if len(tree.parts) == 0 {
		v.report("layout %d: cuts no part", i)
	}
	repeat := exact(int64(l.Repeat))
	v.taken[l.Stock].Add(&v.taken[l.Stock], repeat)
	for _, blank := range tree.parts {
		v.placed[blank].Add(&v.placed[blank], repeat)
	}
}

// distinct compares sound layouts only, since their trees are finite.
func (v *verifier) distinct(layouts []Layout) {
	for n, j := range v.sound {
		for _, i := range v.sound[:n] {
			if layouts[i].Stock == layouts[j].Stock && sameCuts(layouts[i].Root, layouts[j].Root) {
				v.report("layout %d: equals layout %d; it should be counted there", j, i)
				break
			}
		}
	}
}

// sameCuts compares the fields that matter for a node's use.
func sameCuts(a, b Node) bool {
	if a.Length != b.Length || a.Width != b.Width || a.Use != b.Use {
		return false
	}
	switch a.Use {
	case Split:
		return a.Cut == b.Cut && slices.EqualFunc(a.Children, b.Children, sameCuts)
	case Part:
		return a.Blank == b.Blank && a.Turned == b.Turned
	}
	return true
}

func (v *verifier) limits() {
	for i, s := range v.problem.Stock {
		if s.Count > 0 && v.taken[i].Cmp(exact(int64(s.Count))) > 0 {
			v.report("stock %d: %v pieces taken, there are %d", i, &v.taken[i], s.Count)
		}
	}
}

func (v *verifier) cost(plan Plan) {
	cost := new(big.Int)
	for i, s := range v.problem.Stock {
		if !s.OnHand {
			cost.Add(cost, new(big.Int).Mul(&v.taken[i], exact(s.Price)))
		}
	}
	if cost.Cmp(exact(plan.Cost)) != 0 {
		v.report("cost: %d, the stock bought costs %v", plan.Cost, cost)
	}
	if plan.Bound < 0 {
		v.report("bound: %d is negative", plan.Bound)
	}
	// An incomplete plan may cost less: the bound is for the whole job.
	if plan.Complete() && plan.Bound > plan.Cost {
		v.report("bound: %d, but this plan cuts every blank for %d", plan.Bound, plan.Cost)
	}
}

// exact returns the product of factors, however large.
func exact(factors ...int64) *big.Int {
	product := big.NewInt(1)
	for _, f := range factors {
		product.Mul(product, big.NewInt(f))
	}
	return product
}
