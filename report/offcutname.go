package report

import (
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// offcutNames tells what to write on each leftover that is kept, so that it can be
// found and told from those of other plans.
type offcutNames struct {
	code string // of the plan; may be empty
	kept map[corner]cutplan.NumberedOffcut
}

// corner is where a leftover lies, which is like no other's in its layout.
type corner struct {
	layout int
	x, y   stock.Length
}

// namesOf gives the leftovers of p their names: the plan's code and a number,
// "H7KMQ-3".
func namesOf(p *cutplan.Plan, code string) offcutNames {
	n := offcutNames{code, map[corner]cutplan.NumberedOffcut{}}
	for _, k := range p.Offcuts() {
		n.kept[corner{k.Layout, k.Node.X, k.Node.Y}] = k
	}
	return n
}

// name is that of leftover i of the plan.
func (n offcutNames) name(i int) string {
	if n.code == "" {
		return "offcut " + strconv.Itoa(i)
	}
	return cutplan.OffcutName(n.code, i)
}

// located is a piece of a layout.
type located struct {
	layout int // index into Plan.Layouts
	node   *cutplan.Node
}

// numbers are those of the copies of leftovers, ascending.
func (n offcutNames) numbers(pieces ...located) []int {
	var all []int
	for _, piece := range pieces {
		k := n.kept[corner{piece.layout, piece.node.X, piece.node.Y}]
		for i := range k.Count {
			all = append(all, k.First+i)
		}
	}
	slices.Sort(all)
	return all
}

// each lists the names of the copies of a leftover.
func (n offcutNames) each(piece located) []string {
	var all []string
	for _, i := range n.numbers(piece) {
		all = append(all, n.name(i))
	}
	return all
}

// said names leftovers in few words: "H7KMQ-3, 5–8".
func (n offcutNames) said(pieces ...located) string {
	numbers := n.numbers(pieces...)
	if len(numbers) == 0 {
		return ""
	}
	first := strconv.Itoa(numbers[0])
	name := n.name(numbers[0])
	return name[:len(name)-len(first)] + ranges(numbers)
}
