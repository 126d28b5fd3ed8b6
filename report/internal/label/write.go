package label

import "sawbill/report/internal/drawing"

// hair parts lines whose letters reach further than most, mm.
const hair = 0.15

// step is how much room a line takes, mm.
func step(s string, face drawing.Face, size float64) float64 {
	return max(drawing.LineHeight(size), drawing.Rise(size)+drawing.FallOf(s, face, size)+hair,
		drawing.HeightOf(s, face, size)+hair)
}

// fitting is the largest of sizes at which s fits in one line, the least where
// it fits at none.
func fitting(s string, face drawing.Face, sizes []float64, width, height float64) float64 {
	for _, size := range sizes {
		if drawing.Width(s, face, size) <= width && drawing.HeightOf(s, face, size) <= height {
			return size
		}
	}
	return sizes[len(sizes)-1]
}

// one writes s in one line, as large as its width allows, and returns the
// height it takes. Where it is too long even so, it takes as many lines as it
// needs and has room for.
func one(d *drawing.Drawing, s string, face drawing.Face, sizes []float64, room drawing.Rect) float64 {
	if s == "" {
		return 0
	}
	size := fitting(s, face, sizes, room.W, room.H)
	return write(d, []string{s}, face, []float64{size}, room)
}

// write sets paragraphs one below the other in the largest of sizes at which
// all of them fit, and returns the height they take. What does not fit in the
// least is left out, with an ellipsis.
func write(d *drawing.Drawing, paragraphs []string, face drawing.Face, sizes []float64, room drawing.Rect) float64 {
	var lines []string
	var size float64
	fits := 0
	for _, size = range sizes {
		lines = lines[:0]
		for _, p := range paragraphs {
			if p != "" {
				lines = append(lines, drawing.Wrap(p, face, size, room.W)...)
			}
		}
		if fits = within(lines, face, size, room.H); fits == len(lines) {
			break
		}
	}
	if fits < len(lines) && fits > 0 {
		lines[fits-1] = ended(lines[fits-1], face, size, room.W)
	}
	y := room.Y
	for _, s := range lines[:fits] {
		rise := max(drawing.Rise(size), drawing.RiseOf(s, face, size))
		d.Text(drawing.Text{At: drawing.Point{X: room.X, Y: y + rise}, String: s, Size: size, Face: face})
		y += step(s, face, size)
	}
	return y - room.Y
}

// within counts the lines that a height has room for.
func within(lines []string, face drawing.Face, size, height float64) int {
	for i, s := range lines {
		height -= step(s, face, size)
		if height < 0 {
			return i
		}
	}
	return len(lines)
}

// ended is a line that is not the last, which could not be written.
func ended(s string, face drawing.Face, size, width float64) string {
	if drawing.Width(s+" …", face, size) <= width {
		return s + " …"
	}
	runes := []rune(s)
	return drawing.Shorten(string(runes[:len(runes)-1])+"  …", face, size, width)
}
