package lowerbound

import (
	"runtime"
	"testing"

	"sawbill/nest/internal/instance"
)

// manySizes is an instance of 24 parts, four of a kind, and n sizes of stock, the larger the
// dearer.
func manySizes(n int) *instance.Instance {
	in := &instance.Instance{}
	for s := range n {
		in.Stock = append(in.Stock, instance.Stock{L: int64(2000 + s), W: int64(1220 + n - s), Price: int64(300 + s), Limit: instance.NoLimit})
	}
	for k := range 6 {
		kd := instance.Kind{L: int64(700 + 90*k), W: int64(310 + 40*k), Demand: 4}
		for range n {
			kd.Orientations = append(kd.Orientations, instance.Upright)
		}
		in.Kinds = append(in.Kinds, kd)
	}
	return in
}

// The inequalities of much stock hold no more numbers in all than those of little.
func TestInequalitiesKeepToTheirLimitWithMuchStock(t *testing.T) {
	never := func() bool { return false }
	for _, n := range []int{1, 64, 65, 300, 1000, 5000} {
		cuts := dffInequalities(manySizes(n), never)
		if len(cuts) > 0 && len(cuts)*n > 4*maxMeasures {
			t.Errorf("%d sizes of stock: %d inequalities", n, len(cuts))
		}
		if n <= 1000 && len(cuts) == 0 {
			t.Errorf("%d sizes of stock: no inequality", n)
		}
	}
}

// The memory for a bound, and with it the work, grows no more than the sizes of stock.
func TestWorkForABoundGrowsWithTheStock(t *testing.T) {
	allocated := func(n int) uint64 {
		in := manySizes(n)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		New(in, nil)
		runtime.ReadMemStats(&after)
		return after.TotalAlloc - before.TotalAlloc
	}
	if few, many := allocated(250), allocated(1000); many > 5*few {
		t.Errorf("%d bytes for 250 sizes of stock, %d for 1000", few, many)
	}
}

// A bound that is stopped asks no more than twice again before it returns, and holds.
func TestAStoppedBoundHolds(t *testing.T) {
	in := manySizes(6)
	area := len(areaInequalities(in))
	whole := New(in, nil)
	if len(whole.inequalities) == area {
		t.Fatal("the example needs no more than its area")
	}
	for most := range 10 {
		asked := 0
		f := New(in, func() bool { asked++; return asked > most })
		if f.Value() <= 0 || f.Value() > whole.Value() {
			t.Errorf("stopped after %d: the bound is %d, and %d if it is not stopped", most, f.Value(), whole.Value())
		}
		if asked > most+3 {
			t.Errorf("stopped after %d: asked %d times", most, asked)
		}
		if most == 0 && len(f.inequalities) != area {
			t.Errorf("stopped at once: %d inequalities, want %d", len(f.inequalities), area)
		}
	}
}
