package cutplan

import (
	"fmt"

	"sawbill/stock"
)

// CheckSellerCuts checks the seller's cuts by sums of its own. The pieces of each offer,
// with the kerfs between, fill the offer, and each can be carried. Layouts use every piece
// as often as it is bought, in its size less the tolerance. The cost is the sum of the
// stock and the cuts.
func (p *Plan) CheckSellerCuts() error {
	t := p.Job.Transport
	cost, bought := stock.Money(0), map[string]int{}
	for _, b := range p.Buy {
		cost += b.Stock.Price * stock.Money(b.Count)
		bought[b.Stock.Name] = b.Count
		if b.Stock.Count > 0 && b.Count > b.Stock.Count {
			return fmt.Errorf("%d of %q are bought, there are %d", b.Count, b.Stock.Name, b.Stock.Count)
		}
	}
	available, cut := map[sellerPiece]int{}, map[string]int{}
	for _, d := range p.AtSeller {
		s, cuts := d.Stock, len(d.Pieces)-1
		sum := stock.Length(cuts) * t.CutKerf
		for i, size := range d.Pieces {
			sum += size
			piece := sellerPiece{s.Name, size, s.Width, d.Cut, 2}
			if d.Cut == Rip {
				piece.length, piece.width = s.Length, size
			}
			if i == 0 || i == cuts {
				piece.sides = 1
			}
			if !t.Carries(piece.length, piece.width) {
				return fmt.Errorf("a piece %d x %d of %q cannot be carried", piece.length, piece.width, s.Name)
			}
			available[piece] += d.Count
		}
		extent := s.Length
		if d.Cut == Rip {
			extent = s.Width
		}
		switch paid := t.CutPrice * stock.Money(d.Count*cuts); {
		case sum != extent:
			return fmt.Errorf("pieces and kerfs of %q add up to %d, it measures %d", s.Name, sum, extent)
		case cuts < 1 || cuts > t.Cuts || d.Count < 1 || d.Kerf != t.CutKerf || d.Cost != paid:
			return fmt.Errorf("%d cuts in each of %d %q, a kerf of %d, for %v make no sense", cuts, d.Count, s.Name, d.Kerf, d.Cost)
		default:
			cost += paid
		}
		cut[s.Name] += d.Count
	}
	for name, n := range cut {
		if bought[name] != n {
			return fmt.Errorf("%d of %q are cut, %d bought", n, name, bought[name])
		}
	}
	for _, l := range p.Layouts {
		s := l.Stock
		if s.From == "" {
			if !s.OnHand && !t.Carries(s.Length, s.Width) {
				return fmt.Errorf("%q cannot be carried whole", s.Name)
			}
			continue
		}
		if err := usePieces(l, t.CutTolerance, available); err != nil {
			return err
		}
	}
	for piece, n := range available {
		if n != 0 {
			return fmt.Errorf("%d pieces %d x %d of %q are not told of", n, piece.length, piece.width, piece.from)
		}
	}
	if cost != p.Cost {
		return fmt.Errorf("stock and cuts cost %v, the plan says %v", cost, p.Cost)
	}
	if p.Complete() && p.Bound > p.Cost {
		return fmt.Errorf("the plan costs %v, its bound is %v", p.Cost, p.Bound)
	}
	return nil
}

// sellerPiece is a kind of piece from the seller's saw, which cut one or both sides.
type sellerPiece struct {
	from          string
	length, width stock.Length
	cut           Cut
	sides         int
}

// usePieces takes the pieces that l divides from those available. Sides cut by the seller
// must be trimmed by the tolerance, unless the piece stays uncut. Pieces cut at both sides
// go first, since pieces cut at one side need less trim. Copies of a layout may use both.
func usePieces(l Layout, tolerance stock.Length, available map[sellerPiece]int) error {
	s, n, left := l.Stock, l.Root, l.Repeat
	uncut := n.Use != Split && n.Use != Part
	for _, sides := range []int{2, 1} {
		for _, cut := range []Cut{Rip, Crosscut} {
			piece := sellerPiece{s.From, s.Length, s.Width, cut, sides}
			near, far := n.X, s.Length-n.X-n.Length
			if cut == Rip {
				near, far = n.Y, s.Width-n.Y-n.Width
			}
			if uncut || far >= tolerance && (sides == 1 || near >= tolerance) {
				taken := min(left, available[piece])
				available[piece] -= taken
				left -= taken
			}
		}
	}
	if left > 0 {
		return fmt.Errorf("no piece %d x %d of %q is left whose sawn sides are trimmed so", s.Length, s.Width, s.From)
	}
	return nil
}
