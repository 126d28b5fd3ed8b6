package progress

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// remeasured holds pieces whose size differs from the plan: damaged, or measured better.
// They are no longer cut as planned.
type remeasured struct {
	// cut lists pieces of stock that was begun.
	cut []remeasuredPiece
	// uncut lists stock that was not begun, one piece an entry; byLayout counts it.
	uncut    []Piece
	byLayout []int
	// names lists the earlier names of uncut, each once.
	names []string
}

type remeasuredPiece struct {
	layout, copy int
	was          outline
	is           Size
}

// recordSize records the size of a piece in the shop: "K7F2M-2=590 x 300 mm". Uncut stock
// goes by its name or material. A single length is the length of a board.
func (s *State) recordSize(text string) error {
	name, written, some := cutLast(text, "=")
	if name = strings.TrimSpace(name); !some {
		return fault.New(fmt.Sprintf("%q tells no size", text), `write what is clear of it from its reference corner, as in "`+name+`=590 x 300 mm"`)
	}
	p, err := s.pieceNamed(name)
	if err != nil {
		return err
	}
	is, err := s.sizeOf(p, written)
	if err != nil {
		return err
	}
	if is.Length > p.Stock.Length || is.Width > p.Stock.Width || is.Thickness > p.Stock.Thickness {
		ruler := stock.Ruler{Units: s.plan.Job.Units}
		return fault.New(fmt.Sprintf("%s is %s and cannot be larger", p.Stock.Name, ruler.Size(p.Stock.Length, p.Stock.Width)),
			"say what is clear of it, its length first, as its stock lies")
	}
	s.remeasure(p, is)
	return nil
}

// sizeOf parses the size of a piece. A bare length takes the job's unit in this order.
func (s *State) sizeOf(p Piece, written string) (Size, error) {
	if p.Stock.Kind == stock.Sheet || strings.ContainsAny(written, "x×") {
		return s.size(written)
	}
	is, err := s.size(p.Stock.Width.Decimal() + " mm x " + written)
	is.Length, is.Width = is.Width, is.Length
	return is, err
}

// remeasure sets the measured size of a piece.
func (s *State) remeasure(p Piece, is Size) {
	r := &s.remeasured
	switch at := p.at; {
	case p.Kind == Scrap:
		left := &s.Spoiled[at.number].Left
		if *left = is; s.Spoiled[at.number].Turned {
			left.Length, left.Width = left.Width, left.Length
		}
	case at.uncut:
		resize(&r.uncut[at.number], is)
		r.uncut[at.number].Root = s.unusedNode(r.uncut[at.number].Stock.Usable())
	case at.begun:
		r.cut = slices.DeleteFunc(r.cut, func(m remeasuredPiece) bool {
			return m.layout == at.layout && m.copy == at.copy && m.was == at.was
		})
		r.cut = append(r.cut, remeasuredPiece{at.layout, at.copy, at.was, is})
	default:
		if p.Layout >= 0 {
			s.missing[p.Layout]++
			r.byLayout[p.Layout]++
			p.Stock.Next = s.plan.Layouts[p.Layout].Stock.Next
		} else {
			s.missingUnplanned[p.Stock.Name]++
		}
		if !slices.Contains(r.names, p.Stock.Name) {
			r.names = append(r.names, p.Stock.Name)
		}
		p.Kind, p.Layout, p.Stock.Count, p.Stock.Section = Remeasured, -1, 1, stock.Section{}
		resize(&p, is)
		p.Root = s.unusedNode(p.Stock.Usable())
		r.uncut = append(r.uncut, p)
	}
}

func resize(p *Piece, to Size) {
	p.Stock.Length, p.Stock.Width = to.Length, to.Width
	if to.Thickness > 0 {
		p.Stock.Thickness = to.Thickness
	}
}

// Remeasured lists the names of uncut stock with a changed size, which now has another
// name.
func (s *State) Remeasured() []string { return s.remeasured.names }

// remeasuredUncut lists the uncut pieces with a changed size.
func (s *State) remeasuredUncut(code string) []Piece {
	all := slices.Clone(s.remeasured.uncut)
	for n := range all {
		all[n].Stock.Name = fmt.Sprintf("%s measured (%d)", code, n+1)
		all[n].at = place{uncut: true, number: n}
	}
	return all
}

// newSize returns the measured size of a piece of begun stock, if there is one.
func (r remeasured) newSize(at place) (Size, bool) {
	for _, m := range r.cut {
		if m.layout == at.layout && m.copy == at.copy && m.was == at.was {
			return m.is, true
		}
	}
	return Size{}, false
}

// pieceNamed finds a piece by its name. Any other name is taken as a stock or material.
// The result is then one uncut piece of the last layout that cuts it.
func (s *State) pieceNamed(name string) (Piece, error) {
	code := s.Code
	if at := strings.IndexAny(name, "- "); code == "" && at >= 0 {
		code = name[:at]
	}
	var known, materials []string
	var found []Piece
	for _, p := range s.Pieces(code) {
		if strings.EqualFold(p.Stock.Name, name) {
			found = append(found, p)
		}
		known = append(known, p.Stock.Name)
	}
	if found == nil {
		for _, p := range s.Pieces(code) {
			if p.Kind == Uncut && GoesBy(p.Stock, name) {
				found = append(found, p)
				if !slices.Contains(materials, p.Stock.Name) {
					materials = append(materials, p.Stock.Name)
				}
			}
		}
	}
	switch {
	case len(materials) > 1:
		return Piece{}, fault.New(fmt.Sprintf("%q may be %s", name, strings.Join(materials, " or ")), "take one of these names")
	case found == nil:
		return Piece{}, unknown("piece", name, known, "take a name under \"Lying there\", or stock of which nothing is cut")
	}
	last := found[0]
	for _, p := range found {
		if p.Layout > last.Layout {
			last = p
		}
	}
	return last, nil
}

// checkRemeasured checks that no piece with a changed size was cut as planned.
func (s *State) checkRemeasured() error {
	for _, m := range s.remeasured.cut {
		unchanged := slices.ContainsFunc(s.remnants(m.layout, m.copy), func(l Remnant) bool { return l.outline() == m.was })
		if !unchanged {
			return fault.New(fmt.Sprintf("a piece of layout %d has another size now and is not cut as planned", m.layout+1), "plan the rest with recut, or take the size back with undo")
		}
	}
	return nil
}

// place identifies a piece within its kind.
type place struct {
	begun        bool // from stock that was begun
	layout, copy int
	was          outline
	uncut        bool // in remeasured.uncut
	number       int  // index in remeasured.uncut or State.Spoiled
}
