package job

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

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
	{name: "dowels", holds: dowels, longest: longestDowel, most: mostTools, usual: "dowels are 6 x 30 to 10 x 60 mm (1/4 x 1 to 1/2 x 2 in)"},
}

// Limits beyond which a tool is a slip of the pen.
const (
	widestTool   = 100 * stock.Millimeter
	longestDowel = 300 * stock.Millimeter
	mostTools    = 100
)

// widths reads one length or a list of them, which come out sorted and once each.
func (k key) widths(v value, ruler stock.Ruler) ([]stock.Length, fault.Fault) {
	values, found := k.listed(v)
	if found.Found() {
		return nil, found
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

// listed is a list of values, or one alone.
func (k key) listed(v value) ([]value, fault.Fault) {
	values := []value{v}
	if v.kind == list {
		values = v.list
	}
	if len(values) > k.most {
		return nil, fault.New(fmt.Sprintf("the list has %d sizes, and at most %d are read", len(values), k.most), "leave out what no joint needs")
	}
	return values, fault.Fault{}
}

// dowels reads sizes such as "8 x 40", diameter first, and sorts them by diameter, of each the
// longest first.
func (k key) dowels(v value, ruler stock.Ruler) ([]casework.Dowel, fault.Fault) {
	values, found := k.listed(v)
	if found.Found() {
		return nil, found
	}
	var all []casework.Dowel
	for _, each := range values {
		const remedy = `write diameter and length, such as "8 x 40"`
		if each.kind != text {
			return nil, wrongKind(each, remedy)
		}
		diameter, length, two := strings.Cut(each.plain(), "x")
		if !two {
			return nil, fault.New(fmt.Sprintf("%q is no size of a dowel", each.plain()), remedy)
		}
		var d casework.Dowel
		for _, part := range []struct {
			is   *stock.Length
			said string
		}{{&d.Diameter, diameter}, {&d.Length, length}} {
			said := each
			said.text = strings.TrimSpace(part.said)
			if *part.is, found = k.length(said, ruler); found.Found() {
				return nil, found
			}
		}
		if d.Diameter >= d.Length {
			return nil, fault.New(fmt.Sprintf("the dowel %q is thicker than it is long", each.plain()), remedy+", the diameter first")
		}
		all = append(all, d)
	}
	slices.SortFunc(all, func(a, b casework.Dowel) int {
		return cmp.Or(cmp.Compare(a.Diameter, b.Diameter), cmp.Compare(b.Length, a.Length))
	})
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
	if rec.given("dowels") {
		tools.Dowels = rec.fields["dowels"].dowels
	}
	return tools
}
