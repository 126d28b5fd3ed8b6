package report

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/ledongthuc/pdf"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/samples"
	"sawbill/report/internal/strip"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// No two texts may touch, none may leave its page, none may be smaller than can
// be read at the saw, whatever a plan holds.
func TestWritingNeverOverlapsNorLeavesThePage(t *testing.T) {
	plans := []*cutplan.Plan{bench(), incomplete(), {}}
	for seed := range uint64(15) {
		p := samples.Random(seed)
		plans = append(plans, &p)
	}
	for i, p := range plans {
		for _, o := range []Options{{Paper: A4}, {Paper: Letter, Ruler: inches}} {
			for n, page := range lay(p, whole(o)).Pages {
				if err := drawing.CheckLegible(page); err != nil {
					t.Fatalf("plan %d, page %d: %v", i, n+1, err)
				}
			}
		}
	}
}

// The pages beside the diagrams are as legible for 300 plans cut at random.
func TestSetupsAndListsAreLegible(t *testing.T) {
	for seed := range uint64(300) {
		p := samples.Random(seed)
		o := Options{Paper: Paper(seed % 2), Ruler: stock.Ruler{Units: p.Job.Units}, Pages: StorePages | SetupPages | BenchPages}
		for n, page := range lay(&p, o).Pages {
			if err := drawing.CheckLegible(page); err != nil {
				t.Fatalf("seed %d, page %d: %v", seed, n+1, err)
			}
		}
	}
}

// So are the pictures of their steps, in the least type and in the largest.
func TestPicturesOfStepsAreLegible(t *testing.T) {
	for seed := range uint64(300) {
		p := samples.Random(seed)
		names := namesOf(&p, "H7KMQ")
		for i := range p.Layouts {
			cards := stripOf(&p, i, names, stock.Ruler{Units: p.Job.Units})
			cards = cards[:min(len(cards), 40)]
			for _, s := range []strip.Strip{strip.Lowest(cards, 186), strip.Fit(cards, 186, 5000)} {
				for n, row := range s.Rows {
					if err := drawing.CheckLegible(row); err != nil {
						t.Fatalf("seed %d, layout %d, row %d: %v", seed, i+1, n+1, err)
					}
				}
			}
		}
	}
}

func TestEveryPageHasTitleAndNumber(t *testing.T) {
	all := lay(bench(), Options{Pages: AllPages}).Pages
	for i, page := range all {
		var said []string
		for _, text := range page.Texts() {
			said = append(said, text.String)
		}
		joined := strings.Join(said, "\n")
		for _, want := range []string{"Potting bench", fmt.Sprintf("page %d of %d", i+1, len(all))} {
			if !strings.Contains(joined, want) {
				t.Errorf("page %d lacks %q", i+1, want)
			}
		}
	}
}

