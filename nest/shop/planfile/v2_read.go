package planfile

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
)

// reader converts a file of version 2 into a plan.
type reader struct {
	*decoder
	parts []stock.Part
	stock []stock.Stock
}

func readV2(data []byte) (*Plan, error) {
	var f fileV2
	if err := decode(data, &f); err != nil {
		return nil, err
	}
	r := reader{decoder: &decoder{}}
	r.parts, r.stock = each(f.Parts, r.partOf), each(f.Stock, r.pieceOf)
	p := &Plan{Plan: r.plan(f), Code: f.Code, Number: r.count(f.Number), Job: f.Job, WhatIf: f.WhatIf, Rack: f.Rack, OnRack: f.OnRack, Begun: f.Begun,
		Made: each(f.Made, r.made), Marks: r.count(f.Marks)}
	if f.Continues != nil {
		p.Continues, p.Before = f.Continues.Codes, f.Continues.Folder
	}
	if c := f.Changes; c != nil {
		p.Changes = job.Changes{Without: c.Without, Spare: c.Spare, Counts: c.Counts, Thicknesses: c.Thicknesses, Smaller: c.Smaller,
			Added: c.Added, Sizes: c.Sizes, Kerf: c.Kerf}
	}
	if r.wrong != nil {
		return nil, r.wrong
	}
	p.reread(each(f.Sources, func(s sourceV2) job.Source { return job.Source{Name: s.Name, Text: s.Text} }))
	return p, nil
}

func (r *reader) plan(f fileV2) *cutplan.Plan {
	p := &cutplan.Plan{
		Job: r.job(f.Asked), Bill: each(f.Bill, r.blank),
		Buy: each(f.Buy, func(b purchaseV2) cutplan.Purchase {
			return cutplan.Purchase{Stock: r.stockOf(b.Stock), Count: r.count(b.Count), Cost: r.money(b.Cost)}
		}),
		AtSeller: each(f.AtSeller, r.division), Layouts: each(f.Layouts, r.layout),
		Unplaced: each(f.Unplaced, func(u unplacedV2) cutplan.Unplaced {
			return cutplan.Unplaced{Blank: r.index(u.Blank, len(f.Bill)), Count: r.count(u.Count), Reason: u.Reason}
		}),
		Estimates: each(f.Estimates, func(e estimateV2) cutplan.Estimate { return r.estimate(e, len(f.Bill)) }),
		Cost:      r.money(f.Cost), Bound: r.money(f.Bound), Seconds: f.Seconds,
		Unpriced: each(f.Unpriced, func(u unpricedV2) cutplan.Unpriced {
			return cutplan.Unpriced{Stock: each(u.Stock, r.stockOf), OneSize: u.OneSize, Area: u.Area, Bound: u.Bound}
		}),
		Totals: cutplan.Totals{All: cutplan.Shares(f.Totals.All), Sheets: cutplan.Shares(f.Totals.Sheets), Boards: cutplan.Shares(f.Totals.Boards)},
		Cover: cutplan.Cover{Parts: f.Cover.Parts, Covered: f.Cover.Covered, Offcuts: f.Cover.Offcuts, Rack: f.Cover.Rack,
			Uncovered: each(f.Cover.Uncovered, func(u wantedV2) cutplan.Uncovered {
				return cutplan.Uncovered{Blank: r.index(u.Blank, len(f.Bill)), Count: u.Count}
			})},
	}
	p.Numbered = []cutplan.NumberedOffcut{}
	for _, k := range f.Offcuts {
		l := one(r.decoder, p.Layouts, k.Layout)
		p.Numbered = append(p.Numbered, cutplan.NumberedOffcut{Layout: k.Layout, Node: r.node(l.Root, k.At), First: r.count(k.First), Count: r.count(k.Count)})
	}
	return p
}

