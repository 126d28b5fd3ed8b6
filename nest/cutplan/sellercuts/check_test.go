package sellercuts

import (
	"slices"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Any change to a plan with the seller's cuts makes it invalid.
func TestAPlanOfWhatTheSellerCutsIsChecked(t *testing.T) {
	limits := oneCut(1300*mm, 1300*mm)
	job := sheets(2440*mm, 1220*mm, limits, shelf(1100*mm, 600*mm, 5))
	for name, change := range map[string]func(p *cutplan.Plan){
		"nothing":                  func(p *cutplan.Plan) {},
		"a piece longer":           func(p *cutplan.Plan) { p.AtSeller[0].Pieces[0] += mm },
		"pieces moved":             func(p *cutplan.Plan) { p.AtSeller[0].Pieces[0] -= mm; p.AtSeller[0].Pieces[1] += mm },
		"no kerf":                  func(p *cutplan.Plan) { p.AtSeller[0].Kerf = 0 },
		"a cut for nothing":        func(p *cutplan.Plan) { p.AtSeller[0].Cost = 0 },
		"one less cut":             func(p *cutplan.Plan) { p.AtSeller[0].Count-- },
		"one more bought":          func(p *cutplan.Plan) { p.Buy[0].Count++ },
		"a cheaper plan":           func(p *cutplan.Plan) { p.Cost-- },
		"a bound above":            func(p *cutplan.Plan) { p.Bound = p.Cost + 1 },
		"a layout left out":        func(p *cutplan.Plan) { p.Layouts = p.Layouts[1:] },
		"a layout more":            func(p *cutplan.Plan) { p.Layouts[0].Repeat++ },
		"a larger piece":           func(p *cutplan.Plan) { p.Layouts[0].Stock.Length += mm },
		"a piece of nothing":       func(p *cutplan.Plan) { p.Layouts[0].Stock.From = "half" },
		"a sheet carried whole":    func(p *cutplan.Plan) { p.Layouts[0].Stock = job.Stock[0] },
		"a sawn side not trimmed":  func(p *cutplan.Plan) { p.Layouts[0].Root.Length += 2 * mm },
		"more than there are":      func(p *cutplan.Plan) { p.Buy[0].Stock.Count = 1 },
		"a piece that is too wide": func(p *cutplan.Plan) { p.AtSeller[0].Stock.Width = 1400 * mm },
	} {
		p := carry(t, job)
		if len(p.AtSeller) != 1 || p.AtSeller[0].Count != 2 {
			t.Fatalf("%+v", p.AtSeller)
		}
		p.AtSeller[0].Pieces, p.Layouts = slices.Clone(p.AtSeller[0].Pieces), slices.Clone(p.Layouts)
		change(p)
		if err := p.CheckSellerCuts(); (err == nil) != (name == "nothing") {
			t.Errorf("%s: %v", name, err)
		}
	}
	p := carry(t, job)
	p.Job.Transport = stock.Transport{Longest: 600 * mm, Cuts: 1, CutPrice: 1_50, CutKerf: 4 * mm}
	if err := p.CheckSellerCuts(); err == nil {
		t.Error("pieces of 1220 go where 600 go")
	}
}

// Where the seller cuts true, 1508 = 500 + 4 + 500 + 4 + 500 is three equal pieces, the
// middle one sawn at both sides, and three equal layouts of them hold.
func TestEqualLayoutsMayBeOfPiecesSawnAtOneSideAndAtBoth(t *testing.T) {
	limits := stock.Transport{Longest: 1220 * mm, Widest: 500 * mm, Cuts: 2, CutKerf: 4 * mm}
	p := carry(t, sheets(1508*mm, 1220*mm, limits, shelf(498*mm, 1200*mm, 3)))
	if !p.Complete() || p.Buy[0].Count != 1 || len(p.Layouts) != 1 || p.Layouts[0].Repeat != 3 {
		t.Errorf("%+v", p.Layouts)
	}
}
