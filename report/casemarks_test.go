package report

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"

	"github.com/google/go-cmp/cmp"
)

// markedCase has a third of 100 mm marked, and eight lines of which each is
// rounded by itself: 2/3 of 100 is 66.7, not 2 x 33.3.
func markedCase() *casework.Case {
	const mm = stock.Millimeter
	var sixths []stock.Length
	for i := range stock.Length(8) {
		sixths = append(sixths, i*100*mm/6)
	}
	return &casework.Case{
		Parts: []stock.Part{{Name: "side"}, {Name: "top"}},
		Sizes: []stock.Derivation{{Dimension: "outside width", Sum: stock.Sum{{Times: 2, Value: 150 * mm, Label: "bay"}}}},
		Marks: []casework.Mark{
			{Part: 0, On: "left, inner face", What: "slide line", Measure: casework.Measure{From: casework.Face{Side: casework.Lower, Extent: casework.End}, At: sixths},
				Spacers: []stock.Length{100 * mm / 3}, Note: "bay 1"},
			{Part: 0, On: "inner face", What: "shelf pins", Measure: casework.Measure{From: casework.Face{Side: casework.Lower, Extent: casework.End}, At: []stock.Length{50 * mm}},
				Across: casework.Measure{From: casework.Face{Side: casework.Front, Extent: casework.Edge}, At: []stock.Length{37 * mm, 263 * mm}}},
			{Part: 1, On: "inner face", What: "dado", Measure: casework.Measure{From: casework.Face{Side: casework.Left, Extent: casework.End}, At: []stock.Length{30 * mm}},
				Width: 18 * mm, Depth: 6 * mm},
		},
	}
}

func TestCaseMarksAreRoundedOneByOne(t *testing.T) {
	var b bytes.Buffer
	if err := caseMarks(markedCase(), stock.Ruler{}).text(&b); err != nil {
		t.Fatal(err)
	}
	want := `
  part  where             mark        from the    at (mm)                              wide  deep  note
  side  left, inner face  slide line  bottom end  0, ≈16.65, ≈33.3, 50, ≈66.65, ≈83.3              bay 1
                                                  100, ≈116.65
                          spacers                 ≈33.3
        inner face        shelf pins  bottom end  50
                                      front edge  37, 263
  top   inner face        dado        left end    30                                     18     6
`
	if d := cmp.Diff(want, "\n"+b.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// The pages list the marks after the cutting bill, and no writing touches.
func TestPagesListTheMarksOfACase(t *testing.T) {
	for _, o := range []Options{{Case: markedCase()}, {Case: markedCase(), Paper: Letter, Ruler: inches}} {
		listed := false
		for _, page := range lay(bench(), whole(o)).Pages {
			if err := drawing.CheckLegible(page); err != nil {
				t.Error(err)
			}
			for _, text := range page.Texts() {
				listed = listed || text.String == marksHeading
			}
		}
		if !listed {
			t.Error("the marks are missing")
		}
	}
}

// What can be drawn is drawn, on the face that it is on, and not listed as well.
func TestPagesDrawTheMarksOfACase(t *testing.T) {
	const mm = stock.Millimeter
	c := chest()
	c.Marks = []casework.Mark{{Part: 0, On: "inner face", Spots: []casework.Spot{{Solid: 0, Piece: "left", Face: casework.Face{Side: casework.Inner}}}, What: "slide line",
		Measure: casework.Measure{From: casework.Face{Side: casework.Lower, Extent: casework.End}, At: []stock.Length{120 * mm, 340 * mm}}}}
	for _, o := range []Options{{Case: c}, {Case: c, Paper: Letter, Ruler: inches}} {
		drawn, listed := 0, 0
		for _, page := range lay(bench(), benchOnly(o)).Pages {
			if err := drawing.CheckLegible(page); err != nil {
				t.Error(err)
			}
			for _, text := range page.Texts() {
				switch text.String {
				case o.Ruler.Print(120*mm) + " slide", o.Ruler.Print(340*mm) + " slide":
					drawn++
				case "slide line":
					listed++
				}
			}
		}
		if drawn != 2 || listed != 0 {
			t.Errorf("%d lines are drawn, %d listed", drawn, listed)
		}
		if page := string(HTML(bench(), o)); !strings.Contains(page, o.Ruler.Print(340*mm)+" slide") {
			t.Error("the web page does not draw them")
		}
	}
}

// Other programs get exact figures: a third of 100 mm to the unit of 25 nm.
func TestJSONOfACase(t *testing.T) {
	var got struct {
		Case struct {
			Sizes []struct {
				Name string
				Size json.Number
			}
			Marks []struct {
				Part, On, Mark, From, Note string
				At, Spacers                []json.Number
				Width, Depth               json.Number
				Across                     struct {
					From string
					At   []json.Number
				}
			}
		}
	}
	if err := json.Unmarshal(JSON(bench(), Options{Case: markedCase()}), &got); err != nil {
		t.Fatal(err)
	}
	c := got.Case
	if len(c.Sizes) != 1 || c.Sizes[0].Name != "outside width" || c.Sizes[0].Size != "300" || len(c.Marks) != 3 {
		t.Fatalf("case = %+v", c)
	}
	slide, pins, dado := c.Marks[0], c.Marks[1], c.Marks[2]
	if slide.Part != "side" || slide.From != "bottom end" || slide.At[1] != "16.66665" || slide.Spacers[0] != "33.333325" || slide.Width != "" {
		t.Errorf("slides %+v", slide)
	}
	if pins.Across.From != "front edge" || len(pins.Across.At) != 2 || pins.Across.At[1] != "263" {
		t.Errorf("pins %+v", pins)
	}
	if dado.Width != "18" || dado.Depth != "6" || dado.Across.From != "" {
		t.Errorf("dado %+v", dado)
	}
	if strings.Contains(string(JSON(bench(), Options{})), `"case"`) {
		t.Error("a job without a case has one")
	}
}

// benchOnly prints the pages of the bench alone.
func benchOnly(o Options) Options {
	o.Pages = BenchPages
	return o
}
