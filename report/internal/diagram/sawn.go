package diagram

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// sawn tells which step makes which cut of a layout.
type sawn struct {
	numbers map[locus]int
	steps   []cutplan.Step
}

// locus is where a cut lies; no two cuts of a layout share all four.
type locus struct {
	cut       cutplan.Cut
	x, y, run stock.Length
}

func sawnBy(steps []cutplan.Step) sawn {
	s := sawn{numbers: map[locus]int{}, steps: steps}
	for _, st := range steps {
		if !st.Trim {
			s.numbers[locus{st.Cut, st.X, st.Y, st.Run}] = st.Number
		}
	}
	return s
}

// cut is the step that frees child i of n, 0 where none is needed: the last
// child remains when all others are off.
func (s sawn) cut(n cutplan.Node, i int) int {
	c := n.Children[i]
	if n.Cut == cutplan.Rip {
		return s.numbers[locus{cutplan.Rip, n.X, c.Y + c.Width, n.Length}]
	}
	return s.numbers[locus{cutplan.Crosscut, c.X + c.Length, n.Y, n.Width}]
}

// source names child i of n as the steps do.
func (s sawn) source(n cutplan.Node, i int) source {
	if number := s.cut(n, i); number > 0 || i == 0 {
		return source{number: number}
	}
	return source{s.cut(n, i-1), true}
}

// inside counts the cuts that divide n.
func (s sawn) inside(n cutplan.Node) int {
	count := 0
	for i, c := range n.Children {
		if s.cut(n, i) > 0 {
			count++
		}
		count += s.inside(c)
	}
	return count
}

// parting is one line of cuts: the same one in each of several equal pieces.
type parting struct {
	step    cutplan.Step // in the first of them
	numbers []int        // ascending
	edge    bool         // that is where the drawn piece begins
}

// partings lists the cuts that divide equal pieces, split by split; closed
// children of the first are left out. at is where the drawn piece begins.
func (s sawn) partings(equal []cutplan.Node, at stock.Length, closed func(cutplan.Node) bool) [][]parting {
	first := equal[0]
	if first.Use != cutplan.Split || closed(first) {
		return nil
	}
	var own []parting
	var below [][]parting
	for i := range first.Children {
		p := parting{edge: first.X == at}
		for _, n := range equal {
			if number := s.cut(n, i); number > 0 {
				p.numbers = append(p.numbers, number)
			}
		}
		if len(p.numbers) > 0 {
			p.step = s.steps[p.numbers[0]-1]
			slices.Sort(p.numbers)
			own = append(own, p)
		}
		children := make([]cutplan.Node, len(equal))
		for j, n := range equal {
			children[j] = n.Children[i]
		}
		below = append(below, s.partings(children, at, closed)...)
	}
	if own == nil {
		return below
	}
	return append([][]parting{own}, below...)
}

// same reports whether two pieces are divided alike, wherever they lie.
func same(a, b cutplan.Node) bool {
	if a.Length != b.Length || a.Width != b.Width || a.Use != b.Use || a.Cut != b.Cut ||
		a.Blank != b.Blank || a.Turned != b.Turned || len(a.Children) != len(b.Children) {
		return false
	}
	for i := range a.Children {
		if !same(a.Children[i], b.Children[i]) {
			return false
		}
	}
	return true
}

// ranges writes numbers shortly, "3, 5–7": so many in a row at least make a range.
func ranges(numbers []int, least int) string {
	numbers = slices.Compact(slices.Sorted(slices.Values(numbers)))
	var said []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		if j-i+1 < least {
			said = append(said, strconv.Itoa(numbers[i]))
			i++
			continue
		}
		said = append(said, fmt.Sprintf("%d–%d", numbers[i], numbers[j]))
		i = j + 1
	}
	return strings.Join(said, ", ")
}
