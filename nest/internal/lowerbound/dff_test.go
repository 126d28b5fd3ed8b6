package lowerbound

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
)

// Sizes side by side within z sum to at most f(z). It is enough to test pairs, since f never
// falls.
func TestFunctionsAreDualFeasible(t *testing.T) {
	for full := int64(1); full <= 60; full++ {
		for step := int64(1); 2*step <= full; step++ {
			for _, steps := range []bool{false, true} {
				d := dff{full, step, steps}
				for x := range full + 1 {
					if x > 0 && d.at(x) < d.at(x-1) {
						t.Fatalf("%v: f(%d) = %d is less than f(%d) = %d", d, x, d.at(x), x-1, d.at(x-1))
					}
					for y := range full - x + 1 {
						if d.at(x)+d.at(y) > d.at(x+y) {
							t.Fatalf("%v: f(%d) + f(%d) = %d + %d is more than f(%d) = %d", d, x, y, d.at(x), d.at(y), x+y, d.at(x+y))
						}
					}
				}
			}
		}
	}
}

// The same by enumeration, for stock beyond full too: every multiset of sizes that fits.
func TestEveryMultisetThatFitsMeasuresNoMore(t *testing.T) {
	sizes := []int64{1, 2, 3, 5, 6, 7, 9, 11, 16}
	for full := int64(1); full <= 14; full++ {
		for _, d := range dffs(full, sizes, 100) {
			for z := int64(1); z <= 20; z++ {
				most := d.capacity(z, sizes)
				var add func(first int, left, sum int64)
				add = func(first int, left, sum int64) {
					if sum > most {
						t.Fatalf("%v: sizes within %d measure %d, at most %d is claimed", d, z, sum, most)
					}
					for n := first; n < len(sizes); n++ {
						if x := sizes[n]; x <= left {
							add(n, left-x, sum+d.at(x))
						}
					}
				}
				add(0, z, 0)
			}
		}
	}
}

func TestDualFeasibleFunctionsBeatAreas(t *testing.T) {
	tests := []struct {
		reason string
		kind   instance.Kind
		want   int64
	}{
		{"two over half of a side never share it", instance.Kind{L: 51, W: 51, Demand: 9}, 9},
		{"thirds and a little more go in twice each way", instance.Kind{L: 34, W: 34, Demand: 9}, 3},
		{"long ones go in side by side only", instance.Kind{L: 60, W: 26, Demand: 12}, 4},
		{"quarters fill", instance.Kind{L: 25, W: 25, Demand: 32}, 2},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			for _, orientations := range []instance.Orientation{instance.Upright, instance.Turned} {
				test.kind.Orientations = []instance.Orientation{orientations}
				in := &instance.Instance{
					Stock: []instance.Stock{{L: 100, W: 100, Price: 1, Limit: instance.NoLimit}},
					Kinds: []instance.Kind{test.kind},
				}
				in.Prepare()
				if f := New(in, nil); f.Value() != test.want {
					t.Errorf("bound %d, want %d", f.Value(), test.want)
				}
			}
		})
	}
}

func BenchmarkNew(b *testing.B) {
	for _, kinds := range []int{20, 100, 1000} {
		r := rand.New(rand.NewPCG(1, 1))
		in := &instance.Instance{Stock: []instance.Stock{
			{L: 24432, W: 12232, Price: 100, Limit: instance.NoLimit},
			{L: 15252, W: 15252, Price: 80, Limit: instance.NoLimit},
		}}
		for range kinds {
			in.Kinds = append(in.Kinds, instance.Kind{
				L: 1000 + r.Int64N(9000), W: 1000 + r.Int64N(9000), Demand: 1,
				Orientations: []instance.Orientation{instance.Upright, instance.Upright | instance.Turned},
			})
		}
		in.Prepare()
		b.Run("", func(b *testing.B) {
			for b.Loop() {
				New(in, nil)
			}
		})
	}
}
