package joints

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// Connection is the joint of a site. Depth is how far the one piece reaches into the other; it is
// 0 unless the joint is housed.
type Connection struct {
	Joint
	Depth stock.Length
}

// Term is the length that the joint adds at a number of ends.
func (c Connection) Term(ends int) stock.Term {
	if c.Joint == nil {
		return stock.Term{}
	}
	return stock.Term{Times: ends, Value: c.Depth, Label: c.Name()}
}

// Connect reads the word and the depth of a site in the table at a, cut into a panel.
func Connect(r *design.Reader, s Site, table design.Place, word design.Word, depth design.Length, into design.Panel) Connection {
	keys := keysOf[s]
	name := design.Or(word, s.Words()[0])
	c, depthAt := Connection{Joint: s.Named(name)}, table.Under(depth.Line, keys.Depth)
	if h, is := c.Joint.(housedJoint); is {
		h.checkDepth(r, s, depthAt, depth, into)
		c.Depth = depth.Value
		return c
	}
	if depth.Set && slices.Contains(s.Words(), name) && !r.Doubtful(table.Path+"."+keys.Word) {
		r.Fault(depthAt, fmt.Sprintf("a depth of %s has no use, since %s is %q", r.Print(depth.Value), keys.Word, name),
			"leave one of the two out")
	}
	return c
}

// Unused refuses a size under a key that the joint of a site does not use. The text what names the
// size: "a tenon has".
func Unused(r *design.Reader, s Site, table design.Place, j Joint, key, what string, size design.Length) {
	if size.Set && !slices.Contains(j.Keys(), key) && !r.Doubtful(table.Path+"."+keysOf[s].Word) {
		r.Fault(table.Under(size.Line, key), fmt.Sprintf("%s no use, since %s is %q", what, keysOf[s].Word, j.Name()), "leave one of the two out")
	}
}
