package casework

import (
	"sync"

	"sawbill/stock/casework/assembly"
	"sawbill/stock/casework/checks"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/marks"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/sizes"
	"sawbill/stock/fault"
)

// Derive turns a design into the parts of a case. Sizes that the design leaves out
// follow from the rest, inwards from the outside sizes or outwards from
// what goes in. If there are faults, or doubts, the case is nil, and the faults are
// in the order of their lines.
func Derive(d Design, from Context) (*Case, []fault.Fault) {
	in := design.Read(d, from, joints.WordsOf)
	built := construction.Read(in)
	settled := sizes.Settle(built)
	made := pieces.Make(settled)
	if !in.Sound() {
		return nil, in.InOrder()
	}
	laid := marks.LayOut(made)
	if !in.Sound() {
		return nil, in.InOrder()
	}
	found := checks.Case(made, laid.Pegs)
	c := &Case{
		Parts: made.Parts, Sizes: settled.Derivations, Openings: settled.Spaces(), Storage: made.Storage, Solids: made.Solids, Marks: laid.Marks,
		Assembly: assembly.Steps(made, found.Anchored), Materials: from.Materials, Finish: checks.FinishOf(in), Hung: built.Hung(),
		Hardware: found.Hardware, Checks: found.Checks, Cautions: in.Cautions,
	}
	c.takeOff = sync.OnceValue(func() Takeoff { return checks.TakeOff(c.standing()) })
	return c, nil
}
