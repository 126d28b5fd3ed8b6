package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// run is a row of the steps: one cut, or equal cuts that follow one another at
// one setting. They are made in one go, so they are read in one line.
type run struct {
	steps []cutplan.Step
	kind  runKind
}

type runKind int

const (
	single   runKind = iota
	repeated         // each cuts what the one before it left
	parallel         // each cuts a piece of its own, all alike
	trimming         // all that squares the stock
)

// runsOf gathers steps into runs.
func runsOf(steps []cutplan.Step) []run {
	var runs []run
	for _, s := range steps {
		if last := len(runs) - 1; last >= 0 && runs[last].takes(s) {
			runs[last].steps = append(runs[last].steps, s)
			continue
		}
		runs = append(runs, run{steps: []cutplan.Step{s}})
	}
	return runs
}

// takes reports whether s continues r, and settles what kind of run it is.
func (r *run) takes(s cutplan.Step) bool {
	last := r.steps[len(r.steps)-1]
	if s.Trim && last.Trim {
		r.kind = trimming
		return true
	}
	if s.Trim || last.Trim || s.Cut != last.Cut || s.Setting != last.Setting ||
		s.Breakdown != last.Breakdown || s.Off != last.Off || !alike(s.OffNode, last.OffNode) {
		return false
	}
	kind := single
	switch {
	case s.InHand == last.Number && s.Rest && last.LeftNode == nil:
		kind = repeated
	case s.InHand != last.Number && s.Rest == last.Rest && s.Piece == last.Piece && s.Left == last.Left && s.Mark == last.Mark &&
		alike(s.LeftNode, last.LeftNode):
		kind = parallel
	}
	if kind == single || r.kind != single && r.kind != kind {
		return false
	}
	r.kind = kind
	return true
}

// alike reports whether two pieces are told in the same words; their sizes are
// compared elsewhere.
func alike(a, b *cutplan.Node) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Use == b.Use && a.Blank == b.Blank && a.Turned == b.Turned
}

// breakdown reports whether any cut of the run is beyond the saw.
func (r run) breakdown() bool {
	return slices.ContainsFunc(r.steps, func(s cutplan.Step) bool { return s.Breakdown })
}

func (r run) first() cutplan.Step { return r.steps[0] }
func (r run) last() cutplan.Step  { return r.steps[len(r.steps)-1] }

// numbers is "7", or "8–12".
func (r run) numbers() string {
	if len(r.steps) == 1 {
		return strconv.Itoa(r.first().Number)
	}
	return fmt.Sprintf("%d–%d", r.first().Number, r.last().Number)
}

// marks are where the crosscuts of the run are marked, in their order: one after
// another along one piece, or one mark for all of several pieces. Rips and trim
// have none.
func (r run) marks(ruler stock.Ruler) string {
	if r.first().Cut == cutplan.Rip || r.first().Trim {
		return ""
	}
	var marks []string
	for _, s := range r.steps {
		if m := ruler.Print(s.Mark); !slices.Contains(marks, m) {
			marks = append(marks, m)
		}
	}
	return strings.Join(marks, ", ")
}

// times puts the count before what comes off, or is left, of each.
func (r run) times(what string) string {
	if len(r.steps) == 1 {
		return what
	}
	return fmt.Sprintf("%d x %s", len(r.steps), what)
}

// inHand names the piece or pieces that are cut, whole being the stock.
func (r run) inHand(whole string, ruler stock.Ruler) string {
	s := r.first()
	size := ruler.Size(s.Piece.Length, s.Piece.Width)
	switch {
	case s.InHand == 0:
		return "whole " + whole + " " + size
	case r.kind == parallel && s.Rest:
		return fmt.Sprintf("rests of %s: %s each", sources(r.steps), size)
	case r.kind == parallel:
		return fmt.Sprintf("pieces from %s: %s each", sources(r.steps), size)
	case s.Rest:
		return fmt.Sprintf("rest of %d: %s", s.InHand, size)
	}
	return fmt.Sprintf("piece from %d: %s", s.InHand, size)
}

// sources lists the cuts that freed the pieces: "8–12", "3, 5".
func sources(steps []cutplan.Step) string {
	var parts []string
	for i := 0; i < len(steps); {
		j := i
		for j+1 < len(steps) && steps[j+1].InHand == steps[j].InHand+1 {
			j++
		}
		switch {
		case j-i >= 2:
			parts = append(parts, fmt.Sprintf("%d–%d", steps[i].InHand, steps[j].InHand))
			i = j + 1
		default:
			parts = append(parts, strconv.Itoa(steps[i].InHand))
			i++
		}
	}
	return strings.Join(parts, ", ")
}
