package casework

import (
	"fmt"
	"slices"
)

// The steps until the joints of the carcass are closed.

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

func (r *reckoner) prepareStep() (unit, text string) {
	text = "Lay all pieces out by their marks and pencil front edge and inside on each."
	if cut := r.housed(); cut != nil {
		text += " Cut " + and(cut) + ", after a trial in scrap."
	}
	if notched := r.notched(); notched != nil {
		text += " Notch the front corners of " + and(notched) + " where edging runs past them."
	}
	if r.onDowels() {
		text += " Bore the holes for the dowels, with a jig or a stop for their depth."
	}
	if r.onTenons() {
		text += " Cut the mortises for the loose tenons, against a stop for their depth; round the edges of their strips to fit, then crosscut the tenons off."
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
	first := ""
	if r.midRails() > 0 {
		first = ", its mid rails first"
	}
	text = fmt.Sprintf("Dry-fit, then glue %s of the front frame%s, then of the back frame, %s, flat on the bench; make both diagonals equal.", which, first, how)
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
