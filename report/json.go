package report

import (
	"bytes"
	"encoding/json"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// JSON is the plan file for other programs, which [PlanSchema] describes: lengths in exact
// millimeters, money with two decimals, lists never null. Units and paper do not change it.
func JSON(p *cutplan.Plan, o Options) []byte {
	names := namesOf(p, Identity(p, o))
	f := planFile{
		Format: planFormat, Title: p.Job.Title, Identity: names.code, WhatIf: o.WhatIf, Complete: p.Complete(),
		Cost: money(p.Cost), Bound: money(p.Bound), Proven: p.Proven(), Seconds: seconds(p.Seconds),
		Saw: sawOf(p.Job.Saw), Rules: rulesOf(p.Job),
		Blanks: []blankFile{}, Buy: []buyFile{}, Receipts: []receiptFile{}, Layouts: []layoutFile{}, Unplaced: []unplacedFile{},
		Setups: setupsOf(p),
		Totals: totalsOf(p),
		Cover:  coverFile{Parts: p.Cover.Parts, Covered: p.Cover.Covered, Uncovered: []wantedFile{}},
	}
	if o.Rest != nil {
		f.RestOf = o.Rest.Of
	}
	thicknesses := p.Thicknesses()
	for i := range p.Bill {
		f.Blanks = append(f.Blanks, blankOf(p, i, thicknesses[i]))
	}
	for _, b := range p.Buy {
		s := b.Stock
		bought := buyFile{
			Stock: s.Name, Kind: s.Kind.String(), Material: s.Material, sizeFile: sizesOf(s), Seller: s.Seller,
			Count: b.Count, Price: money(s.Price), Cost: money(b.Cost),
		}
		if v, byFoot := b.Measured(); byFoot {
			bought.BoardFeet = number(v.BoardFeet().String())
		}
		f.Buy = append(f.Buy, bought)
	}
	for _, r := range cutplan.Receipts(p.Job.Tax, p) {
		f.Receipts = append(f.Receipts, receiptFile{Seller: r.Seller, Net: money(r.Net), Tax: money(r.Tax), Paid: money(r.Paid())})
	}
	for _, d := range p.AtSeller {
		f.AtSeller = append(f.AtSeller, divisionOf(d))
	}
	f.Haul = haulOf(p)
	for i, l := range p.Layouts {
		s := l.Stock
		written := layoutFile{
			Number: i + 1, Stock: s.Name, Kind: s.Kind.String(), Material: s.Material, OnHand: s.OnHand, From: s.From,
			Repeat: l.Repeat, sizeFile: sizesOf(s), Grain: s.Grain.String(),
			Kerf: mm(p.Job.Saw.Kerf), Trim: mm(s.Trim), Trims: trimsOf(s), Root: nodeOf(p, i, l.Root, names), Steps: stepsOf(p, i, names),
		}
		if s.IsSection() {
			written.Section = &sectionFile{From: mm(s.Section.From), Board: mm(s.Section.Board)}
		}
		f.Layouts = append(f.Layouts, written)
	}
	for _, u := range p.Unplaced {
		f.Unplaced = append(f.Unplaced, unplacedFile{pieceOf(p, u.Blank), u.Count, u.Reason})
	}
	for _, e := range p.Estimates {
		f.Estimates = append(f.Estimates, estimateOf(p, e))
	}
	for _, u := range p.Cover.Uncovered {
		f.Cover.Uncovered = append(f.Cover.Uncovered, wantedFile{pieceOf(p, u.Blank), u.Count})
	}
	if o.Case != nil {
		f.Case = caseOf(o.Case)
		f.Takes, f.Checks = takesOf(o.Case), checksOf(o.Case)
	}
	return encoded(f)
}

// encoded is what stands in the file.
func encoded(f planFile) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(f); err != nil {
		panic("report: a plan that cannot be written: " + err.Error()) // only if a share is not a number
	}
	return b.Bytes()
}

