package diagram

import (
	"sawbill/report/internal/drawing"
)

// tag is a short text with the numbers of the cuts that it is about.
type tag struct {
	number string // on its ground, first; may be empty
	text   string
	face   drawing.Face
	size   float64 // of the text, pt
	behind bool    // the number stands behind the text
}

const (
	tagSpace = 0.9 // mm between number and text
	tagGap   = 1.8 // mm between two tags in a row
	tagsPile = 0.6 // mm between two tags in a column
)

func (t tag) width() float64 {
	w := drawing.Width(t.text, t.face, t.size)
	if t.number == "" {
		return w
	}
	if w += drawing.NumberBox(drawing.Point{}, t.number).W; t.text != "" {
		w += tagSpace
	}
	return w
}

func (t tag) height() float64 {
	h := drawing.HeightOf(t.text, t.face, t.size)
	if t.number == "" {
		return h
	}
	return max(h, drawing.NumberBox(drawing.Point{}, t.number).H)
}

// turnedWidth is how wide a turned tag is.
func (t tag) turnedWidth() float64 {
	return max(drawing.HeightOf(t.text, t.face, t.size), drawing.NumberBox(drawing.Point{}, t.number).W)
}

// write puts the tag level, from left, around middle.
func (t tag) write(d *drawing.Drawing, left, middle float64) {
	if t.number != "" {
		box := drawing.NumberBox(drawing.Point{}, t.number)
		at := left
		if t.behind {
			at += t.width() - box.W
		} else {
			left += box.W + tagSpace
		}
		d.Number(drawing.Point{X: at + box.W/2, Y: middle}, t.number)
	}
	h := drawing.HeightOf(t.text, t.face, t.size)
	base := middle - h/2 + drawing.RiseOf(t.text, t.face, t.size)
	d.Text(drawing.Text{At: drawing.Point{X: left, Y: base}, String: t.text, Size: t.size, Face: t.face, Ground: true})
}

// row is tags that stand beside one another below or above what they are about.
type row struct {
	tags    []tag
	at      []float64 // middle of each
	turned  bool      // they read upwards, the numbers level at their lower ends
	dropped int       // tags at the end for which there was no room
}

// rowSizes are the sizes of type to try, in points.
var rowSizes = []float64{10, 9, 8.5, 8, 7.5, drawing.SmallestSize}

// newRow places tags as near as can be to where they are wanted, between lo and
// hi, in the largest type up to most points in which they have room.
func newRow(tags []tag, wanted []float64, lo, hi, most float64) row {
	for _, size := range rowSizes {
		r := row{tags: sizedTags(tags, size)}
		if size <= most && total(r.extents()) <= hi-lo {
			r.at = drawing.Spread(wanted, r.extents(), lo, hi)
			return r
		}
	}
	r := row{tags: sizedTags(tags, drawing.SmallestSize), turned: true}
	for total(r.extents()) > hi-lo {
		r.tags = r.tags[:len(r.tags)-1]
		r.dropped++
	}
	r.at = drawing.Spread(wanted[:len(r.tags)], r.extents(), lo, hi)
	return r
}

func sizedTags(tags []tag, size float64) []tag {
	all := make([]tag, len(tags))
	for i, t := range tags {
		t.size = size
		all[i] = t
	}
	return all
}

func (r row) extents() []float64 {
	all := make([]float64, len(r.tags))
	for i, t := range r.tags {
		all[i] = t.width() + tagGap
		if r.turned {
			all[i] = tagsPile + drawing.HeightOf(t.text, t.face, t.size)
			if t.number != "" {
				all[i] = max(all[i], tagsPile+drawing.NumberBox(drawing.Point{}, t.number).W)
			}
		}
	}
	return all
}

// height is what the row takes, mm.
func (r row) height() float64 {
	h := 0.0
	for _, t := range r.tags {
		if !r.turned {
			h = max(h, t.height())
			continue
		}
		h = max(h, t.long())
	}
	return h
}

// write draws the row below top; each tag stands at the side that its leader
// comes from.
func (r row) write(d *drawing.Drawing, top float64, below bool) {
	height := r.height()
	for i, t := range r.tags {
		switch {
		case r.turned && below:
			t.writeTurned(d, r.at[i], top, top+t.long())
		case r.turned:
			box := drawing.NumberBox(drawing.Point{}, t.number)
			t.writeTurned(d, r.at[i], top+height-box.H, top+height)
		case below:
			t.write(d, r.at[i]-t.width()/2, top+t.height()/2)
		default:
			t.write(d, r.at[i]-t.width()/2, top+height-t.height()/2)
		}
	}
}

// writeTurned puts the number below numberTop, and the text so that it begins at
// foot, or behind the number if that is there.
func (t tag) writeTurned(d *drawing.Drawing, middle, numberTop, foot float64) {
	if t.number != "" {
		box := drawing.NumberBox(drawing.Point{}, t.number)
		d.Number(drawing.Point{X: middle, Y: numberTop + box.H/2}, t.number)
		if numberTop+box.H > foot-tagSpace {
			foot = numberTop - tagSpace
		}
	}
	h := drawing.HeightOf(t.text, t.face, t.size)
	d.Text(drawing.Text{At: drawing.Point{X: middle - h/2 + drawing.RiseOf(t.text, t.face, t.size), Y: foot},
		String: t.text, Size: t.size, Face: t.face, Turned: true, Ground: true})
}

// long is how high a turned tag is.
func (t tag) long() float64 {
	w := drawing.Width(t.text, t.face, t.size)
	if t.number != "" {
		w += drawing.NumberBox(drawing.Point{}, t.number).H + tagSpace
	}
	return w
}
