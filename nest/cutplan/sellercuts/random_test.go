package sellercuts

import (
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// randomCarried is a job of one or two offers, usually with one too large.
func randomCarried(seed uint64) stock.Job {
	r := rand.New(rand.NewPCG(seed, 9))
	size := func(least, most int) stock.Length { return stock.Length(least+r.IntN(most-least)) * mm }
	board := r.IntN(3) == 0
	var parts []stock.Part
	for i := range 2 + r.IntN(3) {
		part := shelf(size(200, 1100), size(80, 500), 1+r.IntN(3))
		if board {
			part.Width = 140 * mm
		}
		part.Name += string(rune('a' + i))
		parts = append(parts, part)
	}
	limits := stock.Transport{Longest: size(1250, 2000), Widest: size(600, 1250), Cuts: 1 + r.IntN(2), CutPrice: stock.Money(r.IntN(300)),
		CutKerf: size(2, 6), CutTolerance: size(0, 4)}
	job := sheets(2440*mm, 1220*mm, limits, parts...)
	job.Stock[0].Trim = size(0, 8)
	other := job.Stock[0]
	other.Name, other.Length, other.Price = "other", size(1100, 3000), 36_00
	if r.IntN(2) == 0 {
		job.Stock = append(job.Stock, other)
	}
	if board {
		for i := range job.Stock {
			job.Stock[i].Kind, job.Stock[i].Width = stock.Board, 140*mm
		}
	}
	if r.IntN(4) == 0 {
		job.Saw.Stages = 3
	}
	return job
}

// For any job limits only raise the cost, and the bound never exceeds the cost. Stock that
// can be carried is not cut, and a blank with room in some piece is never short.
func TestLimitsOnlyCostMore(t *testing.T) {
	cut, complete := 0, 0
	for seed := range uint64(60) {
		job := randomCarried(seed)
		with := carry(t, job)
		whole := job
		whole.Transport = stock.Transport{}
		without := carry(t, whole)
		for _, d := range with.AtSeller {
			cut += d.Count
			if job.Transport.Carries(d.Stock.Length, d.Stock.Width) {
				t.Errorf("seed %d: %q is cut, which can be carried", seed, d.Stock.Name)
			}
		}
		if with.Complete() {
			complete++
			if with.Cost < without.Bound || with.Bound > with.Cost {
				t.Errorf("seed %d: %v with limits, bound %v; %v without, bound %v", seed, with.Cost, with.Bound, without.Cost, without.Bound)
			}
		}
		for _, u := range with.Unplaced {
			if b := with.Bill[u.Blank].Blank; job.Saw.Stages == 0 && slices.ContainsFunc(job.Stock, func(s stock.Stock) bool { return roomIn(s, job, b) }) {
				t.Errorf("seed %d: %d of %q are not cut, though they fit", seed, u.Count, b.Part.Name)
			}
		}
	}
	if cut < 30 || complete < 20 {
		t.Errorf("only %d pieces of stock were cut, and %d jobs", cut, complete)
	}
}

// roomIn reports whether s, or a piece that it may be cut into, has room for b.
func roomIn(s stock.Stock, job stock.Job, b stock.Blank) bool {
	if job.Transport.Carries(s.Length, s.Width) {
		return s.HasRoom(b)
	}
	for _, d := range divisions(s, job.Transport, job.Saw, nil, nil) {
		for i := range d.Pieces {
			if d.Piece(i, job.Transport.CutTolerance).HasRoom(b) {
				return true
			}
		}
	}
	return false
}

// All purchases add up to parts, offcuts, waste, trim and the kerf of both saws, to the
// last unit of area.
func TestNothingOfWhatTheSellerCutsIsLost(t *testing.T) {
	for seed := range uint64(20) {
		p := carry(t, randomCarried(seed))
		var bought, told int64
		for _, b := range p.Buy {
			bought += int64(b.Count) * area(b.Stock.Length, b.Stock.Width)
		}
		for _, d := range p.AtSeller {
			_, across := d.Along()
			told += int64(d.Count*d.Cuts()) * area(p.Job.Transport.CutKerf, across)
		}
		for _, l := range p.Layouts {
			trim := area(l.Stock.Length, l.Stock.Width) - area(l.Root.Length, l.Root.Width)
			if off := trimmed(p, l); off != trim {
				t.Errorf("seed %d: trim cuts take %d, not %d", seed, off, trim)
			}
			told += int64(l.Repeat) * (trim + filled(l.Root, p.Job.Saw.Kerf))
		}
		if told != bought {
			t.Errorf("seed %d: %d of %d are told of", seed, told, bought)
		}
	}
}

func area(length, width stock.Length) int64 { return int64(length) * int64(width) }

// trimmed is the area that the trim cuts of l take.
func trimmed(p *cutplan.Plan, l cutplan.Layout) int64 {
	if l.Root.Use != cutplan.Split && l.Root.Use != cutplan.Part {
		return 0 // it stays uncut
	}
	size := cutplan.Size{Length: l.Stock.Length, Width: l.Stock.Width}
	for _, s := range p.Steps(l) {
		if s.Trim {
			size = s.Off
		}
	}
	return area(l.Stock.Length, l.Stock.Width) - area(size.Length, size.Width)
}

// filled adds up n piece by piece and kerf by kerf. The last kerf of a split may be cut
// short by the edge.
func filled(n cutplan.Node, kerf stock.Length) int64 {
	if n.Use != cutplan.Split {
		return area(n.Length, n.Width)
	}
	size, along := n.Width, func(c cutplan.Node) stock.Length { return c.Width }
	if n.Cut == cutplan.Crosscut {
		size, along = n.Length, func(c cutplan.Node) stock.Length { return c.Length }
	}
	sum, dust := int64(0), stock.Length(0)
	for i, c := range n.Children {
		size -= along(c)
		sum += filled(c, kerf)
		if i < len(n.Children)-1 || size > 0 {
			cut := min(kerf, size)
			size, dust = size-cut, dust+cut
		}
	}
	if n.Cut == cutplan.Crosscut {
		return sum + area(dust, n.Width)
	}
	return sum + area(n.Length, dust)
}
