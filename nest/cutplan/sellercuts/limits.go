package sellercuts

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// portable returns the job with oversize boards shortened to a length that can be
// carried. Gangs cut from them are limited to that length.
func portable(job stock.Job) stock.Job {
	stocks := slices.Clone(job.Stock)
	for _, i := range job.TooLarge() {
		s := &stocks[i]
		d := cutplan.Division{Stock: *s, Cut: cutplan.Crosscut, Pieces: []stock.Length{job.Transport.Most(s.Width), 0}}
		if s.Kind == stock.Board && d.Pieces[0] > trims(d, job.Transport.CutTolerance) {
			s.Length, s.Sawn = d.Pieces[0], d.Piece(0, job.Transport.CutTolerance).Sawn
		}
	}
	job.Stock = stocks
	return job
}

// uncutStock returns the job with its stock uncut, at the price of the fewest cuts. The
// cuts may come in any order, with the narrower of the two kerfs. So no plan with the
// seller's cuts costs less.
func uncutStock(job stock.Job) stock.Job {
	tooLarge := job.TooLarge()
	var stocks []stock.Stock
	for i, s := range job.Stock {
		if slices.Contains(tooLarge, i) {
			cuts, can := fewestCuts(s, job.Transport)
			if !can {
				continue
			}
			if s.Price > 0 {
				s.Price += job.Transport.CutPrice.Times(cuts)
			}
		}
		stocks = append(stocks, s)
	}
	job.Stock = stocks
	job.Saw.Kerf = min(job.Saw.Kerf, job.Transport.CutKerf)
	job.Saw.FirstCut, job.Saw.BoardFirstCut, job.Saw.NarrowestRip = stock.FirstAny, stock.FirstAny, 0
	if job.Saw.Stages > 0 {
		job.Saw.Stages++ // the seller's
	}
	return job
}

// fewestCuts returns the least number of cuts that give pieces of s that can be carried.
// It returns false if the seller does not make that many.
func fewestCuts(s stock.Stock, t stock.Transport) (int, bool) {
	fewest, can := 0, false
	for _, cut := range cutsOf(s) {
		along, across := cutplan.Division{Stock: s, Cut: cut}.Along()
		most := t.Most(across)
		if most <= 0 {
			continue
		}
		// n + 1 pieces and n kerfs must cover the stock. The stock may be slightly longer
		// than one piece; then a short piece comes off.
		n := int((max(along-most, 0) + most + t.CutKerf - 1) / (most + t.CutKerf))
		if n <= t.Cuts && along > stock.Length(n)*t.CutKerf && (!can || n < fewest) {
			fewest, can = n, true
		}
	}
	return fewest, can
}

// portableStock returns the job's stock that can be carried home uncut.
func portableStock(job stock.Job) []stock.Stock {
	tooLarge := job.TooLarge()
	var all []stock.Stock
	for i, s := range job.Stock {
		if !slices.Contains(tooLarge, i) {
			all = append(all, s)
		}
	}
	return all
}
