package report

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// printed is a row of the steps, read back.
type printed struct {
	first, last int
	hand, how   string
	marks       []string
	set         string         // "mark ", "saw off ", or nothing at fence and stop
	at          []stock.Length // what it is set to; one for each cut if marked
	far         []far          // of trim told in one row
}

// far is a far side and the size that it is trimmed to.
type far struct {
	side string // "edge" or "end"
	to   stock.Length
}

// printedSteps reads the steps of layout i back from their table.
func printedSteps(t *testing.T, p *cutplan.Plan, i int) []printed {
	t.Helper()
	l := p.Layouts[i]
	var rows []printed
	for _, row := range stepTable(p, i, namesOf(p, ""), stock.Ruler{}).Rows {
		from, to, isRange := strings.Cut(row[0], "–")
		if !isRange {
			to = from
		}
		r := printed{hand: row[1], how: row[2]}
		r.first, _ = strconv.Atoi(from)
		r.last, _ = strconv.Atoi(to)
		set := row[markColumn]
		if l.Stock.Kind == stock.Board {
			set = row[markColumn+1]
			if row[markColumn] != "" {
				r.marks = strings.Split(row[markColumn], ", ")
			}
		}
		for _, r.set = range []string{"mark ", "saw off ", ""} {
			if strings.HasPrefix(set, r.set) {
				break
			}
		}
		if _, sizes, more := strings.Cut(beforeBreakdown(r.how), "; far "); more {
			for _, of := range strings.Split(sizes, ", far ") {
				side, figure, _ := strings.Cut(of, " to ")
				at, err := stock.ParseLength(figure, stock.Millimeters)
				if err != nil {
					t.Fatal(err)
				}
				r.far = append(r.far, far{side, at})
			}
		}
		for _, figure := range strings.Split(strings.TrimSuffix(strings.TrimPrefix(set, r.set), " each"), ", ") {
			at, err := stock.ParseLength(figure, stock.Millimeters)
			if err != nil {
				t.Fatal(err)
			}
			r.at = append(r.at, at)
		}
		rows = append(rows, r)
	}
	return rows
}

// beforeBreakdown is how without its word on which cuts are beyond the saw.
func beforeBreakdown(how string) string {
	how, _, _ = strings.Cut(how, "; all BREAKDOWN")
	how, _, _ = strings.Cut(how, "; BREAKDOWN: ")
	return how
}

// sizeOf is a rectangle on the bench.
type sizeOf struct{ length, width stock.Length }

// sawyer saws what a table of steps says, knowing nothing but the table, the size of the
// sheet or board and the kerf.
type sawyer struct {
	t         *testing.T
	kerf      stock.Length
	off, rest map[int]sizeOf
	trims     *int
}

// take finds the piece in hand for cut number n of a row, the k-th of its pieces.
func (s sawyer) take(r printed, n, k int) sizeOf {
	words := strings.NewReplacer(":", "", ",", "").Replace(r.hand)
	pile, from := s.off, 0
	switch fields := strings.Fields(words); fields[0] {
	case "whole", "trimmed", "piece", "rest":
		switch fields[0] {
		case "rest":
			pile = s.rest
			from, _ = strconv.Atoi(fields[2])
		case "piece":
			from, _ = strconv.Atoi(fields[2])
		case "trimmed":
			from = *s.trims
		}
		if n > r.first { // cut after cut along one piece
			pile, from = s.rest, n-1
		}
	default: // pieces from 1–3, 5: ... each
		if fields[0] == "rests" {
			pile = s.rest
		}
		_, list, _ := strings.Cut(r.hand, " from ")
		if fields[0] == "rests" {
			_, list, _ = strings.Cut(r.hand, " of ")
		}
		list, _, _ = strings.Cut(list, ":")
		var all []int
		for _, part := range strings.Split(list, ", ") {
			a, b, isRange := strings.Cut(part, "–")
			if !isRange {
				b = a
			}
			lo, _ := strconv.Atoi(a)
			hi, _ := strconv.Atoi(b)
			for ; lo <= hi; lo++ {
				all = append(all, lo)
			}
		}
		from = all[k]
	}
	in, ok := pile[from]
	if !ok {
		s.t.Fatalf("cut %d: %q is not on the bench", n, r.hand)
	}
	delete(pile, from)
	return in
}

