package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// The rows of the setups tell every part and every leftover as often as it is cut.
func TestSetupsTellEveryPiece(t *testing.T) {
	plans := boardPlans(t)
	for name, p := range plans {
		got, want := map[string]int{}, map[string]int{}
		say := teller{p, namesOf(p, "H7KMQ"), stock.Ruler{}}
		note := func(said string, count int) {
			if _, number, isKept := strings.Cut(said, ", write H7KMQ-"); isKept {
				said = "keep " + number
			}
			if said != "" && said != "waste" && !strings.HasPrefix(said, "piece ") && !strings.HasPrefix(said, "trimmed") {
				got[said] += count
			}
		}
		cut := map[int]bool{}
		for _, g := range p.Setups() {
			for _, row := range setupRows(say, g) {
				for _, h := range row.Pieces {
					cut[h.Layout] = true
				}
				if row.Off.Node != nil {
					note(row.off, row.Count)
				}
				for _, left := range strings.Split(row.left, "; ") {
					count := 1
					if n, what, many := strings.Cut(left, " x "); many {
						if times, err := strconv.Atoi(n); err == nil {
							count, left = times, what
						}
					}
					note(left, count)
				}
			}
		}
		for i, l := range p.Layouts {
			if !cut[i] {
				continue
			}
			leaves := l.Leaves()
			for j := range leaves {
				if n := &leaves[j]; n.Use == cutplan.Part {
					want[say.piece(cutplan.Size{}, located{i, n})] += l.Repeat
				}
			}
		}
		for said, n := range want {
			if got[said] != n {
				t.Errorf("%s: %q is cut %d times, told %d times", name, said, n, got[said])
			}
		}
	}
}

func TestSetupsOfTheBench(t *testing.T) {
	p := bench()
	p.Layouts[0].Repeat = 2
	var got []string
	for _, g := range p.Setups() {
		for _, row := range setupRows(teller{p, namesOf(p, "H7KMQ"), stock.Ruler{}}, g) {
			got = append(got, strings.Join([]string{roundName(row.Round), row.setting(stock.Ruler{}), row.how,
				row.inHand(p), fmt.Sprint(row.Count), row.off, row.left}, " | "))
		}
	}
	for _, want := range []string{
		"trim | saw off 10 | trim reference edge | layout 2: sheet | 1 |  | ",
		"trim | fence 620 | trim far edge, reference edge on the fence | layout 2: sheet | 1 |  | ",
		"trim | mark 1160 | trim far end; wide: sled or guided saw | layout 2: sheet | 1 | trimmed: 1160 x 620 | ",
		"1 | fence 300 | rip; large panel | layout 1, all 2: rest of 1; layout 3: sheet | 3 | piece 2440 x 300 | 2 x piece 2440 x 293.6; keep 2440 x 916.8, write H7KMQ-12",
		"1 | stop 740 | crosscut | layout 4: board (3 cuts); layout 5: board (1 cut) | 4 | piece 740 x 89 | ",
		"2 | fence 28 | rip; push stick | layout 5: 4, 5 (2 cuts each) | 4 | F cleat, 520 x 28 | ",
		"3 | stop 380 | rip at a stop, not the fence | layout 1, all 2: 7 | 2 | C side, 560 x 380 | 2 x keep 560 x 236.8, write H7KMQ-1, 2",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("the setups lack %q; they are\n%s", want, strings.Join(got, "\n"))
		}
	}
}

func TestSettingsSavedAreTold(t *testing.T) {
	p := bench()
	apart, gathered := p.Settings()
	if want := fmt.Sprintf("%d saved", apart-gathered); gathered >= apart || !strings.Contains(savings(p), want) {
		t.Errorf("%d settings, gathered %d, told: %s", apart, gathered, savings(p))
	}
	p.Layouts = p.Layouts[2:3]
	if said := savings(p); said != "" {
		t.Errorf("one layout saves nothing, told: %s", said)
	}
}

func TestOverWideBlanksAreToldWithTheirSequence(t *testing.T) {
	p := bench()
	want := "ripped over-wide, to be trued after (see Milling): E at 74, true the edges at 72, turn, 70; F at 28, true the edges at 26, turn, 24"
	if got := truing(p, p.Layouts[4], stock.Ruler{}); got != want {
		t.Errorf("told %q, want %q", got, want)
	}
	if got := truing(p, p.Layouts[0], stock.Ruler{}); got != "" {
		t.Errorf("sheets tell %q", got)
	}
}

func TestLayoutsOfEachPart(t *testing.T) {
	l := cuttingBill(bench(), stock.Ruler{})
	var got []string
	for _, row := range l.rows {
		got = append(got, row[0]+" "+row[7])
	}
	if want := []string{"A 1", "B 1, 3", "C 1, 2", "D 1", "E 4, 5", "F 5"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A part that is the rest of a piece comes off no cut: the terminal's list tells it
// with the cut that leaves it, each as often as it is cut.
func TestTheListOfSetupsTellsEveryPart(t *testing.T) {
	for name, p := range boardPlans(t) {
		got, want := map[string]int{}, map[string]int{}
		say := teller{p, namesOf(p, "H7KMQ"), stock.Ruler{}}
		for _, row := range setupList(p, say.names, say.ruler).rows {
			for _, said := range strings.Split(strings.ReplaceAll(row[4], "; left: ", "; "), "; ") {
				count := 1
				if n, what, many := strings.Cut(said, " x "); many {
					if times, err := strconv.Atoi(n); err == nil {
						count, said = times, what
					}
				}
				got[said] += count
			}
		}
		for i, l := range p.Layouts {
			if len(p.Steps(l)) == 0 {
				continue // it is whole as it is
			}
			leaves := l.Leaves()
			for j := range leaves {
				if n := &leaves[j]; n.Use == cutplan.Part {
					want[say.piece(cutplan.Size{}, located{i, n})] += l.Repeat
				}
			}
		}
		for said, n := range want {
			if got[said] != n {
				t.Errorf("%s: %q is cut %d times, told %d times", name, said, n, got[said])
			}
		}
	}
}
