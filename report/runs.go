package report

import (
	"fmt"
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
		s.Guide != last.Guide || s.Off != last.Off || !alike(s.OffNode, last.OffNode) {
		return false
	}
	kind := single
	switch {
	case s.InHand == last.Number && s.Remainder && last.LeftNode == nil:
		kind = repeated
	case s.InHand != last.Number && s.Remainder == last.Remainder && s.Piece == last.Piece && s.Left == last.Left && s.Mark == last.Mark &&
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

func (r run) first() cutplan.Step { return r.steps[0] }
func (r run) last() cutplan.Step  { return r.steps[len(r.steps)-1] }

// numbers is "7", or "8–12".
func (r run) numbers() string {
	if len(r.steps) == 1 {
		return strconv.Itoa(r.first().Number)
	}
	return fmt.Sprintf("%d–%d", r.first().Number, r.last().Number)
}

// marks are where the cuts of the run are marked, in their order: one after
// another along one piece, or one mark for all of several pieces.
func (r run) marks(ruler stock.Ruler) string {
	return each(r.steps, func(s cutplan.Step) string { return ruler.Print(s.Mark) })
}

// setting is what fence or stop is set to, or where a breakdown cut is marked; of
// trim it is what falls off.
func (r run) setting(l cutplan.Layout, ruler stock.Ruler) string {
	switch s := r.first(); {
	case s.Trim:
		return ruler.Print(l.Stock.Trims().Least())
	case s.Breakdown():
		// From the piece in hand, as this row has it.
		return "mark " + each(r.steps, func(t cutplan.Step) string { return ruler.Print(t.Mark - s.Mark + s.Setting) })
	default:
		return ruler.Print(s.Setting)
	}
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
	case !s.Remainder && s.Level == 1:
		return "trimmed " + whole + " " + size
	case r.kind == parallel && s.Remainder:
		return fmt.Sprintf("rests of %s: %s each", sources(r.steps), size)
	case r.kind == parallel:
		return fmt.Sprintf("pieces from %s: %s each", sources(r.steps), size)
	case s.Remainder:
		return fmt.Sprintf("rest of %d: %s", s.InHand, size)
	}
	return fmt.Sprintf("piece from %d: %s", s.InHand, size)
}

// sources lists the cuts that freed the pieces: "8–12", "3, 5".
func sources(steps []cutplan.Step) string {
	numbers := make([]int, len(steps))
	for i, s := range steps {
		numbers[i] = s.InHand
	}
	return ranges(numbers)
}

// ranges writes numbers shortly, in their order: "3, 5–8".
func ranges(numbers []int) string {
	var said []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		if j-i < 2 {
			j = i
			said = append(said, strconv.Itoa(numbers[i]))
		} else {
			said = append(said, fmt.Sprintf("%d–%d", numbers[i], numbers[j]))
		}
		i = j + 1
	}
	return strings.Join(said, ", ")
}
