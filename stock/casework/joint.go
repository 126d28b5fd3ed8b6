package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// joint is how one panel meets another. Depth is how far the one reaches into
// the other: it is as much longer at that end. It is 0 where nothing is cut to a
// depth, as for a butt joint.
type joint struct {
	name  string
	depth stock.Length
}

// joint reads the joint word under the key of wordAt, whose depth is given
// under depthKey. Whatever is cut into a panel may take half its thickness at
// most.
func (r *reckoner) joint(table at, key string, word Word, depthKey string, depth Length, into panel) joint {
	name := or(word, "butt")
	depthAt := table.under(depth.Line, depthKey)
	cut := slices.Contains([]string{"rabbet", "dado", "groove"}, name)
	uncut := slices.Contains([]string{"butt", "pins", "box-joint", "applied", "loose-tenon", "dowel"}, name) // any other word has its own fault
	switch {
	case uncut && depth.Set && r.doubtful(table.path+"."+key):
	case uncut && depth.Set:
		r.fault(depthAt, fmt.Sprintf("a depth of %s has no use, since %s is %q", r.print(depth.Value), key, name),
			"leave one of the two out")
	case cut && !depth.Set:
		r.fault(depthAt, "a "+name+" needs a depth, and none is given", r.usualDepth(into))
	case cut && 2*depth.Value > into.thickness && into.thickness > 0:
		r.fault(depthAt, fmt.Sprintf("a %s %s deep is more than half of the %s that it is cut into", name,
			r.print(depth.Value), r.print(into.thickness)), r.usualDepth(into))
	}
	if !cut {
		return joint{name: name}
	}
	return joint{name, depth.Value}
}

// usualDepth words the rule of the trade: one quarter of the receiving stock is
// usually enough, rarely over one third (Joinery Rules of Thumb, 2015). Half, as
// the limit, is what some shops use (common practice, no source).
func (r *reckoner) usualDepth(into panel) string {
	if into.thickness == 0 {
		return "a quarter to a third of the panel's thickness is usual"
	}
	return fmt.Sprintf("give a quarter to a third of it, %s to %s", r.print(into.thickness/4), r.print(into.thickness/3))
}

// or is the word that was written, or the default.
func or(word Word, otherwise string) string {
	if word.Set {
		return word.Value
	}
	return otherwise
}
