package cutplan

import (
	"context"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
)

// TestSetupsSawEveryPiece plans random jobs and works through the setups in order. Every
// cut must find its piece on the bench, and come off at the setting. The pieces in the end
// must be those of every layout, no more and no less.
func TestSetupsSawEveryPiece(t *testing.T) {
	apart, gathered := 0, 0
	for seed := range uint64(120) {
		j := randomJob(seed)
		p, err := Make(context.Background(), j, Options{Iterations: 60})
		if err != nil {
			t.Fatal(err)
		}
		var benches []bench
		for _, l := range p.Layouts {
			benches = append(benches, newBench(l, j.Saw.Kerf))
		}
		for _, g := range p.Setups() {
			round := 0
			for _, setup := range g.Setups {
				if setup.Round < round {
					t.Fatalf("seed %d: round %d after round %d", seed, setup.Round, round)
				}
				round = setup.Round
				for _, c := range setup.Cuts {
					l := p.Layouts[c.Layout]
					if l.Stock.Material != g.Material || l.Stock.Thickness != g.Thickness || c.Step.Level != round {
						t.Errorf("seed %d: %v is not in its place", seed, c)
					}
					if !setup.Trim && (c.Step.Setting != setup.Setting || c.Step.Guide != setup.Guide) {
						t.Errorf("seed %d: a cut of %v by the %v at a setting of %v by the %v",
							seed, c.Step.Setting, c.Step.Guide, setup.Setting, setup.Guide)
					}
					benches[c.Layout].cut(t, c.Step)
				}
			}
		}
		for i, l := range p.Layouts {
			var want []Size
			for _, n := range l.Leaves() {
				want = append(want, Size{n.Length, n.Width})
			}
			if d := cmp.Diff(sorted(want), sorted(benches[i].left())); d != "" {
				t.Fatalf("seed %d, layout %d (-planned +sawn):\n%s", seed, i, d)
			}
		}
		a, g := p.Settings()
		apart, gathered = apart+a, gathered+g
	}
	if 10*gathered > 9*apart { // few sizes of a random job are equal
		t.Errorf("%d settings for %d layout by layout: little is gathered", gathered, apart)
	}
}

// boardCutAt is a board crosscut at the given lengths; the remainder is waste.
func boardCutAt(repeat int, lengths ...stock.Length) Layout {
	root := Node{Length: 2400 * mm, Width: 90 * mm, Use: Split, Cut: Crosscut}
	x := stock.Length(0)
	for _, l := range lengths {
		root.Children = append(root.Children, Node{X: x, Length: l * mm, Width: 90 * mm, Use: Part})
		x += (l + 3) * mm
	}
	root.Children = append(root.Children, Node{X: x, Length: root.Length - x, Width: 90 * mm, Use: Waste})
	return Layout{Stock: stock.Stock{Kind: stock.Board, Material: "spruce", Length: root.Length, Width: root.Width}, Repeat: repeat, Root: root}
}

func TestASettingServesAllLayoutsThatAreReady(t *testing.T) {
	p := Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 3 * mm}}, Bill: make([]Blank, 1),
		Layouts: []Layout{boardCutAt(1, 900, 596, 596), boardCutAt(2, 596, 596, 900), boardCutAt(1, 300, 900)}}
	type row struct {
		setting stock.Length
		cuts    int
		layouts int
	}
	var got []row
	for _, s := range p.Setups()[0].Setups {
		var layouts []int
		for _, c := range s.Cuts {
			layouts = append(layouts, c.Layout)
		}
		slices.Sort(layouts)
		got = append(got, row{s.Setting / mm, len(s.Cuts), len(slices.Compact(layouts))})
	}
	// The third board's 900 waits behind 300, which goes first. The second needs
	// 900 after 596: its order is kept.
	want := []row{{300, 1, 1}, {900, 2, 2}, {596, 4, 2}, {900, 1, 1}}
	if !slices.Equal(got, want) {
		t.Errorf("setups %v, want %v", got, want)
	}
	if apart, gathered := p.Settings(); apart != 5 || gathered != 4 {
		t.Errorf("%d settings layout by layout and %d gathered, want 5 and 4", apart, gathered)
	}
}

func TestTheGuideSuitsThePieceAndTheSaw(t *testing.T) {
	step := func(c Cut, length, width, setting stock.Length) Step {
		s := Step{Cut: c, Piece: Size{length * mm, width * mm}, Setting: setting * mm, Run: length * mm}
		if c == Crosscut {
			s.Run = width * mm
		}
		return s
	}
	tests := []struct {
		reason        string
		rip, crosscut stock.Length // capacities
		step          Step
		want          Guide
	}{
		{"a rip within reach", 760, 600, step(Rip, 2440, 1220, 700), Fence},
		{"a rip beyond it", 760, 600, step(Rip, 2440, 1220, 800), Marked},
		{"no fence's reach was given", 0, 0, step(Rip, 2440, 1220, 800), Fence},
		{"a long narrow piece", 760, 600, step(Crosscut, 2440, 90, 800), Stop},
		{"a panel too wide to cross", 760, 600, step(Crosscut, 1800, 900, 500), Marked},
		{"too wide to cross, but long enough for the fence", 760, 600, step(Crosscut, 850, 900, 500), Fence},
		{"likewise, beyond the fence", 400, 600, step(Crosscut, 850, 900, 500), Marked},
		{"a rip of a short wide piece", 760, 600, step(Rip, 300, 900, 500), Stop},
		{"a rip of a short wide piece that is too wide to cross", 760, 200, step(Rip, 300, 900, 500), Marked},
		{"a square piece", 760, 600, step(Rip, 600, 600, 100), Fence},
	}
	for _, tt := range tests {
		w := work{saw: stock.Saw{RipCapacity: tt.rip * mm, CrosscutCapacity: tt.crosscut * mm}}
		if got := w.guide(tt.step); got != tt.want {
			t.Errorf("%s: by the %v, want the %v", tt.reason, got, tt.want)
		}
	}
}

