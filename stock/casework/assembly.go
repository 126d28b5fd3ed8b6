package casework

import (
	"fmt"
	"slices"
	"strings"
)

// Step is one step of the assembly.
type Step struct {
	Unit string // the sub-assembly, as in Unit, or "case", "finish"
	Text string // what is done, in whole sentences
}

// assembly derives the order from the construction: what is glued before what,
// what is dry-fitted, and what stays loose for the finish. The order is common
// practice (no source).
func (r *reckoner) assembly() []Step {
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
func (r *reckoner) has(unit string) bool {
	return slices.ContainsFunc(r.pieces, func(p piece) bool { return unitOf(p.role) == unit })
}

// fixedShelves reports whether shelves are held for good.
func (r *reckoner) fixedShelves() bool { return r.has("shelves") && !r.made.shelf.loose }

// within counts what is fixed between the uprights, top and bottom.
func (r *reckoner) within() []string {
	count := make(map[string]int)
	for _, p := range r.pieces {
		count[p.role] += p.count
	}
	var said []string
	for _, w := range []struct {
		role, many string
		fixed      bool
	}{{"partition", "partitions", true}, {"divider", "dividers", true}, {"shelf", "fixed shelves", !r.made.shelf.loose}} {
		if n := count[w.role]; n > 0 && w.fixed {
			one := w.role
			if w.role == "shelf" {
				one = "fixed shelf"
			}
			said = append(said, counted(n, one, w.many))
		}
	}
	return said
}

// housed are the joints of the carcass that are cut to a depth, each once.
func (r *reckoner) housed() []string {
	var cut []string
	for _, j := range []struct {
		joint
		made bool
	}{
		{r.made.corner, true}, {r.made.partition.joint, len(r.bays) > 1},
		{r.made.divider.joint, r.hasRole("divider")}, {r.made.shelf.joint, r.fixedShelves()},
	} {
		if name := j.name + "s"; j.made && j.depth > 0 && !slices.Contains(cut, name) {
			cut = append(cut, name)
		}
	}
	if fit := r.made.back.fit; fit == "rabbet" || fit == "groove" {
		cut = append(cut, "the "+fit+" for the back")
	}
	return cut
}

func (r *reckoner) hasRole(role string) bool {
	return slices.ContainsFunc(r.pieces, func(p piece) bool { return p.role == role })
}

func (r *reckoner) prepareStep() (unit, text string) {
	text = "Lay all pieces out by their marks and pencil front edge and inside on each."
	if cut := r.housed(); cut != nil {
		text += " Cut " + and(cut) + ", after a trial in scrap."
	}
	if r.onDowels() {
		text += " Bore the holes for the dowels, with a jig or a stop for their depth."
	}
	if r.onTenons() {
		text += " Cut the mortises for the loose tenons, against a stop for their depth."
	}
	if r.has("shelves") && r.made.shelf.loose {
		text += " Bore the rows for the shelf pins."
	}
	return "case", text + " Sand the inside faces; if they are finished now, keep the glue faces bare."
}

// onDowels reports whether any joint is on dowels.
func (r *reckoner) onDowels() bool {
	b := r.made
	return b.corner.name == "dowel" || b.partition.joint.name == "dowel" || b.divider.joint.name == "dowel" ||
		b.frame != nil && b.frame.corner == "dowel"
}

// onTenons reports whether any joint is on loose tenons.
func (r *reckoner) onTenons() bool {
	return r.made.corner.name == "loose-tenon" || r.made.frame != nil && r.made.frame.corner == "loose-tenon"
}

func (r *reckoner) frameStep() (unit, text string) {
	if r.made.frame == nil {
		return "", ""
	}
	how := map[string]string{
		"butt":              "on dowels or screws at the butt joints",
		"half-lap":          "at the half-laps, a clamp on each lap",
		"mortise-and-tenon": "at the mortises and tenons",
		"box-joint":         "at the box joints",
		"loose-tenon":       "on loose tenons",
		"dowel":             "on dowels",
	}[r.made.frame.corner]
	which := "stiles and rails"
	if len(r.bays) > 1 {
		which = "stiles, mid stiles and rails"
	}
	text = fmt.Sprintf("Dry-fit, then glue %s of the front frame, then of the back frame, %s, flat on the bench; make both diagonals equal.", which, how)
	if r.made.back.fit == "groove" {
		text += " The back goes into the back frame's groove, without glue, before that is closed."
	}
	return "frames", text
}

func (r *reckoner) dryFitStep() (unit, text string) {
	text = "Dry-fit sides, top and bottom"
	if in := r.within(); in != nil {
		text += " with " + and(in)
	}
	if r.closedIn() {
		text += ", the back in its groove"
	}
	return "carcass", text + ": every joint must close under light clamps and the corners be square. Take it apart again."
}

// backStaysOff reports whether the back is fixed only when the finish is dry.
func (r *reckoner) backStaysOff() bool {
	return r.made.back.fit == "rabbet" || r.made.back.fit == "applied"
}

// closedIn reports whether the back must be in its grooves before the carcass is
// closed.
func (r *reckoner) closedIn() bool { return r.made.back.fit == "groove" && r.made.frame == nil }

func (r *reckoner) glueStep() (unit, text string) {
	into := "to bottom and top"
	switch {
	case r.made.topOver && r.made.bottomUnder:
		into = "between bottom and top"
	case r.made.topOver:
		into = "to the bottom, then the top on"
	case r.made.bottomUnder:
		into = "on the bottom, then to the top"
	}
	joint := "in the " + r.made.corner.name + "s"
	switch r.made.corner.name {
	case "butt":
		joint = "on dowels or screws at the butt joints"
	case "loose-tenon":
		joint = "on loose tenons"
	case "dowel":
		joint = "on dowels"
	}
	if in := r.within(); in != nil {
		text = "Fix " + and(in) + " first, from the middle outwards, working fast or with a slow glue. "
	}
	if r.closedIn() {
		text += "Slide the back into its groove, without glue, before the last panel closes it. "
	}
	return "carcass", text + "Glue the sides " + into + ", " + joint + "."
}

func (r *reckoner) squareStep() (unit, text string) {
	if r.made.frame != nil {
		return "", ""
	}
	text = "Clamp on a flat floor and check the diagonals, front and behind: both must be equal"
	if r.backStaysOff() {
		text += "; the back, laid on dry, keeps them so"
	}
	return "carcass", text + ". Wipe off glue; leave it until the glue has set."
}

func (r *reckoner) joinFramesStep() (unit, text string) {
	if r.made.frame == nil {
		return "", ""
	}
	inset := "flush with the frames' outer edges"
	if in := r.made.frame.inset; in > 0 {
		inset = r.print(in) + " inside the frames' outer edges all round"
	}
	return "frames", "Glue the carcass to the back frame, then the front frame to the carcass, the panels " + inset +
		". Check the diagonals of both frames; leave it until the glue has set."
}

// edgingStep comes when the joints are closed, which are laid out from the bare
// edges.
func (r *reckoner) edgingStep() (unit, text string) {
	if !r.has("edging") {
		return "", ""
	}
	return "edging", "Glue the edging on, each strip cut to what is there, and trim it flush; that of loose shelves, fronts and doors before they are fitted."
}

func (r *reckoner) baseStep() (unit, text string) {
	if !r.has("base") {
		return "", ""
	}
	text = "Fix the feet under the case"
	if r.hasRole("plinth front and back") {
		text = "Glue up the plinth, check its diagonals, and screw it under the case"
	}
	return "base", text + "; see that it stands without rocking."
}

func (r *reckoner) backStep() (unit, text string) {
	if !r.backStaysOff() {
		return "", ""
	}
	where := "in its rabbet"
	if r.made.back.fit == "applied" {
		where = "flush with the outside"
	}
	return "back", "Dry-fit the back " + where + ", trim it where needed, and take it off again: it stays off until the finish is dry."
}

func (r *reckoner) drawerStep() (unit, text string) {
	if r.anyDrawer(false) {
		how := map[string]string{"butt": "between the sides, on screws or dowels", "rabbet": "in the sides' rabbets",
			"box-joint": "to the sides at the box joints"}[r.made.drawers.corner]
		text = "Dry-fit, then glue front and back of each drawer " + how +
			"; the bottom lies loose in its groove. Make the diagonals equal and check that it does not rock."
	}
	if r.anyDrawer(true) {
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
	if r.anyOpening(func(o opening) bool { return len(o.stack) > 0 && r.made.drawers.falseFronts(o) }) {
		text += ". Set the false fronts last, with spacers in the gaps, cut to what is there"
	}
	return "drawers", text + "."
}

func (r *reckoner) doorStep() (unit, text string) {
	if !r.has("doors") {
		return "", ""
	}
	trial := ""
	if r.anyOpening(opening.drawersBehindDoors) {
		trial = "open each to a right angle and run the drawers behind it past it, "
	}
	return "doors", "Stand the case level, try the doors with spacers in the gaps, trim them to what is there, bore for the hinges, " + trial + "and take them off again."
}

func (r *reckoner) finishStep() (unit, text string) {
	loose := []string{"carcass"}
	if r.made.frame != nil {
		loose = []string{"case"}
	}
	if r.backStaysOff() {
		loose = append(loose, "back")
	}
	if r.anyDrawer(false) {
		loose = append(loose, "drawers")
	}
	if r.has("doors") {
		loose = append(loose, "doors")
	}
	text = "Ease the edges, sand and finish "
	if len(loose) == 1 {
		return "finish", text + "the " + loose[0] + "."
	}
	text += and(loose) + " apart from each other, both faces of every loose panel alike."
	if r.has("doors") || r.anyOpening(func(o opening) bool { return len(o.stack) > 0 }) {
		text += " Slides and hinges come off for it."
	}
	return "finish", text
}

func (r *reckoner) shelfStep() (unit, text string) {
	if !r.has("shelves") || r.fixedShelves() {
		return "", ""
	}
	return "shelves", "The shelves stay loose: finish them apart and lay them on their pins last, with their clearance at both ends."
}

func (r *reckoner) lastStep() (unit, text string) {
	var last []string
	if r.backStaysOff() {
		last = append(last, "fix the back with screws or pins")
	}
	if r.anyOpening(func(o opening) bool { return len(o.stack) > 0 }) {
		last = append(last, "hang the drawers")
	}
	if r.has("doors") {
		last = append(last, "hang the doors")
	}
	last = append(last, "set the case level where it is to stand")
	if r.tips() != nil {
		last = append(last, "anchor it to the wall")
	}
	return "case", "When the finish is dry, " + and(last) + "."
}

// and joins words as a sentence does.
func and(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
