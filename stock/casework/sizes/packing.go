package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
)

// cautionPacking says what slides need behind the stiles of a frame.
func (r *Sizes) cautionPacking(b construction.Bay, left, right stock.Length) {
	drawers := false
	for _, o := range b.Openings {
		drawers = drawers || len(o.Stack) > 0
	}
	if !drawers || left == 0 && right == 0 {
		return
	}
	r.In.Caution("slides behind a frame", fmt.Sprintf("In %s the panels stand back behind the stiles: pack the slides out by %s on the left and %s on the right.",
		b.Name, r.In.Print(left), r.In.Print(right)))
}
