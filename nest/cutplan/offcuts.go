package cutplan

import "strconv"

// NumberedOffcut is a leftover to keep, Count times. The plan's offcuts are numbered from
// 1, in the order of the layouts and of their trees. Copies have the numbers from First
// on.
type NumberedOffcut struct {
	Layout int // index into Plan.Layouts
	Node   Node
	First  int
	Count  int
}

// Offcuts lists the leftovers to keep. A printed plan keeps its printed numbers.
func (p *Plan) Offcuts() []NumberedOffcut {
	if p.Numbered != nil {
		return p.Numbered
	}
	var all []NumberedOffcut
	next := 1
	for i, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == Offcut {
				all = append(all, NumberedOffcut{i, n, next, l.Repeat})
				next += l.Repeat
			}
		}
	}
	return all
}

// OffcutName returns the label of offcut n of the plan with that code, "H7KMQ-3".
func OffcutName(code string, n int) string { return code + "-" + strconv.Itoa(n) }
