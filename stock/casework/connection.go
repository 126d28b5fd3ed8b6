package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// connection is the joint of a site. Depth is how far the one piece reaches into the other; it is
// 0 unless the joint is housed.
type connection struct {
	Joint
	depth stock.Length
}

// term is what the joint adds at so many ends.
func (c connection) term(ends int) stock.Term {
	if c.Joint == nil {
		return stock.Term{}
	}
	return stock.Term{Times: ends, Value: c.depth, Label: c.Name()}
}

// joint reads the word and the depth of a site in the table at a, cut into a panel.
func (r *reader) joint(s Site, table at, word Word, depth Length, into panel) connection {
	keys := keysOf[s]
	name := or(word, s.Words()[0])
	c, depthAt := connection{Joint: s.named(name)}, table.under(depth.Line, keys.depth)
	if h, is := c.Joint.(housedJoint); is {
		h.checkDepth(r, s, depthAt, depth, into)
		c.depth = depth.Value
		return c
	}
	if depth.Set && slices.Contains(s.Words(), name) && !r.doubtful(table.path+"."+keys.joint) {
		r.fault(depthAt, fmt.Sprintf("a depth of %s has no use, since %s is %q", r.print(depth.Value), keys.joint, name),
			"leave one of the two out")
	}
	return c
}

// unused refuses a size under a key that the joint of a site does not use. What names the size: "a
// tenon has".
func (r *reader) unused(s Site, table at, j Joint, key, what string, size Length) {
	if size.Set && !slices.Contains(j.Keys(), key) && !r.doubtful(table.path+"."+keysOf[s].joint) {
		r.fault(table.under(size.Line, key), fmt.Sprintf("%s no use, since %s is %q", what, keysOf[s].joint, j.Name()), "leave one of the two out")
	}
}

// or is the word that was written, or the default.
func or(word Word, otherwise string) string {
	if word.Set {
		return word.Value
	}
	return otherwise
}