func (r *reader) job(f jobV2) stock.Job {
	s := f.Saw
	j := stock.Job{
		Title: f.Title, Units: unitWords.read(r.decoder, f.Units),
		Saw: stock.Saw{Kerf: r.size(s.Kerf), ResawKerf: r.size(s.ResawKerf), RipCapacity: r.size(s.RipCapacity), CrosscutCapacity: r.size(s.CrosscutCapacity),
			NarrowestRip: r.size(s.NarrowestRip), Stages: r.count(s.Stages), FirstCut: firstWords.read(r.decoder, s.FirstCut), BoardFirstCut: firstWords.read(r.decoder, s.BoardFirstCut)},
		Shortest: r.size(f.Shortest), Offcut: stock.Offcut{Length: r.size(f.Offcut[0]), Width: r.size(f.Offcut[1])},
		Tax: stock.Share(r.money(f.Tax)), Worth: stock.Share(r.money(f.Worth)), Densities: f.Densities,
		Stock: each(f.Stock, r.stockOf), Rough: each(f.Rough, r.roughOf), Parts: each(f.Parts, func(i int) stock.Part { return one(r.decoder, r.parts, i) }),
	}
	if t := f.Transport; t != nil {
		j.Transport = stock.Transport{Longest: r.size(t.Longest), Widest: r.size(t.Widest), Heaviest: stock.Grams(r.money(t.Heaviest)), Cuts: r.count(t.Cuts),
			CutPrice: r.price(t.CutPrice), CutKerf: r.size(t.CutKerf), CutTolerance: r.size(t.CutTolerance)}
	}
	if f.Kinds != nil {
		j.Kinds = map[string]stock.Kind{}
		for material, kind := range f.Kinds {
			j.Kinds[material] = kindWords.read(r.decoder, kind)
		}
	}
	return j
}

func (r *reader) stockOf(i int) stock.Stock { return one(r.decoder, r.stock, i) }

func (r *reader) partOf(f partV2) stock.Part {
	a := f.Allowance
	return stock.Part{
		Name: f.Name, Material: f.Material, Length: r.size(f.Length), Width: r.size(f.Width), Thickness: r.size(f.Thickness),
		Count: r.count(f.Count), Grain: grainWords.read(r.decoder, f.Grain),
		Allowance: stock.Allowance{Edge: r.size(a.Edge), Face: r.size(a.Face), End: r.size(a.End), Miter: r.size(a.Miter),
			Edges: r.count(a.Edges), Faces: r.count(a.Faces), Ends: r.count(a.Ends), Miters: r.count(a.Miters)},
		Resaw: f.Resaw, Alone: f.Alone, DryFit: f.DryFit, From: f.From, How: derivations(f.How), Note: f.Note,
	}
}

func derivations(all []derivationV2) []stock.Derivation {
	return each(all, func(d derivationV2) stock.Derivation {
		return stock.Derivation{Dimension: d.Dimension, Sum: each(d.Sum, func(t termV2) stock.Term {
			return stock.Term{Times: t.Times, Value: stock.Length(t.Value), Over: t.Over, Label: t.Label}
		})}
	})
}

func (r *reader) pieceOf(f stockV2) stock.Stock {
	s := stock.Stock{
		Name: f.Name, Kind: kindWords.read(r.decoder, f.Kind), Material: f.Material,
		Length: r.size(f.Length), Width: r.size(f.Width), Thickness: r.size(f.Thickness), Grain: grainWords.read(r.decoder, f.Grain),
		Trim: r.size(f.Trim), Seller: f.Seller, Price: r.price(f.Price), Count: r.count(f.Count), OnHand: f.OnHand,
		From: f.From, Next: nextWords.read(r.decoder, f.Next),
	}
	if m := f.Measure; m != nil {
		s.Measure = stock.Measure{Thickness: r.size(m.Thickness), Width: r.size(m.Width), Surface: m.Surface}
	}
	if t := f.Sawn; t != nil {
		s.Sawn = stock.Trims{NearEnd: r.size(t.NearEnd), FarEnd: r.size(t.FarEnd), NearEdge: r.size(t.NearEdge), FarEdge: r.size(t.FarEdge)}
	}
	if on := f.Section; on != nil {
		s.Section = stock.Section{From: r.size(on.From), Board: r.size(on.Board)}
	}
	return s
}

func (r *reader) blank(f blankV2) cutplan.Blank {
	return cutplan.Blank{Mark: f.Mark, Turnable: f.Turnable, Blank: stock.Blank{
		Part: one(r.decoder, r.parts, f.Part), Length: r.size(f.Length), Width: r.size(f.Width), Thickness: r.size(f.Thickness),
		Count: r.count(f.Count), Gang: r.count(f.Gang), Layers: r.count(f.Layers), Spare: r.count(f.Spare), How: derivations(f.How), ResawKerf: r.size(f.ResawKerf),
	}}
}

func (r *reader) made(f madeV2) progress.Made {
	m := progress.Made{Blank: r.blank(f.blankV2), Turned: f.Turned, Known: f.Known}
	if f.From != nil {
		m.From = r.pieceOf(*f.From)
	}
	return m
}

