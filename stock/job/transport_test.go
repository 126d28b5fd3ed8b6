package job_test

import (
	"testing"

	"sawbill/stock"
)

// 132 lb are 132 x 453.59237 = 59,874 g; a kerf of 5/32 in and a tolerance of 1/16 in are
// usual, as are two cuts.
func TestTransportInInches(t *testing.T) {
	file, err := read(t, `
units = "in"
[transport]
longest = 66
heaviest = 132
[[sheet]]
name = "ply"
material = "ply"
thickness = "3/4"
length = 96
width = 48
[[part]]
name = "shelf"
material = "ply"
length = 30
width = 12
`)
	if err != nil {
		t.Fatal(err)
	}
	want := stock.Transport{Longest: 66 * stock.Inch, Heaviest: 59_874, Cuts: 2, CutKerf: 5 * stock.Inch / 32, CutTolerance: stock.Inch / 16}
	if file.Transport != want {
		t.Errorf("%+v", file.Transport)
	}
}
