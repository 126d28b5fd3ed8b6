package master

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/halt"
)

// Halt is asked after each portion of work, and the program that it ends still has duals.
func TestSolveAsksHaltOften(t *testing.T) {
	const rows, columns = 120, 3000
	r := rand.New(rand.NewPCG(1, 1))
	demand, penalty := make([]float64, rows), make([]float64, rows)
	for k := range demand {
		demand[k], penalty[k] = float64(1+r.IntN(9)), 4
	}
	lp := New(demand, nil, penalty)
	for range columns {
		c := Column{Cost: 1}
		for k := r.IntN(8); k < rows; k += 1 + r.IntN(40) {
			c.Entries = append(c.Entries, Entry{Row: k, Value: float64(1 + r.IntN(3))})
		}
		lp.Add(c)
	}
	var last, longest int64
	asked := 0
	lp.Halt = func() bool {
		longest = max(longest, lp.Work()-last)
		last = lp.Work()
		asked++
		return asked > 20
	}
	if lp.Solve(1 << 20) {
		t.Fatalf("the optimum is reached after %d questions", asked)
	}
	// A pivot and a pricing of all columns may follow the end of a portion.
	if most := int64(halt.Portion + 3*rows*rows + 60*columns); longest > most {
		t.Errorf("%d products between two questions, at most %d are wanted", longest, most)
	}
	if asked > 22 { // refactor and Solve
		t.Errorf("asked %d times more", asked-22)
	}
	if lp.Value() <= 0 {
		t.Error("there is no solution")
	}
}
