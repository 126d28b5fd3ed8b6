package report

import (
	"cmp"
	"context"
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

// inHandOf is a piece that a row of the setups names, and how many cuts it gets.
type inHandOf struct {
	layout, by  int
	rest, stock bool
	cuts        int
}

var (
	manyCuts   = regexp.MustCompile(` \((\d+) cuts?( each)?\)(, |$)`)
	thatOf     = regexp.MustCompile(`(?:^|, )(rests of |rest of |pieces |piece |sheet|board|section)`)
	fromLayout = regexp.MustCompile(`^layouts? ([0-9–, ]+?)(?:, all \d+)?: (.+)$`)
)

// readNumbers reads "3, 5–8".
func readNumbers(said string) ([]int, error) {
	var all []int
	for _, of := range strings.Split(said, ", ") {
		first, last, span := strings.Cut(of, "–")
		from, err := strconv.Atoi(first)
		to := from
		if span && err == nil {
			to, err = strconv.Atoi(last)
		}
		if err != nil {
			return nil, err
		}
		for n := from; n <= to; n++ {
			all = append(all, n)
		}
	}
	return all, nil
}

// readInHand reads the pieces of a row and their cuts from its words, as a person would: a
// number belongs to the word before it, and a count of cuts to all since the count before.
func readInHand(said string) ([]inHandOf, error) {
	var all []inHandOf
	for _, part := range strings.Split(said, "; ") {
		m := fromLayout.FindStringSubmatch(part)
		if m == nil {
			return nil, fmt.Errorf("no layout in %q", part)
		}
		layouts, err := readNumbers(m[1])
		if err != nil {
			return nil, err
		}
		for rest := m[2]; rest != ""; {
			cuts, group, after := 1, rest, ""
			if at := manyCuts.FindStringSubmatchIndex(rest); at != nil {
				group, after = rest[:at[0]], rest[at[1]:]
				cuts, _ = strconv.Atoi(rest[at[2]:at[3]])
			}
			rest = after
			words := thatOf.FindAllStringSubmatchIndex(group, -1)
			if len(words) == 0 || words[0][0] > 0 {
				words = slices.Insert(words, 0, []int{0, 0, 0, 0})
			}
			for i, w := range words {
				end := len(group)
				if i+1 < len(words) {
					end = words[i+1][0]
				}
				word, numbers := group[w[2]:w[3]], group[w[3]:end]
				of := inHandOf{cuts: cuts, rest: strings.HasPrefix(word, "rest"), stock: slices.Contains([]string{"sheet", "board", "section"}, word)}
				by := []int{0}
				if !of.stock {
					if by, err = readNumbers(numbers); err != nil {
						return nil, fmt.Errorf("%q: %w", said, err)
					}
				}
				for _, l := range layouts {
					for _, n := range by {
						of.layout, of.by = l-1, n
						all = append(all, of)
					}
				}
			}
		}
	}
	return all, nil
}

// manyAlike is a job of a few parts, each wanted many times, so that rows take several pieces.
func manyAlike(seed uint64) stock.Job {
	const mm = stock.Millimeter
	r := rand.New(rand.NewPCG(seed, 2))
	job := stock.Job{Title: "many alike", Saw: stock.Saw{Kerf: stock.Length(r.IntN(5)) * mm}}
	sheet := stock.Stock{Name: "sheet", Material: "ply", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm, Trim: stock.Length(r.IntN(2)*5) * mm}
	if r.IntN(3) == 0 {
		sheet = stock.Stock{Name: "board", Material: "ply", Kind: stock.Board, Grain: stock.GrainLength, Length: 2400 * mm, Width: 300 * mm, Thickness: 18 * mm}
	}
	job.Stock = []stock.Stock{sheet}
	for i := range 2 + r.IntN(3) {
		job.Parts = append(job.Parts, stock.Part{
			Name: fmt.Sprint("part ", i), Material: "ply", Thickness: 18 * mm, Count: 2 + r.IntN(14),
			Length: stock.Length(150+r.IntN(500)) * mm, Width: stock.Length(40+r.IntN(200)) * mm,
		})
	}
	return job
}

// What a row of the setups says is enough to know every piece in hand and its cuts, also
// where they are unequal.
func TestARowSaysWhichPieceGetsHowManyCuts(t *testing.T) {
	inOrder := func(a, b inHandOf) int {
		return cmp.Or(cmp.Compare(a.layout, b.layout), cmp.Compare(a.by, b.by), strings.Compare(fmt.Sprint(a), fmt.Sprint(b)))
	}
	unequal := 0
	check := func(name string, p *cutplan.Plan) {
		say := teller{p, namesOf(p, "H7KMQ"), stock.Ruler{}}
		for _, g := range p.Setups() {
			for _, row := range setupRows(say, g) {
				var want []inHandOf
				sum, differ := 0, false
				for _, h := range row.Pieces {
					of := inHandOf{layout: h.Layout, by: h.By, rest: h.Rest, stock: h.Stock, cuts: len(h.Cuts)}
					if h.Stock {
						of.by, of.rest = 0, false
					}
					want = append(want, of)
					sum += of.cuts * p.Layouts[h.Layout].Repeat
					differ = differ || of.cuts != want[0].cuts
				}
				if differ {
					unequal++
				}
				said := row.inHand(p)
				got, err := readInHand(said)
				slices.SortFunc(got, inOrder)
				slices.SortFunc(want, inOrder)
				if err != nil || !slices.Equal(got, want) {
					t.Errorf("%s: %q reads %v, %v; want %v", name, said, got, err, want)
				}
				if sum != row.Count {
					t.Errorf("%s: %q has %d cuts, not %d", name, said, sum, row.Count)
				}
			}
		}
	}
	for seed := range uint64(300) {
		p := samples.Random(seed)
		check(fmt.Sprint("sample ", seed), &p)
		many, err := cutplan.Make(context.Background(), manyAlike(seed), cutplan.Options{Iterations: 10})
		if err != nil {
			t.Fatal(err)
		}
		check(fmt.Sprint("seed ", seed), many)
	}
	for _, e := range examples(t) {
		check(e.name, e.plan)
	}
	if unequal < 200 {
		t.Errorf("only %d rows have unequal cuts", unequal)
	}
}
