package recut_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
	"sawbill/stock/job"
)

// happen reports random events: cuts, blanks spoiled and lost, missing stock.
func happen(random *rand.Rand, s *progress.State, events int) {
	plan := s.Plan()
	for range events {
		if len(plan.Layouts) == 0 {
			return
		}
		at := random.IntN(len(plan.Layouts))
		l := plan.Layouts[at]
		mark := s.Bill()[random.IntN(len(s.Bill()))].Mark
		var e progress.Event
		switch random.IntN(10) {
		case 0:
			e = progress.Event{Word: "cut", Value: fmt.Sprint(at + 1)}
		case 1, 2, 3:
			e = progress.Event{Word: "cut", Value: fmt.Sprintf("%d/%d:%d", at+1, 1+random.IntN(l.Repeat), 1+random.IntN(20))}
		case 4:
			e = progress.Event{Word: "spoiled", Value: mark}
		case 5:
			b := s.Bill()[random.IntN(len(s.Bill()))]
			e = progress.Event{Word: "spoiled", Value: fmt.Sprintf("%s=%s x %s mm", b.Mark, (b.Length - stock.Length(random.Int64N(int64(b.Length)))).Decimal(), b.Width.Decimal())}
		case 6:
			e = progress.Event{Word: "lost", Value: mark}
		case 7:
			e = progress.Event{Word: "missing", Value: l.Stock.Name}
		case 9:
			e = progress.Event{Word: "spoiled", Value: mark + ":1"}
		case 8:
			e = progress.Event{Word: "good", Value: mark}
		}
		_ = s.Apply(e) // some cannot have happened
	}
}

func eachExample(t *testing.T, do func(t *testing.T, p *cutplan.Plan)) {
	paths, err := filepath.Glob("../../testdata/jobs/*.toml")
	if err != nil || len(paths) == 0 {
		t.Fatal(paths, err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			file, err := job.Read(path)
			if err != nil {
				t.Fatal(err)
			}
			p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 300})
			if err != nil {
				t.Fatal(err)
			}
			do(t, p)
		})
	}
}

// After any events, good blanks and the blanks of the rest add up to the parts of the job.
// The same holds after events in the rest.
func TestWhatIsGoodAndTheRestAreTheJob(t *testing.T) {
	eachExample(t, func(t *testing.T, plan *cutplan.Plan) {
		for seed := range uint64(10) {
			random := rand.New(rand.NewPCG(seed, 8))
			p, before := plan, []progress.Made(nil)
			for round := range 3 {
				s := progress.Begin(p, before...)
				happen(random, s, 1+random.IntN(12))
				made, err := recut.Make(t.Context(), s, recut.Options{Code: fmt.Sprint("P", round), Options: cutplan.Options{Iterations: 200}})
				if err != nil {
					t.Fatalf("seed %d, round %d: %v", seed, round, err)
				}
				good, most := map[string]int{}, map[string]int{} // most of a part that one blank holds
				for _, b := range s.Blanks() {
					good[b.Part.Name] += b.Parts
					most[b.Part.Name] = max(most[b.Part.Name], b.Holds())
				}
				coming := map[string]int{}
				for _, part := range made.Plan.Job.Parts {
					coming[part.Name] = part.Count
				}
				for _, part := range plan.Job.Parts {
					if have := min(good[part.Name], part.Count) + coming[part.Name]; have < part.Count || have >= part.Count+most[part.Name] {
						t.Errorf("seed %d, round %d: %d of %q are good or to come, wanted are %d", seed, round, have, part.Name, part.Count)
					}
				}
				if err := made.Plan.Check(); err != nil {
					t.Error(err)
				}
				if there, has := areaOf(t, append(piecesOf(s, fmt.Sprint("P", round)), made.Unused...)), areaOf(t, onHand(made.Plan.Job.Stock)); there.Cmp(has) != 0 {
					t.Errorf("seed %d, round %d: %v lie there, the rest has %v on hand", seed, round, there, has)
				}
				p, before = made.Plan, made.Made
			}
		}
	})
}

func piecesOf(s *progress.State, code string) []stock.Stock {
	var all []stock.Stock
	for _, p := range s.Pieces(code) {
		all = append(all, p.Stock)
	}
	return all
}

func onHand(all []stock.Stock) []stock.Stock {
	return slices.DeleteFunc(slices.Clone(all), func(s stock.Stock) bool { return !s.OnHand })
}

func areaOf(t *testing.T, all []stock.Stock) *big.Int {
	sum := new(big.Int)
	for _, s := range all {
		if s.Count < 1 {
			t.Errorf("%d of %s are there", s.Count, s.Name)
		}
		one := new(big.Int).Mul(big.NewInt(int64(s.Length)), big.NewInt(int64(s.Width)))
		sum.Add(sum, one.Mul(one, big.NewInt(int64(s.Count))))
	}
	return sum
}
