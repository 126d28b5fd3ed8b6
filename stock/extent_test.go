package stock

import "testing"

func TestTotalsStayExactBeyond64Bits(t *testing.T) {
	const long, wide, thick = 2440 * Millimetre, 1220 * Millimetre, 18 * Millimetre
	var area, areas Area
	var volume, volumes Volume
	area = area.Add(long, wide, 1)
	volume = volume.Add(long, wide, thick, 1)
	for range 4 {
		areas = areas.Add(long, wide, 2500)           // 4.8e19 in all, an int64 holds 9.2e18
		volumes = volumes.Add(long, wide, thick, 250) // one is 3.4e21
	}
	if got := area.Ratio(areas); got != 1.0/10_000 {
		t.Errorf("a sheet is %v of 10,000", got)
	}
	if got := volume.Ratio(volumes); got != 1.0/1_000 {
		t.Errorf("a sheet is %v of 1,000", got)
	}
	more := areas.Add(1, 1, 1)
	if more.Ratio(areas) < 1 || more.squares.Cmp(areas.squares) != 1 {
		t.Error("the smallest square is lost in a large total")
	}
}

func TestAddLeavesItsReceiverAlone(t *testing.T) {
	half := Area{}.Add(1, 2, 3)
	whole := half.Add(1, 2, 3)
	if got := half.Ratio(whole); got != 0.5 {
		t.Errorf("area: %v, want 0.5", got)
	}
	third := Volume{}.Add(1, 2, 3, 4)
	all := third.Add(2, 2, 3, 4)
	if got := third.Ratio(all); got != 1.0/3 {
		t.Errorf("volume: %v, want 1/3", got)
	}
}

func TestRatioOfNothingIsZero(t *testing.T) {
	var no Area
	if a := (Area{}).Add(1, 1, 1); no.Ratio(a) != 0 || a.Ratio(no) != 0 || a.Ratio(a.Add(-1, 1, 1)) != 0 {
		t.Error("area")
	}
	var none Volume
	if v := (Volume{}).Add(1, 1, 1, 1); none.Ratio(v) != 0 || v.Ratio(none) != 0 {
		t.Error("volume")
	}
}
