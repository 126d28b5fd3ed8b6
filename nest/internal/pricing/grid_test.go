package pricing

import (
	"encoding/json"
	"errors"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"sawbill/nest/internal/instance"
)

// The optima of gcut1 to gcut13 with all parts as they lie and with parts
// turned: J. E. Beasley, J. Oper. Res. Soc. 36 (1985) for the instances, G.
// Cintra et al., Eur. J. Oper. Res. 191 (2008) for the optima.
func TestPublishedOptima(t *testing.T) {
	for _, in := range gcut(t) {
		for _, turned := range []bool{false, true} {
			grid, values := in.grid(turned)
			want := in.Known.Best
			if turned {
				want = in.Known.Rotated.Best
			}
			if got := grid.Solve(values); got != want {
				t.Errorf("%s, turned %v: %d, published %d", in.Name, turned, got, want)
			}
			checkPattern(t, grid, values, want)
		}
	}
}

func BenchmarkPublished(b *testing.B) {
	for _, in := range gcut(b) {
		for _, turned := range []bool{false, true} {
			name := in.Name + "/fixed"
			if turned {
				name = in.Name + "/turned"
			}
			b.Run(name, func(b *testing.B) {
				for b.Loop() {
					grid, values := in.grid(turned)
					grid.Solve(values)
				}
			})
		}
	}
}

type published struct {
	Name  string
	Stock []struct{ Length, Width int64 }
	Parts []struct{ Length, Width, Value int64 }
	Known struct {
		Best    int64
		Rotated struct{ Best int64 }
	}
}

func gcut(t testing.TB) []published {
	t.Helper()
	dir := os.Getenv("SAWBILL_BENCH")
	if dir == "" {
		dir = filepath.Join("..", "..", "..", "..", "shared", "bench")
	}
	data, err := os.ReadFile(filepath.Join(dir, "gcut.json"))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skip("published instances are not here: set SAWBILL_BENCH to the folder with gcut.json")
	}
	if err != nil {
		t.Fatal(err)
	}
	var set struct{ Instances []published }
	if err := json.Unmarshal(data, &set); err != nil {
		t.Fatal(err)
	}
	return set.Instances
}

func (in published) grid(turned bool) (*Grid, []int64) {
	orientations := instance.Upright
	if turned {
		orientations |= instance.Turned
	}
	var items []Item
	var values []int64
	for k, p := range in.Parts {
		items = append(items, Item{p.Length, p.Width, orientations, k})
		values = append(values, p.Value)
	}
	return NewGrid(in.Stock[0].Length, in.Stock[0].Width, items, Rules{}, math.MaxInt64/4, nil), values
}

// checkPattern adds up the pattern of the last solution.
func checkPattern(t *testing.T, g *Grid, values []int64, want int64) {
	t.Helper()
	p, fits := g.Pattern()
	if !fits && g.Exact() {
		t.Error("an exact pattern does not fit")
	}
	if sum := checkPiece(t, g, values, p); sum != want {
		t.Errorf("the pattern is worth %d, not %d", sum, want)
	}
}

// checkPiece checks the sizes in p and adds up its values.
func checkPiece(t *testing.T, g *Grid, values []int64, p instance.Piece) int64 {
	t.Helper()
	var sum int64
	var walk func(p instance.Piece)
	walk = func(p instance.Piece) {
		if len(p.Children) == 0 {
			if p.Kind != instance.Leftover {
				it := g.items[p.Kind]
				if l, w := it.L, it.W; p.L != l && p.L != w || p.L*p.W != l*w || p.Turned && it.Orientations&instance.Turned == 0 {
					t.Errorf("part %d, %d x %d, is cut as %d x %d", p.Kind, l, w, p.L, p.W)
				}
				sum += values[p.Kind]
			}
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
	walk(p)
	return sum
}

// best tries every cut of every integer size.
func best(l, w int64, items []Item, values []int64, known map[[2]int64]int64) int64 {
	if v, ok := known[[2]int64{l, w}]; ok {
		return v
	}
	var v int64
	for n, it := range items {
		if it.Orientations&instance.Upright != 0 && it.L <= l && it.W <= w || it.Orientations&instance.Turned != 0 && it.W <= l && it.L <= w {
			v = max(v, values[n])
		}
	}
	for x := int64(1); 2*x <= l; x++ {
		v = max(v, best(x, w, items, values, known)+best(l-x, w, items, values, known))
	}
	for y := int64(1); 2*y <= w; y++ {
		v = max(v, best(l, y, items, values, known)+best(l, w-y, items, values, known))
	}
	known[[2]int64{l, w}] = v
	return v
}

func TestGridEqualsEveryCutOfEverySize(t *testing.T) {
	others := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 3))
		l, w := int64(5+r.IntN(30)), int64(5+r.IntN(30))
		var items []Item
		var values []int64
		for k := range 1 + r.IntN(5) {
			items = append(items, Item{int64(1 + r.IntN(20)), int64(1 + r.IntN(20)), instance.Orientation(1 + r.IntN(3)), k})
			values = append(values, int64(r.IntN(200)))
		}
		g := NewGrid(l, w, items, Rules{}, math.MaxInt64/4, nil)
		want := best(l, w, items, values, map[[2]int64]int64{})
		if got := g.Solve(values); got != want {
			t.Fatalf("seed %d: %d, every cut gives %d", seed, got, want)
		}
		checkPattern(t, g, values, want)
		least := want
		for _, p := range g.Others(3) {
			value := checkPiece(t, g, values, p)
			if p.L != l || p.W != w || value >= least {
				t.Fatalf("seed %d: another pattern %d x %d of %d x %d is worth %d, the one before %d", seed, p.L, p.W, l, w, value, least)
			}
			least = value
			others++
		}
		// Portions do not change the result.
		g.Start(values)
		for done := false; !done; {
			_, done = g.Advance(1)
		}
		if g.Best() != want {
			t.Fatalf("seed %d: %d in portions, %d at once", seed, g.Best(), want)
		}
	}
	if others < 100 {
		t.Errorf("only %d patterns beside the best", others)
	}
}

func TestSparseAndDensePointsAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 4))
	for range 300 {
		var sizes []int64
		for range 1 + r.IntN(5) {
			sizes = append(sizes, int64(2+r.IntN(40)))
		}
		limit := int64(r.IntN(200))
		dense, sparse := normalPointsDense(sizes, limit, 1000, nil), normalPointsSparse(sizes, limit, 1000, nil)
		if len(dense) != len(sparse) {
			t.Fatalf("%v up to %d: %v and %v", sizes, limit, dense, sparse)
		}
		for i := range dense {
			if dense[i] != sparse[i] {
				t.Fatalf("%v up to %d: %v and %v", sizes, limit, dense, sparse)
			}
		}
	}
}
