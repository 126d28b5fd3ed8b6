package report

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
	"sawbill/report/internal/label"
	"sawbill/report/internal/paper"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

func TestThereIsALabelForEveryPieceInCuttingOrder(t *testing.T) {
	p := bench()
	var parts []string
	keep := 0
	for _, l := range labels(p, namesOf(p, ""), Options{}) {
		if l.Mark == "keep" {
			keep++
			continue
		}
		if keep > 0 {
			t.Errorf("the label of %s stands behind those of offcuts", l.Name)
		}
		parts = append(parts, l.Mark+" "+l.Of+": "+l.Where)
	}
	want := []string{
		"A 1 of 1: layout 1, cut 3",
		"B 1 of 3: layout 1, cut 4",
		"B 2 of 3: layout 1, cut 5",
		"C 1 of 4: layout 1, cut 8",
	}
	if got := parts[:len(want)]; strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("the first labels are\n%s", strings.Join(got, "\n"))
	}
	pieces, offcuts := 0, 0
	for _, l := range p.Layouts {
		for _, n := range l.Leaves() {
			switch n.Use {
			case cutplan.Part:
				pieces += l.Repeat
			case cutplan.Offcut:
				offcuts += l.Repeat
			}
		}
	}
	if len(parts) != pieces || keep != offcuts {
		t.Errorf("%d labels for %d pieces, %d for %d offcuts", len(parts), pieces, keep, offcuts)
	}
}

func TestLabelsOfEqualLayoutsTellTheCopy(t *testing.T) {
	p := bench()
	p.Layouts = p.Layouts[2:3]
	p.Layouts[0].Repeat = 2
	var got []string
	for _, l := range labels(p, namesOf(p, ""), Options{}) {
		got = append(got, l.Name+", "+l.Where)
	}
	want := "shelf, layout 1, sheet 1 of 2, cut 2\nshelf, layout 1, sheet 2 of 2, cut 2\n" +
		"offcut 3, layout 1, sheet 1 of 2, cut 1\noffcut 1, layout 1, sheet 1 of 2, cut 2\n" +
		"offcut 4, layout 1, sheet 2 of 2, cut 1\noffcut 2, layout 1, sheet 2 of 2, cut 2"
	if said := strings.Join(got, "\n"); said != want {
		t.Errorf("got\n%s\nwant\n%s", said, want)
	}
}

// A turned part has its length along the other way of the stock.
func TestTheArrowIsTheGrainOfThePieceAsItIsCut(t *testing.T) {
	for _, tt := range []struct {
		in     stock.Grain
		turned bool
		want   label.Grain
	}{
		{stock.GrainLength, false, label.Along}, {stock.GrainLength, true, label.Across},
		{stock.GrainWidth, false, label.Across}, {stock.GrainWidth, true, label.Along},
		{stock.GrainAny, true, label.NoGrain},
	} {
		if got := grainOf(tt.in, tt.turned); got != tt.want {
			t.Errorf("%v, turned %v: %v, want %v", tt.in, tt.turned, got, tt.want)
		}
	}
}

func TestLabelsTellGangsDryFitsAndTheCase(t *testing.T) {
	p := bench()
	b := &p.Bill[3]
	b.Gang, b.Spare, b.Part.DryFit, b.Length = 3, 1, true, 3*b.Length
	p.Bill[4].Part = chest().Parts[1] // four drawer sides in two drawers
	said := make(map[string][]string)
	for _, l := range labels(p, namesOf(p, ""), Options{Case: chest()}) {
		said[l.Mark] = append(said[l.Mark], l.Name+"|"+l.Finished+"|"+strings.Join(l.Lines, "|"))
	}
	if got, want := said["D"][0], "3 x edging slat, gang|finished 900 x 20 x 18 each|birch ply 18|holds 2 wanted and 1 spare|after the dry fit"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	for i, want := range []string{"drawer 1", "drawer 1", "drawer 2", "drawer 2"} {
		if got := said["E"][i]; !strings.Contains(got, "; "+want) {
			t.Errorf("drawer side %d is for %q, want %s", i+1, got, want)
		}
	}
}

