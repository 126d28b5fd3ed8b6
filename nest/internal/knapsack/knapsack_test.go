package knapsack

import (
	"encoding/json"
	"errors"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
)

const (
	plentyOfRects = 1 << 20
	plentyOfWork  = 1 << 30
)

var free = Rules{Stages: instance.NoLimit}

// The optima of cgcut1 to cgcut3 with all parts as they lie: Christofides and
// Whitlock, Oper. Res. 25 (1977), table 2.
func TestPublishedOptima(t *testing.T) {
	for _, in := range readPublished(t, "cgcut") {
		items, values := in.items(instance.Upright)
		s := New(in.Stock[0].Length, in.Stock[0].Width, items, free, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		if got, _ := s.Best(); got != in.Known.Best || !s.Proven() || s.Bound() != got {
			t.Errorf("%s: %d, proven %v, bound %d; published %d", in.Name, got, s.Proven(), s.Bound(), in.Known.Best)
		}
		checkPattern(t, s, items, values)
		// No pattern is worth more than the best, and the search proves it.
		s.Start(values, in.Known.Best)
		s.Advance(math.MaxInt64)
		if v, ok := s.Best(); ok || !s.Proven() {
			t.Errorf("%s: above the optimum there is %d, proven %v", in.Name, v, s.Proven())
		}
		items, values = in.items(instance.Upright | instance.Turned)
		s = New(in.Stock[0].Length, in.Stock[0].Width, items, free, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		if got, _ := s.Best(); got < in.Known.Best || !s.Proven() {
			t.Errorf("%s turned: %d, proven %v; without turning %d", in.Name, got, s.Proven(), in.Known.Best)
		}
		checkPattern(t, s, items, values)
	}
}

type published struct {
	Name  string
	Stock []struct{ Length, Width int64 }
	Parts []struct {
		Length, Width, Value int64
		Count                int
	}
	Known struct {
		Best, Lower int64
		Rotated     struct{ Lower int64 }
	}
}

func readPublished(t testing.TB, set string) []published {
	t.Helper()
	dir := os.Getenv("SAWBILL_BENCH")
	if dir == "" {
		dir = filepath.Join("..", "..", "..", "..", "shared", "bench")
	}
	data, err := os.ReadFile(filepath.Join(dir, set+".json"))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skipf("published instances are not here: set SAWBILL_BENCH to the folder with %s.json", set)
	}
	if err != nil {
		t.Fatal(err)
	}
	var read struct{ Instances []published }
	if err := json.Unmarshal(data, &read); err != nil {
		t.Fatal(err)
	}
	return read.Instances
}

func (in published) items(orientations instance.Orientation) (items []Item, values []int64) {
	for k, p := range in.Parts {
		items = append(items, Item{p.Length, p.Width, orientations, p.Count, k})
		values = append(values, p.Value)
	}
	return items, values
}

// checkPattern adds up the best pattern.
func checkPattern(t *testing.T, s *Search, items []Item, values []int64) {
	t.Helper()
	want, ok := s.Best()
	if !ok {
		return
	}
	if _, value := checkPiece(t, s.Pattern(), s.l, s.w, items, values); value != want {
		t.Errorf("the pattern is worth %d, not %d", value, want)
	}
}

// checkPiece checks the sizes of a pattern and how often it holds each item.
func checkPiece(t *testing.T, root instance.Piece, l, w int64, items []Item, values []int64) (counts []int, value int64) {
	t.Helper()
	if root.L != l || root.W != w {
		t.Errorf("the pattern is %d x %d of %d x %d", root.L, root.W, l, w)
	}
	counts = make([]int, len(items))
	var walk func(p instance.Piece)
	walk = func(p instance.Piece) {
		if len(p.Children) == 0 {
			if p.Kind == instance.Leftover {
				return
			}
			it := items[p.Kind]
			l, w, lie := it.L, it.W, instance.Upright
			if p.Turned {
				l, w, lie = w, l, instance.Turned
			}
			if p.L != l || p.W != w || it.Orientations&lie == 0 {
				t.Errorf("item %d, %d x %d, is cut as %d x %d", p.Kind, it.L, it.W, p.L, p.W)
			}
			counts[p.Kind]++
			value += values[p.Kind]
			return
		}
		var l, w int64
		for _, c := range p.Children {
			walk(c)
			if p.Dir == instance.Crosscut {
				l, w = l+c.L, c.W
			} else {
				l, w = c.L, w+c.W
			}
		}
		if l != p.L || w != p.W {
			t.Errorf("children measure %d x %d of %d x %d", l, w, p.L, p.W)
		}
	}
	walk(root)
	for n, c := range counts {
		if c > items[n].Count {
			t.Errorf("item %d is cut %d times of %d", n, c, items[n].Count)
		}
	}
	return counts, value
}

// exhaustive finds the counts that can be cut from a piece, by every cut of every integer size.
type exhaustive struct {
	items []Item
	known map[[2]int64]map[string][]int
}

func (e *exhaustive) patterns(l, w int64) map[string][]int {
	key := [2]int64{l, w}
	if all, ok := e.known[key]; ok {
		return all
	}
	all := map[string][]int{}
	add := func(counts []int) {
		text := make([]byte, len(counts))
		for n, c := range counts {
			if c > e.items[n].Count {
				return
			}
			text[n] = byte(c)
		}
		all[string(text)] = counts
	}
	add(make([]int, len(e.items)))
	for n, it := range e.items {
		if it.Orientations&instance.Upright != 0 && it.L <= l && it.W <= w || it.Orientations&instance.Turned != 0 && it.W <= l && it.L <= w {
			one := make([]int, len(e.items))
			one[n] = 1
			add(one)
		}
	}
	both := func(p, q map[string][]int) {
		for _, a := range p {
			for _, b := range q {
				sum := slices.Clone(a)
				for n := range sum {
					sum[n] += b[n]
				}
				add(sum)
			}
		}
	}
	for x := int64(1); 2*x <= l; x++ {
		both(e.patterns(x, w), e.patterns(l-x, w))
	}
	for y := int64(1); 2*y <= w; y++ {
		both(e.patterns(l, y), e.patterns(l, w-y))
	}
	e.known[key] = all
	return all
}

func worth(counts []int, values []int64) (value int64) {
	for n, c := range counts {
		value += int64(c) * values[n]
	}
	return value
}

// less reports whether b holds all that a does, and more.
func less(a, b []int) bool {
	more := false
	for n := range a {
		if a[n] > b[n] {
			return false
		}
		more = more || a[n] < b[n]
	}
	return more
}

func tiny(seed uint64) (l, w int64, items []Item, values []int64) {
	r := rand.New(rand.NewPCG(seed, 5))
	l, w = int64(3+r.IntN(8)), int64(3+r.IntN(8))
	for k := range 1 + r.IntN(4) {
		items = append(items, Item{int64(1 + r.IntN(8)), int64(1 + r.IntN(8)), instance.Orientation(1 + r.IntN(3)), 1 + r.IntN(3), k})
		v := int64(r.IntN(60))
		if r.IntN(2) == 0 { // near the area, where patterns are close rivals
			v = items[k].L*items[k].W*4 + int64(r.IntN(3))
		}
		values = append(values, v)
	}
	return l, w, items, values
}

func TestSearchEqualsEveryCutOfEverySize(t *testing.T) {
	for seed := range uint64(3000) {
		l, w, items, values := tiny(seed)
		e := exhaustive{items, map[[2]int64]map[string][]int{}}
		patterns := e.patterns(l, w)
		var best int64
		for _, c := range patterns {
			best = max(best, worth(c, values))
		}
		for _, tableWork := range []int64{plentyOfWork, 200} { // exact tables and coarse ones
			s := New(l, w, items, free, plentyOfRects, tableWork)
			if s == nil {
				continue
			}
			for _, above := range []int64{0, best / 2, best - 1, best, best + 1} {
				if above < 0 {
					continue
				}
				for n, start := range []func([]int64, int64){s.Start, s.StartSome} {
					start(values, above)
					for done := false; !done; {
						if s.Bound() < best {
							t.Fatalf("seed %d: start %d above %d: bound %d on the way, every cut gives %d", seed, n, above, s.Bound(), best)
						}
						_, done = s.Advance(100)
					}
					got, ok := s.Best()
					if ok != (best > above) || ok && got != best || !s.Proven() || s.Bound() < best || s.Bound() > max(best, above) {
						t.Fatalf("seed %d: start %d above %d: %d, %v, bound %d, proven %v; every cut gives %d", seed, n, above, got, ok, s.Bound(), s.Proven(), best)
					}
					if (s.Found() > 0) != ok {
						t.Fatalf("seed %d: start %d above %d: found %d, best %v", seed, n, above, s.Found(), ok)
					}
					checkPattern(t, s, items, values)
				}
			}
			for _, above := range []int64{0, best * 3 / 4, best - 1} {
				if above >= 0 {
					checkAll(t, seed, s, items, values, above, patterns)
				}
			}
		}
	}
}

func checkAll(t *testing.T, seed uint64, s *Search, items []Item, values []int64, above int64, patterns map[string][]int) {
	t.Helper()
	s.StartAll(values, above)
	s.Advance(math.MaxInt64)
	var got [][]int
	for p := range s.All {
		counts, sum := checkPiece(t, p.Piece(), s.l, s.w, items, values)
		if sum != p.Value() || sum <= above {
			t.Fatalf("seed %d: a pattern above %d is said to be worth %d, and is %d", seed, above, p.Value(), sum)
		}
		for n, c := range counts {
			if p.Count(n) != c {
				t.Fatalf("seed %d: a pattern is said to hold item %d %d times, and does %d times", seed, n, p.Count(n), c)
			}
		}
		got = append(got, counts)
	}
	var want [][]int
	for _, c := range patterns {
		maximal := worth(c, values) > above
		for _, d := range patterns {
			maximal = maximal && !less(c, d)
		}
		if maximal {
			want = append(want, c)
		}
	}
	slices.SortFunc(got, slices.Compare)
	slices.SortFunc(want, slices.Compare)
	if !slices.EqualFunc(got, want, slices.Equal) || !s.Proven() {
		t.Fatalf("seed %d: above %d: %v, every cut gives %v", seed, above, got, want)
	}
}

func TestSearchInPortionsIsTheSame(t *testing.T) {
	for seed := range uint64(300) {
		l, w, items, values := tiny(seed)
		s, p := New(l, w, items, free, plentyOfRects, plentyOfWork), New(l, w, items, free, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		want, _ := s.Best()
		p.Start(values, 0)
		portions := 0
		for done := false; !done; portions++ {
			if _, done = p.Advance(1); p.Bound() < want {
				t.Fatalf("seed %d: bound %d on the way to %d", seed, p.Bound(), want)
			}
		}
		got, _ := p.Best()
		if got != want || p.best != s.best || p.rects.n != s.rects.n || portions < len(p.bounds.x.points) {
			t.Fatalf("seed %d: %d in %d portions, %d at once", seed, got, portions, want)
		}
	}
}

func TestSearchThatGivesUpClaimsNothingWrong(t *testing.T) {
	gave := 0
	for seed := range uint64(2000) {
		l, w, items, values := tiny(seed)
		s := New(l, w, items, free, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		best, _ := s.Best()
		s = New(l, w, items, free, int(seed%7), plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		if got, _ := s.Best(); got > best || s.Bound() < best || s.Proven() && got != best {
			t.Fatalf("seed %d: %d up to %d, proven %v; the best is %d", seed, got, s.Bound(), s.Proven(), best)
		}
		checkPattern(t, s, items, values)
		if !s.Proven() {
			gave++
		}
		s.StartAll(values, best/2)
		for done := false; !done; {
			if _, done = s.Advance(1); s.Bound() < best {
				t.Fatalf("seed %d: all patterns above %d are said to be worth no more than %d; the best is %d", seed, best/2, s.Bound(), best)
			}
		}
	}
	if gave < 100 {
		t.Errorf("only %d searches gave up", gave)
	}
}

// TestLargeNumbersMakeNoDifference scales problems until the stock has more units than points.
func TestLargeNumbersMakeNoDifference(t *testing.T) {
	const scale = 1_000_003
	for seed := range uint64(300) {
		l, w, items, values := tiny(seed)
		s := New(l, w, items, free, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		want, _ := s.Best()
		large := slices.Clone(items)
		for n := range large {
			large[n].L *= scale
			large[n].W *= scale
		}
		s = New(l*scale+int64(seed), w*scale+7, large, free, plentyOfRects, plentyOfWork)
		s.Start(values, 0)
		s.Advance(math.MaxInt64)
		if got, _ := s.Best(); got != want || !s.Proven() {
			t.Fatalf("seed %d: %d, proven %v; on small numbers %d", seed, got, s.Proven(), want)
		}
		checkPattern(t, s, large, values)
	}
}