func (s sawyer) work(rows []printed) {
	for _, r := range rows {
		if strings.HasPrefix(r.how, "trim") {
			whole := s.off[*s.trims]
			delete(s.off, *s.trims)
			*s.trims = r.last
			size := &whole.length
			side, _, _ := strings.Cut(strings.Replace(r.how, ";", ",", 1), ",") // of a pair the first
			if strings.HasSuffix(side, "edge") {
				size = &whole.width
			}
			if r.set == "saw off " {
				if strings.HasSuffix(side, "edge and end") {
					whole.width -= r.at[0]
				}
				*size -= r.at[0]
			} else if *size < r.at[0] {
				s.t.Fatalf("cut %d trims to more than there is", r.first)
			} else {
				*size = r.at[0]
			}
			for _, of := range r.far {
				size := &whole.length
				if of.side == "edge" {
					size = &whole.width
				}
				if *size < of.to {
					s.t.Fatalf("cut %d trims to more than there is", r.last)
				}
				*size = of.to
			}
			s.off[r.last] = whole
			continue
		}
		for n := r.first; n <= r.last; n++ {
			in := s.take(r, n, n-r.first)
			off, rest := in, in
			setting := r.at[0]
			if k := n - r.first; k > 0 && len(r.at) > 1 {
				setting = r.at[k] - r.at[k-1] - s.kerf // all marked on the piece in hand
			}
			if strings.HasPrefix(r.how, "rip") {
				off.width = setting
				rest.width -= setting + s.kerf
			} else {
				off.length = setting
				rest.length -= setting + s.kerf
			}
			if off.length > in.length || off.width > in.width {
				s.t.Fatalf("cut %d frees more than there is", n)
			}
			s.off[n] = off
			if rest.length > 0 && rest.width > 0 {
				s.rest[n] = rest
			}
		}
	}
}

// Whoever saws sheets and boards as the steps say, at the printed fences, stops and marks,
// holds the parts, offcuts and waste of their layout in the end.
func TestPrintedStopsGiveTheParts(t *testing.T) {
	sawn := 0
	for name, p := range boardPlans(t) {
		for i, l := range p.Layouts {
			s := sawyer{t, p.Job.Saw.Kerf, map[int]sizeOf{0: {l.Stock.Length, l.Stock.Width}}, map[int]sizeOf{}, new(int)}
			s.work(printedSteps(t, p, i))
			var got, want []string
			for _, pile := range []map[int]sizeOf{s.off, s.rest} {
				for piece := range maps.Values(pile) {
					got = append(got, fmt.Sprint(piece))
				}
			}
			for _, n := range l.Leaves() {
				want = append(want, fmt.Sprint(sizeOf{n.Length, n.Width}))
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("%s, layout %d: sawn %v, planned %v", name, i+1, got, want)
			}
			sawn++
		}
	}
	if sawn < 100 {
		t.Errorf("only %d sheets and boards sawn", sawn)
	}
}

// boardPlans are plans of random jobs whose lengths are whole millimeters and
// whose kerf is 3.2 mm, so that nothing is rounded when they are printed.
func boardPlans(t *testing.T) map[string]*cutplan.Plan {
	const mm = stock.Millimeter
	all := map[string]*cutplan.Plan{"bench": bench()}
	for seed := range uint64(24) {
		r := rand.New(rand.NewPCG(seed, 3))
		j := stock.Job{
			Saw:    stock.Saw{Kerf: 32 * mm / 10, BoardFirstCut: stock.FirstCut(seed % 3)},
			Offcut: stock.Offcut{Length: 300 * mm, Width: 40 * mm},
			Stock: []stock.Stock{{Name: "board", Kind: stock.Board, Material: "spruce", Length: 2400 * mm, Width: 145 * mm,
				Thickness: 38 * mm, Trim: stock.Length(seed%2) * 15 * mm, Price: 500}},
		}
		if seed%2 == 1 {
			j.Saw.RipCapacity, j.Saw.CrosscutCapacity = 500*mm, 600*mm
			j.Stock = append(j.Stock, stock.Stock{Name: "sheet", Material: "ply", Length: 1500 * mm, Width: 1000 * mm,
				Thickness: 18 * mm, Trim: stock.Length(seed%3) * 5 * mm, Price: 900})
			for i := range 3 + r.IntN(6) {
				j.Parts = append(j.Parts, stock.Part{Name: fmt.Sprint("panel ", i), Material: "ply", Thickness: 18 * mm,
					Length: stock.Length(100+r.IntN(1200)) * mm, Width: stock.Length(60+r.IntN(500)) * mm, Count: 1 + r.IntN(4)})
			}
		}
		for i := range 3 + r.IntN(6) {
			width := []stock.Length{145, stock.Length(20 + r.IntN(100))}[r.IntN(2)]
			j.Parts = append(j.Parts, stock.Part{Name: fmt.Sprint("part ", i), Material: "spruce", Thickness: 38 * mm,
				Length: stock.Length(100+r.IntN(1200)) * mm, Width: width * mm, Count: 1 + r.IntN(4)})
		}
		p, err := cutplan.Make(context.Background(), j, cutplan.Options{Iterations: 100})
		if err != nil {
			t.Fatal(err)
		}
		all[fmt.Sprint("random ", seed)] = p
	}
	return all
}

