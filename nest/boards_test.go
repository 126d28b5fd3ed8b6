package nest

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"
)

// rolls is a problem of pieces along one length of stock that costs 1; pieces
// gives length and count.
func rolls(length int64, pieces [][2]int64) Problem {
	p := Problem{Stock: []Stock{{Length: length, Width: 1, Price: 1}}}
	for _, b := range pieces {
		p.Blanks = append(p.Blanks, Blank{Length: b[0], Width: 1, Count: int(b[1]), From: []Source{{Stock: 0, Upright: true}}})
	}
	return p
}

// textbooks are worked examples with their least number of rolls.
//
// rolls-of-100: Chvatal, Linear Programming, 1983, chapter 13, from memory; its
// least fractional number of 452.25 was checked by an exact simplex.
// paper-rolls: a machine's rolls of 5,600 mm for 219 customers' rolls, a worked
// example of an online encyclopedia; 72.7 rolls in fractions, 73 from memory.
var textbooks = []struct {
	name    string
	problem Problem
	least   int64
}{
	{"rolls-of-100", rolls(100, [][2]int64{{45, 97}, {36, 610}, {31, 395}, {14, 211}}), 453},
	{"paper-rolls", rolls(5600, [][2]int64{
		{1380, 22}, {1520, 25}, {1560, 12}, {1710, 14}, {1820, 18}, {1880, 18}, {1930, 20},
		{2000, 10}, {2050, 12}, {2100, 14}, {2140, 16}, {2150, 18}, {2200, 20},
	}), 73},
}

func TestTextbookRolls(t *testing.T) {
	for _, e := range textbooks {
		t.Run(e.name, func(t *testing.T) {
			plan, err := Solve(context.Background(), e.problem, Options{Iterations: 4000, Walks: 1})
			if err != nil {
				t.Fatal(err)
			}
			if err := Verify(e.problem, plan); err != nil {
				t.Fatal(err)
			}
			if plan.Cost != e.least || !plan.Proven() {
				t.Errorf("%d rolls, at least %d; want %d, proven", plan.Cost, plan.Bound, e.least)
			}
		})
	}
}

// sections are dressed softwood, in tenths of a millimeter, with the price of a
// meter in cents; invented.
var sections = []struct{ thickness, width, meter int64 }{
	{380, 890, 310}, {380, 1400, 480}, {890, 890, 890}, {190, 890, 190}, {380, 640, 240},
}

const benchJobs = 20

// benchLumber is the lumber of workbench number n: 60 blanks of 5 sections, each
// sold in 4 lengths, the long ones a little dearer by the meter. Lengths are
// tenths of a millimeter, ends lose 15 mm, the kerf is 3.2 mm. Half of the
// blanks come in fours, as legs do, the others in pairs or alone.
func benchLumber(n int) Problem {
	r := rand.New(rand.NewPCG(uint64(n), 0x6c756d626572))
	p := Problem{Kerf: 32, Keep: Size{Length: 3000, Width: 300}}
	for _, s := range sections {
		for i, meters := range []int64{24, 30, 36, 48} { // tenths
			price := s.meter * meters * (100 + int64(i)*r.Int64N(5)) / 1000
			p.Stock = append(p.Stock, Stock{Length: meters * 1000, Width: s.width, TrimLength: 150, Price: price})
		}
	}
	for left := 60; left > 0; {
		section := r.IntN(len(sections))
		b := Blank{Length: 10 * (150 + r.Int64N(1700)), Width: sections[section].width, Count: min(left, []int{4, 4, 2, 1}[r.IntN(4)])}
		left -= b.Count
		for i := range 4 {
			b.From = append(b.From, Source{Stock: 4*section + i, Upright: true})
		}
		p.Blanks = append(p.Blanks, b)
	}
	return p
}

// manyPieces is 10,000 pieces in 60 lengths from three lengths of stock, in
// tenths of a millimeter, with a kerf of 3.2 mm and 15 mm off each end.
func manyPieces() Problem {
	r := rand.New(rand.NewPCG(60, 0x706965636573))
	p := Problem{Kerf: 32, Keep: Size{Length: 3000, Width: 300}, Stock: []Stock{
		{Length: 24400, Width: 890, TrimLength: 150, Price: 498},
		{Length: 36600, Width: 890, TrimLength: 150, Price: 735},
		{Length: 48800, Width: 890, TrimLength: 150, Price: 1010},
	}}
	left := 10_000
	for i := range 60 {
		count := left / (60 - i)
		if i < 59 {
			count += r.IntN(count) - count/2
		}
		left -= count
		p.Blanks = append(p.Blanks, Blank{
			Length: 10 * (150 + r.Int64N(1900)), Width: 890, Count: count,
			From: []Source{{Stock: 0, Upright: true}, {Stock: 1, Upright: true}, {Stock: 2, Upright: true}},
		})
	}
	return p
}

