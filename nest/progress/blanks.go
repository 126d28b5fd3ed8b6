package progress

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
)

// good notes blanks that are there though no cut of the plan gave them: "C", "C=2".
func (s *State) good(said string) error {
	name, count, err := s.countedBlank(said)
	if err != nil {
		return err
	}
	i, err := s.blank(name, func(b Blank) bool { return b.Open >= count })
	if err == errShort {
		b := s.Blanks()[i]
		return Wrong{fmt.Sprintf("of blank %s (%s) only %d more are wanted", b.Mark, b.Part.Name, b.Open), "give a smaller number"}
	}
	if err == nil {
		s.blanks[i].good += count
	}
	return err
}

// lose notes blanks that were cut and are not there: "C", "C=2".
func (s *State) lose(said string) error {
	name, count, err := s.countedBlank(said)
	if err != nil {
		return err
	}
	i, err := s.atHand(name, count)
	if err == nil {
		s.blanks[i].lost += count
		s.bad(i)
	}
	return err
}

// bad counts no more bad parts than the blanks that are left hold: one that is gone took
// its own along.
func (s *State) bad(blank int) {
	b := s.Blanks()[blank]
	s.blanks[blank].bad = min(b.Bad, b.Good*b.Gang*b.Layers)
}

// blank finds a blank by its mark, or else by its part's name: no two share a mark, but a
// part may be called as another is marked. Of a part in several kinds of
// blanks it is the first that has what is asked for; errShort and the first of all where
// none has.
func (s *State) blank(name string, has func(Blank) bool) (int, error) {
	found := -1
	marked := slices.ContainsFunc(s.bill, func(b cutplan.Blank) bool { return strings.EqualFold(b.Mark, name) })
	for i, b := range s.Blanks() {
		if strings.EqualFold(b.Mark, name) || !marked && strings.EqualFold(b.Part.Name, name) {
			if has(b) {
				return i, nil
			}
			if found < 0 {
				found = i
			}
		}
	}
	if found >= 0 {
		return found, errShort
	}
	var known []string
	for _, b := range s.bill {
		known = append(known, b.Part.Name)
	}
	return 0, unknown("blank", name, known, "take a mark or a part of the plan")
}

var errShort = errors.New("fewer than asked for")

// atHand finds a blank of which so many are there and good.
func (s *State) atHand(name string, count int) (int, error) {
	i, err := s.blank(name, func(b Blank) bool { return b.Good >= count })
	if err == errShort {
		b := s.Blanks()[i]
		return 0, Wrong{fmt.Sprintf("of blank %s (%s) %d are cut and good", b.Mark, b.Part.Name, b.Good), "say first which layout or cut gave it, with cut"}
	}
	return i, err
}

// names reports whether the whole of what is said is a mark or a part: names may hold the
// signs that part a name from what follows.
func (s *State) names(said string) bool {
	return slices.ContainsFunc(s.bill, func(b cutplan.Blank) bool {
		return strings.EqualFold(b.Mark, said) || strings.EqualFold(b.Part.Name, said)
	})
}

// countedBlank is counted, of blanks.
func (s *State) countedBlank(said string) (name string, count int, err error) {
	if name = strings.TrimSpace(said); s.names(name) {
		return name, 1, nil
	}
	return counted(said)
}

// counted parts "C=2" into a name and a number; 1 where there is none.
func counted(said string) (name string, count int, err error) {
	name, number, some := cutLast(said, "=")
	if !some {
		return strings.TrimSpace(said), 1, nil
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
