package planfile

import (
	"errors"
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
)

// The constants of version 1, by their numbers.
var (
	unitsV1  = []stock.Units{stock.Millimeters, stock.Inches}
	kindsV1  = []stock.Kind{stock.Sheet, stock.Board}
	grainsV1 = []stock.Grain{stock.GrainLength, stock.GrainWidth, stock.GrainAny}
	firstsV1 = []stock.FirstCut{stock.FirstAny, stock.FirstRip, stock.FirstCrosscut}
	nextsV1  = []stock.NextCut{stock.NextAsSaid, stock.NextAny, stock.NextRip, stock.NextCrosscut}
	usesV1   = []cutplan.Use{cutplan.Split, cutplan.Part, cutplan.Offcut, cutplan.Waste}
	cutsV1   = []cutplan.Cut{cutplan.Rip, cutplan.Crosscut}
)

// readerV1 converts a file of version 1 into a plan.
type readerV1 struct{ *decoder }

func readV1(data []byte) (*Plan, error) {
	var f fileV1
	if err := decode(data, &f); err != nil {
		return nil, err
	}
	r := readerV1{&decoder{}}
	p := &Plan{Plan: r.plan(f.Plan), Code: f.Identity, Number: len(f.Of) + 1, Continues: f.Of, Marks: r.count(f.Marks),
		Rack: f.Rack, OnRack: f.OnRack, Begun: f.Begun,
		Made:    each(f.Made, func(b blankV1) progress.Made { return progress.Made{Blank: r.blank(b)} }),
		Changes: job.Changes{Without: f.Changes.Without, Spare: f.Changes.Spare, Counts: f.Changes.Counts, Thicknesses: f.Changes.Thicknesses, Smaller: f.Changes.Smaller}}
	if r.wrong != nil {
		return nil, r.wrong
	}
	p.reread(each(f.Sources, func(s sourceV1) job.Source { return job.Source(s) }))
	of := p.Plan.Job // with all stock that the blanks may be of
	of.Stock = slices.Concat(of.Stock, p.File.Stock)
	for i, m := range p.Made {
		p.Made[i] = progress.OfUnknownOrigin(m.Blank, of)
	}
	if err := p.estimate(f.Estimated); err != nil {
		return nil, err
	}
	p.print()
	return p, nil
}

// estimate adds the lumber that is sold by the board foot, which version 1 left to the files
// of the job.
func (p *Plan) estimate(all []estimatedV1) error {
	p.Plan.Job.Rough = p.File.Rough
	for _, e := range all {
		if p.Unread != nil {
			return fmt.Errorf("this program cannot read the job in the file: %w", p.Unread)
		}
		if e.Rough < 0 || e.Rough >= len(p.File.Rough) {
			return errors.New("the file refers to lumber that the job does not have")
		}
		wanted := each(e.Blanks, func(w wantedV1) cutplan.Wanted { return cutplan.Wanted(w) })
		for _, w := range wanted {
			if w.Blank < 0 || w.Blank >= len(p.Plan.Bill) || w.Count < 0 || w.Count > mostCounted {
				return errors.New("the plan in the file refers to blanks that it does not have")
			}
		}
		p.Plan.Estimates = append(p.Plan.Estimates, p.Plan.EstimateOf(p.File.Rough[e.Rough], wanted))
	}
	return nil
}

// print sets the cuts and the numbers of the offcuts, which version 1 does not hold. It
// computes them as the program did then; underway_test.go proves it. When the program
// changes its way, a copy of the old way belongs here.
func (p *Plan) print() {
	for i, l := range p.Plan.Layouts {
		if p.Plan.Layouts[i].Printed = p.Plan.FormerSteps(l); p.Plan.Layouts[i].Printed == nil {
			p.Plan.Layouts[i].Printed = []cutplan.Step{}
		}
	}
	if p.Plan.Numbered = p.Plan.Offcuts(); p.Plan.Numbered == nil {
		p.Plan.Numbered = []cutplan.NumberedOffcut{}
	}
}

func (r readerV1) plan(f planV1) *cutplan.Plan {
	return &cutplan.Plan{
		Job: r.job(f.Job), Bill: each(f.Bill, r.blank),
		Buy: each(f.Buy, func(b purchaseV1) cutplan.Purchase {
			return cutplan.Purchase{Stock: r.stock(b.Stock), Count: r.count(b.Count), Cost: r.money(b.Cost)}
		}),
		AtSeller: each(f.AtSeller, func(d divisionV1) cutplan.Division {
			return cutplan.Division{Stock: r.stock(d.Stock), Count: r.count(d.Count), Cut: one(r.decoder, cutsV1, d.Cut), Pieces: each(d.Pieces, r.size), Kerf: r.size(d.Kerf), Cost: r.money(d.Cost)}
		}),
		Layouts: each(f.Layouts, func(l layoutV1) cutplan.Layout {
			return cutplan.Layout{Stock: r.stock(l.Stock), Repeat: r.count(l.Repeat), Root: r.node(l.Root)}
		}),
		Unplaced: each(f.Unplaced, func(u unplacedV1) cutplan.Unplaced {
			return cutplan.Unplaced{Blank: r.index(u.Blank, len(f.Bill)), Count: r.count(u.Count), Reason: u.Reason}
		}),
		Cost: r.money(f.Cost), Bound: r.money(f.Bound), Seconds: f.Seconds,
		Unpriced: each(f.Unpriced, func(u unpricedV1) cutplan.Unpriced {
			return cutplan.Unpriced{Stock: each(u.Stock, r.stock), OneSize: u.OneSize, Area: u.Area, Bound: u.Bound}
		}),
		Totals: cutplan.Totals{All: cutplan.Shares(f.Totals.All), Sheets: cutplan.Shares(f.Totals.Sheets), Boards: cutplan.Shares(f.Totals.Boards)},
		Cover: cutplan.Cover{Parts: f.Cover.Parts, Covered: f.Cover.Covered, Offcuts: f.Cover.Offcuts, Rack: f.Cover.Rack,
			Uncovered: each(f.Cover.Uncovered, func(u wantedV1) cutplan.Uncovered {
				return cutplan.Uncovered{Blank: r.index(u.Blank, len(f.Bill)), Count: u.Count}
			})},
	}
}

