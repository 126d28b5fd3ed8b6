package nest

import "sawbill/nest/internal/instance"

// Cover says where a replacement for a blank could come from if one is spoiled.
type Cover int

const (
	// Uncovered: from new stock only.
	Uncovered Cover = iota
	// FromOffcut: from an offcut of the plan.
	FromOffcut
	// FromStock: from no offcut, but from a whole piece on hand that the plan does not cut.
	FromStock
)

// CoverOf returns the cover of each blank of p once plan is carried out, if nothing else is
// spoiled. Replacements obey the rules of the stock that they come from. An offcut counts as
// a piece of its stock, with stages and first cut counted anew.
func CoverOf(p Problem, plan Plan) []Cover {
	cover := make([]Cover, len(p.Blanks))
	for _, s := range p.unusedStock(plan) {
		p.coverFromPiece(cover, s)
	}
	for _, l := range plan.Layouts {
		p.coverFrom(cover, l.Stock, l.Root)
	}
	return cover
}

// unusedStock lists the stock on hand that plan leaves at least one piece of.
func (p *Problem) unusedStock(plan Plan) (spare []int) {
	used := make([]int, len(p.Stock))
	for _, l := range plan.Layouts {
		used[l.Stock] += l.Repeat
	}
	for i, s := range p.Stock {
		if s.OnHand && (s.Count == 0 || used[i] < s.Count) {
			spare = append(spare, i)
		}
	}
	return spare
}

// coverFromPiece records the blanks that a whole piece of stock holds, clear of its defects.
func (p *Problem) coverFromPiece(cover []Cover, s int) {
	st := p.Stock[s]
	if len(st.Defects) == 0 {
		p.cover(cover, s, st.Usable(), FromStock)
		return
	}
	for i, b := range p.Blanks {
		for _, f := range b.From {
			if f.Stock != s {
				continue
			}
			may := p.orientations(b, f, st.Usable())
			if may&instance.Upright != 0 && st.hasRoom(b.Length, b.Width, p.Kerf) ||
				may&instance.Turned != 0 && st.hasRoom(b.Width, b.Length, p.Kerf) {
				cover[i] = FromStock
			}
		}
	}
}

// hasRoom reports whether a rectangle lies clear of defects at the reference corner, or one
// waste piece or more away from it, behind a defect.
func (s *Stock) hasRoom(length, width, kerf int64) bool {
	u := s.Usable()
	xs, ys := []int64{0}, []int64{0}
	for _, d := range s.Defects {
		xs = append(xs, max(d.X+d.Length-s.TrimLength, kerf+1))
		ys = append(ys, max(d.Y+d.Width-s.TrimWidth, kerf+1))
	}
	for _, x := range xs {
		for _, y := range ys {
			if x+length <= u.Length && y+width <= u.Width && !s.hasDefect(x+s.TrimLength, y+s.TrimWidth, length, width) {
				return true
			}
		}
	}
	return false
}

// coverFrom records the blanks that fit the offcuts below n.
func (p *Problem) coverFrom(cover []Cover, stock int, n Node) {
	if n.Use == Offcut {
		p.cover(cover, stock, Size{n.Length, n.Width}, FromOffcut)
	}
	for _, c := range n.Children {
		p.coverFrom(cover, stock, c)
	}
}

// cover records the blanks that fit a piece of stock.
func (p *Problem) cover(cover []Cover, stock int, piece Size, where Cover) {
	for i, b := range p.Blanks {
		for _, f := range b.From {
			if f.Stock == stock && p.orientations(b, f, piece) != 0 {
				cover[i] = where
			}
		}
	}
}
