package design

import (
	"fmt"
	"maps"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/internal/wording"
)

// Panel is a material in one thickness, sheet or lumber.
type Panel struct {
	Material  string
	Thickness stock.Length
}

// Panel looks up a material and its thickness, given in the table at a under the keys prefix +
// "material" and prefix + "thickness". If no material is given, instead provides it, unless it is
// nil.
func (r *Reader) Panel(a Place, prefix string, material Word, thickness Length, instead *Panel) Panel {
	if r.Doubtful(a.Path + "." + prefix + "material") {
		return Panel{}
	}
	if !material.Set && instead != nil {
		material.Value = instead.Material
		if material.Value == "" { // its own fault has been told
			return Panel{}
		}
		if !thickness.Set {
			return *instead
		}
	}
	materialAt := a.Under(material.Line, prefix+"material")
	known := slices.Sorted(maps.Keys(r.From.Materials))
	stocked, found := r.From.Materials[material.Value]
	switch {
	case material.Value == "":
		r.Doubt(materialAt)
		r.Fault(materialAt, "no material is given", "give the name of a material that the job offers")
		return Panel{}
	case !found && r.From.StockInDoubt:
		r.Doubt(materialAt)
		return Panel{}
	case !found:
		r.Doubt(materialAt)
		remedy := "add a sheet or board of it, or use a material that the job offers"
		if near, ok := stock.Nearest(material.Value, known); ok {
			remedy = fmt.Sprintf("did you mean %q?", near)
		}
		r.Fault(materialAt, fmt.Sprintf("unknown material %q", material.Value), remedy)
		return Panel{}
	}
	return Panel{material.Value, r.thickness(a.Under(thickness.Line, prefix+"thickness"), material.Value, stocked, thickness)}
}

// thickness is the given one, if the stock can yield it: a sheet as it is, a
// board planed down.
func (r *Reader) thickness(a Place, name string, of Material, given Length) stock.Length {
	offered := make([]string, len(of.Thicknesses))
	for i, t := range of.Thicknesses {
		offered[i] = r.Print(t)
	}
	remedy := "give " + wording.Alternatives(offered)
	if r.Doubtful(a.Path) {
		return 0
	}
	if !given.Set {
		if r.From.StockInDoubt {
			r.Doubt(a)
			return 0
		}
		if len(of.Thicknesses) == 1 {
			return of.Thicknesses[0]
		}
		r.Doubt(a)
		r.Fault(a, fmt.Sprintf("%s comes in %d thicknesses, and none is given", name, len(of.Thicknesses)), remedy)
		return 0
	}
	_, exact := slices.BinarySearch(of.Thicknesses, given.Value)
	planed := of.Kind == stock.Board && len(of.Thicknesses) > 0 && given.Value <= slices.Max(of.Thicknesses)
	if !exact && !planed && !r.From.StockInDoubt {
		if of.Kind == stock.Board {
			remedy = "give " + offered[len(offered)-1] + " or less"
		}
		r.Fault(a, fmt.Sprintf("no %s gives a thickness of %s", name, r.Print(given.Value)), remedy)
	}
	return given.Value
}

// Lumber reports whether a panel comes from boards, off which thin strips are
// sawn several from one thickness.
func (r *Reader) Lumber(p Panel) bool { return r.From.Materials[p.Material].Kind == stock.Board }
