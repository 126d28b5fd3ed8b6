package planfile

import (
	"encoding/json"
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
)

// writer converts a plan for its file. A part or a piece of stock is listed when it is first
// mentioned.
type writer struct {
	parts []partV2
	stock []stockV2
	at    map[string]int // in parts, by the encoding of a part
	lies  map[stock.Stock]int
}

func (p *Plan) fileV2() fileV2 {
	w := writer{at: map[string]int{}, lies: map[stock.Stock]int{}}
	plan := p.Plan
	f := fileV2{Format: formatV2, About: about, Code: p.Code, Number: p.Number, Job: p.Job, WhatIf: p.WhatIf,
		Rack: p.Rack, OnRack: p.OnRack, Begun: p.Begun, Marks: p.Marks}
	if len(p.Continues) > 0 {
		f.Continues = &continuesV2{p.Continues, p.Before}
	}
	if c := p.Changes; !none(c) {
		f.Changes = &changesV2{c.Without, c.Spare, c.Counts, c.Thicknesses, c.Smaller, c.Added, c.Sizes, c.Kerf}
	}
	for _, s := range fromJob(p.File.Sources) {
		f.Sources = append(f.Sources, sourceV2{s.Name, s.Text})
	}
	f.Asked = w.job(plan.Job)
	f.Bill = each(plan.Bill, w.blank)
	f.Buy = each(plan.Buy, func(b cutplan.Purchase) purchaseV2 { return purchaseV2{w.stockOf(b.Stock), b.Count, int64(b.Cost)} })
	f.AtSeller = each(plan.AtSeller, w.division)
	var ways []map[spot][]int
	for _, l := range plan.Layouts {
		at := waysOf(l.Root)
		ways = append(ways, at)
		f.Layouts = append(f.Layouts, layoutV2{w.stockOf(l.Stock), l.Repeat, nodeOf(l.Root), each(plan.Steps(l), func(s cutplan.Step) stepV2 { return stepOf(s, at) })})
	}
	f.Offcuts = each(plan.Offcuts(), func(k cutplan.NumberedOffcut) offcutV2 {
		return offcutV2{k.Layout, ways[k.Layout][spotOf(k.Node)], k.First, k.Count}
	})
	f.Unplaced = each(plan.Unplaced, func(u cutplan.Unplaced) unplacedV2 { return unplacedV2(u) })
	f.Estimates = each(plan.Estimates, estimateOf)
	f.Cost, f.Bound, f.Seconds = int64(plan.Cost), int64(plan.Bound), plan.Seconds
	f.Unpriced = each(plan.Unpriced, func(u cutplan.Unpriced) unpricedV2 {
		return unpricedV2{each(u.Stock, w.stockOf), u.OneSize, u.Area, u.Bound}
	})
	f.Totals = totalsV2{sharesV2(plan.Totals.All), sharesV2(plan.Totals.Sheets), sharesV2(plan.Totals.Boards)}
	c := plan.Cover
	f.Cover = coverV2{c.Parts, c.Covered, each(c.Uncovered, func(u cutplan.Uncovered) wantedV2 { return wantedV2(u) }), c.Offcuts, c.Rack}
	f.Made = each(p.Made, w.made)
	f.Parts, f.Stock = w.parts, w.stock
	return f
}

// none reports whether c changes nothing.
func none(c job.Changes) bool {
	return c.Spare == 0 && c.Kerf == "" && len(c.Without)+len(c.Counts)+len(c.Thicknesses)+len(c.Smaller)+len(c.Added)+len(c.Sizes) == 0
}

