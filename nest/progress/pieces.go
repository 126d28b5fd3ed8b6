package progress

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Kind is the kind of a piece.
type Kind int

const (
	Uncut      Kind = iota // stock that no cut was made in
	Unfinished             // begun, with blanks still to be cut from it
	Leftover               // cut as planned, and to be kept
	Scrap                  // part of a spoiled blank
	Remeasured             // not begun, or not finished, and its size differs from the plan
)

// Piece is a piece in the shop that can be cut.
type Piece struct {
	Kind Kind
	// Stock describes the piece as stock on hand, Count of it.
	Stock stock.Stock
	// Root is the plan for cutting it further, from its own corner. It is an offcut or
	// waste if no more is to be cut from it.
	Root cutplan.Node
	// Layout is the index of its layout in the plan; -1 for stock on hand that no layout
	// cuts.
	Layout int
	// Spoiled is the spoiled blank that scrap came from.
	Spoiled Spoiled
	at      place
}

// Pieces lists the pieces in the shop: uncut stock, unfinished pieces, leftovers and
// scrap, in the order of the layouts. The plan's code begins their names.
func (s *State) Pieces(code string) []Piece {
	var all []Piece
	for i := range s.plan.Layouts {
		if uncut := s.uncutPiece(i); uncut.Stock.Count > 0 {
			all = append(all, uncut)
		}
		for k := range s.copies[i] {
			if s.copies[i][k].begun() {
				all = append(all, s.begunPieces(code, i, k)...)
			}
		}
	}
	all = append(all, s.unplanned()...)
	all = append(all, s.remeasuredUncut(code)...)
	for n, sp := range s.Spoiled {
		if sp.Left != (Size{}) {
			p := sp.piece(fmt.Sprintf("%s %s spoiled (%d)", code, s.bill[sp.Blank].Mark, n+1))
			p.at.number = n
			all = append(all, p)
		}
	}
	return all
}

// uncutPiece returns the stock of a layout that was not begun.
func (s *State) uncutPiece(layout int) Piece {
	l := s.plan.Layouts[layout]
	p := Piece{Kind: Uncut, Stock: l.Stock, Root: l.Root, Layout: layout}
	p.Stock.Count = -s.missing[layout]
	for _, c := range s.copies[layout] {
		if !c.begun() {
			p.Stock.Count++
		}
	}
	if !l.Stock.OnHand {
		p.Stock.Name = Bought(l.Stock.Name)
	}
	if p.Root.Use != cutplan.Split && p.Root.Use != cutplan.Part {
		p.Kind = Leftover // carried home and kept uncut
	}
	s.setOnHand(&p)
	return p
}

// Bought returns the name of an offer's stock once it has been brought home.
func Bought(name string) string { return name + bought }

// OfferOf reverses Bought; it returns false for any other name.
func OfferOf(name string) (string, bool) { return strings.CutSuffix(name, bought) }

const bought = ", bought"

// setOnHand turns the stock of p into stock on hand.
func (s *State) setOnHand(p *Piece) {
	p.Stock.OnHand, p.Stock.Price, p.Stock.From, p.Stock.Seller = true, 0, "", ""
	rule := s.plan.Job.Saw.FirstCut
	if p.Stock.Kind == stock.Board {
		rule = s.plan.Job.Saw.BoardFirstCut
	}
	first := p.Stock.FirstCutOf(rule)
	if p.Root.Use == cutplan.Split && (first == stock.FirstRip && p.Root.Cut != cutplan.Rip || first == stock.FirstCrosscut && p.Root.Cut != cutplan.Crosscut) {
		p.Stock.Next = stock.NextAny // for example, the cut that freed a full-length blank
	}
}

