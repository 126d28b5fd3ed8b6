// Package assembly sorts the pieces of a case into sub-assemblies and words the steps of putting it
// together.
package assembly

import (
	"slices"
	"strings"

	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// Step is one step of the assembly.
type Step struct {
	Unit string // the sub-assembly, as in Unit, or "case", "finish"
	Text string // what is done, in whole sentences
}

// assembler words the steps.
type assembler struct {
	*pieces.Maker
	anchored bool
}

// Steps derives the order from the construction: what is glued before what,
// what is dry-fitted, and what stays loose for the finish. The order is common
// practice (no source). A case that may tip is anchored.
func Steps(made *pieces.Maker, anchored bool) []Step {
	return assembler{made, anchored}.steps()
}

func (r assembler) steps() []Step {
	var steps []Step
	for _, step := range []func() (string, string){
		r.prepareStep, r.frameStep, r.dryFitStep, r.glueStep, r.squareStep, r.joinFramesStep,
		r.edgingStep, r.baseStep, r.backStep, r.drawerStep, r.doorStep, r.finishStep, r.shelfStep, r.lastStep,
	} {
		if unit, text := step(); text != "" {
			steps = append(steps, Step{unit, text})
		}
	}
	return steps
}

// has reports whether there is a piece of a unit.
func (r assembler) has(unit string) bool {
	return slices.ContainsFunc(r.Pieces, func(p pieces.Piece) bool { return p.Role.Unit() == unit })
}

// fixedShelves reports whether shelves are held for good.
func (r assembler) fixedShelves() bool { return r.has("shelves") && !r.Built.Shelf.Loose }

// within counts what is fixed between the uprights, top and bottom.
func (r assembler) within() []string {
	count := make(map[solid.Role]int)
	for _, p := range r.Pieces {
		count[p.Role] += p.Count
	}
	var said []string
	for _, w := range []struct {
		role  solid.Role
		many  string
		fixed bool
	}{{"partition", "partitions", true}, {"divider", "dividers", true}, {"shelf", "fixed shelves", !r.Built.Shelf.Loose}} {
		if n := count[w.role]; n > 0 && w.fixed {
			one := string(w.role)
			if w.role == "shelf" {
				one = "fixed shelf"
			}
			said = append(said, wording.Counted(n, one, w.many))
		}
	}
	return said
}

func (r assembler) hasRole(role solid.Role) bool {
	return slices.ContainsFunc(r.Pieces, func(p pieces.Piece) bool {
		return p.Role == role || slices.ContainsFunc(p.Stands, func(s solid.Solid) bool { return s.Role == role })
	})
}

// edgingStep comes when the joints are closed, which are laid out from the bare
// edges.
func (r assembler) edgingStep() (unit, text string) {
	if !r.has("edging") {
		return "", ""
	}
	text = "Glue the edging on, each strip cut to what is there, and trim it flush"
	var apart []string // what is edged before it is fitted
	for _, strip := range []struct {
		role  solid.Role
		of    string
		loose bool
	}{
		{"shelf edging", "loose shelves", r.Built.Shelf.Loose}, {"false front edging", "fronts", true}, {"door edging", "doors", true},
	} {
		if strip.loose && r.hasRole(strip.role) {
			apart = append(apart, strip.of)
		}
	}
	if apart != nil {
		text += "; that of " + wording.And(apart) + " before they are fitted"
	}
	return "edging", text + "."
}

func (r assembler) baseStep() (unit, text string) {
	if !r.has("base") {
		return "", ""
	}
	text = "Fix the feet under the case"
	if r.hasRole("plinth front and back") {
		text = "Glue up the plinth, check its diagonals, and screw it under the case"
	}
	return "base", text + "; see that it stands without rocking."
}

func (r assembler) backStep() (unit, text string) {
	if !r.backStaysOff() {
		return "", ""
	}
	where := "in its rabbet"
	if r.Built.Back.Fit == "applied" {
		where = "flush with the outside"
	}
	return "back", "Dry-fit the back " + where + ", trim it where needed, and take it off again: it stays off until the finish is dry."
}

func (r assembler) drawerStep() (unit, text string) {
	if r.Built.AnyDrawer(false) {
		how := joints.FitOf(r.Built.Drawers.Corner, joints.DrawerCorner).Close
		text = "Dry-fit, then glue front and back of each drawer " + how +
			"; the bottom lies loose in its groove. Make the diagonals equal and check that it does not rock."
	}
	if r.Built.AnyDrawer(true) {
		text = strings.TrimLeft(text+" Try the finished drawers in their openings.", " ")
	}
	if text == "" {
		return "", ""
	}
	text += " Fix the slides square to the front"
	if r.backStaysOff() {
		text += " while the back is off"
	}
	text += ", and run every drawer"
	if r.Built.AnyOpening(func(o construction.Opening) bool { return len(o.Stack) > 0 && r.Built.Drawers.FalseFronts(o) }) {
		text += ". Set the false fronts last, with spacers in the gaps, cut to what is there"
	}
	return "drawers", text + "."
}

func (r assembler) doorStep() (unit, text string) {
	if !r.has("doors") {
		return "", ""
	}
	trial := ""
	if r.Built.AnyOpening(construction.Opening.DrawersBehindDoors) {
		trial = "open each to a right angle and run the drawers behind it past it, "
	}
	return "doors", "Stand the case level, try the doors with spacers in the gaps, trim them to what is there, bore for the hinges, " + trial + "and take them off again."
}

func (r assembler) finishStep() (unit, text string) {
	loose := []string{"carcass"}
	if r.Built.Frame != nil {
		loose = []string{"case"}
	}
	if r.backStaysOff() {
		loose = append(loose, "back")
	}
	if r.Built.AnyDrawer(false) {
		loose = append(loose, "drawers")
	}
	if r.has("doors") {
		loose = append(loose, "doors")
	}
	text = "Ease the edges, sand and finish "
	if len(loose) == 1 {
		return "finish", text + "the " + loose[0] + "."
	}
	text += wording.And(loose) + " apart from each other, both faces of every loose panel alike."
	var off []string
	if r.Built.AnyOpening(func(o construction.Opening) bool { return len(o.Stack) > 0 }) {
		off = append(off, "the slides")
	}
	if r.has("doors") {
		off = append(off, "the hinges")
	}
	if off != nil {
		text += " Take " + wording.And(off) + " off for it."
	}
	return "finish", text
}

func (r assembler) shelfStep() (unit, text string) {
	if !r.has("shelves") || r.fixedShelves() {
		return "", ""
	}
	return "shelves", "The shelves stay loose: finish them apart and lay them on their pins last, with their clearance at both ends."
}

func (r assembler) lastStep() (unit, text string) {
	var last []string
	if r.backStaysOff() {
		last = append(last, "fix the back with screws or pins")
	}
	if r.Built.Hung() {
		last = append(last, "screw the level case to the wall (see the caution on hanging)")
	}
	if r.Built.AnyOpening(func(o construction.Opening) bool { return len(o.Stack) > 0 }) {
		last = append(last, "hang the drawers")
	}
	if r.has("doors") {
		last = append(last, "hang the doors")
	}
	if !r.Built.Hung() {
		last = append(last, "set the case level where it is to stand")
	}
	if r.anchored {
		last = append(last, "anchor it to the wall")
	}
	return "case", "When the finish is dry, " + wording.And(last) + "."
}
