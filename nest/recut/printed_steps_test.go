package recut_test

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
)

// Pieces that were begun and go on have the cuts that were printed for them: the same
// lines, settings, guides and sizes, in the printed order. Only numbers are given anew. If
// cutting is all that happened, no other cut is added, and uncut stock keeps all its steps.
func TestWhatGoesOnKeepsItsPrintedCuts(t *testing.T) {
	pieces, cuts, uncut := 0, 0, 0
	for seed := range uint64(300) {
		random := rand.New(rand.NewPCG(seed, 5))
		options := cutplan.Options{Iterations: 60}
		p, err := cutplan.Make(t.Context(), anyJob(random), options)
		if err != nil {
			t.Fatal(seed, err)
		}
		for i, l := range p.Layouts { // as read back from the plan's file
			p.Layouts[i].Printed = p.Steps(l)
		}
		s := progress.Begin(p)
		o := recut.Options{Code: "P", Options: options}
		onlyCuts := seed%2 == 0 && p.Complete()
		if onlyCuts {
			cutSome(random, s)
		} else if happen(random, s, 3); random.IntN(2) == 0 {
			o.Was, o.Is = smallerParts(random, s)
		}
		made, err := recut.Make(t.Context(), s, o)
		if err != nil {
			t.Fatal(seed, err)
		}
		anew := map[string]bool{}
		for _, r := range made.Replanned {
			anew[r.Stock.Name] = true
		}
		for _, l := range made.Plan.Layouts {
			if anew[l.Stock.Name] || l.Stock.Sawn != (stock.Trims{}) {
				continue
			}
			of, x, y, ok := begunPiece(p, l.Stock.Name)
			steps := made.Plan.Steps(l)
			if !ok {
				if onlyCuts && !strings.HasPrefix(l.Stock.Name, "P layout") {
					uncut++
					if !slices.ContainsFunc(p.Layouts, func(was cutplan.Layout) bool { return slices.EqualFunc(was.Printed, steps, sameCut) }) {
						t.Errorf("seed %d: uncut %s has steps that no layout was printed with", seed, l.Stock.Name)
					}
				}
				continue
			}
			pieces++
			last, before := 0, cuts
			for _, st := range steps {
				for _, old := range p.Layouts[of].Printed {
					if old.Trim || old.Cut != st.Cut || old.X != st.X+x || old.Y != st.Y+y || old.Run != st.Run {
						continue
					}
					cuts++
					if old.Setting != st.Setting || old.Guide != st.Guide || old.Off != st.Off {
						t.Errorf("seed %d, %s: cut %d is %+v, printed was %+v", seed, l.Stock.Name, old.Number, st, old)
					}
					if old.Number < last {
						t.Errorf("seed %d, %s: cut %d comes after cut %d, printed was before", seed, l.Stock.Name, old.Number, last)
					}
					last = old.Number
				}
			}
			if onlyCuts && cuts-before != len(steps) {
				t.Errorf("seed %d, %s: %d cuts, of which %d were printed", seed, l.Stock.Name, len(steps), cuts-before)
			}
		}
	}
	t.Logf("%d cuts of %d begun pieces, %d layouts of uncut stock", cuts, pieces, uncut)
	if pieces < 100 || cuts < 300 || uncut < 100 {
		t.Errorf("only %d cuts of %d begun pieces and %d layouts of uncut stock are seen", cuts, pieces, uncut)
	}
}

// cutSome makes some of the cuts of each piece of stock, in their order.
func cutSome(random *rand.Rand, s *progress.State) {
	for range 1 + random.IntN(12) {
		if next, left := s.Next(progress.By(random.IntN(2))); left {
			_ = s.Apply(next.Event())
		}
	}
}

// sameCut reports whether two steps are printed alike.
func sameCut(a, b cutplan.Step) bool {
	a.OffNode, a.LeftNode, b.OffNode, b.LeftNode = nil, nil, nil, nil
	return a == b
}

var begunName = regexp.MustCompile(`^P layout (\d+)(?:, (?:sheet|board) \d+ of \d+)?, (piece from|rest of) (\d+)$`)

// begunPiece returns the layout of a begun piece and its place in the stock, read from its
// name. It returns false for other stock, and for pieces of which only trim was cut.
func begunPiece(p *cutplan.Plan, name string) (layout int, x, y stock.Length, ok bool) {
	m := begunName.FindStringSubmatch(name)
	if m == nil {
		return 0, 0, 0, false
	}
	layout, _ = strconv.Atoi(m[1])
	layout--
	number, _ := strconv.Atoi(m[3])
	st := p.Layouts[layout].Printed[number-1]
	x, y = st.X, st.Y
	switch rest := m[2] == "rest of"; {
	case st.Trim:
		return 0, 0, 0, false
	case rest && st.Cut == cutplan.Rip:
		y += p.Job.Saw.Kerf
	case rest:
		x += p.Job.Saw.Kerf
	case st.Cut == cutplan.Rip:
		y -= st.Off.Width
	default:
		x -= st.Off.Length
	}
	return layout, x, y, true
}
