package progress

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
)

// good notes blanks that are there though no cut of the plan gave them: "C", "C=2".
func (s *State) good(text string) error {
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
			return Wrong{fmt.Sprintf("all of blank %s (%s) are good already", b.Mark, b.Part.Name), "report first which one is spoiled or lost"}
		}
		return Wrong{fmt.Sprintf("only %d more of blank %s (%s) are wanted", have, b.Mark, b.Part.Name), "give a smaller number"}
	}
	s.distribute(of, count, open, func(i, n int) { s.blanks[i].good += n })
	return nil
}

// lose notes blanks that were cut and are not there: "C", "C=2", "C=2, grain width".
func (s *State) lose(text string) error {
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

// capBad counts no more bad parts than the blanks that are left hold: one that is gone took
// its own along.
func (s *State) capBad(blank int) {
	b := s.Blanks()[blank]
	s.blanks[blank].bad = min(b.Bad, b.Good*b.Gang*b.Layers)
}

// alike finds the lines of the bill that share a mark. A name is first taken as a mark,
// then as that of a part. If a part comes in several kinds of blanks, the first kind counts
// that has enough, else the first. The second result is the number that its lines have.
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

// lines lists, by index, the lines of the bill with a mark: blanks of the plan, and equal
// ones that earlier plans made.
func (s *State) lines(mark string) []int {
	var all []int
	for i, b := range s.bill {
		if b.Mark == mark {
			all = append(all, i)
		}
	}
	return all
}

// distribute deals a count out to lines of the bill, to each no more than the number it has.
func (s *State) distribute(of []int, count int, number func(Blank) int, do func(line, n int)) {
	all := s.Blanks()
	for _, i := range of {
		if n := min(count, number(all[i])); n > 0 {
			do(i, n)
			count -= n
		}
	}
}

// atHand finds the lines of a blank of which so many are there and good.
func (s *State) atHand(name string, count int) ([]int, error) {
	of, have, err := s.alike(name, count, func(b Blank) int { return b.Good })
	if err == nil && have < count {
		b := s.bill[of[0]]
		return nil, Wrong{fmt.Sprintf("of blank %s (%s) %d are cut and good", b.Mark, b.Part.Name, have), "say first which layout or cut gave it, with cut"}
	}
	return of, err
}

// isName reports whether the whole of what is said is a mark or a part: names may hold the
// signs that part a name from what follows.
func (s *State) isName(text string) bool {
	return slices.ContainsFunc(s.bill, func(b cutplan.Blank) bool {
		return strings.EqualFold(b.Mark, text) || strings.EqualFold(b.Part.Name, text)
	})
}

// countedBlank is counted, of blanks.
func (s *State) countedBlank(text string) (name string, count int, err error) {
	if name = strings.TrimSpace(text); s.isName(name) {
		return name, 1, nil
	}
	return counted(text)
}

// counted parts "C=2" into a name and a number; 1 where there is none.
func counted(text string) (name string, count int, err error) {
	name, number, some := cutLast(text, "=")
	if !some {
		return strings.TrimSpace(text), 1, nil
	}
	count, err = strconv.Atoi(strings.TrimSpace(number))
	if err != nil || count < 1 {
		return "", 0, Wrong{fmt.Sprintf("%q is no count", number), `give a whole number, as in "` + strings.TrimSpace(name) + `=2"`}
	}
	return strings.TrimSpace(name), count, nil
}

// cutLast is strings.Cut at the last place: names may hold the sign too.
func cutLast(s, at string) (before, after string, found bool) {
	if i := strings.LastIndex(s, at); i >= 0 {
		return s[:i], s[i+len(at):], true
	}
	return s, "", false
}
