package recut

import (
	"context"

	"sawbill/nest/progress"
	"sawbill/stock"
)

// Pieces counts the pieces to be cut as planned.
func Pieces(s *progress.State, o Options) int { return len(newRest(s, o).pieces) }

// Try plans the rest with these pieces replanned. It returns the cost and whether it is
// proven.
func Try(ctx context.Context, s *progress.State, o Options, replanned map[int]bool) (stock.Money, bool, error) {
	a, err := newRest(s, o).try(ctx, replanned, o.Options)
	if err != nil {
		return 0, false, err
	}
	return a.plan.Cost, a.plan.Proven(), nil
}
