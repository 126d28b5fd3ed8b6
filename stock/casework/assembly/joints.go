package assembly

import (
	"fmt"
	"slices"

	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/joints"
)

// The steps until the joints of the carcass are closed.

func (r assembler) prepareStep() (unit, text string) {
	text = "Lay all pieces out by their marks and pencil front edge and inside on each."
	var cut []string
	seats := r.Built.Seats()
	for _, seat := range seats {
		if name := joints.FitOf(seat.Joint, seat.Site).Cut; name != "" && !slices.Contains(cut, name) {
			cut = append(cut, name)
		}
	}
	if cut != nil {
		text += " Cut " + wording.And(cut) + ", after a trial in scrap."
	}
	if notched := r.Notched(); notched != nil {
		text += " Notch the front corners of " + wording.And(notched) + " where edging runs past them."
	}
	for _, j := range joints.All {
		if step := j.Prepare(); step != "" && slices.ContainsFunc(seats, func(s joints.Seat) bool { return s.Joint.Name() == j.Name() }) {
			text += " " + step
		}
	}
	if r.has("shelves") && r.Built.Shelf.Loose {
		text += " Bore the rows for the shelf pins."
	}
	return "case", text + " Sand the inside faces; if they are finished now, keep the glue faces bare."
}

func (r assembler) frameStep() (unit, text string) {
	if r.Built.Frame == nil {
		return "", ""
	}
	how := joints.FitOf(r.Built.Frame.Corner, joints.FrameCorner).Close
	which := "stiles and rails"
	if len(r.Built.Bays) > 1 {
		which = "stiles, mid stiles and rails"
	}
	first := ""
	if r.Built.MidRails() > 0 {
		first = ", its mid rails first"
	}
	text = fmt.Sprintf("Dry-fit, then glue %s of the front frame%s, then of the back frame, %s, flat on the bench; make both diagonals equal.", which, first, how)
	if r.Built.Back.InGrooves() {
		text += " The back goes into the back frame's groove, without glue, before that is closed."
	}
	return "frames", text
}

func (r assembler) dryFitStep() (unit, text string) {
	text = "Dry-fit sides, top and bottom"
	if in := r.within(); in != nil {
		text += " with " + wording.And(in)
	}
	if r.closedIn() {
		text += ", the back in its groove"
	}
	return "carcass", text + ": every joint must close under light clamps and the corners be square. Take it apart again."
}

// backStaysOff reports whether the back is fixed only when the finish is dry.
func (r assembler) backStaysOff() bool {
	return r.Built.Back.Fit != "none" && !r.Built.Back.InGrooves()
}

// closedIn reports whether the back must be in its grooves before the carcass is
// closed.
func (r assembler) closedIn() bool {
	return r.Built.Back.InGrooves() && r.Built.Frame == nil
}

func (r assembler) glueStep() (unit, text string) {
	into := "to bottom and top"
	switch {
	case r.Built.TopOver && r.Built.BottomUnder:
		into = "between bottom and top"
	case r.Built.TopOver:
		into = "to the bottom, then the top on"
	case r.Built.BottomUnder:
		into = "on the bottom, then to the top"
	}
	joint := joints.FitOf(r.Built.Corner, joints.CarcassCorner).Close
	if in := r.within(); in != nil {
		text = "Fix " + wording.And(in) + " first, from the middle outwards, working fast or with a slow glue. "
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

func (r assembler) squareStep() (unit, text string) {
	if r.Built.Frame != nil {
		return "", ""
	}
	text = "Clamp on a flat floor and check the diagonals, front and behind: both must be equal"
	if r.backStaysOff() {
		text += "; the back, laid on dry, keeps them so"
	}
	return "carcass", text + ". Wipe off glue; leave it until the glue has set."
}

func (r assembler) joinFramesStep() (unit, text string) {
	if r.Built.Frame == nil {
		return "", ""
	}
	inset := "flush with the frames' outer edges"
	if in := r.Built.Frame.Inset; in > 0 {
		inset = r.In.Print(in) + " inside the frames' outer edges all round"
	}
	return "frames", "Glue the carcass to the back frame, then the front frame to the carcass, the panels " + inset +
		". Check the diagonals of both frames; leave it until the glue has set."
}
