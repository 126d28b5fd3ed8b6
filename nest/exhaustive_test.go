package nest_test

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"sawbill/nest"
)

// exhaustive finds the least cost of a small problem by trying everything. It
// shares nothing with the solver: it keeps the kerf, cuts in every order, and
// looks at every way to share the pieces out.
type exhaustive struct {
	p      nest.Problem
	pieces []int          // the blank of each piece
	packs  []map[int]bool // per stock: can it hold this set of pieces?
	known  map[state]bool
	sums   map[[3]int][]int64
	runs   map[int]nest.Group // per blank that is a run; with the blanks of the problem
	blanks []nest.Blank       // of the problem
}

type state struct {
	s, set, level int
	l, w          int64
	last          nest.Cut
}

func minCost(p nest.Problem) (cost int64, ok bool) {
	e := exhaustive{p: p, blanks: p.Blanks, known: map[state]bool{}, sums: map[[3]int][]int64{}}
	e.p, e.runs = ungrouped(p)
	for b, bl := range e.p.Blanks {
		for range bl.Count {
			e.pieces = append(e.pieces, b)
		}
	}
	for range p.Stock {
		e.packs = append(e.packs, map[int]bool{})
	}
	used := make([]int, len(p.Stock))
	best := e.cover(1<<len(e.pieces)-1, used)
	return best, best < math.MaxInt64/2
}

// cover is the least cost of cutting the set of pieces.
func (e *exhaustive) cover(set int, used []int) int64 {
	if set == 0 {
		return 0
	}
	best := int64(math.MaxInt64 / 2)
	first := set & -set
	for sub := set; sub > 0; sub = (sub - 1) & set {
		if sub&first == 0 {
			continue
		}
		for s, st := range e.p.Stock {
			if st.Count > 0 && used[s] == st.Count || !e.holds(s, sub) {
				continue
			}
			used[s]++
			best = min(best, st.Price+e.cover(set&^sub, used))
			used[s]--
		}
	}
	return best
}

func (e *exhaustive) holds(s, set int) bool {
	if ok, known := e.packs[s][set]; known {
		return ok
	}
	u := e.p.Stock[s].Usable()
	var ok bool
	if st := e.p.Stock[s]; len(st.Defects) > 0 {
		ok = (&placing{e, s, map[spot]bool{}}).fits(spot{x: st.TrimLength, y: st.TrimWidth, l: u.Length, w: u.Width, set: set})
	} else {
		ok = e.fits(s, set, u.Length, u.Width, nest.AnyCut, 0)
	}
	e.packs[s][set] = ok
	return ok
}

// fits reports whether set can be cut from l x w, which came off a cut in
// direction last at that level.
func (e *exhaustive) fits(s, set int, l, w int64, last nest.Cut, level int) bool {
	if e.p.Stages == 0 {
		level = min(level, 1)
	}
	at := state{s, set, level, l, w, last}
	if ok, known := e.known[at]; known {
		return ok
	}
	e.known[at] = e.try(s, set, l, w, last, level)
	return e.known[at]
}

func (e *exhaustive) try(s, set int, l, w int64, last nest.Cut, level int) bool {
	if set == 0 {
		return true
	}
	if l <= 0 || w <= 0 {
		return false
	}
	st := e.p.Stock[s]
	var area int64
	for i, b := range e.pieces {
		if set&(1<<i) != 0 {
			area += e.p.Blanks[b].Length * e.p.Blanks[b].Width
		}
	}
	if area > l*w {
		return false
	}
	if set&(set-1) == 0 {
		for i, b := range e.pieces {
			if set == 1<<i {
				for _, size := range e.lies(b, s) {
					if size.Length == l && size.Width == w && e.divides(b, s, size, last, level) {
						return true
					}
				}
			}
		}
	}
	for _, cut := range []nest.Cut{nest.Rip, nest.Crosscut} {
		next := level
		if cut != last {
			next++
		}
		if e.p.Stages > 0 && next > e.p.Stages || level == 0 && st.FirstCut != nest.AnyCut && st.FirstCut != cut {
			continue
		}
		// What comes off first holds sub, which may be all of set: then the
		// rest falls off. By symmetry of order sub may be any set.
		for sub := set; sub > 0; sub = (sub - 1) & set {
			for _, at := range e.reaches(s, sub, cut) {
				rest := set &^ sub
				if cut == nest.Rip {
					left := w - at - e.p.Kerf
					if at >= w || at < st.NarrowestRip || rest != 0 && left < st.NarrowestRip {
						continue
					}
					if e.fits(s, sub, l, at, cut, next) && e.fits(s, rest, l, left, cut, next) {
						return true
					}
				} else {
					if at >= l {
						continue
					}
					if e.fits(s, sub, at, w, cut, next) && e.fits(s, rest, l-at-e.p.Kerf, w, cut, next) {
						return true
					}
				}
			}
		}
	}
	return false
}

