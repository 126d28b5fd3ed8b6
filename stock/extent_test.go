package stock

import "testing"

func TestTotalsStayExactBeyond64Bits(t *testing.T) {
	const long, wide, thick = 2440 * Millimeter, 1220 * Millimeter, 18 * Millimeter
	var volumes Volume
	volume := Volume{}.Add(long, wide, thick, 1)
	for range 4 {
		volumes = volumes.Add(long, wide, thick, 250) // one is 3.4e21, an int64 holds 9.2e18
	}
	if got := volume.Ratio(volumes); got != 1.0/1_000 {
		t.Errorf("a sheet is %v of 1,000", got)
	}
	more := volumes.Add(1, 1, 1, 1)
	if more.Ratio(volumes) < 1 || more.cubes.Cmp(volumes.cubes) != 1 {
		t.Error("the smallest cube is lost in a large total")
	}
}

func TestAddLeavesItsReceiverAlone(t *testing.T) {
	third := Volume{}.Add(1, 2, 3, 4)
	all := third.Add(2, 2, 3, 4)
	if got := third.Ratio(all); got != 1.0/3 {
		t.Errorf("%v, want 1/3", got)
	}
}

func TestRatioOfNothingIsZero(t *testing.T) {
	var none Volume
	if v := (Volume{}).Add(1, 1, 1, 1); none.Ratio(v) != 0 || v.Ratio(none) != 0 {
		t.Error("a share of nothing, or nothing as a share, is not 0")
	}
}
