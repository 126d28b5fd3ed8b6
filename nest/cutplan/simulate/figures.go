package simulate

import (
	"cmp"
	"fmt"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Figures saws the plan once more, by steps and by setups, with the figures that a ruler
// prints in place of the exact lengths. It returns the largest error of a side of a blank.
//
// Every figure must be within half a mark of its length. So a side that is cut at fence or
// stop is within half a mark. One between two marks is within a whole mark, as all marks are
// measured from one end. A piece that remains takes up what was rounded at each cut beside
// it: half a mark for each figure. An error is a fault of this program.
func Figures(p *cutplan.Plan, r stock.Ruler) (stock.Length, error) {
	half := stock.Millimeter / 20
	if r.Units == stock.Inches {
		marks := stock.Length(cmp.Or(r.Denominator, 32))
		half = stock.Inch / max(marks, min(2*marks, 64)) // 64ths and finer have no halves
	}
	return figures(p, half, func(l stock.Length) (stock.Length, error) {
		return stock.ParseLength(strings.TrimPrefix(r.Print(l), "≈"), r.Units)
	})
}

// figures saws with what read returns in place of lengths.
func figures(p *cutplan.Plan, half stock.Length, read func(stock.Length) (stock.Length, error)) (stock.Length, error) {
	f := ruled{half: half, read: read, over: map[stock.Length]stock.Length{}}
	for i := range p.Layouts {
		if err := f.work(p.StepRows(i)); err != nil {
			return 0, fmt.Errorf("the steps of layout %d, %w", i+1, err)
		}
	}
	f.lying = nil
	for _, g := range p.Setups() {
		if err := f.work(p.SetupRows(g)); err != nil {
			return 0, fmt.Errorf("the setups of %s, %w", g.Material, err)
		}
	}
	return f.worst, nil
}

type inLayout struct {
	layout int
	freedBy
}

// ruled saws with figures.
type ruled struct {
	half  stock.Length
	read  func(stock.Length) (stock.Length, error)
	over  map[stock.Length]stock.Length // by length: how much more its figure is
	lying map[inLayout]ruledPiece       // no entry: the piece is exact
	worst stock.Length
}

func (r *ruled) work(rows []cutplan.Row) error {
	if r.lying == nil {
		r.lying = map[inLayout]ruledPiece{}
	}
	for n := range rows {
		for i := range rows[n].Pieces {
			if err := r.saw(&rows[n], &rows[n].Pieces[i]); err != nil {
				return fmt.Errorf("row %d: %w", n+1, err)
			}
		}
	}
	return nil
}

// ruledPiece holds how much longer and wider a piece is than it should be, and how many
// figures each of its sides rests on.
type ruledPiece struct{ length, width side }

type side struct {
	over    stock.Length
	figures int
}

func (p *ruledPiece) along(c cutplan.Cut) *side {
	if c == cutplan.Crosscut {
		return &p.length
	}
	return &p.width
}

// figure returns how much the printed figure of a length is more than it.
func (r *ruled) figure(l stock.Length) (stock.Length, error) {
	if over, known := r.over[l]; known {
		return over, nil
	}
	is, err := r.read(l)
	if err != nil {
		return 0, err
	}
	if max(is-l, l-is) > r.half {
		return 0, fmt.Errorf("%s mm is printed as %s", l.Decimal(), is.Decimal())
	}
	r.over[l] = is - l
	return is - l, nil
}

func (r *ruled) saw(row *cutplan.Row, h *cutplan.Held) error {
	in := r.lying[inLayout{h.Layout, freedBy{h.By, h.Rest}}]
	whole := *in.along(row.Cut)
	line, lines := stock.Length(0), 0 // how far the last mark is off
	for i := range h.Cuts {
		c := &h.Cuts[i]
		off, left := in, in
		switch {
		case row.SawOff:
			over, err := r.figure(row.Setting)
			if err != nil {
				return err
			}
			*off.along(row.Cut) = side{whole.over - over, whole.figures + 1}
		case row.Guide == cutplan.Marked && !row.Trim:
			over, err := r.figure(c.Here)
			if err != nil {
				return err
			}
			*off.along(row.Cut) = side{over - line, lines + 1}
			*left.along(row.Cut) = side{whole.over - over, whole.figures + 1}
			line, lines = over, 1
		default:
			over, err := r.figure(row.Setting)
			if err != nil {
				return err
			}
			rest := *in.along(row.Cut)
			*off.along(row.Cut) = side{over, 1}
			*left.along(row.Cut) = side{rest.over - over, rest.figures + 1}
		}
		if _, err := r.figure(c.Mark); err != nil {
			return err
		}
		r.lying[inLayout{h.Layout, freedBy{c.Number, false}}] = off
		r.lying[inLayout{h.Layout, freedBy{c.Number, true}}] = left
		in = left
		for _, of := range []struct {
			freed cutplan.Freed
			is    ruledPiece
		}{{c.Off, off}, {c.Left, left}} {
			if err := r.within(of.freed, of.is); err != nil {
				return fmt.Errorf("layout %d, cut %d: %w", h.Layout+1, c.Number, err)
			}
		}
	}
	return nil
}

// within checks a blank that a cut frees, and the size that is printed of every piece.
func (r *ruled) within(f cutplan.Freed, is ruledPiece) error {
	for _, l := range []stock.Length{f.Size.Length, f.Size.Width} {
		if _, err := r.figure(l); err != nil {
			return err
		}
	}
	if f.Node == nil || f.Node.Use != cutplan.Part {
		return nil
	}
	for _, s := range []side{is.length, is.width} {
		over := max(s.over, -s.over)
		if over > stock.Length(s.figures)*r.half {
			return fmt.Errorf("a blank is off by %s mm, with %d figures", over.Decimal(), s.figures)
		}
		r.worst = max(r.worst, over)
	}
	return nil
}
