package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// contentsDepth is the least inside depth for what goes into an opening: the
// panels that bear it begin behind a front frame, shelves behind their set-back,
// and an inset door stands before it.
func (r *Sizes) contentsDepth(o construction.Opening) stock.Sum {
	need := o.Contents.Room(o.Contents.Deep, o.Contents.Depth, 1)
	if need == nil {
		return nil
	}
	front := r.Built.Origin()[solid.Y]
	need = sums.Plus(need, stock.Term{Times: 1, Value: front, Label: "front frame"})
	need = sums.Minus(need, stock.Sum{r.Built.Doors.ShelfFront(o, front)})
	if o.Shelves > 0 {
		need = sums.Plus(need, stock.Term{Times: 1, Value: r.Built.Shelf.SetBack, Label: "set back"})
	}
	return need
}

// widestContents returns the contents of a bay that need most width.
func widestContents(b construction.Bay) (widest *construction.Contents, need stock.Sum) {
	for _, o := range b.Openings {
		if o.Contents == nil {
			continue
		}
		if width := o.Contents.WidthNeed(); width != nil && (need == nil || width.Total() > need.Total()) {
			widest, need = o.Contents, width
		}
	}
	return widest, need
}

// hold lets a member take what must go into it. They settle it, at least, where
// nothing else does; else they must find room. The size was written in the table
// at a, or settled by drawers.
func (r *Sizes) hold(m *member, c *construction.Contents, need stock.Sum, size string, written design.Length, a design.Place) bool {
	switch {
	case !m.settled:
		m.size, m.settled, m.least = r.In.Up(need, "clearance"), true, true
	case need.Total() <= m.size.Total():
	case written.Set:
		m.refused = &refusal{at: a.Under(written.Line, size), size: size, of: size + " of " + m.name, need: need.Total(), least: true,
			cause: fmt.Sprintf("%s is given, but the contents need %s", r.In.Print(written.Value), r.In.Explained(need))}
		m.size, m.least = need, true
		return false
	default:
		r.In.Fault(c.At, fmt.Sprintf("the contents need a %s of %s, but what else stands in %s needs %s", size, r.In.Explained(need), m.name,
			r.In.Explained(m.size)), "put them in a bay of their own")
		return false
	}
	return true
}
