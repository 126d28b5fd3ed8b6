package progress

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// Spoiled is a blank that was cut and is no good.
type Spoiled struct {
	Blank int // index into the state's bill
	// From is the source of the blank, reduced to the facts that still matter. Turned: its
	// length lies along the width of that stock.
	From   stock.Stock
	Turned bool
	// Known is false if the blank may have come from other stock, or lain another way.
	// From then holds only facts certain for every candidate.
	Known bool
	// Left is the usable size, along the blank's own length and width; zero if no size was
	// given. A thickness of 0 means the thickness of the stock.
	Left Size
}

// recordSpoiled records a spoiled blank: "C", "C=590 x 300 mm", "C=590 x 300 mm, grain
// width".
func (s *State) recordSpoiled(text string) error {
	text, grain, err := s.grained(text)
	if err != nil {
		return err
	}
	name, size, some := strings.TrimSpace(text), "", false
	if !s.isName(name) {
		name, size, some = cutLast(text, "=")
		if of, parts, counts := cutLast(text, ":"); counts && !(some && s.isName(strings.TrimSpace(name))) {
			return s.recordBadParts(strings.TrimSpace(of), parts)
		}
	}
	of, err := s.atHand(strings.TrimSpace(name), 1)
	if err != nil {
		return err
	}
	if err := s.checkGrain(of, 1, grain); err != nil {
		return err
	}
	sp := Spoiled{Blank: of[0]}
	if some {
		if sp.Left, err = s.size(size); err != nil {
			return err
		}
		if err := s.fits(sp, of, grain); err != nil {
			return err
		}
	}
	i, from := s.recordLoss(of, grain)
	sp.Blank, sp.From, sp.Turned, sp.Known = i, from.from, from.turned, from.known
	s.blanks[i].spoiled++
	s.capBad(i)
	s.resolveLosses(of)
	s.Spoiled = append(s.Spoiled, sp)
	return nil
}

// recordBadParts records bad parts in blanks that hold several.
func (s *State) recordBadParts(name, text string) error {
	count, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || count < 1 {
		return fault.New(fmt.Sprintf("%q is no count", text), `give a whole number of parts, as in "`+name+`:1"`)
	}
	of, err := s.atHand(name, 1)
	if err != nil {
		return err
	}
	b, left, all := s.bill[of[0]], 0, s.Blanks()
	sound := func(b Blank) int { return b.Good*b.Gang*b.Layers - b.Bad }
	for _, i := range of {
		left += sound(all[i])
	}
	switch {
	case b.Gang*b.Layers == 1:
		return fault.New(fmt.Sprintf("blank %s is one part", b.Mark), "say --spoiled "+b.Mark)
	case count > left:
		return fault.New(fmt.Sprintf("of the parts in blanks %s (%s) %d are good", b.Mark, b.Part.Name, left), "give a smaller number")
	}
	s.distribute(of, count, sound, func(i, n int) { s.blanks[i].bad += n })
	return nil
}

// size parses "590 x 300 mm", with an optional thickness. A unit at the end applies to all
// lengths.
func (s *State) size(text string) (Size, error) {
	units := s.plan.Job.Units
	words := strings.Split(strings.ReplaceAll(text, "×", "x"), "x")
	if len(words) < 2 || len(words) > 3 {
		return Size{}, fault.New(fmt.Sprintf("%q is no size", strings.TrimSpace(text)), `write a length and a width, as in "590 x 300 mm"`)
	}
	last := strings.TrimSpace(words[len(words)-1])
	for _, u := range []stock.Units{stock.Millimeters, stock.Inches} {
		if strings.HasSuffix(last, u.String()) {
			units = u
		}
	}
	var read [3]stock.Length
	for i, w := range words {
		l, err := stock.ParseLength(strings.TrimSpace(w), units)
		if err != nil {
			return Size{}, fault.New(fmt.Sprintf("%q is no length (%v)", strings.TrimSpace(w), err), `write a length and a width, as in "590 x 300 mm"`)
		}
		if l <= 0 {
			return Size{}, fault.New(fmt.Sprintf("a size of %q makes no sense", strings.TrimSpace(text)), "say what can still be used")
		}
		read[i] = l
	}
	return Size{read[0], read[1], read[2]}, nil
}

// fits checks that the usable size of a blank does not exceed the blank.
func (s *State) fits(sp Spoiled, of []int, grain *stock.Grain) error {
	b, ruler := s.bill[sp.Blank], stock.Ruler{Units: s.plan.Job.Units}
	thickest := stock.Length(0)
	for _, l := range s.lots(of) {
		if l.count > 0 && l.mayRun(grain) {
			thickest = max(thickest, l.from.Thickness)
		}
	}
	if sp.Left.Length > b.Length || sp.Left.Width > b.Width || sp.Left.Thickness > thickest {
		return fault.New(fmt.Sprintf("blank %s is %s and cannot be larger when spoiled", b.Mark, ruler.Size(b.Length, b.Width)),
			"say what can still be used of it, its length first")
	}
	return nil
}
