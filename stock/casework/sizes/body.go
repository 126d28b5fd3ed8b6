package sizes

import (
	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
)

// body is the outside of the box of panels. In a framed case it lies between
// the frames, and inside their edges by the inset.
type body struct {
	Width, Height, Depth stock.Sum
}

// Body is the outside of the box of panels.
func (r *Sizes) Body() body {
	b := body{
		Width:  sums.Of(r.Width.Outside, "outside width"),
		Height: r.AboveBase(),
		Depth:  sums.Of(r.Depth.Outside, "outside depth"),
	}
	if r.Built.Back.Fit == "applied" {
		b.Depth = sums.Plus(b.Depth, stock.Term{Times: -1, Value: r.Built.Back.Thickness, Label: "back"})
	}
	if f := r.Built.Frame; f != nil {
		inset := stock.Term{Times: -2, Value: f.Inset, Label: "inset"}
		b.Width = sums.Plus(b.Width, inset)
		b.Height = sums.Plus(b.Height, inset)
		b.Depth = sums.Plus(b.Depth, stock.Term{Times: -2, Value: f.Thickness, Label: "frame"})
	}
	return b
}

// AboveBase is the height of the case without its base.
func (r *Sizes) AboveBase() stock.Sum {
	return sums.Plus(sums.Of(r.Height.Outside, "outside height"), stock.Term{Times: -1, Value: r.Built.Base.Height, Label: "base"})
}
