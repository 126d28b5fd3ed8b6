package recut

import (
	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// resized returns b with its part in the new size: a good blank is cut down to it.
func resized(b cutplan.Blank, to map[string]stock.Part) cutplan.Blank {
	q, changed := to[b.Part.Name]
	if !changed {
		return b
	}
	n, m := stock.Length(b.Gang), stock.Length(b.Layers)
	b.Length -= n * (b.Part.Length - q.Length)
	b.Width -= b.Part.Width - q.Width
	b.Thickness -= m * (b.Part.Thickness - q.Thickness)
	count := b.Part.Count
	b.Part = q
	b.Part.Count = count
	b.How = nil
	return b
}

// salvage reports whether scrap still gives its blank, since the part became smaller. It
// then counts the blank as good.
func (r *rest) salvage(p progress.Piece) bool {
	b := r.state.Bill()[p.Spoiled.Blank]
	q, changed := r.sizes[b.Part.Name]
	if p.Kind != progress.Scrap || !changed || b.Gang*b.Layers != 1 || p.Stock.Thickness < q.Thickness {
		return false
	}
	is := progress.Made{Blank: resized(b, r.sizes), From: p.Spoiled.From, Turned: p.Spoiled.Turned, Known: p.Spoiled.Known}
	if !holds(p.Spoiled.Left, is.Blank.Blank) {
		return false
	}
	if r.goodParts[b.Part.Name] >= q.Count {
		return false
	}
	r.goodParts[b.Part.Name]++
	is.Count = 1
	r.saved = append(r.saved, is)
	return true
}

func (r *rest) savedBlanks() []cutplan.Blank {
	var all []cutplan.Blank
	for _, m := range r.saved {
		all = append(all, m.Blank)
	}
	return all
}
