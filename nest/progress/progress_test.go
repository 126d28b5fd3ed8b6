package progress_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

func planOf(t *testing.T, path string) *cutplan.Plan {
	t.Helper()
	file, err := job.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 300})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func area(length, width stock.Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(length)), big.NewInt(int64(width)))
}

// For any feasible cuts, remnants, blanks, dust and scrap add up to the stock, to the last
// square of 25 nm. The steps give the dust, and they know nothing of the pieces.
func TestMaterialIsConserved(t *testing.T) {
	paths, _ := filepath.Glob("../../testdata/jobs/*.toml")
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			p := planOf(t, path)
			for seed := range uint64(30) {
				random := rand.New(rand.NewPCG(seed, 5))
				for at, l := range p.Layouts {
					s := progress.Begin(p)
					steps := p.Steps(l)
					made := make([]bool, len(steps)+1)
					for range random.IntN(len(steps) + 2) {
						if len(steps) == 0 {
							break
						}
						n := 1 + random.IntN(len(steps))
						if err := s.Apply(progress.Event{Word: "cut", Value: fmt.Sprintf("%d/1:%d", at+1, n)}); err != nil {
							t.Fatal(err)
						}
						for ; n > 0 && !made[n]; n = steps[n-1].InHand {
							made[n] = true
						}
					}
					there := new(big.Int)
					add := func(of *big.Int) { there.Add(there, of) }
					for _, piece := range s.Remnants(at+1, 1) {
						t := piece.Trims
						add(area(piece.Root.Length+t.NearEnd+t.FarEnd, piece.Root.Width+t.NearEdge+t.FarEdge))
					}
					for i, st := range steps {
						if !made[i+1] {
							continue
						}
						dust := new(big.Int).Sub(area(st.Piece.Length, st.Piece.Width), area(st.Off.Length, st.Off.Width))
						if !st.Trim { // what a trim leaves over is scrap
							dust.Sub(dust, area(st.Left.Length, st.Left.Width))
						}
						add(dust)
					}
					if whole := area(l.Stock.Length, l.Stock.Width); there.Cmp(whole) != 0 {
						t.Fatalf("seed %d, layout %d: %v are there, the stock is %v", seed, at+1, there, whole)
					}
				}
			}
		})
	}
}

// For any events, pieces, blanks, losses, waste and dust add up to all the stock.
func TestWhatIsToldToLieThereIsAllThereIs(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	for seed := range uint64(300) {
		random := rand.New(rand.NewPCG(seed, 6))
		s := progress.Begin(p)
		for range random.IntN(15) {
			at := random.IntN(len(p.Layouts))
			b := p.Bill[random.IntN(len(p.Bill))]
			said := []string{
				fmt.Sprintf("cut %d", at+1),
				fmt.Sprintf("cut %d/1:%d", at+1, 1+random.IntN(12)),
				fmt.Sprintf("spoiled %s=%s x %s mm", b.Mark, (b.Length / 2).Decimal(), b.Width.Decimal()),
				"spoiled " + b.Mark, "lost " + b.Mark, "missing " + p.Layouts[at].Stock.Name,
			}[random.IntN(6)]
			e, err := progress.ParseEvent(said)
			if err != nil {
				t.Fatal(err)
			}
			_ = s.Apply(e) // some cannot have happened
		}
		there := new(big.Int)
		add := func(of *big.Int, times int) { there.Add(there, of.Mul(of, big.NewInt(int64(times)))) }
		for _, piece := range s.Pieces("K7F2M") {
			if piece.Layout >= 0 {
				add(area(piece.Stock.Length, piece.Stock.Width), piece.Stock.Count)
			}
		}
		for _, b := range s.Blanks() {
			add(area(b.Length, b.Width), b.Cut)
		}
		whole := new(big.Int)
		for i, l := range s.Layouts() {
			of := p.Layouts[i]
			one := area(of.Stock.Length, of.Stock.Width)
			whole.Add(whole, one.Mul(one, big.NewInt(int64(l.Pieces-l.Missing))))
			for k := range l.Pieces {
				there.Add(there, progress.Spent(s, i, k))
			}
		}
		if there.Cmp(whole) != 0 {
			t.Fatalf("seed %d: %v are told of, there were %v", seed, there, whole)
		}
	}
}

// Once everything is cut, every blank and every offcut is present by name, and nothing
// else.
func TestAPlanThatIsCutIsDone(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	s := progress.Begin(p)
	for i := range p.Layouts {
		if s.Done() {
			t.Errorf("done before layout %d is cut", i+1)
		}
		if err := s.Apply(progress.Event{Word: "cut", Value: fmt.Sprint(i + 1)}); err != nil {
			t.Fatal(err)
		}
	}
	for _, b := range s.Blanks() {
		if b.Good != b.Count || b.Cut != b.Count || b.Open != 0 {
			t.Errorf("blank %s: %+v", b.Mark, b)
		}
	}
	if !s.Done() {
		t.Error("it is not done")
	}
	var names []string
	for _, piece := range s.Pieces("K7F2M") {
		if piece.Layout < 0 {
			continue // on hand, and never meant to be cut
		}
		if piece.Kind != progress.Leftover {
			t.Errorf("%+v lies there", piece)
		}
		names = append(names, piece.Stock.Name)
	}
	if kept := p.Offcuts(); len(names) == 0 || len(names) != kept[len(kept)-1].First+kept[len(kept)-1].Count-1 {
		t.Errorf("kept: %v", names)
	}
	for i, name := range names {
		if want := cutplan.OffcutName("K7F2M", i+1); name != want {
			t.Errorf("offcut %d is called %s, want %s", i+1, name, want)
		}
	}
}

// An impossible event is refused with a remedy, and changes nothing.
func TestWhatCannotHaveHappened(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	tests := []struct{ event, cause, remedy string }{
		{"cut 90", `no layout "90"`, "there are "},
		{"cut x", `no layout "x"`, "there are "},
		{"cut 1/9", `no sheet "9" in layout 1`, "there "},
		{"cut 1:99", `no cut "99" in layout 1`, "there are "},
		{"cut 1:5-3", "cut 5 comes after cut 3", "write 3-5"},
		{"cut 1:3-99", `no cut "99" in layout 1`, "there are "},
		{"spoiled A", "of blank A (worktop) 0 are cut and good", "say first"},
		{"lost A=2", "of blank A (worktop) 0 are cut and good", "say first"},
		{"good A=9", "only 1 more of blank A (worktop) are wanted", "smaller"},
		{"good A=x", `"x" is no count`, "A=2"},
		{"lost worktopp", `no blank "worktopp"`, `did you mean "worktop"?`},
		{"missing exterior ply 18, ful", `no stock "exterior ply 18, ful"`, `did you mean "exterior ply 18, full"?`},
		{"missing exterior ply 18, full=7", "fewer than 7", "what is cut was there"},
	}
	for _, test := range tests {
		s := progress.Begin(p)
		before := fmt.Sprint(s.Blanks(), s.Layouts())
		e, err := progress.ParseEvent(test.event)
		if err == nil {
			err = s.Apply(e)
		}
		wrong, ok := err.(fault.Fault)
		if !ok || !strings.Contains(wrong.Cause, test.cause) || !strings.Contains(wrong.Remedy, test.remedy) {
			t.Errorf("%s: %v", test.event, err)
		}
		if after := fmt.Sprint(s.Blanks(), s.Layouts()); after != before {
			t.Errorf("%s changed the state", test.event)
		}
	}
}
