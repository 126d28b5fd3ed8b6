package report

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

const foot = 12 * stock.Inch

// estimatedPlan is a plan of nothing but an estimate: ten blanks of a board foot
// each, of which the grade yields five sixths and practice seven tenths.
func estimatedPlan(t *testing.T, quarter, grade string, yield int) *cutplan.Plan {
	t.Helper()
	q, err := stock.ParseQuarter(quarter)
	if err != nil {
		t.Fatal(err)
	}
	r := stock.Rough{Material: "ash", Quarter: q, Grade: stock.GradeOf(grade), Price: 810}
	if yield > 0 {
		r.Yield = stock.Percent(yield)
	}
	j := stock.Job{Title: "Stool", Rough: []stock.Rough{r}, Parts: []stock.Part{
		{Name: "seat", Material: "ash", Length: foot, Width: foot, Thickness: 3 * stock.Inch / 4, Count: 10},
	}}
	p := &cutplan.Plan{Job: j}
	for _, b := range j.Blanks() {
		p.Bill = append(p.Bill, cutplan.Blank{Blank: b, Mark: "A"})
	}
	p.Estimates = []cutplan.Estimate{{Estimate: r.Estimate(j.Blanks()), Blanks: []cutplan.Wanted{{Blank: 0, Count: 10}}}}
	return p
}

func TestSummaryTellsWhatToAskFor(t *testing.T) {
	for _, tt := range []struct {
		quarter, grade string
		yield          int
		row            string
		says, omits    []string
	}{
		{"4/4", "FAS", 0, "12 to 15 4/4 ash FAS 10.00 83 1/3 to 70 8.10 97.20 to 121.50",
			[]string{"4/4 ash: some boards at least 12 in long, and some 12 in wide or blanks glued up (boards of this grade may be as small as 96 x 6 in). For A seat (10).",
				"An estimate, and not in the costs above", "least yield that the grade promises", "enter each as a [[board]]"}, []string{"Buy\n", "Take from"}},
		{"8/4", "No. 2A Common", 0, "40 8/4 ash No. 2A Common 20.00 50 8.10 324.00", nil, nil},
		{"4/4", "FAS", 80, "13 4/4 ash FAS 10.00 80 8.10 105.30", nil, []string{"least yield that the grade promises"}},
	} {
		p := estimatedPlan(t, tt.quarter, tt.grade, tt.yield)
		var b bytes.Buffer
		if err := Summary(&b, p, Options{Ruler: inches}); err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.FieldsFunc(b.String(), func(r rune) bool { return r == ' ' }), " ")
		for _, want := range append(tt.says, tt.row, "Nothing is cut yet", estimatesHeading) {
			if !strings.Contains(text, want) {
				t.Errorf("%s %s: no %q in\n%s", tt.quarter, tt.grade, want, text)
			}
		}
		for _, not := range tt.omits {
			if strings.Contains(text, not) {
				t.Errorf("%s %s: %q in\n%s", tt.quarter, tt.grade, not, text)
			}
		}
		if _, _, err := PDF(p, Options{}); err != nil {
			t.Error(err)
		}
	}
}

func TestJSONHasEstimates(t *testing.T) {
	type amount struct {
		BoardFeet int `json:"board_feet"`
		Yield     float64
		Cost      json.Number
	}
	type estimate struct {
		Material, Quarter, Grade    string
		Net, Price, Longest, Widest json.Number
		Least, Usual                amount
		Blanks                      []struct {
			Part  string
			Count int
		}
	}
	var got struct {
		Complete, Proven bool
		Cost, Bound      json.Number
		Estimates        []estimate
	}
	if err := json.Unmarshal(JSON(estimatedPlan(t, "4/4", "FAS", 0), Options{}), &got); err != nil {
		t.Fatal(err)
	}
	if !got.Complete || !got.Proven || got.Cost != "0.00" || got.Bound != "0.00" || len(got.Estimates) != 1 {
		t.Fatalf("%+v", got)
	}
	e := got.Estimates[0]
	if len(e.Blanks) != 1 || e.Blanks[0].Part != "seat" || e.Blanks[0].Count != 10 {
		t.Errorf("blanks %+v", e.Blanks)
	}
	e.Blanks = nil
	want := estimate{Material: "ash", Quarter: "4/4", Grade: "FAS", Net: "10.00", Price: "8.10", Longest: "304.8", Widest: "304.8",
		Least: amount{12, 5.0 / 6, "97.20"}, Usual: amount{15, 0.7, "121.50"}}
	if d := cmp.Diff(want, e); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if data := JSON(bench(), Options{}); bytes.Contains(data, []byte("estimates")) {
		t.Error("a plan without estimates speaks of some")
	}
}
