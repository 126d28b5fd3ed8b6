package nest_test

import (
	"math/rand/v2"
	"regexp"
	"testing"

	"sawbill/nest"
)

// A mutation spoils a right plan, or the problem it was right for, in one way
// only. It reports false where there is nothing to spoil.
type mutation struct {
	name  string
	wants string // a pattern found in what Verify says
	spoil func(*victim) bool
}

type victim struct {
	*rand.Rand
	problem nest.Problem
	plan    nest.Plan
}

// pick returns one of the nodes that suit.
func (v *victim) pick(suits func(site) bool) (site, bool) {
	var sites []site
	for i := range v.plan.Layouts {
		for _, at := range sitesOf(&v.plan.Layouts[i].Root) {
			if suits(at) {
				sites = append(sites, at)
			}
		}
	}
	if len(sites) == 0 {
		return site{}, false
	}
	return sites[v.IntN(len(sites))], true
}

func (v *victim) layout() *nest.Layout {
	return &v.plan.Layouts[v.IntN(len(v.plan.Layouts))]
}

// unplaced returns an entry with the reason given.
func (v *victim) unplaced(reason nest.Reason) (*nest.Unplaced, bool) {
	for i := range v.plan.Unplaced {
		if u := &v.plan.Unplaced[i]; u.Reason == reason {
			return u, true
		}
	}
	return nil, false
}

// unlimited lifts all limits but those on the number of pieces, so that any
// blank that fits a piece can be cut from it.
func (v *victim) unlimited() {
	v.problem.Stages = 0
	for i := range v.problem.Stock {
		v.problem.Stock[i].FirstCut = nest.AnyCut
		v.problem.Stock[i].NarrowestRip = 0
	}
}

func isPart(at site) bool     { return at.node.Use == nest.Part }
func isSplit(at site) bool    { return at.node.Use == nest.Split }
func isLeftover(at site) bool { return at.node.Use == nest.Offcut || at.node.Use == nest.Waste }
func isChild(at site) bool    { return at.parent != nil }

// missing is what the blade takes behind the last child of a split.
func missing(n *nest.Node, kerf int64) int64 {
	rest := alongOf(n, n.Cut) - kerf*int64(len(n.Children)-1)
	for i := range n.Children {
		rest -= alongOf(&n.Children[i], n.Cut)
	}
	return rest
}

func alongOf(n *nest.Node, cut nest.Cut) int64 {
	if cut == nest.Rip {
		return n.Width
	}
	return n.Length
}

// change adds by to the size of a node, along or across its parent's cut.
func change(at site, by int64, along bool) {
	if (at.parent.Cut == nest.Rip) == along {
		at.node.Width += by
	} else {
		at.node.Length += by
	}
}

func TestVerifyRejectsEveryMutation(t *testing.T) {
	const seeds, minSpoilt = 600, 40
	for _, m := range mutations {
		t.Run(m.name, func(t *testing.T) {
			wants, spoilt := regexp.MustCompile(m.wants), 0
			for seed := range uint64(seeds) {
				v := &victim{Rand: rand.New(rand.NewPCG(seed, 2))}
				v.problem, v.plan = randomPlan(seed)
				if !m.spoil(v) {
					continue
				}
				spoilt++
				err := nest.Verify(v.problem, v.plan)
				if err == nil {
					t.Fatalf("seed %d: accepted\n%+v\n%+v", seed, v.problem, v.plan)
				}
				if !wants.MatchString(err.Error()) {
					t.Fatalf("seed %d: want a line like %q, got\n%v", seed, m.wants, err)
				}
			}
			if spoilt < minSpoilt {
				t.Errorf("only %d of %d plans could be spoilt so", spoilt, seeds)
			}
		})
	}
}
