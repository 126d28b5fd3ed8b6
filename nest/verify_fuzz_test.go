package nest_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"sawbill/nest"
)

// FuzzVerify wants no panic on any plan whatever.
func FuzzVerify(f *testing.F) {
	f.Add([]byte{})
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 3))
		f.Add(randomBytes(r, 120))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, plan := (&script{data}).read()
		_ = nest.Verify(p, plan) // an error is as welcome as none
	})
}

// FuzzVerifyOfNearlyRightPlans changes right plans here and there and wants a
// second opinion on each that is still accepted.
func FuzzVerifyOfNearlyRightPlans(f *testing.F) {
	for seed := range uint64(600) {
		f.Add(seed, randomBytes(rand.New(rand.NewPCG(seed, 4)), 12))
	}
	f.Fuzz(func(t *testing.T, seed uint64, changes []byte) {
		p, plan := randomPlan(seed)
		for s := (&script{changes}); len(s.data) > 0; {
			s.change(&p, &plan)
		}
		if nest.Verify(p, plan) == nil {
			paint(t, p, plan)
		}
	})
}

func randomBytes(r *rand.Rand, most int) []byte {
	data := make([]byte, r.IntN(most))
	for i := range data {
		data[i] = byte(r.Uint32())
	}
	return data
}

// script reads a problem and a plan out of bytes, tidy ones more often than
// chance would give. Past its end it reads zeros.
type script struct{ data []byte }

func (s *script) next(n int64) int64 {
	if len(s.data) == 0 {
		return 0
	}
	b := s.data[0]
	s.data = s.data[1:]
	return int64(b) % n
}

// odd replaces a number by one that nobody would write, now and then.
func (s *script) odd(n int64) int64 {
	switch s.next(40) {
	case 37:
		return math.MinInt64
	case 38:
		return math.MaxInt64
	case 39:
		return -n
	}
	return n
}

func (s *script) read() (nest.Problem, nest.Plan) {
	p := nest.Problem{Kerf: s.odd(s.next(4)), Stages: int(s.odd(s.next(4)))}
	p.Keep = nest.Size{Length: s.odd(s.next(6)), Width: s.odd(s.next(6))}
	for range 1 + s.next(3) {
		p.Stock = append(p.Stock, nest.Stock{
			Length: s.odd(1 + s.next(20)), Width: s.odd(1 + s.next(20)),
			TrimLength: s.odd(s.next(2)), TrimWidth: s.odd(s.next(2)),
			Price: s.odd(s.next(3)), Count: int(s.odd(s.next(3))), OnHand: s.next(4) == 1,
			FirstCut: nest.Cut(s.next(4)), NarrowestRip: s.odd(s.next(3)),
		})
		if stock := &p.Stock[len(p.Stock)-1]; s.next(3) == 1 {
			stock.Defects = []nest.Defect{{X: s.odd(s.next(12)), Y: s.odd(s.next(12)), Length: s.odd(1 + s.next(4)), Width: s.odd(1 + s.next(4))}}
		}
	}
	for range s.next(6) / 4 {
		p.Groups = append(p.Groups, nest.Group{Blanks: []int{int(s.next(4)) - 1, int(s.next(4))}, Lengthwise: s.next(2) == 1, Count: int(s.next(3))})
	}
	var plan nest.Plan
	for range s.next(4) {
		l := nest.Layout{Stock: int(s.next(int64(len(p.Stock)))), Repeat: int(s.odd(1 + s.next(2)))}
		l.Root = s.node(p.Stock[l.Stock].Usable(), nest.AnyCut, &p)
		l.Stock = int(s.odd(int64(l.Stock)))
		plan.Layouts = append(plan.Layouts, l)
		plan.Cost += int64(l.Repeat)
	}
	for range s.next(3) {
		plan.Unplaced = append(plan.Unplaced, nest.Unplaced{
			Blank: int(s.odd(s.next(3))), Count: int(s.odd(1 + s.next(2))), Reason: nest.Reason(s.next(3)),
		})
	}
	plan.Cost, plan.Bound = s.odd(plan.Cost*s.next(3)), s.odd(s.next(3))
	return p, plan
}

// node makes a blank of each part it reads, so that some plans come out right.
func (s *script) node(size nest.Size, under nest.Cut, p *nest.Problem) nest.Node {
	n := nest.Node{Length: s.odd(size.Length), Width: s.odd(size.Width), Use: nest.Use(s.next(5))}
	switch n.Use {
	case nest.Split:
		n.Cut = nest.Rip + nest.Crosscut - under
		if under == nest.AnyCut {
			n.Cut = nest.Cut(s.next(3))
		}
		for range s.next(4) {
			child := size
			if n.Cut == nest.Rip {
				child.Width = s.next(12)
			} else {
				child.Length = s.next(12)
			}
			n.Children = append(n.Children, s.node(child, n.Cut, p))
		}
	case nest.Part:
		n.Blank = int(s.odd(int64(len(p.Blanks))))
		n.Turned = s.next(4) == 1
		from := nest.Source{Stock: int(s.odd(s.next(2))), Upright: s.next(4) > 0, Turned: s.next(4) > 0}
		p.Blanks = append(p.Blanks, nest.Blank{Length: n.Length, Width: n.Width, Count: int(s.odd(1 + s.next(2))), From: []nest.Source{from}})
	}
	return n
}

// change moves one number of a node, of the problem or of the plan by a little.
func (s *script) change(p *nest.Problem, plan *nest.Plan) {
	by := s.next(7) - 3
	l := &plan.Layouts[s.next(int64(len(plan.Layouts)))]
	sites := sitesOf(&l.Root)
	n := sites[s.next(int64(len(sites)))].node
	stock := &p.Stock[s.next(int64(len(p.Stock)))]
	switch s.next(16) {
	case 0:
		n.Length += by
	case 1:
		n.Width += by
	case 2:
		n.Use += nest.Use(by)
	case 3:
		n.Cut += nest.Cut(by)
	case 4:
		n.Blank += int(by)
	case 5:
		n.Turned = !n.Turned
	case 6:
		if last := len(n.Children) - 1; last > 0 {
			n.Children[0], n.Children[last] = n.Children[last], n.Children[0]
		}
	case 7:
		if len(n.Children) > 0 {
			n.Children = n.Children[1:]
		}
	case 8:
		l.Stock += int(by)
	case 9:
		l.Repeat += int(by)
	case 10:
		p.Kerf = max(0, p.Kerf+by)
	case 11:
		p.Keep.Length += by
	case 12:
		stock.Length = max(1, stock.Length+by)
	case 13:
		stock.TrimWidth = max(0, stock.TrimWidth+by)
	case 14:
		stock.NarrowestRip += by
	case 15:
		p.Blanks[max(0, min(n.Blank, len(p.Blanks)-1))].Count += int(by)
	}
}
