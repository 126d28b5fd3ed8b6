package label

import (
	"strings"

	"sawbill/report/internal/drawing"
)

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
	size := sizes[len(sizes)-1]
	for _, larger := range sizes {
		if drawing.Width(s, face, larger) <= room.W && step(s, face, larger) <= room.H {
			size = larger
			break
		}
	}
	return write(d, []string{s}, face, []float64{size}, room)
}

// write sets paragraphs one below the other in the largest of sizes at which
// all of them fit, and returns the height they take. What does not fit in the
// least is left out, with an ellipsis.
func write(d *drawing.Drawing, paragraphs []string, face drawing.Face, sizes []float64, room drawing.Rect) float64 {
	return flow(d, paragraphs, face, sizes, room, drawing.Rect{})
}

// flow does the same around a picture at the right of the room: lines that begin
// below it are as wide as the room.
func flow(d *drawing.Drawing, paragraphs []string, face drawing.Face, sizes []float64, room, picture drawing.Rect) float64 {
	var lines []string
	var size float64
	whole := false
	for _, size = range sizes {
		if lines, whole = broken(paragraphs, face, size, room, picture); whole {
			break
		}
	}
	y := room.Y
	for i, s := range lines {
		if i == len(lines)-1 && !whole {
			s = ended(s, face, size, beside(room, picture, y))
		}
		rise := max(drawing.Rise(size), drawing.RiseOf(s, face, size))
		d.Text(drawing.Text{At: drawing.Point{X: room.X, Y: y + rise}, String: s, Size: size, Face: face})
		y += step(s, face, size)
	}
	return y - room.Y
}

// broken breaks paragraphs into the lines that the room holds; whole is false where it
// does not hold all of them.
func broken(paragraphs []string, face drawing.Face, size float64, room, picture drawing.Rect) (lines []string, whole bool) {
	y := room.Y
	for _, p := range paragraphs {
		for p = strings.Join(strings.Fields(p), " "); p != ""; {
			line := drawing.Wrap(p, face, size, beside(room, picture, y))[0]
			y += step(line, face, size)
			if y > room.Bottom() {
				return lines, false
			}
			lines = append(lines, line)
			p = strings.TrimSpace(strings.TrimPrefix(p, line))
		}
	}
	return lines, true
}

// beside is how wide a line may be that begins at a height.
func beside(room, picture drawing.Rect, y float64) float64 {
	if picture.W > 0 && y < picture.Bottom() {
		return picture.X - column - room.X
	}
	return room.W
}

// ended is a line that is not the last, which could not be written.
func ended(s string, face drawing.Face, size, width float64) string {
	if drawing.Width(s+" …", face, size) <= width {
		return s + " …"
	}
	runes := []rune(s)
	return drawing.Shorten(string(runes[:len(runes)-1])+"  …", face, size, width)
}
