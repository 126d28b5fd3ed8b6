package progress

import (
	"fmt"
	"sawbill/stock/fault"
	"slices"
	"strconv"
	"strings"
)

// recordCut records cuts: "2", "2/1", "2:3-7", "2/1:3".
func (s *State) recordCut(text string) error {
	where, which, some := strings.Cut(text, ":")
	layoutText, copyText, one := strings.Cut(where, "/")
	layout, err := within(layoutText, len(s.copies), "layout", "")
	if err != nil {
		return err
	}
	of := fmt.Sprintf(" in layout %d", layout)
	layout--
	chosen := s.presentStock(layout)
	if one {
		copy, err := within(copyText, len(s.copies[layout]), s.plan.Layouts[layout].Stock.Kind.String(), of)
		if err != nil {
			return err
		}
		if c := s.copies[layout][copy-1]; c.begun() || s.uncutPiece(layout).Stock.Count > 0 {
			chosen = []*copied{c}
		} else {
			chosen = nil
		}
	}
	if len(chosen) == 0 {
		return fault.New(fmt.Sprintf("what layout %d cuts was said to be missing, or to have another size", layout+1), "take that back with undo if it is there as planned")
	}
	steps := s.steps[layout]
	from, to := 1, len(steps)
	if some {
		if from, to, err = span(which, len(steps), of); err != nil {
			return err
		}
	}
	before := make([]copied, len(chosen))
	for i, c := range chosen {
		before[i] = copied{c.inHand, slices.Clone(c.made)}
		c.inHand = true
		for n := from; n <= to; n++ {
			c.make(steps, n)
		}
	}
	if err := s.checkRemeasured(); err != nil {
		for i, c := range chosen {
			*c = before[i]
		}
		return err
	}
	return nil
}

// presentStock returns a layout's pieces of stock without those that were missing.
func (s *State) presentStock(layout int) []*copied {
	var all []*copied
	for _, copy := range s.presentCopies(layout) {
		all = append(all, s.copies[layout][copy])
	}
	return all
}

// span parses "3" or "3-7".
func span(text string, most int, of string) (from, to int, err error) {
	begin, end, several := strings.Cut(text, "-")
	if from, err = within(begin, most, "cut", of); err != nil {
		return 0, 0, err
	}
	if to = from; several {
		if to, err = within(end, most, "cut", of); err != nil {
			return 0, 0, err
		}
	}
	if from > to {
		return 0, 0, fault.New(fmt.Sprintf("cut %d comes after cut %d", from, to), fmt.Sprintf("write %d-%d", to, from))
	}
	return from, to, nil
}

// within parses a number from 1 to most of a thing.
func within(text string, most int, thing, of string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err == nil && n >= 1 && n <= most {
		return n, nil
	}
	available := fmt.Sprintf("there are %d", most)
	switch most {
	case 0:
		available = "none is needed"
	case 1:
		available = "there is one"
	}
	return 0, fault.New(fmt.Sprintf("there is no %s %q%s", thing, strings.TrimSpace(text), of), available)
}
