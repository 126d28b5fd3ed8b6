package bound

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
)

// leastPrice tries every number of pieces of every offer.
func leastPrice(demand, floor int64, offers []offer) int64 {
	if demand <= 0 && floor <= 0 {
		return 0
	}
	if len(offers) == 0 {
		return math.MaxInt64
	}
	o := offers[0]
	best := int64(math.MaxInt64)
	for n := int64(0); n <= o.limit; n++ {
		if rest := leastPrice(demand-n*o.area, floor-n*o.price, offers[1:]); rest < math.MaxInt64 {
			best = min(best, n*o.price+rest)
		}
		if n*o.area >= demand && (n*o.price >= floor || o.price == 0) {
			break
		}
	}
	return best
}

func TestCoverEqualsExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for i := range 3000 {
		var offers []offer
		for range 1 + r.IntN(4) {
			offers = append(offers, offer{price: int64(r.IntN(30)), area: 1 + int64(r.IntN(20)), limit: int64(r.IntN(6))})
		}
		if i%3 == 0 {
			offers[0].limit = instance.NoLimit
		}
		demand := int64(r.IntN(80))
		floor := int64(r.IntN(3) * r.IntN(60))
		want := leastPrice(demand, floor, offers)
		got := cover(demand, floor, offers)
		if want == math.MaxInt64 {
			continue // not to be had: any bound holds
		}
		if got != want {
			t.Fatalf("case %d: cover(%d, %d, %v) = %d, exhaustive search finds %d", i, demand, floor, offers, got, want)
		}
	}
}

// Where the table would grow too large the relaxed bound must stay a bound.
func TestCoverOfHugePricesStaysBelow(t *testing.T) {
	offers := []offer{{price: 1_000_000_007, area: 10, limit: 9}, {price: 999_999_937, area: 9, limit: 9}}
	want := leastPrice(61, 0, offers)
	got := cover(61, 0, offers)
	if got > want || got < want/2 {
		t.Errorf("bound %d, least price %d", got, want)
	}
}

// Blanks that only the dear stock can hold must be paid for there.
func TestAreaCountsStockThatOnlySomeCanHold(t *testing.T) {
	in := &instance.Instance{
		Stock: []instance.Stock{
			{L: 10, W: 10, Price: 1, Limit: instance.NoLimit},
			{L: 20, W: 10, Price: 50, Limit: instance.NoLimit},
		},
		Kinds: []instance.Kind{
			{L: 20, W: 5, Count: 3, Lies: []instance.Lie{0, instance.Upright}},
			{L: 5, W: 5, Count: 8, Lies: []instance.Lie{instance.Upright, instance.Upright}},
		},
	}
	in.Prepare()
	// Three of the long ones fill 300 of two long pieces' 400, at 100; the
	// other 200 then take the 100 that is left and another piece at 1.
	if got := Price(in, new(big.Rat)); got != 100 {
		t.Errorf("bound %d, want 100", got)
	}
}
