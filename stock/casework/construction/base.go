package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/wording"
)

// base is the plinth, the feet or the hanging rails of the case; its height is 0 unless it lifts
// the case.
type base struct {
	design.Panel
	Kind    string
	Height  stock.Length
	SetBack stock.Length // of a plinth
	Depth   stock.Length // of a foot
	Forward stock.Length // of the front feet
	// of a hung case
	Rails     int
	RailWidth stock.Length
}

func (r *Construction) buildBase() {
	d := r.In.Design.Base
	a := r.In.Root.Under(d.Line, "base")
	kind := design.Or(d.Kind, "none")
	switch kind {
	case "none":
		if r.In.Doubtful(a.Path + ".kind") {
			return
		}
		r.unusedByBase(a, kind)
		return
	case "hung":
		r.unusedByBase(a, kind)
		b := base{Kind: kind}
		r.buildHanging(a, &b)
		r.Base = b
		return
	case "plinth", "feet":
		r.unusedByBase(a, kind)
	default: // has its own fault
		return
	}
	b := base{
		Kind:    kind,
		Panel:   r.In.Panel(a, "", d.Material, d.Thickness, &r.Carcass),
		Height:  r.In.Required(a, "height", d.Height, "how high it lifts the case"),
		SetBack: d.SetBack.Value,
		Forward: d.Forward.Value,
	}
	if kind == "feet" {
		b.Depth = r.In.Required(a, "depth", d.Depth, "the size of a foot, front to back")
	}
	r.Base = b
}

// unusedByBase refuses sizes that a base of this kind has no use for.
func (r *Construction) unusedByBase(a design.Place, kind string) {
	d := r.In.Design.Base
	for _, s := range []struct {
		key  string
		size design.Length
		of   []string // kinds that use it
	}{
		{"height", d.Height, []string{"plinth", "feet"}},
		{"set_back", d.SetBack, []string{"plinth"}},
		{"depth", d.Depth, []string{"feet"}},
		{"forward", d.Forward, []string{"feet"}},
		{"rail_width", d.RailWidth, []string{"hung"}},
	} {
		if s.size.Set && kind != s.of[0] && kind != s.of[len(s.of)-1] {
			r.In.Fault(a.Under(s.size.Line, s.key), fmt.Sprintf("it has no use, since kind is %q", kind),
				"leave it out, or set kind = "+wording.OneOf(s.of))
		}
	}
	if d.Rails.Set && kind != "hung" {
		r.In.Fault(a.Under(d.Rails.Line, "rails"), fmt.Sprintf("it has no use, since kind is %q", kind), `leave it out, or set kind = "hung"`)
	}
}