// Every text of a label lies within its own lines, legible, whether labels are cut apart or
// lie on sheets of their own.
func TestNothingOnALabelCrossesTheCutLines(t *testing.T) {
	options := []Options{{}, {Paper: Letter, Ruler: inches}, {Case: chest()}}
	for _, p := range []*cutplan.Plan{bench(), many(300)} {
		for _, o := range options {
			labelsKeepApart(t, p, o, nil)
		}
	}
	for seed := range uint64(300) {
		p := samples.Random(seed)
		labelsKeepApart(t, &p, options[seed%3], rand.New(rand.NewPCG(seed, 9)))
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// labelsKeepApart looks at the labels of a plan on plain paper and, with random numbers, on
// sheets of labels that a job can ask for.
func labelsKeepApart(t *testing.T, p *cutplan.Plan, o Options, r *rand.Rand) {
	t.Helper()
	size := o.Paper.size()
	b := paper.New(size, "title", "", "foot")
	grid := label.New(b.Width(), b.Height()-10)
	if r != nil && r.IntN(3) > 0 {
		grid = label.Grid{Columns: 1 + r.IntN(4), Rows: 1 + r.IntN(10), Width: size.Width, Height: size.Height, Sides: 8 * r.Float64(), Top: 12 * r.Float64(),
			ColumnGap: 2 * r.Float64(), RowGap: r.Float64() / 2, Sheet: true}
	}
	all := labels(p, namesOf(p, ""), o)
	if r != nil {
		all = all[:min(len(all), 30)]
	}
	for k := range all {
		all[k].Job, all[k].Plan = "a job with a title that is long enough for any wall", "7K3Q-21"
		if r != nil && r.IntN(2) == 0 {
			all[k].Piece.Edge, all[k].Piece.End, all[k].Piece.Inside = "front", "right", r.IntN(2) == 0
			all[k].Piece.Edged = edging.Sides{Lower: r.IntN(2) == 0, Upper: r.IntN(2) == 0, Left: r.IntN(2) == 0, Right: r.IntN(2) == 0}
		}
	}
	for n, page := range grid.Pages(all) {
		if err := drawing.CheckLegible(page); err != nil {
			t.Errorf("page %d: %v", n+1, err)
		}
		var cells []drawing.Rect
		for i := range grid.Columns * grid.Rows {
			cells = append(cells, grid.Cell(i).Inset(1))
		}
		for _, text := range page.Texts() {
			if !slices.ContainsFunc(cells, func(c drawing.Rect) bool { return c.Contains(text.Box()) }) {
				t.Errorf("page %d: %q at %.1f crosses a cut line", n+1, text.String, text.Box())
			}
		}
	}
}

// many is the bench with so many parts of one size and different names.
func many(parts int) *cutplan.Plan {
	m := samples.New(bench().Job)
	for i := range parts {
		b := m.Plan.Bill[1]
		b.Part.Name, b.Mark, b.Count = fmt.Sprintf("shelf %d", i), cutplan.Mark(i), 1
		m.Plan.Bill = append(m.Plan.Bill, b)
	}
	for at := len(m.Plan.Bill) - parts; at < len(m.Plan.Bill); at += 2 {
		m.Layout(0, 1, m.Rips(0, m.Crosscuts(300*stock.Millimeter, m.Part(at), m.Part(at+1), m.Rest()), m.Rest()))
	}
	p := m.Finished(0)
	return &p
}

func TestEveryPageOfLabelsSaysHowToUseThem(t *testing.T) {
	for _, o := range []Options{{}, {Paper: Letter}} {
		marks, heads := 0, 0
		all := lay(many(300), whole(o)).Pages
		for _, page := range all {
			if err := drawing.CheckLegible(page); err != nil {
				t.Fatal(err)
			}
			for _, text := range page.Texts() {
				if strings.HasPrefix(text.String, "Print these pages on one side only.") {
					heads++
				}
				if text.String == "1 of 1" {
					marks++
				}
			}
		}
		if want := (300 + 300 + 17) / 18; marks != 300 || heads < want {
			t.Errorf("%d labels of parts on %d pages, want 300 on %d", marks, heads, want)
		}
	}
}

// A label says what is done next with its piece, with the setting: the first step of its
// milling that has one, or what is laid out on it.
func TestALabelSaysWhatIsNext(t *testing.T) {
	w := labelWriter{ruler: stock.Ruler{}}
	part := stock.Part{Length: 700 * stock.Millimeter, Width: 300 * stock.Millimeter, Thickness: 18 * stock.Millimeter}
	trimmed := part
	trimmed.Allowance = stock.Allowance{End: 10 * stock.Millimeter, Ends: 2}
	fitted := trimmed
	fitted.DryFit = true
	for _, tt := range []struct {
		part  stock.Part
		marks []string
		want  string
	}{
		{part, nil, ""},
		{part, []string{"dado", "shelf pins"}, "next: lay out dado"},
		{trimmed, []string{"dado"}, "next: stop at 700"},
		{fitted, nil, "next: dry fit, then stop at 700"},
	} {
		b := cutplan.Blank{Blank: tt.part.Blank(stock.Sheet)}
		if got := w.next(b, 18*stock.Millimeter, place{marks: tt.marks}); got != tt.want {
			t.Errorf("%q, want %q", got, tt.want)
		}
	}
}
