package casework

import (
	"fmt"
	"maps"
	"slices"

	"sawbill/stock"
)

// panel is what a piece is made of: a material in one thickness, sheet or
// lumber.
type panel struct {
	material  string
	thickness stock.Length
}

// panel looks up a material and its thickness, given in the table at a under
// the keys prefix + "material" and prefix + "thickness". A material that was
// not given is that of instead, if there is such a one.
func (r *reader) panel(a at, prefix string, material Word, thickness Length, instead *panel) panel {
	if r.doubtful(a.path + "." + prefix + "material") {
		return panel{}
	}
	if !material.Set && instead != nil {
		material.Value = instead.material
		if material.Value == "" { // its own fault has been told
			return panel{}
		}
		if !thickness.Set {
			return *instead
		}
	}
	materialAt := a.under(material.Line, prefix+"material")
	known := slices.Sorted(maps.Keys(r.from.Materials))
	stocked, found := r.from.Materials[material.Value]
	switch {
	case material.Value == "":
		r.doubt(materialAt)
		r.fault(materialAt, "no material is given", "give the name of a material that the job offers")
		return panel{}
	case !found && r.from.StockInDoubt:
		r.doubt(materialAt)
		return panel{}
	case !found:
		r.doubt(materialAt)
		remedy := "add a sheet or board of it, or use a material that the job offers"
		if near, ok := stock.Nearest(material.Value, known); ok {
			remedy = fmt.Sprintf("did you mean %q?", near)
		}
		r.fault(materialAt, fmt.Sprintf("unknown material %q", material.Value), remedy)
		return panel{}
	}
	return panel{material.Value, r.thickness(a.under(thickness.Line, prefix+"thickness"), material.Value, stocked, thickness)}
}

// thickness is the given one, if the stock can yield it: a sheet as it is, a
// board planed down.
func (r *reader) thickness(a at, name string, of Material, given Length) stock.Length {
	offered := make([]string, len(of.Thicknesses))
	for i, t := range of.Thicknesses {
		offered[i] = r.print(t)
	}
	remedy := "give " + alternatives(offered)
	if r.doubtful(a.path) {
		return 0
	}
	if !given.Set {
		if r.from.StockInDoubt {
			r.doubt(a)
			return 0
		}
		if len(of.Thicknesses) == 1 {
			return of.Thicknesses[0]
		}
		r.doubt(a)
		r.fault(a, fmt.Sprintf("%s comes in %d thicknesses, and none is given", name, len(of.Thicknesses)), remedy)
		return 0
	}
	_, exact := slices.BinarySearch(of.Thicknesses, given.Value)
	planed := of.Kind == stock.Board && len(of.Thicknesses) > 0 && given.Value <= slices.Max(of.Thicknesses)
	if !exact && !planed && !r.from.StockInDoubt {
		if of.Kind == stock.Board {
			remedy = "give " + offered[len(offered)-1] + " or less"
		}
		r.fault(a, fmt.Sprintf("no %s gives a thickness of %s", name, r.print(given.Value)), remedy)
	}
	return given.Value
}

// lumber reports whether a panel comes from boards, off which thin strips are
// sawn several from one thickness.
func (r *reader) lumber(p panel) bool { return r.from.Materials[p.material].Kind == stock.Board }