func (r *reader) division(f divisionV2) cutplan.Division {
	return cutplan.Division{Stock: r.stockOf(f.Stock), Count: r.count(f.Count), Cut: cutWords.read(r.decoder, f.Cut), Pieces: each(f.Pieces, r.size),
		Kerf: r.size(f.Kerf), Cost: r.money(f.Cost)}
}

func (r *reader) roughOf(f roughV2) stock.Rough {
	quarter, err := stock.ParseQuarter(f.Quarter)
	if err != nil || !slices.Contains(stock.Grades(), f.Grade) {
		r.bad("this program does not know the lumber %s %s in the file", f.Quarter, f.Grade)
		return stock.Rough{}
	}
	return stock.Rough{Material: f.Material, Quarter: quarter, Grade: stock.GradeOf(f.Grade), Price: r.price(f.Price), Yield: r.yield(f.Yield)}
}

func (r *reader) yield(f yieldV2) stock.Yield {
	y, some := stock.YieldOf(f[0], f[1])
	if !some && f != (yieldV2{}) {
		r.bad("a yield of %d / %d in the file makes no sense", f[0], f[1])
	}
	return y
}

func (r *reader) estimate(f estimateV2, bill int) cutplan.Estimate {
	return cutplan.Estimate{
		Estimate: stock.Estimate{Rough: r.roughOf(f.Rough), Net: stock.BoardFeet(f.Net), Least: f.Least, Usual: f.Usual,
			LeastYield: r.yield(f.LeastYield), UsualYield: r.yield(f.UsualYield), Longest: r.size(f.Longest), Widest: r.size(f.Widest)},
		Blanks: each(f.Blanks, func(w wantedV2) cutplan.Wanted {
			return cutplan.Wanted{Blank: r.index(w.Blank, bill), Count: r.count(w.Count)}
		}),
	}
}

func (r *reader) layout(f layoutV2) cutplan.Layout {
	l := cutplan.Layout{Stock: r.stockOf(f.Stock), Repeat: r.count(f.Repeat), Root: r.tree(f.Root), Printed: []cutplan.Step{}}
	for i, s := range f.Steps {
		l.Printed = append(l.Printed, r.step(s, i, l.Root))
	}
	return l
}

func (r *reader) tree(f nodeV2) cutplan.Node {
	n := cutplan.Node{X: r.size(f.X), Y: r.size(f.Y), Length: r.size(f.Length), Width: r.size(f.Width), Use: useWords.read(r.decoder, f.Use)}
	switch n.Use {
	case cutplan.Split:
		n.Cut, n.Children = cutWords.read(r.decoder, f.Cut), each(f.Children, r.tree)
		if len(n.Children) == 0 {
			r.bad("the plan in the file divides a piece into nothing")
		}
	case cutplan.Part:
		if n.Turned = f.Turned; f.Blank == nil {
			r.bad("the plan in the file cuts a part without a blank")
			break
		}
		n.Blank = *f.Blank
	}
	return n
}

// step converts step i of a layout. Cuts are numbered in their order: progress finds them by
// their numbers.
func (r *reader) step(f stepV2, i int, root cutplan.Node) cutplan.Step {
	if f.Number != i+1 || f.InHand < 0 || f.InHand > i {
		r.bad("the cuts in the file are not in order")
	}
	if (len(f.OffAt) == 0) != f.Trim {
		r.bad("a cut in the file gives nothing")
	}
	size := func(f [2]int64) cutplan.Size { return cutplan.Size{Length: r.size(f[0]), Width: r.size(f[1])} }
	some := func(way []int) *cutplan.Node {
		if len(way) == 0 {
			return nil // no cut gives the whole of what it divides
		}
		n := r.node(root, way)
		return &n
	}
	return cutplan.Step{
		Number: f.Number, Level: r.count(f.Level), InHand: f.InHand, Remainder: f.Rest, Cut: cutWords.read(r.decoder, f.Cut), Guide: guideWords.read(r.decoder, f.Guide),
		Setting: r.size(f.Setting), Mark: r.size(f.Mark), Piece: size(f.Piece), Off: size(f.Off), Left: size(f.Left), Trim: f.Trim,
		OffNode: some(f.OffAt), LeftNode: some(f.LeftAt), X: r.place(f.X), Y: r.place(f.Y), Run: r.size(f.Run),
	}
}

// node returns the node at the end of a way.
func (r *reader) node(root cutplan.Node, way []int) cutplan.Node {
	for _, i := range way {
		root = one(r.decoder, root.Children, i)
	}
	return root
}
