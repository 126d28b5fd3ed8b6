package strip

import (
	"fmt"
	"slices"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

func some(n int) []Card {
	var cards []Card
	for i := range n {
		c := Card{Number: fmt.Sprint(i + 1), Guide: "fence", Setting: "167.5", Lines: []Line{
			{Ways: []string{"piece from 1: 1509 x 827.8", "from 1: 1509 x 827.8"}},
			{Ways: []string{"3 x A drawer side of a long name, 600 x 167.5", "3 x A, 600 x 167.5"}, Bold: true},
		}}
		c.Piece = Piece{Length: 1509, Width: 827.8, Cuts: []Cut{
			{Along: cutplan.Rip, At: 167.5, Waste: cutplan.Far, Guided: true}, {Along: cutplan.Rip, At: 338, Waste: cutplan.Far},
		}, Zones: []Zone{{Area: drawing.Rect{W: 1509, H: 167.5}, Label: "A"}, {Area: drawing.Rect{Y: 338, W: 1509, H: 489.8}, Waste: true}}}
		cards = append(cards, c)
	}
	return cards
}

func TestAStripIsAsLargeAsItsRoomAllows(t *testing.T) {
	const width = 186.0
	cards := some(10)
	lowest := Lowest(cards, width)
	if len(lowest.Rows) >= len(cards) {
		t.Errorf("%d cards in %d rows", len(cards), len(lowest.Rows))
	}
	size := func(s Strip) float64 {
		for _, text := range s.Rows[0].Texts() {
			if text.String == "fence" {
				return text.Size
			}
		}
		return 0
	}
	if got := size(Fit(cards, width, 1000)); got != sizes[0] {
		t.Errorf("with all the room there is, words are %v pt", got)
	}
	if got := size(Fit(cards, width, lowest.Height)); got != leastSize {
		t.Errorf("in the least room words are %v pt", got)
	}
	for room := lowest.Height; room < 200; room += 7 {
		if s := Fit(cards, width, room); s.Height > room {
			t.Errorf("in %v mm the strip is %v mm high", room, s.Height)
		}
	}
}

// Cards follow one another from left to right and from the top down.
func TestCardsAreInOrder(t *testing.T) {
	for _, width := range []float64{60, 186, 273} {
		var numbers []string
		for _, row := range Lowest(some(11), width).Rows {
			if err := drawing.CheckLegible(row); err != nil {
				t.Errorf("%v mm: %v", width, err)
			}
			left := -1.0
			for _, text := range row.Texts() {
				if text.Reversed {
					numbers = append(numbers, text.String)
					if text.At.X <= left {
						t.Errorf("%v mm: %s stands left of the card before", width, text.String)
					}
					left = text.At.X
				}
			}
		}
		if want := []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11"}; !slices.Equal(numbers, want) {
			t.Errorf("%v mm: %q", width, numbers)
		}
	}
}

// A sliver between two cuts is drawn wide enough to be seen, and cuts stay in order.
func TestWhatLiesBetweenTwoCutsIsSeen(t *testing.T) {
	for _, cuts := range [][]float64{{5}, {5, 10, 15}, {2425, 2430, 2435}, {1200, 1203}} {
		a := newAxis(cuts, 2440, 18)
		last := 0.0
		for _, at := range append(cuts, 2440) {
			now := a.on(at)
			if now-last < leastSeen-1e-9 {
				t.Errorf("%v: %v is drawn %.2f mm from the cut before", cuts, at, now-last)
			}
			last = now
		}
		if last != 18 {
			t.Errorf("%v: the piece ends at %v", cuts, last)
		}
	}
}
