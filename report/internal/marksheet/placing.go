package marksheet

import (
	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// placing is how the piece of a figure lies on the paper, its outline's corner at the zero point.
type placing struct {
	figure
	x, y fold // of the level and the upright axis
}

func (p placing) box() drawing.Rect {
	return drawing.Rect{W: p.x.length(), H: p.y.length()}
}

// along is where a place on an axis lies on the paper, to the right or down.
func (p placing) along(a casework.Axis, at stock.Length) float64 {
	if a == p.level {
		if x := p.x.at(at); !p.levelTurned {
			return x
		}
		return p.x.length() - p.x.at(at)
	}
	if p.uprightTurned {
		return p.y.at(at)
	}
	return p.y.length() - p.y.at(at)
}

// rect is the paper between two places on each axis.
func (p placing) rect(a casework.Axis, a1, a2, b1, b2 stock.Length) drawing.Rect {
	other := p.level
	if a == other {
		other = p.upright
	}
	f1, f2, g1, g2 := p.along(a, a1), p.along(a, a2), p.along(other, b1), p.along(other, b2)
	if a == p.upright {
		f1, f2, g1, g2 = g1, g2, f1, f2
	}
	return drawing.Rect{X: min(f1, f2), Y: min(g1, g2), W: max(f1, f2) - min(f1, f2), H: max(g1, g2) - min(g1, g2)}
}
