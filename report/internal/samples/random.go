package samples

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Random cuts sheets and boards at random down to slivers, with names from one
// letter to several lines long. Every leaf is a blank of its own, or one that
// was used before. The same seed gives the same plan.
func Random(seed uint64) cutplan.Plan {
	r := rand.New(rand.NewPCG(seed, 1))
	g := &chaos{r: r, m: New(stock.Job{
		Title:    randomName(r),
		Units:    stock.Units(r.IntN(2)),
		Saw:      stock.Saw{Kerf: stock.Length(r.IntN(5)) * mm},
		Shortest: stock.ShortestMilled,
		Offcut:   stock.Offcut{Length: 300 * mm, Width: 80 * mm},
	})}
	for i := range 1 + r.IntN(3) {
		s := stock.Stock{
			Name: fmt.Sprintf("%s %d", randomName(r), i), Material: randomName(r), Price: stock.Money(r.IntN(10000)),
			Length: stock.Length(300+r.IntN(2800)) * mm, Width: stock.Length(200+r.IntN(1800)) * mm, Thickness: 18 * mm,
			Grain: stock.Grain(r.IntN(3)), Trim: stock.Length(r.IntN(3)*8) * mm, OnHand: r.IntN(4) == 0,
		}
		if r.IntN(3) == 0 {
			s.Kind, s.Grain = stock.Board, stock.GrainLength
			s.Width = stock.Length(18+r.IntN(200)) * mm
		}
		g.m.Plan.Job.Stock = append(g.m.Plan.Job.Stock, s)
		g.material = s.Material
		g.m.Layout(i, 1+r.IntN(3), Piece{build: func(x, y, l, w stock.Length) cutplan.Node {
			return g.cut(cutplan.Node{X: x, Y: y, Length: l, Width: w}, r.IntN(5), cutplan.Cut(r.IntN(2)))
		}})
	}
	return g.m.Finished(g.m.Plan.Cost / 2)
}

type chaos struct {
	r        *rand.Rand
	m        *Maker
	material string
}

func (g *chaos) cut(n cutplan.Node, depth int, dir cutplan.Cut) cutplan.Node {
	kerf := g.m.Plan.Job.Saw.Kerf
	whole := n.Length
	if dir == cutplan.Rip {
		whole = n.Width
	}
	if depth == 0 || whole < 8*mm+kerf {
		return g.leaf(n)
	}
	n.Use, n.Cut = cutplan.Split, dir
	for at := stock.Length(0); at < whole; {
		extent := 4*mm + whole/stock.Length(1+g.r.IntN(12))*stock.Length(g.r.IntN(100))/100
		if rest := whole - at - extent - kerf; rest < 4*mm {
			extent = whole - at
		}
		c := cutplan.Node{X: n.X + at, Y: n.Y, Length: extent, Width: n.Width}
		if dir == cutplan.Rip {
			c = cutplan.Node{X: n.X, Y: n.Y + at, Length: n.Length, Width: extent}
		}
		n.Children = append(n.Children, g.cut(c, g.r.IntN(depth), 1-dir))
		at += extent + kerf
	}
	return n
}

func (g *chaos) leaf(n cutplan.Node) cutplan.Node {
	p := &g.m.Plan
	if g.r.IntN(4) == 0 {
		n.Use = cutplan.Waste
		if p.Job.Offcut.Keeps(n.Length, n.Width) {
			n.Use = cutplan.Offcut
		}
		return n
	}
	n.Use, n.Blank = cutplan.Part, len(p.Bill)
	part := stock.Part{
		Name: fmt.Sprintf("%s %d", randomName(g.r), n.Blank), Material: g.material,
		Length: n.Length, Width: n.Width, Thickness: 18 * mm, Count: 1,
	}
	if g.r.IntN(2) == 0 && n.Length > 10*mm && n.Width > 10*mm {
		part.Allowance = stock.Allowance{Edge: mm, Edges: 2, End: mm, Ends: 2}
		part.Length -= 2 * mm
		part.Width -= 2 * mm
	}
	p.Job.Parts = append(p.Job.Parts, part)
	p.Bill = append(p.Bill, cutplan.Blank{Blank: part.Blank(stock.Sheet), Mark: cutplan.Mark(n.Blank)})
	return n
}

// randomName has the characters that break formats: quotes, bars, slashes,
// commas, semicolons, angle brackets, accents, letters of many scripts, letters no
// font has.
func randomName(r *rand.Rand) string {
	words := []string{"shelf", "side|left", "a/b", `"top"`, "<rail>", "côté", "door; upper", "x", "家具", "drawer front, graded", "ÉÅ", "1-1/2\" foot", "tấm đỡ", "ᾧ ἄνω", "қабырға", "Ɛ\u0303 ọ\u0300"}
	n := 1 + r.IntN(3)
	if r.IntN(20) == 0 {
		n = 30
	}
	name := make([]string, n)
	for i := range name {
		name[i] = words[r.IntN(len(words))]
	}
	return strings.Join(name, " ")
}