func (w *writer) job(j stock.Job) jobV2 {
	t, s := j.Transport, j.Saw
	f := jobV2{
		Title: j.Title, Units: unitWords.of(j.Units),
		Saw: sawV2{int64(s.Kerf), int64(s.ResawKerf), int64(s.RipCapacity), int64(s.CrosscutCapacity), int64(s.NarrowestRip),
			s.Stages, firstWords.of(s.FirstCut), firstWords.of(s.BoardFirstCut)},
		Shortest: int64(j.Shortest), Offcut: pair(j.Offcut.Length, j.Offcut.Width),
		Tax: int64(j.Tax), Worth: int64(j.Worth), Densities: j.Densities,
		Stock: each(j.Stock, w.stockOf), Rough: each(j.Rough, roughOf), Parts: each(j.Parts, w.partOf),
	}
	if t != (stock.Transport{}) {
		f.Transport = &transportV2{int64(t.Longest), int64(t.Widest), int64(t.Heaviest), t.Cuts, int64(t.CutPrice), int64(t.CutKerf), int64(t.CutTolerance)}
	}
	if j.Kinds != nil {
		f.Kinds = map[string]string{}
		for material, kind := range j.Kinds {
			f.Kinds[material] = kindWords.of(kind)
		}
	}
	return f
}

// partOf returns the number of a part in the list.
func (w *writer) partOf(p stock.Part) int {
	a := p.Allowance
	f := partV2{
		Name: p.Name, Material: p.Material, Length: int64(p.Length), Width: int64(p.Width), Thickness: int64(p.Thickness),
		Count: p.Count, Grain: grainWords.of(p.Grain),
		Allowance: allowanceV2{int64(a.Edge), int64(a.Face), int64(a.End), int64(a.Miter), a.Edges, a.Faces, a.Ends, a.Miters},
		Resaw:     p.Resaw, Alone: p.Alone, DryFit: p.DryFit, From: p.From, How: derivationsOf(p.How), Note: p.Note,
	}
	written, err := json.Marshal(f)
	if err != nil {
		panic("planfile: a part that cannot be written: " + err.Error()) // it has no float
	}
	at, there := w.at[string(written)]
	if !there {
		at = len(w.parts)
		w.parts, w.at[string(written)] = append(w.parts, f), at
	}
	return at
}

// stockOf returns the number of a piece of stock in the list.
func (w *writer) stockOf(s stock.Stock) int {
	at, there := w.lies[s]
	if !there {
		at = len(w.stock)
		w.stock, w.lies[s] = append(w.stock, pieceOf(s)), at
	}
	return at
}

func pieceOf(s stock.Stock) stockV2 {
	f := stockV2{
		Name: s.Name, Kind: kindWords.of(s.Kind), Material: s.Material,
		Length: int64(s.Length), Width: int64(s.Width), Thickness: int64(s.Thickness), Grain: grainWords.of(s.Grain),
		Trim: int64(s.Trim), Seller: s.Seller, Price: int64(s.Price), Count: s.Count, OnHand: s.OnHand,
		From: s.From, Next: nextWords.of(s.Next),
	}
	if m := s.Measure; m != (stock.Measure{}) {
		f.Measure = &measureV2{int64(m.Thickness), int64(m.Width), m.Surface}
	}
	if t := s.Sawn; t != (stock.Trims{}) {
		f.Sawn = &trimsV2{int64(t.NearEnd), int64(t.FarEnd), int64(t.NearEdge), int64(t.FarEdge)}
	}
	if s.IsSection() {
		f.Section = &sectionV2{int64(s.Section.From), int64(s.Section.Board)}
	}
	return f
}

func derivationsOf(all []stock.Derivation) []derivationV2 {
	return each(all, func(d stock.Derivation) derivationV2 {
		return derivationV2{d.Dimension, each(d.Sum, func(t stock.Term) termV2 { return termV2{t.Times, int64(t.Value), t.Over, t.Label} })}
	})
}

func (w *writer) blank(b cutplan.Blank) blankV2 {
	return blankV2{
		Part: w.partOf(b.Part), Mark: b.Mark, Turnable: b.Turnable,
		Length: int64(b.Length), Width: int64(b.Width), Thickness: int64(b.Thickness),
		Count: b.Count, Gang: b.Gang, Layers: b.Layers, Spare: b.Spare, How: derivationsOf(b.How), ResawKerf: int64(b.ResawKerf),
	}
}