// jsonNode is what the marks need of a node of plan.json.
type jsonNode struct {
	Length   json.Number
	Use, Cut string
	Children []jsonNode
}

// nanometers25 reads millimeters of plan.json exactly.
func nanometers25(t *testing.T, n json.Number) int64 {
	t.Helper()
	whole, part, _ := strings.Cut(n.String(), ".")
	v, err := strconv.ParseInt(whole+(part + "000000")[:6], 10, 64)
	if err != nil || v%25 != 0 {
		t.Fatalf("length %s: %v", n, err)
	}
	return v / 25
}

// marks adds up where the crosscuts of n and below lie, piece by piece.
func (n jsonNode) marks(t *testing.T, kerf int64, into map[string]bool) {
	at, whole := int64(0), nanometers25(t, n.Length)
	for _, c := range n.Children {
		c.marks(t, kerf, into)
		at += nanometers25(t, c.Length)
		if n.Cut == "crosscut" && at < whole {
			into[tenthsOf(at)] = true
		}
		at += kerf
	}
}

// tenthsOf prints units of 25 nm in tenths of a millimeter, halves upwards.
func tenthsOf(units int64) string {
	tenths := (units + 2000) / 4000
	said := strconv.FormatInt(tenths/10, 10)
	if tenths%10 > 0 {
		said += "." + strconv.FormatInt(tenths%10, 10)
	}
	if units%4000 != 0 {
		said = "≈" + said
	}
	return said
}

// The running marks are recomputed from plan.json, which knows of no steps and
// no positions, and compared with the table, the diagram and the text.
func TestMarksAreThoseOfThePlanFile(t *testing.T) {
	compared := 0
	for name, p := range boardPlans(t) {
		var file struct {
			Layouts []struct {
				Kind string
				Kerf json.Number
				Root jsonNode
			}
		}
		d := json.NewDecoder(bytes.NewReader(JSON(p, Options{})))
		d.UseNumber()
		if err := d.Decode(&file); err != nil {
			t.Fatal(err)
		}
		for i, l := range file.Layouts {
			if l.Kind != "board" {
				continue
			}
			want := map[string]bool{}
			l.Root.marks(t, nanometers25(t, l.Kerf), want)
			wanted := slices.Sorted(maps.Keys(want))

			table := map[string]bool{}
			for _, r := range printedSteps(t, p, i) {
				for _, m := range r.marks {
					table[m] = true
				}
			}
			if got := slices.Sorted(maps.Keys(table)); !slices.Equal(got, wanted) {
				t.Errorf("%s, layout %d: the table has marks %v, the plan file %v", name, i+1, got, wanted)
			}
			text := map[string]bool{}
			for _, row := range markList(p, stock.Ruler{}).rows {
				if row[0] == strconv.Itoa(i+1) {
					for _, m := range strings.Split(row[3], ", ") {
						text[m] = true
					}
				}
			}
			if got := slices.Sorted(maps.Keys(text)); !slices.Equal(got, wanted) {
				t.Errorf("%s, layout %d: the text has marks %v, the plan file %v", name, i+1, got, wanted)
			}
			picture := string(LayoutSVGs(p, Options{})[i])
			for _, m := range wanted {
				if !strings.Contains(picture, ">"+m+"</text>") {
					t.Errorf("%s, layout %d: the diagram lacks the mark %s", name, i+1, m)
				}
			}
			compared += len(wanted)
		}
	}
	if compared < 50 {
		t.Errorf("only %d marks compared", compared)
	}
}
