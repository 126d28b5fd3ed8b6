package progress

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// A lost gang of five takes its two bad parts along; the bad parts of other blanks stay.
func TestLostBlankTakesItsBadPartsAlong(t *testing.T) {
	b := cutplan.Blank{Mark: "F"}
	b.Part = stock.Part{Name: "divider", Count: 5}
	b.Gang, b.Layers, b.Count = 5, 1, 1
	s := Begin(&cutplan.Plan{}, Made{Blank: b})
	for _, e := range []Event{{"spoiled", "F:2"}, {"lost", "F"}} {
		if err := s.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	if is := s.Blanks()[0]; is.Parts != 0 || is.Bad != 0 {
		t.Errorf("a lost gang of five gives %d parts, %d of them bad; want none", is.Parts, is.Bad)
	}
	if err := s.Apply(Event{"good", "F"}); err != nil {
		t.Fatal(err)
	}
	if is := s.Blanks()[0]; is.Parts != 5 {
		t.Errorf("the gang made instead gives %d parts, want 5", is.Parts)
	}
}
