package samples

import (
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Sheets cuts each of n sheets in a way of its own into three strips of four parts,
// all of different sizes. The parts are named by name, counted from 0.
func Sheets(n int, name func(part int) string) cutplan.Plan {
	const strips, each = 3, 4
	job := stock.Job{
		Title:    "Shop fittings",
		Saw:      stock.Saw{Kerf: 32 * mm / 10},
		Shortest: stock.ShortestMilled,
		Offcut:   stock.Offcut{Length: 300 * mm, Width: 80 * mm},
		Stock: []stock.Stock{{Name: "birch 18, 8x4", Material: "birch ply 18", Price: 7450,
			Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm}},
	}
	for i := range n * strips * each {
		strip := stock.Length(i / each)
		job.Parts = append(job.Parts, stock.Part{
			Name: name(i), Material: "birch ply 18", Thickness: 18 * mm, Count: 1,
			Length: 400*mm + stock.Length(i%each)*60*mm + strip*mm/10, Width: 300*mm + strip%70*mm,
		})
	}
	m := New(job)
	for i := range n {
		var rips []Piece
		for strip := range strips {
			var pieces []Piece
			first := (i*strips + strip) * each
			for part := range each {
				pieces = append(pieces, m.Part(first+part))
			}
			rips = append(rips, m.Crosscuts(m.Plan.Bill[first].Width, append(pieces, m.Rest())...))
		}
		m.Layout(0, 1, m.Rips(0, append(rips, m.Rest())...))
	}
	return m.Finished(m.Plan.Cost)
}
