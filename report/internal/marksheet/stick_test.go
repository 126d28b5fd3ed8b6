package marksheet

import (
	"math"
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
		step := high - stickHead - 2*stickTab
		found := make(map[string]int) // by text, at its place
		total := 0
		for _, d := range s.Sticks(wide, high) {
			if err := drawing.CheckLegible(d); err != nil {
				t.Error(err)
			}
			for _, m := range d.Marks {
				l, ok := m.(drawing.Line)
				if ok && l.Pen == drawing.FineCut {
					found[""]++
					if l.To.X-l.From.X != stickTick || l.From.Y != l.To.Y {
						t.Errorf("a tick %v", l)
					}
				}
			}
		}
		for _, st := range s.sticks() {
			total += len(st.ticks)
			for _, m := range st.ticks {
				at := lengthOf(m.at, 1)
				n := math.Floor(at / step)
				y := high - stickTab - (at - n*step)
				drawn := false
				for _, d := range s.Sticks(wide, high) {
					for _, m := range d.Marks {
						l, ok := m.(drawing.Line)
						drawn = drawn || ok && l.Pen == drawing.FineCut && near(l.From.Y, y)
					}
				}
				if !drawn {
					t.Errorf("%s: no tick at %.2f of strip %v", st.title, y, n+1)
				}
			}
		}
		if found[""] != total {
			t.Errorf("%d ticks, want %d", found[""], total)
		}
		seen += total
	})
	if seen == 0 {
		t.Error("no stick")
	}
}

// A case without slides and pins has no stick; the tall chest has one for both sides, in strips
// whose joints are numbered.
func TestSticksOfTheTallChest(t *testing.T) {
	s := examples(t)["tall-chest.toml"]
	pages := s.Sticks(186, 235)
	if len(pages) != 1 || len(s.sticks()) != 1 {
		t.Fatalf("%d pages, %d sticks", len(pages), len(s.sticks()))
	}
	joints := 0
	for _, text := range pages[0].Texts() {
		if strings.HasPrefix(text.String, "join ") {
			joints++
		}
	}
	if joints != 6 { // 702 and a bit in strips of 207: four, joined at three lines
		t.Errorf("%d joining lines, want 6", joints)
	}
	if pages := (Subject{Case: &casework.Case{}}).Sticks(186, 235); pages != nil {
		t.Errorf("%d pages of nothing", len(pages))
	}
}

// The line to measure is as long as it says.
func TestTheLineToMeasure(t *testing.T) {
	for want, s := range map[float64]Subject{100: {}, 101.6: examples(t)["bookcase.toml"]} {
		l := s.Scale().Marks[0].(drawing.Line)
		if !near(l.To.X-l.From.X, want) {
			t.Errorf("%.2f mm long, want %.2f", l.To.X-l.From.X, want)
		}
	}
}