func generatedBoards() []series {
	books := series{name: "textbook", limit: time.Second}
	for _, e := range textbooks {
		books.trials = append(books.trials, trial{name: e.name, problem: e.problem, lower: e.least, best: e.least})
	}
	benches := series{name: "workbench", limit: 2 * time.Second}
	for n := range benchJobs {
		benches.trials = append(benches.trials, trial{name: fmt.Sprintf("workbench-%02d", n), problem: benchLumber(n)})
	}
	return []series{books, benches, {"pieces/10000", 10 * time.Second, []trial{{name: "pieces", problem: manyPieces()}}}}
}

func TestGeneratedLumberIsAsDescribed(t *testing.T) {
	checkGenerated(t, "workbench", benchLumber(3), benchLumber(3))
	checkGenerated(t, "pieces", manyPieces(), manyPieces())
	pieces := 0
	for _, b := range manyPieces().Blanks {
		pieces += b.Count
	}
	if pieces != 10_000 {
		t.Errorf("%d pieces", pieces)
	}
}

// BenchmarkFirstBoards is the time to the first plan of a workbench's lumber.
func BenchmarkFirstBoards(b *testing.B) {
	p := benchLumber(0)
	for b.Loop() {
		if _, err := Solve(context.Background(), p, Options{Iterations: 1, Walks: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

// smallBoards is a job of a few pieces from one to three lengths of board, with
// kerf, trims, prices and limits.
func smallBoards(r *rand.Rand) Problem {
	p := Problem{Kerf: r.Int64N(3), Keep: Size{Length: 5, Width: 1}}
	for range 1 + r.IntN(3) {
		s := Stock{Length: 10 + r.Int64N(20), Width: 4, TrimLength: r.Int64N(2), Price: 1 + r.Int64N(30)}
		if r.IntN(3) == 0 {
			s.Count = 1 + r.IntN(3)
		}
		if r.IntN(5) == 0 {
			s.OnHand, s.Price, s.Count = true, 0, 1+r.IntN(2)
		}
		p.Stock = append(p.Stock, s)
	}
	p.Stock[0].Count, p.Stock[0].OnHand, p.Stock[0].Price = 0, false, 1+r.Int64N(30)
	for range 1 + r.IntN(4) {
		b := Blank{Length: 1 + r.Int64N(p.Stock[0].Usable().Length), Width: 4, Count: 1 + r.IntN(3)}
		for s, st := range p.Stock {
			if s == 0 || b.Length <= st.Usable().Length {
				b.From = append(b.From, Source{Stock: s, Upright: true})
			}
		}
		p.Blanks = append(p.Blanks, b)
	}
	return p
}

// cheapest is the least cost by trying all rows for the first piece that is
// left, on every stock.
func cheapest(p Problem) int64 {
	known := map[string]int64{}
	var left, limits []int
	for _, b := range p.Blanks {
		left = append(left, b.Count)
	}
	for _, s := range p.Stock {
		if s.Count == 0 {
			s.Count = 1 << 20
		}
		limits = append(limits, s.Count)
	}
	var least func() int64
	var fill func(s, b int, room int64) int64
	least = func() int64 {
		key := fmt.Sprint(left, limits)
		if v, ok := known[key]; ok {
			return v
		}
		first := -1
		for b, n := range left {
			if n > 0 {
				first = b
				break
			}
		}
		if first < 0 {
			return 0
		}
		best := int64(1 << 40)
		for s, st := range p.Stock {
			room := st.Usable().Length + p.Kerf - p.Blanks[first].Length - p.Kerf
			if limits[s] == 0 || room < 0 {
				continue
			}
			limits[s]--
			left[first]--
			best = min(best, st.Price+fill(s, first, room))
			left[first]++
			limits[s]++
		}
		known[key] = best
		return best
	}
	fill = func(s, b int, room int64) int64 {
		if b == len(left) {
			return least()
		}
		best := fill(s, b+1, room)
		if size := p.Blanks[b].Length + p.Kerf; left[b] > 0 && size <= room {
			left[b]--
			best = min(best, fill(s, b, room-size))
			left[b]++
		}
		return best
	}
	return least()
}

func TestBoardsAgainstAllPlans(t *testing.T) {
	jobs := uint64(1500)
	if testing.Short() {
		jobs = 200
	}
	for seed := range jobs {
		p := smallBoards(rand.New(rand.NewPCG(seed, 0x626f61726473)))
		plan, err := Solve(context.Background(), p, Options{Iterations: 300, Walks: 1})
		if err != nil {
			t.Fatal(err)
		}
		if err := Verify(p, plan); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if least := cheapest(p); !plan.Proven() || plan.Cost != least {
			t.Errorf("seed %d: cost %d, bound %d, the least is %d", seed, plan.Cost, plan.Bound, least)
		}
	}
}
