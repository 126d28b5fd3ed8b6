package construction

import (
	"sawbill/stock"
	"sawbill/stock/casework/solid"
)

// Origin is the body's left lower corner in front.
func (r *Construction) Origin() solid.Point {
	if f := r.Frame; f != nil {
		return solid.Point{f.Inset, f.Thickness, r.Base.Height + f.Inset}
	}
	return solid.Point{solid.Z: r.Base.Height}
}

// Floor is how high the clear inside begins.
func (r *Construction) Floor() stock.Length {
	if f := r.Frame; f != nil {
		return r.Base.Height + f.Rail
	}
	return r.Base.Height + r.Carcass.Thickness
}

// OnStep is the step nearest to a height. Steps begin at the lower end of the sides, where marks are
// measured from.
func (r *Construction) OnStep(height stock.Length) stock.Length {
	from := r.Origin()[solid.Z]
	if r.BottomUnder {
		from += r.Carcass.Thickness - r.Corner.Depth
	}
	return from + r.In.Nearest(height-from)
}

// StepAbove is the first step at or above a height.
func (r *Construction) StepAbove(height stock.Length) stock.Length {
	if step := r.In.From.Tools.Step; step > 0 {
		return r.OnStep(height + (step-1)/2)
	}
	return height
}