func (e *exhaustive) lies(b, s int) []nest.Size {
	bl := e.p.Blanks[b]
	var sizes []nest.Size
	for _, f := range bl.From {
		if f.Stock == s && f.Upright {
			sizes = append(sizes, nest.Size{Length: bl.Length, Width: bl.Width})
		}
		if f.Stock == s && f.Turned {
			sizes = append(sizes, nest.Size{Length: bl.Width, Width: bl.Length})
		}
	}
	return sizes
}

// reaches lists where a cut can fall that frees set: sums of sizes and kerfs.
func (e *exhaustive) reaches(s, set int, cut nest.Cut) []int64 {
	key := [3]int{s, set, int(cut)}
	if at, known := e.sums[key]; known {
		return at
	}
	sums := map[int64]bool{-e.p.Kerf: true}
	for i, b := range e.pieces {
		if set&(1<<i) == 0 {
			continue
		}
		for sum := range sums {
			for _, size := range e.lies(b, s) {
				if cut == nest.Rip {
					sums[sum+e.p.Kerf+size.Width] = true
				} else {
					sums[sum+e.p.Kerf+size.Length] = true
				}
			}
		}
	}
	var at []int64
	for sum := range sums {
		if sum > 0 {
			at = append(at, sum)
		}
	}
	e.sums[key] = at
	return at
}

// problems is how many random problems a test takes: usually, with -short, and with
// SAWBILL_LONG=1.
func problems(usual, short, long uint64) uint64 {
	switch {
	case os.Getenv("SAWBILL_LONG") == "1":
		return long
	case testing.Short():
		return short
	}
	return usual
}

// smallProblem draws a problem of at most five pieces with every rule.
func smallProblem(seed uint64) nest.Problem {
	r := rand.New(rand.NewPCG(seed, 9))
	p := nest.Problem{
		Kerf:   int64(r.IntN(3)),
		Stages: []int{0, 0, 0, 1, 2, 3}[r.IntN(6)],
		Keep:   nest.Size{Length: 6, Width: 6},
	}
	for range 1 + r.IntN(3) {
		s := nest.Stock{
			Length: int64(8 + r.IntN(14)), Width: int64(6 + r.IntN(12)),
			TrimLength: int64(r.IntN(2)), Price: int64(1 + r.IntN(20)),
			Count: []int{0, 0, 1, 2}[r.IntN(4)], FirstCut: nest.Cut(max(0, r.IntN(5)-2)),
			NarrowestRip: int64(max(0, r.IntN(6)-3)),
		}
		if r.IntN(5) == 0 {
			s.OnHand, s.Price, s.Count = true, 0, 1
		}
		p.Stock = append(p.Stock, s)
	}
	left := 5
	for left > 0 {
		n := 1 + r.IntN(left)
		left -= n
		b := nest.Blank{Length: int64(2 + r.IntN(12)), Width: int64(2 + r.IntN(9)), Count: n}
		turned := r.IntN(2) == 0
		for s := range p.Stock {
			// Grain that runs across may leave one way only, other than upright.
			b.From = append(b.From, nest.Source{Stock: s, Upright: !turned || r.IntN(3) > 0, Turned: turned})
		}
		p.Blanks = append(p.Blanks, b)
		if r.IntN(6) == 0 {
			break
		}
	}
	return p
}

// The bound is never above the least cost there is, and no plan costs less; a
// plan that is called proven costs just that.
func TestBoundHoldsAgainstExhaustiveSearch(t *testing.T) {
	n := problems(2000, 300, 50000)
	var possible, proven, met int
	for seed := range n {
		p := smallProblem(seed)
		plan := solve(t, p, nest.Options{Iterations: 300, Seed: seed, Walks: 1})
		least, ok := minCost(p)
		if !ok {
			if plan.Complete() {
				t.Fatalf("seed %d: a complete plan where exhaustive search finds none", seed)
			}
			continue
		}
		possible++
		if plan.Bound > least {
			t.Fatalf("seed %d: bound %d is above the least cost %d", seed, plan.Bound, least)
		}
		if plan.Complete() && plan.Cost < least {
			t.Fatalf("seed %d: cost %d is below the least cost %d", seed, plan.Cost, least)
		}
		if plan.Complete() && plan.Cost == least {
			met++
		}
		if plan.Proven() {
			proven++
		}
	}
	t.Logf("of %d problems that can be done %d plans cost the least and %d are proven to", possible, met, proven)
	if met < possible-possible/10_000 || proven < possible*99/100 { // 300 iterations are few
		t.Errorf("%d of %d plans cost the least, %d are proven to", met, possible, proven)
	}
}