func TestThePDFIsFoundByItsMaterials(t *testing.T) {
	data, _, err := PDF(bench(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := r.Trailer().Key("Info").Key("Keywords").Text(), "cutting plan, birch ply 18, spruce"; got != want {
		t.Errorf("keywords %q, want %q", got, want)
	}
}

func TestEqualPlansGiveEqualPDFs(t *testing.T) {
	first, _, err := PDF(bench(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	again, _, err := PDF(bench(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first, again) {
		t.Error("two PDFs of one plan differ")
	}
}

// The PDF is read back by a reader that shares no code with the writer.
func TestPDFHoldsEveryPartSizeAndStep(t *testing.T) {
	for _, p := range []*cutplan.Plan{bench(), incomplete()} {
		for _, r := range []stock.Ruler{{}, inches} {
			data, warnings, err := PDF(p, Options{Ruler: r})
			if err != nil || warnings != nil {
				t.Fatal(err, warnings)
			}
			text := readBack(t, data)
			for _, want := range wanted(p, r) {
				if !strings.Contains(text, folded(want)) {
					t.Errorf("the PDF in %s lacks %q", r.Units, want)
				}
			}
		}
	}
}

// wanted is what a reader must find: each part with its sizes, each step with
// its setting.
func wanted(p *cutplan.Plan, r stock.Ruler) []string {
	want := []string{proof(p), cover(p), deferral}
	for _, b := range p.Buy {
		want = append(want, b.Stock.Name, b.Cost.String())
	}
	thicknesses := p.Thicknesses()
	for i, b := range p.Bill {
		want = append(want, b.Name(), sawnSize(b, thicknesses[i], r), partSize(b.Part, r))
		for _, from := range thicknesses[i] {
			want = append(want, millingSteps(b.Milling(from), r))
		}
	}
	for _, l := range p.Layouts {
		if trim := l.Stock.Trim; trim > 0 {
			length, width := l.Stock.Usable()
			want = append(want, "saw off", r.Print(trim))
			if l.Root.Use == cutplan.Split {
				want = append(want, "trimmed", r.Size(length, width))
			}
		}
		for _, s := range p.Steps(l) {
			if s.Trim {
				continue // told in one row, above
			}
			off, n := r.Size(s.Off.Length, s.Off.Width), s.OffNode
			for n != nil && len(n.Children) == 1 {
				n = &n.Children[0] // it needs no cut
			}
			if n != nil && n.Use == cutplan.Part {
				b := p.Bill[n.Blank]                   // a turned part keeps its own length first
				off = ", " + r.Size(b.Length, b.Width) // behind its mark, with its name or without
			} else if n != nil && n.Use == cutplan.Waste {
				off = "waste" // nobody measures it
			}
			want = append(want, s.Cut.String(), r.Print(s.Setting), off)
		}
	}
	for _, u := range p.Unplaced {
		want = append(want, u.Reason)
	}
	return want
}

func readBack(t *testing.T, data []byte) string {
	t.Helper()
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for i := range r.NumPage() {
		text, err := r.Page(i + 1).GetPlainText(nil)
		if err != nil {
			t.Fatal(err)
		}
		all.WriteString(text)
	}
	return strings.Join(strings.Fields(all.String()), " ")
}

// folded is s as the reader gives it: lines joined, and characters beyond
// Latin-1 by their last byte. The writer maps all characters to Unicode in one
// range, and the reader counts ranges in the last byte, as the PDF standard
// (ISO 32000-1, 9.10.3, from memory) allows it to.
func folded(s string) string {
	return strings.Join(strings.Fields(strings.Map(func(r rune) rune { return r & 0xFF }, s)), " ")
}

func TestCharactersThatTheFontLacksAreWarnedOf(t *testing.T) {
	p := bench()
	p.Bill[0].Part.Name = "家 top"
	_, warnings, err := PDF(p, Options{})
	if err != nil || len(warnings) != 1 || !strings.Contains(warnings[0], "家") {
		t.Errorf("warnings %q, error %v", warnings, err)
	}
}

func TestHundredsOfPartsRunOnWithTheHeadRepeated(t *testing.T) {
	p := bench()
	for i := range 300 {
		b := p.Bill[i%6]
		b.Part.Name = fmt.Sprintf("%s %d", b.Part.Name, i)
		p.Bill = append(p.Bill, b)
	}
	bills, heads := 0, 0
	for _, page := range lay(p, Options{Pages: AllPages}).Pages {
		if err := drawing.CheckLegible(page); err != nil {
			t.Fatal(err)
		}
		for _, text := range page.Texts() {
			switch text.String {
			case "cutting bill", "cutting bill, cautions":
				bills++
			case "cut to (mm)":
				heads++
			}
		}
	}
	if bills < 3 || bills != heads {
		t.Errorf("%d pages of cutting bill with %d table heads", bills, heads)
	}
}

func TestNotesArePrintedWhereThereAreAny(t *testing.T) {
	said := func(p *cutplan.Plan) string {
		var b bytes.Buffer
		if err := PartList(&b, p.Job, Options{}); err != nil {
			t.Fatal(err)
		}
		for _, page := range lay(p, Options{Pages: AllPages}).Pages {
			for _, text := range page.Texts() {
				b.WriteString(text.String + "\n")
			}
		}
		return b.String()
	}
	p := bench()
	if got := said(p); strings.Contains(got, "note") {
		t.Errorf("a column of notes without a note:\n%s", got)
	}
	p.Bill[2].Part.Note = "spotless"
	p.Job.Parts[2].Note = "spotless"
	if got := said(p); strings.Count(got, "spotless") != 2+4 || strings.Count(got, "note") != 2 {
		t.Errorf("want the note in the part list, in the cutting bill and on four labels:\n%s", got)
	}
}

func TestBoardsSayWhatIsPlanedToWhich(t *testing.T) {
	p := bench()
	p.Bill[5].Part.Thickness = 20 * stock.Millimeter
	for i, want := range []string{"", "", "", "to be planed: E to 32", "to be planed: E to 32; F to 20"} {
		if got := planing(p, p.Layouts[i], stock.Ruler{}); got != want {
			t.Errorf("layout %d says %q, want %q", i+1, got, want)
		}
	}
}

func TestCautionsFitThePlan(t *testing.T) {
	// A word for each caution that asks for something of its own.
	told := map[string]string{"large panels": "large", "rips below 6 in": "narrow", "wider than long": "wide", "too short to run": "short", "plane or joint pieces": "milled"}
	headings := func(p *cutplan.Plan, o Options) string {
		var all []string
		for _, b := range blocks(p, o) {
			said := b.heading
			for _, c := range b.cautions {
				for phrase, word := range told {
					if b.heading == "In this plan" && strings.Contains(c, phrase) {
						said += " " + word
					}
				}
			}
			all = append(all, said)
		}
		return strings.Join(all, "; ")
	}
	boards := bench()
	boards.Layouts = boards.Layouts[3:]
	sheets := bench()
	sheets.Layouts = sheets.Layouts[2:3]
	short := bench()
	short.Layouts = short.Layouts[2:3]
	piece := &short.Layouts[0].Root.Children[0].Children[0]
	piece.Length = 304 * stock.Millimeter
	unlimited := *short
	unlimited.Job.Shortest = 0
	across := bench()
	across.Layouts = across.Layouts[1:2]
	chest := &casework.Case{Cautions: []casework.Caution{{Subject: "tipping", Text: "Fix it to the wall."}}}
	tests := []struct {
		reason string
		plan   *cutplan.Plan
		o      Options
		want   string
	}{
		{"boards, one rip of 28 mm", boards, Options{}, "In this plan narrow; Boards; At the saw, always"},
		{"one wide rip of a sheet", sheets, Options{}, "In this plan large; Sheets; At the saw, always"},
		{"a part just under 12 in long", short, Options{}, "In this plan large milled; Sheets; At the saw, always"},
		{"short at the saw, though the machines know no limit", &unlimited, Options{}, "In this plan large milled; Sheets; At the saw, always"},
		{"rips of pieces 380 mm long and 620 mm wide", across, Options{}, "In this plan wide; Sheets; At the saw, always"},
		{"a case says what to see to", sheets, Options{Case: chest}, "In this plan large; The finished case; Sheets; At the saw, always"},
	}
	for _, tt := range tests {
		if got := headings(tt.plan, tt.o); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.reason, got, tt.want)
		}
	}
}