func estimateOf(p *cutplan.Plan, e cutplan.Estimate) estimateFile {
	amount := func(feet int, y stock.Yield) roughFile {
		return roughFile{feet, fraction(y.Share()), money(e.Rough.Price.Times(feet))}
	}
	f := estimateFile{
		Material: e.Rough.Material, Quarter: e.Rough.Quarter.String(), Grade: e.Rough.Grade.String(),
		Net: number(e.Net.String()), Least: amount(e.Least, e.LeastYield), Usual: amount(e.Usual, e.UsualYield),
		Price: money(e.Rough.Price), Longest: mm(e.Longest), Widest: mm(e.Widest),
	}
	for _, w := range e.Blanks {
		f.Blanks = append(f.Blanks, wantedFile{pieceOf(p, w.Blank), w.Count})
	}
	return f
}

func blankOf(p *cutplan.Plan, i int, thicknesses []stock.Length) blankFile {
	b := p.Bill[i]
	f := blankFile{
		pieceFile: pieceOf(p, i), sizeFile: sizeFile{mm(b.Length), mm(b.Width), mm(b.Thickness)},
		Count: b.Count, Turnable: b.Turnable, DryFit: b.Part.DryFit, Material: b.Part.Material,
		Finish: sizeFile{mm(b.Part.Length), mm(b.Part.Width), mm(b.Part.Thickness)},
		Holds:  b.Holds(), Spare: b.Spare,
	}
	if b.Gang > 1 {
		f.Gang = &layersFile{b.Gang, mm(p.Job.Saw.Kerf)}
	}
	if b.Layers > 1 {
		f.Resaw = &layersFile{b.Layers, mm(p.Job.Saw.ResawKerf)}
	}
	for _, from := range thicknesses {
		m := millingFile{From: mm(from)}
		for _, s := range b.Milling(from) {
			var rest length
			if s.Rest > 0 {
				rest = mm(s.Rest)
			}
			m.Steps = append(m.Steps, millStepFile{s.Operation.String(), mm(s.Setting), mm(s.Off), s.Pieces, rest})
		}
		if m.Steps != nil {
			f.Milling = append(f.Milling, m)
		}
	}
	return f
}

// pieceOf names a blank.
func pieceOf(p *cutplan.Plan, blank int) pieceFile {
	b := p.Bill[blank]
	return pieceFile{b.Part.Name, b.Mark}
}

func nodeOf(p *cutplan.Plan, layout int, n cutplan.Node, names offcutNames) nodeFile {
	if n.Use != cutplan.Split {
		return leafOf(p, layout, n, names)
	}
	f := splitFile{rectangleFile: rectangleFile{mm(n.Length), mm(n.Width)}, Use: "split", Cut: n.Cut.String()}
	for _, c := range n.Children {
		f.Children = append(f.Children, nodeOf(p, layout, c, names))
	}
	return f
}

// leafOf is a part, an offcut or waste.
func leafOf(p *cutplan.Plan, layout int, n cutplan.Node, names offcutNames) nodeFile {
	size := rectangleFile{mm(n.Length), mm(n.Width)}
	switch n.Use {
	case cutplan.Part:
		return partNodeFile{rectangleFile: size, Use: "part", pieceFile: pieceOf(p, n.Blank), Turned: n.Turned}
	case cutplan.Offcut:
		return offcutNodeFile{rectangleFile: size, Use: "offcut", Names: names.each(located{layout, &n})}
	}
	return wasteNodeFile{rectangleFile: size, Use: "waste"}
}

func totalsOf(p *cutplan.Plan) totalsFile {
	write := func(s cutplan.Shares) sharesFile {
		return sharesFile{fraction(s.Yield), fraction(s.Waste), fraction(s.Offcut)}
	}
	t := p.Totals
	f := totalsFile{Measure: "volume", sharesFile: write(t.All)}
	none := cutplan.Shares{}
	if t.Boards == none {
		f.Measure = "area"
	}
	if t.Sheets != none && t.Boards != none {
		sheets, boards := write(t.Sheets), write(t.Boards)
		f.Sheets, f.Boards = &sheets, &boards
	}
	return f
}
