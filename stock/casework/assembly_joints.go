package casework

import (
	"fmt"
	"slices"
)

// The steps until the joints of the carcass are closed.

// placed is a joint at its site.
type placed struct {
	Joint
	site Site
}

// placed are the joints of carcass and frames.
func (r *reckoner) placed() []placed {
	b := r.made
	all := []placed{{b.corner, CarcassCorner}}
	if len(r.bays) > 1 {
		all = append(all, placed{b.partition.joint, DividerEnd})
	}
	if r.hasRole("divider") {
		all = append(all, placed{b.divider.joint, DividerEnd})
	}
	if r.fixedShelves() {
		all = append(all, placed{b.shelf.joint, ShelfEnd})
	}
	if b.frame != nil {
		all = append(all, placed{b.frame.corner, FrameCorner})
	}
	if b.back.housed() {
		all = append(all, placed{b.back, BackEdge})
	}
	return all
}

func (r *reckoner) prepareStep() (unit, text string) {
	text = "Lay all pieces out by their marks and pencil front edge and inside on each."
	var cut []string
	for _, j := range r.placed() {
		if name := j.Cut(j.site); name != "" && !slices.Contains(cut, name) {
			cut = append(cut, name)
		}
	}
	if cut != nil {
		text += " Cut " + and(cut) + ", after a trial in scrap."
	}
	if notched := r.notched(); notched != nil {
		text += " Notch the front corners of " + and(notched) + " where edging runs past them."
	}
	for _, j := range joints {
		if step := j.Prepare(); step != "" && slices.ContainsFunc(r.placed(), func(p placed) bool { return p.Name() == j.Name() }) {
			text += " " + step
		}
	}
	if r.has("shelves") && r.made.shelf.loose {
		text += " Bore the rows for the shelf pins."
	}
	return "case", text + " Sand the inside faces; if they are finished now, keep the glue faces bare."
}

func (r *reckoner) frameStep() (unit, text string) {
	if r.made.frame == nil {
		return "", ""
	}
	how := r.made.frame.corner.Close(FrameCorner)
	which := "stiles and rails"
	if len(r.bays) > 1 {
		which = "stiles, mid stiles and rails"
	}
	first := ""
	if r.midRails() > 0 {
		first = ", its mid rails first"
	}
	text = fmt.Sprintf("Dry-fit, then glue %s of the front frame%s, then of the back frame, %s, flat on the bench; make both diagonals equal.", which, first, how)
	if r.made.back.inGrooves() {
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
	return r.made.back.fit != "none" && !r.made.back.inGrooves()
}

// closedIn reports whether the back must be in its grooves before the carcass is
// closed.
func (r *reckoner) closedIn() bool { return r.made.back.inGrooves() && r.made.frame == nil }

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
	joint := r.made.corner.Close(CarcassCorner)
	if in := r.within(); in != nil {
		text = "Fix " + and(in) + " first, from the middle outwards, working fast or with a slow glue. "
	}
	if r.closedIn() {
		text += "Slide the back into its groove, without glue, before the last panel closes it. "
	}
	text += "Glue the sides " + into + ", " + joint + "."
	if r.hasRole("hanging rail") {
		text += " Glue and screw the hanging rails between them, and the upper one to the top too: they carry the case."
	}
	return "carcass", text
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
