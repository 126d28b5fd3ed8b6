package marksheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock/casework"
)

// On the strips of a stick, put together at their joining lines, every slide and every pin is
// as far from the end as its figure says, in full size. No text is struck, and none leaves
// the paper.
func TestSticksAreAtFullSize(t *testing.T) {
	seen := 0
	everySubject(t, func(t *testing.T, s Subject) {
		const wide, high = 186.0, 235.0
		step := s.stickStep(high)
		pages := s.Sticks(wide, high).Pages
		var drawn []float64 // where ticks lie
		for _, d := range pages {
			if err := drawing.CheckLegible(d); err != nil {
				t.Error(err)
			}
			for _, m := range d.Marks {
				l, ok := m.(drawing.Line)
				if ok && l.Pen == drawing.FineCut {
					drawn = append(drawn, l.From.Y)
					if l.To.X-l.From.X != stickTick || l.From.Y != l.To.Y {
						t.Errorf("a tick %v", l)
					}
				}
			}
		}
		total := 0
		for _, st := range s.sticks() {
			total += len(st.ticks)
			for _, m := range st.ticks {
				at := lengthOf(m.at, 1)
				n := math.Floor(at / step)
				y := high - stickTab - (at - n*step)
				if !slices.ContainsFunc(drawn, func(of float64) bool { return near(of, y) }) {
					t.Errorf("%s: no tick at %.2f of strip %v", st.title, y, n+1)
				}
			}
		}
		if len(drawn) != total {
			t.Errorf("%d ticks, want %d", len(drawn), total)
		}
		seen += total
	})
	if seen == 0 {
		t.Error("no stick")
	}
}

// Each joining number stands on two strips, whichever stick they are of, so that strips cannot
// be mixed up once they are cut out.
func TestJoiningNumbersStandOnTwoStrips(t *testing.T) {
	most := 0
	everySubject(t, func(t *testing.T, s Subject) {
		told := make(map[string]int)
		for _, d := range s.Sticks(186, 235).Pages {
			for _, text := range d.Texts() {
				if strings.HasPrefix(text.String, "join ") {
					told[text.String]++
				}
			}
		}
		for number, n := range told {
			if n != 2 {
				t.Errorf("%s stands on %d strips", number, n)
			}
		}
		most = max(most, len(s.sticks()))
	})
	if most < 2 {
		t.Error("no case has two sticks")
	}
}

// A case without slides and pins has no stick; the tall chest has one for both sides: 702 mm
// and a bit in strips of 220 are four, joined at three lines.
func TestSticksOfTheTallChest(t *testing.T) {
	s := examples(t)["tall-chest.toml"]
	pages := s.Sticks(186, 235).Pages
	if len(pages) != 1 || len(s.sticks()) != 1 {
		t.Fatalf("%d pages, %d sticks", len(pages), len(s.sticks()))
	}
	joints, names := 0, 0
	for _, text := range pages[0].Texts() {
		switch {
		case strings.HasPrefix(text.String, "join "):
			joints++
		case strings.HasPrefix(text.String, "A: side"):
			names++
		}
	}
	if joints != 6 || names != 4 {
		t.Errorf("%d joining lines, want 6; %d names, want one on each of 4 strips", joints, names)
	}
	if all := (Subject{Case: &casework.Case{}}).Sticks(186, 235); all.Pages != nil {
		t.Errorf("%d pages of nothing", len(all.Pages))
	}
}
