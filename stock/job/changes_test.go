package job

import (
	"strings"
	"testing"

	"sawbill/stock"
)

const jobs = "../../testdata/jobs/"

// Of the price list: 24.90 a square meter of 2.44 x 1.22 m is 74.12; 8.40 a meter of
// 2 m is 16.80, 7.95 of 3 m is 23.85.
func TestPriceListGivesThePriceOfAPiece(t *testing.T) {
	file, err := Read(jobs + "record-shelves.toml")
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]stock.Money{"birch full, hill": 74_12, "birch full, quay": 79_00, "birch half, quay": 46_00, "oak 27 x 100, 2 m": 16_80, "oak 27 x 100, 3 m": 23_85}
	for _, s := range file.Stock {
		if s.Price != want[s.Name] || s.Seller == "" {
			t.Errorf("%s at %s is %v, want %v", s.Name, s.Seller, s.Price, want[s.Name])
		}
		delete(want, s.Name)
	}
	if len(want) > 0 || file.Tax != 8_10 || file.Worth != 40_00 {
		t.Errorf("tax %d, worth %d, not offered %v", file.Tax, file.Worth, want)
	}
}

func TestWhatIf(t *testing.T) {
	changed := func(name string, as Changes) map[string]stock.Part {
		t.Helper()
		file, err := ReadChanged(jobs+name+".toml", as)
		if err != nil {
			t.Fatal(err)
		}
		parts := map[string]stock.Part{}
		for _, p := range file.Parts {
			parts[p.Name] = p
		}
		return parts
	}
	as := changed("record-shelves", Changes{Without: []string{"edging"}, Counts: []string{"shelf=8"}, Thicknesses: []string{"birch ply 18=17.6"}})
	if _, there := as["edging"]; there || as["shelf"].Count != 8 || as["upright"].Thickness != 176*stock.Millimeter/10 {
		t.Errorf("%+v", as)
	}
	// An edging of 780 x 40 would be no offcut worth keeping, 300 x 80; shelf and upright would.
	if as := changed("record-shelves", Changes{Spare: 2}); as["edging"].Count != 11 || as["shelf"].Count != 9 {
		t.Errorf("spare: %+v", as)
	}
	// Without its back the bookcase has none, and what follows from it follows.
	plain := changed("bookcase", Changes{})
	as = changed("bookcase", Changes{Without: []string{"back"}})
	if _, there := as["back"]; there || len(plain) != len(as)+1 {
		t.Errorf("%d parts with a back, %d without", len(plain), len(as))
	}
	// A carcass 1/32 in thinner: a top between two sides is 1/16 in longer.
	thinner := changed("bookcase", Changes{Thicknesses: []string{"maple ply=22/32"}})
	if got := thinner["top"].Length - plain["top"].Length; got != stock.Inch/16 {
		t.Errorf("the top grew by %d", got)
	}
	// 6 mm less of height: sides and doors are 6 mm shorter, and the back, in its grooves;
	// 10 mm less of width: top and bottom by as much, two doors by half of it.
	const mm = stock.Millimeter
	plain = changed("wall-cabinet", Changes{})
	as = changed("wall-cabinet", Changes{Smaller: []string{"height=6", "width=1 cm", "shelf=2 mm"}})
	for name, less := range map[string]stock.Length{"side": 6 * mm, "door": 6 * mm, "back": 6 * mm, "top": 10 * mm, "shelf": 12 * mm} {
		if got := plain[name].Length - as[name].Length; got != less {
			t.Errorf("%s is shorter by %s mm", name, got.Decimal())
		}
	}
	if got := plain["door"].Width - as["door"].Width; got != 5*mm {
		t.Errorf("a door is narrower by %s mm", got.Decimal())
	}
}

func TestWhatIfTellsWhatItCannotDo(t *testing.T) {
	_, err := ReadChanged(jobs+"record-shelves.toml", Changes{Without: []string{"shelff"}, Counts: []string{"upright=x", "upright"}, Thicknesses: []string{"oak=3", "oak 27=0"},
		Smaller: []string{"width=5", "shelf=9 m", "shelf=0", "shelf", "shelv=5"}})
	if err == nil {
		t.Fatal("no fault")
	}
	for _, want := range []string{`--without shelff: there is no part "shelff"; did you mean "shelf"?`, `--count upright=x: "x" is no count`,
		`--count upright: a name, = and a value are wanted`, `--thickness oak=3: there is no material "oak"`, "--thickness oak 27=0: ",
		"--smaller width=5: no width of a case is given that could be less", `--smaller shelf=9 m: part "shelf" is 780 mm long`, "--smaller shelf=0: 0 mm is no less",
		"--smaller shelf: a name, = and a value are wanted", `--smaller shelv=5: there is no part "shelv"; did you mean "shelf"?`} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("not told: %s\nbut\n%v", want, err)
		}
	}
}
