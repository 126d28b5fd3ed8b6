package samples

import (
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

const mm = stock.Millimeter

// Bench is a job of sheets and boards: two layouts of one sheet, an offcut from
// the rack, boards with jointing allowance, and narrow strips.
func Bench() cutplan.Plan {
	edges := stock.Allowance{Edge: 2 * mm, Edges: 2, End: 10 * mm, Ends: 2, Face: 1 * mm, Faces: 2}
	birch, spruce := "birch ply 18", "spruce"
	m := New(stock.Job{
		Title:    "Potting bench",
		Saw:      stock.Saw{Kerf: 32 * mm / 10, RipCapacity: 760 * mm},
		Shortest: stock.ShortestMilled,
		Offcut:   stock.Offcut{Length: 300 * mm, Width: 80 * mm},
		Stock: []stock.Stock{
			{Name: "birch 18, 8x4", Material: birch, Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm, Price: 7450},
			{Name: "left from the wardrobe", Material: birch, Length: 1180 * mm, Width: 640 * mm, Thickness: 18 * mm, Trim: 10 * mm, OnHand: true},
			{Name: "2x4 x 8 ft", Kind: stock.Board, Material: spruce, Length: 96 * stock.Inch, Width: 89 * mm, Thickness: 38 * mm, Trim: 15 * mm, Price: 498},
		},
		Parts: []stock.Part{
			{Name: "top", Material: birch, Length: 1500 * mm, Width: 620 * mm, Thickness: 18 * mm, Count: 1, From: "bench.toml:21"},
			{Name: "shelf", Material: birch, Length: 900 * mm, Width: 300 * mm, Thickness: 18 * mm, Count: 3, From: "bench.toml:27"},
			{Name: "side", Material: birch, Length: 560 * mm, Width: 380 * mm, Thickness: 18 * mm, Count: 4, Grain: stock.GrainAny, From: "bench.toml:33"},
			{Name: "edging slat", Material: birch, Length: 900 * mm, Width: 20 * mm, Thickness: 18 * mm, Count: 5, From: "bench.toml:40"},
			{Name: "leg", Material: spruce, Length: 720 * mm, Width: 70 * mm, Thickness: 32 * mm, Count: 4, Allowance: edges, From: "bench.toml:46"},
			{Name: "cleat", Material: spruce, Length: 500 * mm, Width: 24 * mm, Thickness: 32 * mm, Count: 4, Allowance: edges, From: "bench.toml:52"},
		},
	})
	rest := m.Rest
	// Three wide strips, then five slats beside what is kept.
	m.Layout(0, 1, m.Rips(0,
		m.Crosscuts(620*mm, m.Part(0), m.Rips(560*mm, m.Part(2), rest()), rest()),
		m.Crosscuts(300*mm, m.Part(1), m.Part(1), rest()),
		m.Crosscuts(0, m.Rips(900*mm, m.Part(3), m.Part(3), m.Part(3), m.Part(3), m.Part(3), rest()), rest()),
	))
	across := m.Rips(380*mm, m.Turned(2), rest())
	m.Layout(1, 1, m.Crosscuts(0, across, across, across, rest()))
	m.Layout(0, 1, m.Rips(0, m.Crosscuts(300*mm, m.Part(1), rest()), rest()))
	m.Layout(2, 1, m.Crosscuts(0, m.Rips(740*mm, m.Part(4), rest()), m.Rips(740*mm, m.Part(4), rest()), m.Rips(740*mm, m.Part(4), rest()), rest()))
	m.Layout(2, 1, m.Crosscuts(0, m.Rips(740*mm, m.Part(4), rest()), m.Rips(520*mm, m.Part(5), m.Part(5), rest()), m.Rips(520*mm, m.Part(5), m.Part(5), rest()), rest()))
	m.Plan.Cover = cutplan.Cover{Parts: 21, Covered: 16, Offcuts: true,
		Uncovered: []cutplan.Uncovered{{Blank: 0, Count: 1}, {Blank: 4, Count: 4}}}
	return m.Finished(m.Plan.Cost)
}