// Along one piece marks count every kerf before them, and the first is its setting.
func TestMarksAreMeasuredFromThePieceAsItCameToHand(t *testing.T) {
	l := boardCutAt(1, 900, 596, 596)
	p := Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 3 * mm}}, Bill: make([]Blank, 1), Layouts: []Layout{l}}
	var got []stock.Length
	for _, s := range p.Steps(l) {
		got = append(got, s.Mark/mm)
	}
	if want := []stock.Length{900, 1499, 2098}; !slices.Equal(got, want) {
		t.Errorf("marks at %v, want %v", got, want)
	}
}

// Every edge that milling trues is on the list once, at its setting, first edges
// before second ones.
func TestTruingsAreTheEdgesOfAllBlanks(t *testing.T) {
	trued := 0
	for seed := range uint64(40) {
		p, err := Make(context.Background(), randomJob(seed), Options{Iterations: 60})
		if err != nil {
			t.Fatal(err)
		}
		cut := make([]int, len(p.Bill))
		for _, l := range p.Layouts {
			for _, n := range l.Leaves() {
				if n.Use == Part {
					cut[n.Blank] += l.Repeat
				}
			}
		}
		width := make([]stock.Length, len(p.Bill))
		for i, b := range p.Bill {
			width[i] = b.Width
		}
		edge := 1
		for _, s := range p.Truings() {
			if s.Edge < edge {
				t.Errorf("seed %d: edge %d after edge %d", seed, s.Edge, edge)
			}
			edge = s.Edge
			for _, b := range s.Blanks {
				if b.Count != cut[b.Blank] || width[b.Blank] != s.Setting+s.Off {
					t.Errorf("seed %d: %d of %q, now %v wide, trued by %v to %v", seed, b.Count, p.Bill[b.Blank].Mark, width[b.Blank], s.Off, s.Setting)
				}
				width[b.Blank] = s.Setting
				trued++
			}
		}
		for i, b := range p.Bill {
			if cut[i] > 0 && width[i] != b.Part.Width {
				t.Errorf("seed %d: %q is %v wide in the end, want %v", seed, b.Mark, width[i], b.Part.Width)
			}
		}
	}
	if trued == 0 {
		t.Error("no edge was trued")
	}
}

func TestOffcutsAreNumberedThroughThePlan(t *testing.T) {
	for seed := range uint64(20) {
		p, err := Make(context.Background(), randomJob(seed), Options{Iterations: 60})
		if err != nil {
			t.Fatal(err)
		}
		next := 1
		for _, k := range p.Offcuts() {
			if k.First != next || k.Count != p.Layouts[k.Layout].Repeat || k.Node.Use != Offcut {
				t.Errorf("seed %d: %+v, want it numbered from %d", seed, k, next)
			}
			next += k.Count
		}
		kept := 1
		for _, l := range p.Layouts {
			for _, n := range l.Leaves() {
				if n.Use == Offcut {
					kept += l.Repeat
				}
			}
		}
		if next != kept {
			t.Errorf("seed %d: numbered up to %d of %d", seed, next-1, kept-1)
		}
	}
}

// Stock that waits for the dry fit is cut at settings of its own.
func TestLateStockHasSetupsOfItsOwn(t *testing.T) {
	p := Plan{Bill: make([]Blank, 2), Layouts: []Layout{boardCutAt(1, 900), boardCutAt(1, 900)}}
	p.Bill[1].Part.DryFit = true
	p.Layouts[1].Root.Children[0].Blank = 1
	var late []bool
	for _, g := range p.Setups() {
		late = append(late, g.Late)
	}
	if want := []bool{false, true}; !slices.Equal(late, want) {
		t.Errorf("late: %v, want %v", late, want)
	}
}

// A wide piece, 720 long, gives strips at the stop while it is wider than long. The
// remainder runs along the fence, since a strip 60 wide cannot be held across the saw.
// 1230 less 403 and 403 leaves 424, less 63 at each strip.
func TestWhatIsNoLongerWideGoesBackToTheFence(t *testing.T) {
	root := Node{Length: 720 * mm, Width: 1230 * mm, Use: Split, Cut: Rip}
	y := stock.Length(0)
	for _, width := range []stock.Length{400, 400, 60, 60, 60, 60} {
		root.Children = append(root.Children, Node{Y: y, Length: 720 * mm, Width: width * mm, Use: Part})
		y += (width + 3) * mm
	}
	p := Plan{Bill: make([]Blank, 1), Layouts: []Layout{{Stock: stock.Stock{Length: 720 * mm, Width: 1230 * mm}, Repeat: 1, Root: root}}}
	p.Job.Saw.Kerf = 3 * mm
	steps := p.Steps(p.Layouts[0])
	for _, s := range steps {
		want := Fence
		if s.Piece.Width > s.Piece.Length {
			want = Stop
		}
		if s.Guide != want {
			t.Errorf("cut %d, of %v, goes by the %v", s.Number, s.Piece, s.Guide)
		}
	}
	if len(steps) != 6 || steps[0].Guide != Stop || steps[5].Guide != Fence {
		t.Errorf("%+v", steps)
	}
}