func (w *writer) made(m progress.Made) madeV2 {
	f := madeV2{blankV2: w.blank(m.Blank), Turned: m.Turned, Known: m.Known}
	if m.From != (stock.Stock{}) {
		from := pieceOf(m.From)
		f.From = &from
	}
	return f
}

func (w *writer) division(d cutplan.Division) divisionV2 {
	return divisionV2{w.stockOf(d.Stock), d.Count, cutWords.of(d.Cut), each(d.Pieces, whole), int64(d.Kerf), int64(d.Cost)}
}

func whole(l stock.Length) int64 { return int64(l) }

func pair(a, b stock.Length) [2]int64 { return [2]int64{int64(a), int64(b)} }

func roughOf(r stock.Rough) roughV2 {
	return roughV2{r.Material, r.Quarter.String(), r.Grade.String(), int64(r.Price), yieldOf(r.Yield)}
}

func yieldOf(y stock.Yield) yieldV2 {
	part, of := y.Fraction()
	return yieldV2{part, of}
}

func estimateOf(e cutplan.Estimate) estimateV2 {
	return estimateV2{roughOf(e.Rough), int64(e.Net), e.Least, e.Usual, yieldOf(e.LeastYield), yieldOf(e.UsualYield), int64(e.Longest), int64(e.Widest),
		each(e.Blanks, func(w cutplan.Wanted) wantedV2 { return wantedV2(w) })}
}

func nodeOf(n cutplan.Node) nodeV2 {
	f := nodeV2{X: int64(n.X), Y: int64(n.Y), Length: int64(n.Length), Width: int64(n.Width), Use: useWords.of(n.Use)}
	switch n.Use {
	case cutplan.Split:
		f.Cut, f.Children = cutWords.of(n.Cut), each(n.Children, nodeOf)
	case cutplan.Part:
		f.Blank, f.Turned = &n.Blank, n.Turned
	}
	return f
}

func stepOf(s cutplan.Step, at map[spot][]int) stepV2 {
	return stepV2{
		Number: s.Number, Level: s.Level, InHand: s.InHand, Rest: s.Remainder, Cut: cutWords.of(s.Cut), Guide: guideWords.of(s.Guide),
		Setting: int64(s.Setting), Mark: int64(s.Mark), Piece: pair(s.Piece.Length, s.Piece.Width), Off: pair(s.Off.Length, s.Off.Width),
		Left: pair(s.Left.Length, s.Left.Width), Trim: s.Trim, OffAt: wayTo(s.OffNode, at), LeftAt: wayTo(s.LeftNode, at),
		X: int64(s.X), Y: int64(s.Y), Run: int64(s.Run),
	}
}

// spot tells a node from the others of its tree.
type spot struct {
	x, y, length, width stock.Length
	use                 cutplan.Use
}

func spotOf(n cutplan.Node) spot { return spot{n.X, n.Y, n.Length, n.Width, n.Use} }

// waysOf returns the ways to all nodes of a tree.
func waysOf(root cutplan.Node) map[spot][]int {
	ways := map[spot][]int{}
	var visit func(n cutplan.Node, way []int)
	visit = func(n cutplan.Node, way []int) {
		ways[spotOf(n)] = way
		for i, c := range n.Children {
			visit(c, append(slices.Clip(way), i))
		}
	}
	visit(root, nil)
	return ways
}

func wayTo(n *cutplan.Node, ways map[spot][]int) []int {
	if n == nil {
		return nil
	}
	way, there := ways[spotOf(*n)]
	if !there {
		panic(fmt.Sprintf("planfile: a cut makes a piece at %d, %d that its layout does not have", n.X, n.Y))
	}
	return way
}
