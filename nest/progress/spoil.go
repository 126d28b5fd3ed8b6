package progress

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// spoil notes a blank that is no good: "C", "C=590 x 300 mm".
func (s *State) spoil(said string) error {
	name, size, some := strings.TrimSpace(said), "", false
	if !s.names(name) {
		name, size, some = cutLast(said, "=")
		if of, parts, counts := cutLast(said, ":"); counts && !(some && s.names(strings.TrimSpace(name))) {
			return s.spoilParts(strings.TrimSpace(of), parts)
		}
	}
	i, err := s.atHand(strings.TrimSpace(name), 1)
	if err != nil {
		return err
	}
	sp := Spoiled{Blank: i}
	sp.From, sp.Turned = s.source(i)
	if some {
		if sp.Left, err = s.size(size); err != nil {
			return err
		}
		if err := s.fits(sp); err != nil {
			return err
		}
	}
	s.blanks[i].spoiled++
	s.bad(i)
	s.Spoiled = append(s.Spoiled, sp)
	return nil
}

// spoilParts notes parts that are no good, of those in blanks that hold several.
func (s *State) spoilParts(name, said string) error {
	count, err := strconv.Atoi(strings.TrimSpace(said))
	if err != nil || count < 1 {
		return Wrong{fmt.Sprintf("%q is no count", said), `give a whole number of parts, as in "` + name + `:1"`}
	}
	i, err := s.atHand(name, 1)
	if err != nil {
		return err
	}
	b := s.Blanks()[i]
	switch each := b.Gang * b.Layers; {
	case each == 1:
		return Wrong{fmt.Sprintf("blank %s is one part", b.Mark), "say --spoiled " + b.Mark}
	case count > b.Good*each-b.Bad:
		return Wrong{fmt.Sprintf("of the parts in blanks %s (%s) %d are good", b.Mark, b.Part.Name, b.Good*each-b.Bad), "give a smaller number"}
	}
	s.blanks[i].bad += count
	return nil
}

// source is the stock of a blank that was cut, and how it lay in it: of several, that of
// the first layout.
func (s *State) source(blank int) (from stock.Stock, turned bool) {
	found := false
	s.eachCopy(func(layout, copy int) {
		if found {
			return
		}
		for _, l := range s.apart(layout, copy) {
			if l.Freed && l.Root.Use == cutplan.Part && l.Root.Blank == blank {
				from, turned, found = s.plan.Layouts[layout].Stock, l.Root.Turned, true
			}
		}
	})
	if !found { // good, though no cut of the plan gave it
		b := s.bill[blank]
		from = stock.Stock{Kind: s.plan.Job.KindOf(b.Part.Material), Material: b.Part.Material, Thickness: b.Thickness, Grain: b.Part.Grain}
	}
	return from, turned
}

// size reads "590 x 300 mm", with a thickness behind or not; a unit at the end is that of
// all.
func (s *State) size(said string) (Size, error) {
	units := s.plan.Job.Units
	words := strings.Split(strings.ReplaceAll(said, "×", "x"), "x")
	if len(words) < 2 || len(words) > 3 {
		return Size{}, Wrong{fmt.Sprintf("%q is no size", strings.TrimSpace(said)), `write a length and a width, as in "590 x 300 mm"`}
	}
	last := strings.TrimSpace(words[len(words)-1])
	for _, u := range []stock.Units{stock.Millimetres, stock.Inches} {
		if strings.HasSuffix(last, u.String()) {
			units = u
		}
	}
	var read [3]stock.Length
	for i, w := range words {
		l, err := stock.ParseLength(strings.TrimSpace(w), units)
		if err != nil {
			return Size{}, Wrong{fmt.Sprintf("%q is no length (%v)", strings.TrimSpace(w), err), `write a length and a width, as in "590 x 300 mm"`}
		}
		if l <= 0 {
			return Size{}, Wrong{fmt.Sprintf("a size of %q makes no sense", strings.TrimSpace(said)), "say what can still be used"}
		}
		read[i] = l
	}
	return Size{read[0], read[1], read[2]}, nil
}

// fits checks that what is left of a blank is no larger than it was.
func (s *State) fits(sp Spoiled) error {
	b, ruler := s.bill[sp.Blank], stock.Ruler{Units: s.plan.Job.Units}
	if sp.Left.Length > b.Length || sp.Left.Width > b.Width || sp.Left.Thickness > sp.From.Thickness {
		return Wrong{fmt.Sprintf("blank %s is %s and cannot be larger when spoiled", b.Mark, ruler.Size(b.Length, b.Width)),
			"say what can still be used of it, its length first"}
	}
	return nil
}