func (r readerV1) job(f jobV1) stock.Job {
	s, t := f.Saw, f.Transport
	j := stock.Job{
		Title: f.Title, Units: one(r.decoder, unitsV1, f.Units),
		Saw: stock.Saw{Kerf: r.size(s.Kerf), ResawKerf: r.size(s.ResawKerf), RipCapacity: r.size(s.RipCapacity), CrosscutCapacity: r.size(s.CrosscutCapacity),
			NarrowestRip: r.size(s.NarrowestRip), Stages: r.count(s.Stages), FirstCut: one(r.decoder, firstsV1, s.FirstCut), BoardFirstCut: one(r.decoder, firstsV1, s.BoardFirstCut)},
		Shortest: r.size(f.Shortest), Offcut: stock.Offcut{Length: r.size(f.Offcut.Length), Width: r.size(f.Offcut.Width)},
		Tax: stock.Share(r.money(f.Tax)), Worth: stock.Share(r.money(f.Worth)), Densities: f.Densities,
		Transport: stock.Transport{Longest: r.size(t.Longest), Widest: r.size(t.Widest), Heaviest: stock.Grams(r.money(t.Heaviest)), Cuts: r.count(t.Cuts),
			CutPrice: r.price(t.CutPrice), CutKerf: r.size(t.CutKerf), CutTolerance: r.size(t.CutTolerance)},
		Stock: each(f.Stock, r.stock), Parts: each(f.Parts, r.part),
	}
	if f.Kinds != nil {
		j.Kinds = map[string]stock.Kind{}
		for material, kind := range f.Kinds {
			j.Kinds[material] = one(r.decoder, kindsV1, kind)
		}
	}
	return j
}

func (r readerV1) stock(f stockV1) stock.Stock {
	return stock.Stock{
		Name: f.Name, Kind: one(r.decoder, kindsV1, f.Kind), Material: f.Material,
		Length: r.size(f.Length), Width: r.size(f.Width), Thickness: r.size(f.Thickness), Grain: one(r.decoder, grainsV1, f.Grain),
		Trim: r.size(f.Trim), Seller: f.Seller, Price: r.price(f.Price), Count: r.count(f.Count), OnHand: f.OnHand,
		Measure: stock.Measure{Thickness: r.size(f.Measure.Thickness), Width: r.size(f.Measure.Width), Surface: f.Measure.Surface},
		From:    f.From, Sawn: stock.Trims{NearEnd: r.size(f.Sawn.NearEnd), FarEnd: r.size(f.Sawn.FarEnd), NearEdge: r.size(f.Sawn.NearEdge), FarEdge: r.size(f.Sawn.FarEdge)},
		Next: one(r.decoder, nextsV1, f.Next), Section: stock.Section{From: r.size(f.Section.From), Board: r.size(f.Section.Board)},
	}
}

func (r readerV1) part(f partV1) stock.Part {
	a := f.Allowance
	return stock.Part{
		Name: f.Name, Material: f.Material, Length: r.size(f.Length), Width: r.size(f.Width), Thickness: r.size(f.Thickness),
		Count: r.count(f.Count), Grain: one(r.decoder, grainsV1, f.Grain),
		Allowance: stock.Allowance{Edge: r.size(a.Edge), Face: r.size(a.Face), End: r.size(a.End), Miter: r.size(a.Mitre),
			Edges: r.count(a.Edges), Faces: r.count(a.Faces), Ends: r.count(a.Ends), Miters: r.count(a.Mitres)},
		Resaw: f.Resaw, Alone: f.Alone, DryFit: f.DryFit, From: f.From, How: derivationsV1(f.How), Note: f.Note,
	}
}

func derivationsV1(all []derivationV1) []stock.Derivation {
	return each(all, func(d derivationV1) stock.Derivation {
		return stock.Derivation{Dimension: d.Dimension, Sum: each(d.Sum, func(t termV1) stock.Term {
			return stock.Term{Times: t.Times, Value: stock.Length(t.Value), Over: t.Over, Label: t.Label}
		})}
	})
}

func (r readerV1) blank(f blankV1) cutplan.Blank {
	return cutplan.Blank{Mark: f.Mark, Turnable: f.Turnable, Blank: stock.Blank{
		Part: r.part(f.Part), Length: r.size(f.Length), Width: r.size(f.Width), Thickness: r.size(f.Thickness),
		Count: r.count(f.Count), Gang: r.count(f.Gang), Layers: r.count(f.Layers), Spare: r.count(f.Spare), How: derivationsV1(f.How), ResawKerf: r.size(f.ResawKerf),
	}}
}

func (r readerV1) node(f nodeV1) cutplan.Node {
	n := cutplan.Node{X: r.size(f.X), Y: r.size(f.Y), Length: r.size(f.Length), Width: r.size(f.Width),
		Use: one(r.decoder, usesV1, f.Use), Cut: one(r.decoder, cutsV1, f.Cut), Children: each(f.Children, r.node), Blank: f.Blank, Turned: f.Turned}
	if n.Use == cutplan.Split && len(n.Children) == 0 {
		r.bad("the plan in the file divides a piece into nothing")
	}
	return n
}
