package report

import (
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

func TestElevationsAreOnAPageAndAsPictures(t *testing.T) {
	p := bench()
	for _, o := range []Options{{Case: chest()}, {Case: chest(), Paper: Letter, Ruler: inches}} {
		found := 0
		for _, page := range lay(p, whole(o)).Pages {
			if err := drawing.CheckLegible(page); err != nil {
				t.Error(err)
			}
			for _, text := range page.Texts() {
				if strings.HasPrefix(text.String, "The case at scale 1:") {
					found++
				}
			}
		}
		if found != 1 {
			t.Errorf("%d pages tell the scale of the case", found)
		}
		var views []string
		for _, e := range Elevations(p, o) {
			views = append(views, e.View)
			if !strings.Contains(string(e.SVG), "<title>Potting bench, plan "+Identity(p, o)+", "+e.View+", scale 1:") {
				t.Errorf("%s does not tell its plan and scale", e.View)
			}
		}
		if got := strings.Join(views, " "); got != "front side section plan" {
			t.Errorf("views %s", got)
		}
	}
}

func TestWithoutACaseThereAreNoElevations(t *testing.T) {
	flat := &casework.Case{Solids: []casework.Solid{{Role: "side", Size: casework.Point{stock.Inch, 0, stock.Inch}}}}
	for _, o := range []Options{{}, {Case: &casework.Case{}}, {Case: flat}} {
		if got := Elevations(bench(), o); got != nil {
			t.Errorf("%d elevations of nothing", len(got))
		}
	}
}
