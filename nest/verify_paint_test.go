package nest_test

import (
	"testing"

	"sawbill/nest"
)

func TestVerifiedPlansPaintEverySquareOnce(t *testing.T) {
	for seed := range uint64(300) {
		p, plan := randomPlan(seed)
		if err := nest.Verify(p, plan); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		paint(t, p, plan)
	}
}

// paint is the second opinion: it paints trim, pieces and sawdust on squared
// paper. Every square of the stock is painted once, no two pieces touch where
// there is a kerf, and what is painted as parts is what the plan should cut.
func paint(t *testing.T, p nest.Problem, plan nest.Plan) {
	t.Helper()
	missing := make([]int, len(p.Blanks))
	for i, b := range p.Blanks {
		missing[i] = b.Count
	}
	for _, u := range plan.Unplaced {
		missing[u.Blank] -= u.Count
	}
	for _, l := range plan.Layouts {
		s := p.Stock[l.Stock]
		c := &canvas{T: t, kerf: p.Kerf, missing: missing, repeat: l.Repeat}
		c.cells = make([][]int, s.Length)
		for x := range c.cells {
			c.cells[x] = make([]int, s.Width)
		}
		c.fill(0, 0, s.TrimLength, s.Width, dust)
		c.fill(s.Length-s.TrimLength, 0, s.TrimLength, s.Width, dust)
		c.fill(s.TrimLength, 0, s.Length-2*s.TrimLength, s.TrimWidth, dust)
		c.fill(s.TrimLength, s.Width-s.TrimWidth, s.Length-2*s.TrimLength, s.TrimWidth, dust)
		c.node(s.TrimLength, s.TrimWidth, l.Root)
		c.look()
		for _, d := range s.Defects {
			for x := d.X; x < d.X+d.Length; x++ {
				for y := d.Y; y < d.Y+d.Width; y++ {
					if n := c.cells[x][y]; n != dust && c.uses[n-1] != nest.Waste {
						t.Fatalf("square %d, %d has a defect and is used\n%+v\n%+v", x, y, p, l)
					}
				}
			}
		}
	}
	for i, m := range missing {
		if m != 0 {
			t.Errorf("blank %d: %d not painted\n%+v\n%+v", i, m, p, plan)
		}
	}
}

const dust = -1

type canvas struct {
	*testing.T
	cells   [][]int // 0 is bare, dust is trim and kerf, others are numbered pieces
	pieces  int
	uses    []nest.Use // of each piece
	kerf    int64
	repeat  int
	missing []int // of each blank
}

func (c *canvas) fill(x, y, length, width int64, colour int) {
	for i := x; i < x+length; i++ {
		for j := y; j < y+width; j++ {
			if c.cells[i][j] != 0 {
				c.Fatalf("square %d, %d is painted twice", i, j)
			}
			c.cells[i][j] = colour
		}
	}
}

func (c *canvas) node(x, y int64, n nest.Node) {
	if n.Use != nest.Split {
		c.pieces++
		c.uses = append(c.uses, n.Use)
		c.fill(x, y, n.Length, n.Width, c.pieces)
		if n.Use == nest.Part {
			c.missing[n.Blank] -= c.repeat
		}
		return
	}
	endX, endY := x+n.Length, y+n.Width
	for _, child := range n.Children {
		c.node(x, y, child)
		if n.Cut == nest.Rip {
			y += child.Width
			blade := min(c.kerf, endY-y)
			c.fill(x, y, n.Length, blade, dust)
			y += blade
		} else {
			x += child.Length
			blade := min(c.kerf, endX-x)
			c.fill(x, y, blade, n.Width, dust)
			x += blade
		}
	}
}

func (c *canvas) look() {
	for x := range c.cells {
		for y, colour := range c.cells[x] {
			if colour == 0 {
				c.Fatalf("square %d, %d is not painted", x, y)
			}
			if x > 0 {
				c.apart(c.cells[x-1][y], colour)
			}
			if y > 0 {
				c.apart(c.cells[x][y-1], colour)
			}
		}
	}
}

func (c *canvas) apart(a, b int) {
	if c.kerf > 0 && a != b && a != dust && b != dust {
		c.Fatalf("pieces %d and %d touch", a, b)
	}
}
