package progress

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock/fault"
)

// recordGood records good blanks that no cut of the plan gave: "C", "C=2".
func (s *State) recordGood(text string) error {
	name, count, err := s.countedBlank(text)
	if err != nil {
		return err
	}
	open := func(b Blank) int { return b.Open }
	of, have, err := s.alike(name, count, open)
	switch {
	case err != nil:
		return err
	case have < count:
		b := s.bill[of[0]]
		if have == 0 {
			return fault.New(fmt.Sprintf("all of blank %s (%s) are good already", b.Mark, b.Part.Name), "report first which one is spoiled or lost")
		}
		return fault.New(fmt.Sprintf("only %d more of blank %s (%s) are wanted", have, b.Mark, b.Part.Name), "give a smaller number")
	}
	s.distribute(of, count, open, func(i, n int) { s.blanks[i].good += n })
	return nil
}

// recordLost records lost blanks: "C", "C=2", "C=2, grain width".
func (s *State) recordLost(text string) error {
	text, grain, err := s.grained(text)
	if err != nil {
		return err
	}
	name, count, err := s.countedBlank(text)
	if err != nil {
		return err
	}
	of, err := s.atHand(name, count)
	if err != nil {
		return err
	}
	if err := s.checkGrain(of, count, grain); err != nil {
		return err
	}
	for range count {
		i, _ := s.recordLoss(of, grain)
		s.blanks[i].lost++
		s.capBad(i)
		s.resolveLosses(of)
	}
	return nil
}

// capBad limits the bad parts to those that the remaining blanks hold: a blank that is
// gone took its bad parts along.
func (s *State) capBad(blank int) {
	b := s.Blanks()[blank]
	s.blanks[blank].bad = min(b.Bad, b.Good*b.Gang*b.Layers)
}

// alike finds the lines of the bill that share a mark. A name is first taken as a mark,
// then as a part. If a part has several kinds of blanks, the first kind with enough
// counts, else the first. have is the sum of number over its lines.
func (s *State) alike(name string, count int, number func(Blank) int) (of []int, have int, err error) {
	marked := slices.ContainsFunc(s.bill, func(b cutplan.Blank) bool { return strings.EqualFold(b.Mark, name) })
	all := s.Blanks()
	tried := map[string]bool{}
	for _, b := range all {
		if tried[b.Mark] || !strings.EqualFold(b.Mark, name) && (marked || !strings.EqualFold(b.Part.Name, name)) {
			continue
		}
		tried[b.Mark] = true
		lines, sum := s.lines(b.Mark), 0
		for _, i := range lines {
			sum += number(all[i])
		}
		if sum >= count {
			return lines, sum, nil
		}
		if of == nil {
			of, have = lines, sum
		}
	}
	if of == nil {
		var known []string
		for _, b := range s.bill {
			known = append(known, b.Part.Name)
		}
		return nil, 0, unknown("blank", name, known, "take a mark or a part of the plan")
	}
	return of, have, nil
}

// lines lists the indices of the lines with a mark: blanks of the plan, and equal blanks
// of earlier plans.
func (s *State) lines(mark string) []int {
	var all []int
	for i, b := range s.bill {
		if b.Mark == mark {
			all = append(all, i)
		}
	}
	return all
}

// distribute divides a count among lines of the bill, up to the number of each.
func (s *State) distribute(of []int, count int, number func(Blank) int, do func(line, n int)) {
	all := s.Blanks()
	for _, i := range of {
		if n := min(count, number(all[i])); n > 0 {
			do(i, n)
			count -= n
		}
	}
}

// atHand finds the lines of a blank with at least count good ones.
func (s *State) atHand(name string, count int) ([]int, error) {
	of, have, err := s.alike(name, count, func(b Blank) int { return b.Good })
	if err == nil && have < count {
		b := s.bill[of[0]]
		return nil, fault.New(fmt.Sprintf("of blank %s (%s) %d are cut and good", b.Mark, b.Part.Name, have), "say first which layout or cut gave it, with cut")
	}
	return of, err
}

// isName reports whether the whole text is a mark or a part. Names may contain the
// separators that follow a name.
func (s *State) isName(text string) bool {
	return slices.ContainsFunc(s.bill, func(b cutplan.Blank) bool {
		return strings.EqualFold(b.Mark, text) || strings.EqualFold(b.Part.Name, text)
	})
}

// countedBlank parses the name of a blank and a number, as counted does.
func (s *State) countedBlank(text string) (name string, count int, err error) {
	if name = strings.TrimSpace(text); s.isName(name) {
		return name, 1, nil
	}
	return counted(text)
}

// counted splits "C=2" into a name and a number; the number is 1 if it is left out.
func counted(text string) (name string, count int, err error) {
	name, number, some := cutLast(text, "=")
	if !some {
		return strings.TrimSpace(text), 1, nil
	}
	count, err = strconv.Atoi(strings.TrimSpace(number))
	if err != nil || count < 1 {
		return "", 0, fault.New(fmt.Sprintf("%q is no count", number), `give a whole number, as in "`+strings.TrimSpace(name)+`=2"`)
	}
	return strings.TrimSpace(name), count, nil
}

// cutLast is strings.Cut at the last separator: names may contain it too.
func cutLast(s, at string) (before, after string, found bool) {
	if i := strings.LastIndex(s, at); i >= 0 {
		return s[:i], s[i+len(at):], true
	}
	return s, "", false
}
