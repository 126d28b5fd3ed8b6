package recut

import (
	"context"

	"sawbill/nest/progress"
	"sawbill/stock"
)

// Pieces counts those that are to be cut as planned.
func Pieces(s *progress.State, o Options) int { return len(newRest(s, o).pieces) }

// Try plans the rest with these pieces anew: what it costs, and whether that is proven.
func Try(ctx context.Context, s *progress.State, o Options, anew map[int]bool) (stock.Money, bool, error) {
	a, err := newRest(s, o).try(ctx, anew, o.Options)
	if err != nil {
		return 0, false, err
	}
	return a.plan.Cost, a.plan.Proven(), nil
}
