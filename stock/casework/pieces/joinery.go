package pieces

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/joints"
)

// longestStrip is the length of a strip that is still easily planed and rounded:
// common practice, no source.
const longestStrip = 24 * stock.Inch

// joineryPieces are the strips for loose tenons, and what was asked for by its
// number. They have no place of their own in the case.
//
//	tenons in a carcass  4 corners x (depth / spacing rounded up, at least 2)
//	tenons in a frame    one at each end of a rail, a mid stile or a mid rail
//	strip                so many tenons + the kerfs between them
func (r *Maker) joineryPieces() {
	for _, t := range r.Built.LooseTenons {
		if f := r.Built.Frame; t.Joined == "frame" {
			across := f.Rail
			if len(r.Built.Bays) > 1 {
				across = min(across, f.MidStile)
			}
			if r.Built.MidRails() > 0 {
				across = min(across, f.MidRail)
			}
			r.strips(t, 8+4*(len(r.Built.Bays)-1)+2*r.Built.MidRails(), across)
			continue
		}
		along := r.Sizes.Body().Depth.Total()
		each := joints.TenonsAlong(along, t.Spacing)
		r.strips(t, 4*each, along/stock.Length(each))
	}
	for _, j := range r.Built.Loose {
		r.add(Piece{Role: j.Role, Panel: j.Panel, Count: j.Count, Length: sums.Of(j.Length, "given"), Width: sums.Of(j.Width, "given")})
	}
}

// strips are those for n tenons, each of which has room across to stand in: as
// few as are short enough, all alike.
func (r *Maker) strips(t joints.LooseTenons, n int, room stock.Length) {
	if t.Wide.Total() >= room {
		r.In.Fault(t.WidthAt, fmt.Sprintf("a tenon %s wide does not stand in the %s that it has in the %s",
			r.In.Print(t.Wide.Total()), r.In.Print(room), t.Joined), "make it narrower; two to four thicknesses are usual")
		return
	}
	kerf := r.In.From.Kerf
	most := max(1, int((longestStrip+kerf)/(t.Length+kerf)))
	strips := (n + most - 1) / most
	each := (n + strips - 1) / strips
	r.add(Piece{Role: "loose tenon strip", places: []string{t.Joined}, Panel: t.Panel, strip: r.In.Lumber(t.Panel), Count: strips, Width: t.Wide, thickness: t.Thick,
		Length: sums.Plus(stock.Sum{{Times: each, Value: t.Length, Label: "tenon"}}, stock.Term{Times: each - 1, Value: kerf, Label: "kerf"})})
}