// begunPieces lists the pieces of a begun stock, without its blanks and waste.
func (s *State) begunPieces(code string, layout, copy int) []Piece {
	var all []Piece
	for _, l := range s.remnants(layout, copy) {
		p := Piece{Kind: Unfinished, Stock: s.plan.Layouts[layout].Stock, Layout: layout}
		p.Stock.Count, p.Stock.Section = 1, stock.Section{}
		x, y := l.Root.X, l.Root.Y
		switch {
		case l.Freed && l.Root.Use == cutplan.Offcut:
			p.Kind = Leftover
			p.Stock.Name = cutplan.OffcutName(code, s.number(layout, copy, l.Root))
		case l.Freed:
			continue // a blank, or waste
		default:
			p.Stock.Name = s.remnantName(code, layout, copy, l)
		}
		t := l.Trims
		p.Stock.Trim, p.Stock.Sawn = 0, t
		p.Stock.Length, p.Stock.Width = l.Root.Length+t.NearEnd+t.FarEnd, l.Root.Width+t.NearEdge+t.FarEdge
		p.Stock.Next = stock.NextAny
		p.Root = l.Root.Moved(t.NearEnd-x, t.NearEdge-y)
		p.at = place{begun: true, layout: layout, copy: copy, was: l.outline()}
		s.setOnHand(&p)
		if is, some := s.remeasured.newSize(p.at); some {
			resize(&p, is)
			p.Stock.Sawn = stock.Trims{}
			if p.Root = s.unusedNode(p.Stock.Usable()); p.Kind == Unfinished {
				p.Kind = Remeasured
			}
		}
		all = append(all, p)
	}
	return all
}

// remnantName names an unfinished piece by its source, "H7KMQ layout 2, piece from 5",
// with the numbers of its layout's steps.
func (s *State) remnantName(code string, layout, copy int, l Remnant) string {
	name := fmt.Sprintf("%s layout %d", code, layout+1)
	if n := len(s.copies[layout]); n > 1 {
		name += fmt.Sprintf(", %s %d of %d", s.plan.Layouts[layout].Stock.Kind, copy+1, n)
	}
	switch {
	case l.After == 0:
		return name
	case l.Remainder:
		return fmt.Sprintf("%s, rest of %d", name, l.After)
	}
	return fmt.Sprintf("%s, piece from %d", name, l.After)
}

// number returns the number of a leftover in the plan.
func (s *State) number(layout, copy int, n cutplan.Node) int {
	for _, k := range s.plan.Offcuts() {
		if k.Layout == layout && k.Node.X == n.X && k.Node.Y == n.Y {
			return k.First + copy
		}
	}
	panic("progress: an offcut that the plan does not know")
}

// unplanned lists the stock on hand that no layout cuts.
func (s *State) unplanned() []Piece {
	var all []Piece
	for _, of := range s.plan.Job.Stock {
		if !of.OnHand {
			continue
		}
		of.Count -= s.missingUnplanned[of.Name]
		for i, l := range s.plan.Layouts {
			was := of
			was.Count = l.Stock.Count
			if l.Stock == was {
				of.Count -= len(s.copies[i])
			}
		}
		if of.Count > 0 {
			length, width := of.Usable()
			all = append(all, Piece{Kind: Uncut, Stock: of, Layout: -1, Root: s.unusedNode(length, width)})
		}
	}
	return all
}

func (s *State) unusedNode(length, width stock.Length) cutplan.Node {
	n := cutplan.Node{Length: length, Width: width, Use: cutplan.Waste}
	if s.plan.Job.Offcut.Keeps(length, width) {
		n.Use = cutplan.Offcut
	}
	return n
}

// piece returns the usable remainder of a spoiled blank, oriented as in its stock.
func (sp Spoiled) piece(name string) Piece {
	s := sp.From
	s.Name, s.Count, s.Next, s.Section = name, 1, stock.NextAny, stock.Section{}
	s.OnHand, s.Price, s.From, s.Seller, s.Trim, s.Sawn = true, 0, "", "", 0, stock.Trims{}
	s.Length, s.Width = sp.Left.Length, sp.Left.Width
	if sp.Turned {
		s.Length, s.Width = s.Width, s.Length
	}
	if sp.Left.Thickness > 0 {
		s.Thickness = sp.Left.Thickness
	}
	return Piece{Kind: Scrap, Stock: s, Layout: -1, Spoiled: sp, Root: cutplan.Node{Length: s.Length, Width: s.Width, Use: cutplan.Waste}}
}

// GoesBy reports whether s has a name, bought or not, or is of a material by that name.
// Case is ignored.
func GoesBy(s stock.Stock, name string) bool {
	return slices.ContainsFunc([]string{s.Name, s.From, s.Material}, func(own string) bool {
		return strings.EqualFold(own, name) || strings.EqualFold(own, Bought(name))
	})
}
