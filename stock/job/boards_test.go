package job_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
)

const oakRail = "\n[[part]]\nname = \"rail\"\nmaterial = \"oak\"\nlength = 800\nwidth = 50\nthickness = 10\n"

// The sizes are those of the tests of package stock, with their sources.
func TestReadTakesSizesByTheirTradeNames(t *testing.T) {
	tests := []struct {
		name, keys       string
		thickness, width stock.Length
		measure          stock.Measure
	}{
		{"nominal", `nominal = "2x6"`, 3 * inch / 2, 11 * inch / 2, stock.Measure{Thickness: 2 * inch, Width: 6 * inch}},
		{"CLS", `nominal = "38x89"`, 38 * mm, 89 * mm, stock.Measure{}},
		{"sawn", `sawn = "47x100"`, 47 * mm, 100 * mm, stock.Measure{}},
		{"planed", "sawn = \"47x150\"\nsurfaced = \"S4S\"", 44 * mm, 145 * mm, stock.Measure{}},
		{"a quarter as sawn", "quarter = \"8/4\"\nwidth = 180", 2 * inch, 180 * mm, stock.Measure{Thickness: 2 * inch, Width: 180 * mm, Surface: true}},
		{"a quarter in small letters, surfaced", "quarter = \"8/4\"\nsurfaced = \"s2s\"\nwidth = 180", 7 * inch / 4, 180 * mm,
			stock.Measure{Thickness: 2 * inch, Width: 180 * mm, Surface: true}},
		{"what was measured goes before", "quarter = \"4/4\"\nsurfaced = \"S2S\"\nthickness = 22\nwidth = 180", 22 * mm, 180 * mm,
			stock.Measure{Thickness: inch, Width: 180 * mm, Surface: true}},
		{"measured where nothing is listed", "quarter = \"7/4\"\nsurfaced = \"S1S\"\nthickness = 41\nwidth = 180", 41 * mm, 180 * mm,
			stock.Measure{Thickness: 7 * inch / 4, Width: 180 * mm, Surface: true}},
		{"neither", "thickness = 27\nwidth = 180", 27 * mm, 180 * mm, stock.Measure{}},
	}
	for _, tt := range tests {
		f := mustRead(t, "[[board]]\nname = \"A\"\nmaterial = \"oak\"\nlength = 2400\n"+tt.keys+oakRail)
		want := stock.Stock{Name: "A", Kind: stock.Board, Material: "oak", Length: 2400 * mm,
			Thickness: tt.thickness, Width: tt.width, Measure: tt.measure}
		if d := cmp.Diff([]stock.Stock{want}, f.Stock); d != "" || len(f.Warnings) > 0 {
			t.Errorf("%s (-want +got):\n%s%v", tt.name, d, f.Warnings)
		}
	}
}

func TestReadOffersABoardWithDefectsAsItsClearSections(t *testing.T) {
	const board = "saw.kerf = 3\n[[board]]\nname = \"A\"\nmaterial = \"oak\"\nlength = 2400\nwidth = 180\nthickness = 27\ntrim = 20\non_hand = true\n"
	whole := stock.Stock{Name: "A", Kind: stock.Board, Material: "oak", Length: 2400 * mm, Width: 180 * mm,
		Thickness: 27 * mm, Trim: 20 * mm, Count: 1, OnHand: true}
	f := mustRead(t, board+"defects = [{from = 900, to = \"90.2 cm\"}, {from = 0, to = 60}]\n"+oakRail)
	var want []stock.Stock
	for _, z := range []stock.Zone{{From: 60 * mm, To: 900 * mm}, {From: 903 * mm, To: 2380 * mm}} {
		s := whole
		s.Trim, s.Length, s.Section = 0, z.To-z.From, stock.Section{From: z.From, Board: 2400 * mm}
		want = append(want, s)
	}
	if d := cmp.Diff(want, f.Stock); d != "" || len(f.Warnings) > 0 {
		t.Errorf("(-want +got):\n%s%v", d, f.Warnings)
	}
	f = mustRead(t, board+"defects = []\n"+oakRail)
	if d := cmp.Diff([]stock.Stock{whole}, f.Stock); d != "" {
		t.Errorf("without defects (-want +got):\n%s", d)
	}
}

func TestReadTakesRoughLumber(t *testing.T) {
	const rough = "[[rough]]\nmaterial = \"oak\"\nquarter = \"5/4\"\ngrade = \"no. 1 common\"\nprice = 6.4\nyield = 55\n"
	f := mustRead(t, rough+oakRail)
	if len(f.Rough) != 1 || len(f.Stock) > 0 || len(f.Warnings) > 0 {
		t.Fatalf("rough %v, stock %v, warnings %v", f.Rough, f.Stock, f.Warnings)
	}
	r := f.Rough[0]
	if r.Material != "oak" || r.Quarter.String() != "5/4" || r.Grade.String() != "No. 1 Common" || r.Price != 640 || r.Yield != stock.Percent(55) {
		t.Errorf("%+v", r)
	}
	const onHand = "[[board]]\nname = \"A\"\nmaterial = \"oak\"\nthickness = 90\nwidth = 90\nlength = 700\ncount = 1\non_hand = true\n"
	for _, tt := range []struct{ name, text, want string }{
		{"no planing", rough + strings.Replace(oakRail, "= 10", "= 28", 1),
			`bench.toml:13: part "rail": no allowance for planing, and 5/4 planed on both faces gives 27 mm at the most; set face = under [allowance], or faces = 0 where it stays rough`},
		{"longer than is sold", rough + strings.Replace(oakRail, "800", "5000", 1),
			`bench.toml:11: part "rail": 5000 mm is longer than hardwood is commonly sold (4876.8 mm); ask before you count on it`},
		{"longer than the board on hand", rough + onHand + oakRail, ""},
		{"too thick but for the board on hand", rough + onHand + strings.NewReplacer("= 10", "= 80", "800", "600").Replace(oakRail), ""},
		{"too short and never ganged", rough + strings.Replace(oakRail, "800", "200", 1) + "gang = false\n",
			`bench.toml:11: part "rail": 200 mm is too short to plane, joint or rip safely (milling.shortest is 304.8 mm); leave out gang = false, so that it is cut from a longer piece after milling; follow the machine's manual`},
		{"short and ganged", rough + strings.Replace(oakRail, "800", "200", 1), ""},
		{"resawn from the rough", rough + oakRail + "resaw = true\ncount = 2\n", ""},
		{"too thin to be resawn", rough + strings.Replace(oakRail, "= 10", "= 22", 1) + "resaw = true\ncount = 2\n",
			`bench.toml:14: part "rail": resaw: no board of oak that is large enough is thick enough for two pieces of 22 mm with a kerf of 1.6 mm between; it is planed down from one; add a thicker board`},
		{"unused", rough + strings.Replace(rough, "oak", "ash", 1) + oakRail, `bench.toml:7: rough 2: no part is of ash; it will not be used`},
	} {
		var got []string
		for _, w := range mustRead(t, tt.text).Warnings {
			got = append(got, strings.Replace(w.Error(), "≈", "", 1))
		}
		if strings.Join(got, "\n") != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
