package cutplan

import (
	"context"
	"slices"
	"testing"

	"sawbill/stock"
)

// TestStopsAreAllCrosscutsOfTheBoards plans random jobs and compares the stops
// with the steps of the layouts, one by one: the same settings, as often, and
// the pieces at a stop as long as it says.
func TestStopsAreAllCrosscutsOfTheBoards(t *testing.T) {
	boards := 0
	for seed := range uint64(60) {
		j := randomJob(seed)
		p, err := Make(context.Background(), j, Options{Iterations: 60})
		if err != nil {
			t.Fatal(err)
		}
		type cut struct {
			setting, width stock.Length
			layout         int
		}
		count := map[cut]int{}
		for i, l := range p.Layouts {
			for _, s := range p.Steps(l) {
				if l.Stock.Kind == stock.Board && s.Cut == Crosscut && !s.Trim {
					count[cut{s.Setting, s.Run, i}] += l.Repeat
					boards++
				}
			}
		}
		for _, stops := range p.Stops() {
			for _, s := range stops.Stops {
				for _, pieces := range s.Pieces {
					if pieces.Node.Length != s.Setting || !slices.IsSorted(pieces.Layouts) {
						t.Errorf("seed %d: %v at a stop of %v", seed, pieces, s.Setting)
					}
					left := pieces.Count
					for _, l := range pieces.Layouts {
						c := cut{s.Setting, pieces.Node.Width, l}
						took := min(left, count[c])
						count[c] -= took
						left -= took
					}
					if left != 0 {
						t.Errorf("seed %d: %d pieces too many at %v", seed, left, s.Setting)
					}
				}
			}
		}
		for c, n := range count {
			if n != 0 {
				t.Errorf("seed %d: %d cuts at %v are on no list", seed, n, c)
			}
		}
	}
	if boards == 0 {
		t.Error("no board was crosscut")
	}
}

func TestAStopIsSetOnceForAllBoards(t *testing.T) {
	part := func(length stock.Length) Node { return Node{Length: length * mm, Width: 90 * mm, Use: Part} }
	board := func(repeat int, lengths ...stock.Length) Layout {
		root := Node{Length: 2400 * mm, Width: 90 * mm, Use: Split, Cut: Crosscut}
		x := stock.Length(0)
		for _, l := range append(lengths, 0) {
			c := part(l)
			c.X = x
			if l == 0 {
				c.Length, c.Use = root.Length-x, Waste
			}
			root.Children = append(root.Children, c)
			x += c.Length + 3*mm
		}
		return Layout{Stock: stock.Stock{Kind: stock.Board, Material: "spruce", Length: root.Length, Width: root.Width}, Repeat: repeat, Root: root}
	}
	p := Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 3 * mm}},
		Layouts: []Layout{board(1, 900, 596, 596), board(2, 596, 596, 900), board(1, 900, 300)}}
	type row struct {
		setting stock.Length
		count   int
		layouts int
	}
	var got []row
	for _, s := range p.Stops()[0].Stops {
		got = append(got, row{s.Setting / mm, s.Pieces[0].Count, len(s.Pieces[0].Layouts)})
	}
	// The second board needs 900 after 596: its order is kept.
	want := []row{{900, 2, 2}, {596, 6, 2}, {900, 2, 1}, {300, 1, 1}}
	if !slices.Equal(got, want) {
		t.Errorf("stops %v, want %v", got, want)
	}
}
