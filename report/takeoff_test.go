package report

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// board is a case of one shelf that lies on the floor: 1000 x 300 x 20 mm, 6 dm3,
// at 700 kg/m3 4.2 kg. Its upper face of 0.3 m2 is wear; front edge 1000 x 20 and
// ends 2 x 300 x 20 are outside, 0.032 m2; underside and rear edge inside, 0.32 m2.
// One coat of each at 1 m2 a liter: 0.652, so 0.7. Its front edge and a tenth are
// 1.1 m.
func board() *casework.Case {
	const mm = stock.Millimeter
	return &casework.Case{
		Parts: []stock.Part{{Name: "shelf", Material: "ply", Count: 1, Length: 1000 * mm, Width: 300 * mm, Thickness: 20 * mm}},
		Solids: []casework.Solid{{Role: "shelf", Size: casework.Point{1000 * mm, 300 * mm, 20 * mm},
			Along: casework.X, Across: casework.Y, Through: casework.Z}},
		Materials: map[string]casework.Material{"ply": {Properties: casework.Properties{Density: casework.Property{Value: 700, Source: "test"}}}},
		Finish:    casework.Finish{Outside: 1, Inside: 1, Wear: 1, Coverage: 1},
		Hardware:  []casework.Hardware{{Name: "shelf pins", Count: 4, How: "four for each loose shelf"}},
		Checks: []casework.Check{{Subject: "shelf deflection", Of: "shelf", Verdict: casework.Within, Text: "It sags by 1 mm.",
			States:      []string{"empty: 1"},
			Inputs:      []casework.Figure{{Name: "span", Value: "1000", Unit: "mm"}},
			Results:     []casework.Figure{{Name: "sag", Value: "1.25", Unit: "mm"}},
			Assumptions: []string{"The load is even."}, Source: "a handbook"}},
	}
}

func TestPartListTellsWhatACaseTakes(t *testing.T) {
	var b bytes.Buffer
	if err := PartList(&b, stock.Job{}, Options{Case: board()}); err != nil {
		t.Fatal(err)
	}
	words := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{
		"What else it takes", "weight 4.2 kg all parts", "center of gravity 500, 150, 10 from",
		"surface outside 0.03 m2 1 coat", "surface inside 0.32 m2 1 coat", "surface that wears 0.30 m2 1 coat",
		"finish 0.7 liters 1 m2 per liter and coat", "edging 1.1 m front", "shelf pins 4 four", "ply 700 kg/m3 (test)",
		"Checks shelf deflection shelf, within the limit: It sags by 1 mm. empty: 1 Assumed: The load is even. Source: a handbook.",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("no %q in %s", want, words)
		}
	}
}

func TestPartListNamesMaterialsWithoutDensity(t *testing.T) {
	c := board()
	c.Materials = nil
	var b bytes.Buffer
	if err := PartList(&b, stock.Job{}, Options{Case: c}); err != nil {
		t.Fatal(err)
	}
	if got := b.String(); !strings.Contains(got, "Weights of ply are not told: give each a wood or a density in a [[material]].") || strings.Contains(got, "kg") {
		t.Error(got)
	}
}

func TestPlanFileTellsWhatACaseTakes(t *testing.T) {
	var got struct {
		Takes  struct{ Hardware []struct{ Count int } }
		Checks []struct{ Verdict string }
	}
	data := JSON(bench(), Options{Case: board()})
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"weight": 4200`, `"center_of_gravity": [`, `"wear": 0.3000`, `"volume": 0.7`, `"edging": 1100`, `"value": 1.25`} {
		if !bytes.Contains(data, []byte(want)) {
			t.Errorf("no %s in the plan file", want)
		}
	}
	if len(got.Checks) != 1 || got.Checks[0].Verdict != "within the limit" || len(got.Takes.Hardware) != 1 {
		t.Errorf("%+v", got)
	}
	if bare := JSON(bench(), Options{}); bytes.Contains(bare, []byte(`"takes"`)) || bytes.Contains(bare, []byte(`"checks"`)) {
		t.Error("a job without a case has takes or checks")
	}
}
