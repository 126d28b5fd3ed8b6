package job

import (
	"sawbill/stock"
	"sawbill/stock/casework"
)

// coarsestStep is far more than any ruler or fence is set by.
const coarsestStep = 5 * stock.Millimeter

// toolKeys are what sizes of a case lie on; the defaults are those of [casework.UsualTools].
var toolKeys = []key{
	{name: "step", holds: aLength, metric: "0.5 mm", inch: "1/32 in", zero: true, longest: coarsestStep,
		usual: "give what ruler, fence and stop are set by, 0.5 or 1 mm (1/32 or 1/16 in), or 0 for exact sizes"},
}

// tools reads [tools].
func (r *reader) tools(root *table, at place) casework.Tools {
	rec := r.section(root, "tools", at)
	tools := casework.UsualTools(r.ruler.Units)
	tools.Step = rec.length("step")
	return tools
}
