package job

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/fault"
)

// coarsestStep is far more than any ruler or fence is set by.
const coarsestStep = 5 * stock.Millimeter

// toolKeys are what sizes of a case lie on; the defaults are those of [casework.UsualTools].
var toolKeys = []key{
	{name: "step", holds: aLength, metric: "0.5 mm", inch: "1/32 in", zero: true, longest: coarsestStep,
		usual: "give what ruler, fence and stop are set by, 0.5 or 1 mm (1/32 or 1/16 in), or 0 for exact sizes"},
	{name: "bits", holds: widths, longest: widestTool, most: mostTools, usual: "router bits are 3 to 20 mm (1/8 to 3/4 in) wide"},
	{name: "chisels", holds: widths, longest: widestTool, most: mostTools, usual: "mortise chisels are 6 to 16 mm (1/4 to 3/4 in) wide"},
}

// Limits beyond which a tool is a slip of the pen.
const (
	widestTool = 100 * stock.Millimeter
	mostTools  = 100
)

// widths reads one length or a list of them, which come out sorted and once each.
func (k key) widths(v value, ruler stock.Ruler) ([]stock.Length, fault.Fault) {
	values := []value{v}
	if v.kind == list {
		values = v.list
	}
	if len(values) > k.most {
		return nil, fault.New(fmt.Sprintf("the list has %d sizes, and at most %d are read", len(values), k.most), "leave out what no joint needs")
	}
	var all []stock.Length
	for _, each := range values {
		l, found := k.length(each, ruler)
		if found.Found() {
			return nil, found
		}
		all = append(all, l)
	}
	slices.Sort(all)
	return slices.Compact(all), fault.Fault{}
}

// tools reads [tools].
func (r *reader) tools(root *table, at place) casework.Tools {
	rec := r.section(root, "tools", at)
	tools := casework.UsualTools(r.ruler.Units)
	tools.Step = rec.length("step")
	if rec.given("bits") {
		tools.Bits = rec.fields["bits"].widths
	}
	if rec.given("chisels") {
		tools.Chisels = rec.fields["chisels"].widths
	}
	return tools
}
