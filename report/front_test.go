package report

import (
	"slices"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock/casework"
)

// What is missing is told before what to buy, and which blanks and why on the
// same page.
func TestTheFirstPageSaysWhereThePlanFallsShort(t *testing.T) {
	var said []string
	first := lay(incomplete(), Options{Pages: AllPages}).Pages[0]
	for _, text := range first.Texts() {
		said = append(said, text.String)
	}
	at := -1
	for _, want := range []string{"NOT COMPLETE: 5 blanks could not be cut.", "Buy", "Not cut", "leg", "cleat", "Keep"} {
		next := slices.Index(said, want)
		if next <= at {
			t.Errorf("%q is line %d, want it below line %d", want, next, at)
		}
		at = next
	}
}

func TestWhatToBuyIsInTheLargestTypeOfTheTables(t *testing.T) {
	sizes := make(map[string]float64)
	page := lay(bench(), Options{Pages: AllPages}).Pages[0]
	for _, text := range page.Texts() {
		sizes[text.String] = text.Size
	}
	if sizes["birch 18, 8x4"] < 14 || sizes["in all"] < 14 {
		t.Errorf("what to buy is in %v pt, the sum in %v pt", sizes["birch 18, 8x4"], sizes["in all"])
	}
	if sizes["birch 18, 8x4"] <= sizes["layout"] {
		t.Error("what to buy is no larger than the rest")
	}
	if err := drawing.CheckWriting(page); err != nil {
		t.Error(err)
	}
}

func TestTheFirstPageNamesWhatElseToBuy(t *testing.T) {
	var got []string
	for _, row := range alsoToBuy(Options{Case: board()}, inches).rows {
		got = append(got, strings.Join(row[1:], " "))
	}
	if want := "4 shelf pins; 3.7 ft edging, 10 % to spare; 0.7 liters finish"; strings.Join(got, "; ") != want {
		t.Errorf("%q, want %q", got, want)
	}
	if rows := alsoToBuy(Options{}, inches).rows; rows != nil {
		t.Errorf("%q without a case", rows)
	}
}

// What a case must not be built without heeding is said once on the first page, on the
// phone's page and on the terminal: a load beyond its limit, and that the case can tip.
func TestACaseWarnsWhereItIsBought(t *testing.T) {
	sags := casework.Check{Subject: "shelf deflection", Of: "shelf", Verdict: casework.Beyond, Text: "It sags some 7 mm."}
	const sagging, see = "shelf, beyond the limit: It sags some 7 mm.", "; see Checks, which --pages checks prints."
	check := func(v casework.Verdict) *casework.Case {
		return &casework.Case{Checks: []casework.Check{sags, sags, {Subject: "tipping", Of: "case", Verdict: v}}}
	}
	tests := []struct {
		reason string
		of     *casework.Case
		want   []string
	}{
		{"no case", nil, nil},
		{"all within", &casework.Case{Checks: []casework.Check{{Subject: "shelf deflection", Verdict: casework.Within}}}, nil},
		{"tips", check(casework.Tips), []string{sagging, "It tips in a state that was checked: anchor it to the wall" + see}},
		{"stands in what was checked", check(casework.Stands), []string{sagging, "It can tip: anchor it to the wall" + see}},
		{"not checked", &casework.Case{Cautions: []casework.Caution{{Subject: "tipping", Text: "Fix it to the wall."}}},
			[]string{"It may tip, which was not checked: anchor it to the wall; see the cautions."}},
	}
	for _, tt := range tests {
		o := Options{Case: tt.of}
		if got := warningsOf(o); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %q, want %q", tt.reason, got, tt.want)
		}
		var first, terminal strings.Builder
		for _, text := range lay(bench(), whole(o)).Pages[0].Texts() {
			first.WriteString(text.String + " ")
		}
		if err := Summary(&terminal, bench(), o); err != nil {
			t.Fatal(err)
		}
		front, _, _ := strings.Cut(string(HTML(bench(), o)), checksHeading+"</h2>")
		for _, want := range tt.want {
			for where, said := range map[string]string{"first page": first.String(), "terminal": terminal.String(), "phone": front} {
				if n := strings.Count(said, want); n != 1 {
					t.Errorf("%s: the %s tells it %d times", tt.reason, where, n)
				}
			}
		}
	}
	if got := warningsOf(Options{Case: check(casework.Tips), Rest: &Rest{}}); got != nil {
		t.Errorf("the plan of a rest says %q again", got)
	}
}
