package progress_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// After any earlier cuts, the remaining cuts can be made one by one in their order: each
// piece is free before its cut. In the end every blank is cut.
func TestTheNextCutLeadsToTheEnd(t *testing.T) {
	paths, _ := filepath.Glob("../../testdata/jobs/*.toml")
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			p := planOf(t, path)
			for _, by := range []progress.By{progress.ByLayout, progress.BySetup} {
				random := rand.New(rand.NewPCG(uint64(by), 21))
				s := progress.Begin(p)
				for range random.IntN(6) {
					l := random.IntN(len(p.Layouts))
					if steps := s.Steps(l + 1); len(steps) > 0 {
						tell(t, s, progress.Cut{Layout: l + 1, Copy: 1 + random.IntN(p.Layouts[l].Repeat), From: 1, To: 1 + random.IntN(len(steps))}.Event())
					}
				}
				order, made := s.Order(by), 0
				for {
					next, some := s.Next(by)
					if !some {
						break
					}
					if made >= len(order) || order[made] != next {
						t.Fatalf("after %d cuts %+v comes next, which is not in the order", made, next)
					}
					made++
					if next.From > 0 {
						step := s.Steps(next.Layout)[next.From-1]
						if step.InHand > 0 && !s.IsMade(next.Layout, next.Copy, step.InHand) {
							t.Fatalf("%+v divides what cut %d gives, and that is not made", next, step.InHand)
						}
					}
					if s.IsMade(next.Layout, next.Copy, next.From) {
						t.Fatalf("%+v is made already", next)
					}
					tell(t, s, next.Event())
					if !s.IsMade(next.Layout, next.Copy, next.From) {
						t.Fatalf("%+v is told, and not made", next)
					}
				}
				for _, b := range s.Blanks() {
					if b.Good != b.Count-unplaced(p, b.Mark) {
						t.Errorf("%d of %d blanks %s are there", b.Good, b.Count, b.Mark)
					}
				}
			}
		})
	}
}

func unplaced(p *cutplan.Plan, mark string) int {
	n := 0
	for _, u := range p.Unplaced {
		if p.Bill[u.Blank].Mark == mark {
			n += u.Count
		}
	}
	for _, e := range p.Estimates {
		for _, w := range e.Blanks {
			if p.Bill[w.Blank].Mark == mark {
				n += w.Count
			}
		}
	}
	return n
}

func tell(t *testing.T, s *progress.State, e progress.Event) {
	t.Helper()
	if err := s.Apply(e); err != nil {
		t.Fatal(e, err)
	}
}

// Stock that is missing or has a changed size is in no order; its other copies are.
func TestOrderLeavesOutWhatIsNotThere(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	for i, l := range p.Layouts {
		for _, said := range []string{"missing " + l.Stock.Name, "measured " + l.Stock.Name + "=60 x 60 mm"} {
			s := progress.Begin(p)
			whole := len(s.Order(progress.ByLayout))
			if err := report(t, s, said); err != nil {
				t.Fatal(err)
			}
			for _, by := range []progress.By{progress.ByLayout, progress.BySetup} {
				if left := s.Order(by); len(left) >= whole {
					t.Errorf("layout %d, %s: %d cuts are left, of %d", i+1, said, len(left), whole)
				}
				for next, some := s.Next(by); some; next, some = s.Next(by) {
					tell(t, s, next.Event())
				}
			}
		}
	}
}

// A begun piece that is smaller now is not cut further; the rest of its sheet is.
func TestOrderLeavesOutAPieceOfAnotherSize(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	s := progress.Begin(p)
	s.Code = "K7F2M"
	tell(t, s, progress.Event{Word: "cut", Value: "1/1:1"})
	all := len(s.Order(progress.ByLayout))
	for _, piece := range s.Pieces("K7F2M") {
		if piece.Kind == progress.Unfinished {
			tell(t, s, progress.Event{Word: "measured", Value: piece.Stock.Name + "=30 x 30 mm"})
			break
		}
	}
	for next, some := s.Next(progress.ByLayout); some; next, some = s.Next(progress.ByLayout) {
		tell(t, s, next.Event())
		all--
	}
	if all <= 0 || s.Done() || !s.Lacks() {
		t.Errorf("%d cuts are left out; done: %v, lacks: %v", all, s.Done(), s.Lacks())
	}
}

// The remnants cover the stock except for kerf, and each has the place where it was cut.
func TestPiecesHaveTheirPlaces(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	s := progress.Begin(p)
	steps := s.Steps(1)
	tell(t, s, progress.Cut{Layout: 1, Copy: 1, From: 1, To: len(steps)}.Event())
	want := map[string]bool{}
	for _, n := range p.Layouts[0].Leaves() {
		want[fmt.Sprint(n.X, n.Y, n.Length, n.Width)] = true
	}
	for _, l := range s.Remnants(1, 1) {
		if at := fmt.Sprint(l.Root.X, l.Root.Y, l.Root.Length, l.Root.Width); !want[at] || !l.Freed || l.After == 0 {
			t.Errorf("%+v", l)
		} else {
			delete(want, at)
		}
	}
	if len(want) > 0 {
		t.Errorf("%d pieces are not there", len(want))
	}
}

// Two shelves come from one sheet: the saw's next cut, until all is done.
func ExampleState_Next() {
	const mm = stock.Millimeter
	job := stock.Job{
		Saw:   stock.Saw{Kerf: 3 * mm},
		Stock: []stock.Stock{{Name: "birch 18", Material: "birch ply", Length: 610 * mm, Width: 610 * mm, Thickness: 18 * mm}},
		Parts: []stock.Part{{Name: "shelf", Material: "birch ply", Length: 600 * mm, Width: 300 * mm, Thickness: 18 * mm, Count: 2}},
	}
	plan, err := cutplan.Make(context.Background(), job, cutplan.Options{Iterations: 100})
	if err != nil {
		panic(err)
	}
	s := progress.Begin(plan)
	for next, some := s.Next(progress.ByLayout); some; next, some = s.Next(progress.ByLayout) {
		step := s.Steps(next.Layout)[next.From-1]
		fmt.Printf("%s: %s at %s mm\n", next.Event(), step.Cut, step.Setting.Decimal())
		if err := s.Apply(next.Event()); err != nil {
			panic(err)
		}
	}
	fmt.Println("done:", s.Done())
	// Output:
	// cut 1/1:1: crosscut at 600 mm
	// cut 1/1:2: rip at 300 mm
	// cut 1/1:3: rip at 300 mm
	// done: true
}
