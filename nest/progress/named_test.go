package progress

import (
	"testing"

	"sawbill/nest/cutplan"
)

// A part may have the name of another blank's mark. Its name may also hold the separators
// before a size or a count.
func TestBlanksByAwkwardNames(t *testing.T) {
	var bill []Made
	for i, name := range []string{"B", "rail: front", "a=b"} {
		b := cutplan.Blank{Mark: cutplan.Mark(i)}
		b.Part.Name, b.Part.Count, b.Gang, b.Layers, b.Count = name, 2, 1, 1, 2
		b.Length, b.Width = 500*40_000, 100*40_000
		bill = append(bill, Made{Blank: b})
	}
	for _, c := range []struct {
		said string
		want int
	}{{"B", 1}, {"rail: front", 1}, {"rail: front=400 x 80 mm", 1}, {"a=b", 2}, {"A", 0}} {
		s := Begin(&cutplan.Plan{}, bill...)
		if err := s.Apply(Event{"spoiled", c.said}); err != nil {
			t.Errorf("spoiled %s: %v", c.said, err)
		} else if s.Blanks()[c.want].Spoiled != 1 {
			t.Errorf("spoiled %s is not noted of blank %s", c.said, bill[c.want].Mark)
		}
	}
	for i, name := range []string{"A", "rail: front", "a=b"} {
		s := Begin(&cutplan.Plan{}, bill...)
		if err := s.Apply(Event{"lost", name}); err != nil {
			t.Errorf("lost %s: %v", name, err)
		} else if s.Blanks()[i].Lost != 1 {
			t.Errorf("lost %s is not noted of blank %s", name, bill[i].Mark)
		}
	}
}
