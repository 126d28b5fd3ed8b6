package casework

import (
	"sawbill/stock"
	"sawbill/stock/casework/assembly"
	"sawbill/stock/casework/checks"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// Case is a derived design: its parts, and what is worth knowing besides.
type Case struct {
	// Parts are named once each; From is "case", How the arithmetic of each size. Miters is the
	// only allowance that is set.
	Parts []stock.Part
	// Sizes lists the sizes of the case as a whole, each with its arithmetic, in the order they
	// were found: "outside width", "inside width", "bay 1 width".
	Sizes    []stock.Derivation
	Openings []Space
	// Hung: it hangs on a wall, and its height begins at its lower edge, not at the
	// floor.
	Hung bool
	// Storage is the room in the drawers to be made, in the order of their bays and openings, from
	// the top.
	Storage []Storage
	// Solids are the pieces one by one, where they stand, in the order of Parts.
	Solids []Solid
	// Marks are the marks on the parts, in their order.
	Marks []Mark
	// Assembly is the order of putting it together.
	Assembly []Step
	Cautions []Caution
	Checks   []Check
	Hardware []Hardware
	Finish   Finish
	// Materials are the materials of the job, by name.
	Materials map[string]Material

	takeOff func() Takeoff // computes it once; nil in a case that was not derived
}

func (c *Case) standing() *pieces.Standing {
	return &pieces.Standing{Parts: c.Parts, Solids: c.Solids, Materials: c.Materials}
}

// Units sorts the pieces of the case into sub-assemblies. Alike drawers are one.
// All units as often as they are counted hold every part as often as it is
// wanted.
func (c *Case) Units() []Unit { return assembly.Units(c.standing()) }

// TakeOff estimates what the case takes besides its parts.
func (c *Case) TakeOff() Takeoff {
	if c.takeOff == nil {
		return checks.TakeOff(c.standing())
	}
	return c.takeOff()
}

// Edged lists the edges and ends of a piece, by its index in Solids, that get edging.
func (c *Case) Edged(piece int) []Face { return solid.Edged(c.Solids[piece], c.Solids) }

// Unseen reports whether no face of a part can be seen from in front, from the sides or
// from above when all is closed; its edges may.
func (c *Case) Unseen(part int) bool { return checks.Unseen(c.standing(), part) }

// Carries reports whether a part is to carry loads and may sag.
func (c *Case) Carries(part int) bool { return checks.Carries(c.standing(), part) }
