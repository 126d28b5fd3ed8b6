package drawing

import "fmt"

// CheckWriting reports the first text that touches another one, leaves the
// paper or is smaller than [SmallestSize]. Tests call it on every page.
func CheckWriting(d Drawing) error {
	paper := Rect{W: d.Width, H: d.Height}
	texts := d.Texts()
	boxes := make([]Rect, len(texts))
	for i, t := range texts {
		boxes[i] = t.Box()
		if !paper.Contains(boxes[i]) {
			return fmt.Errorf("%q leaves the paper: %.1f", t.String, boxes[i])
		}
		if t.Size < SmallestSize {
			return fmt.Errorf("%q is %v pt", t.String, t.Size)
		}
		for j := range i {
			// A hair of overlap is the rounding of positions.
			if boxes[i].Inset(0.01).Overlaps(boxes[j].Inset(0.01)) {
				return fmt.Errorf("%q at %.2f lies over %q at %.2f", t.String, boxes[i], texts[j].String, boxes[j])
			}
		}
	}
	return nil
}
