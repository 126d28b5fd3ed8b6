package report

import (
	"crypto/sha256"
	"fmt"
	"io"
	"math/big"

	"sawbill/nest/cutplan"
	"sawbill/stock/casework"
)

// letters of an identity: none is taken for another, printed small or penciled on an
// offcut. Left out are those like a figure (B, G, I, O, S, Z) or another letter (U).
const letters = "346789ACDEFHJKLMNPQRTVWXY"

// identityLength gives some ten million identities: enough to tell the printouts of
// one bench apart.
const identityLength = 5

// Identity tells a plan from others of the same job: five letters and figures made of its
// contents. The time of the search, units and paper change nothing, and neither do the
// formats that a plan is written in. A code that the options give stands.
func Identity(p *cutplan.Plan, o Options) string {
	if o.Code != "" {
		return o.Code
	}
	h := sha256.New()
	writeContents(h, p, o)
	n, base, letter := new(big.Int).SetBytes(h.Sum(nil)), big.NewInt(int64(len(letters))), new(big.Int)
	code := make([]byte, identityLength)
	for i := range code {
		n.DivMod(n, base, letter)
		code[i] = letters[letter.Int64()]
	}
	return string(code)
}

// writeContents writes what makes a plan this one and no other: the rules, the blanks, what
// is bought and how it is divided. Names are quoted, so that no two plans read alike.
func writeContents(w io.Writer, p *cutplan.Plan, o Options) {
	line := func(of string, values ...any) {
		fmt.Fprint(w, of)
		for _, v := range values {
			if s, ok := v.(string); ok {
				v = fmt.Sprintf("%q", s)
			}
			fmt.Fprint(w, " ", v)
		}
		fmt.Fprintln(w)
	}
	j := p.Job
	line("job", j.Title, fmt.Sprintf("%q", o.WhatIf))
	if o.Rest != nil {
		line("rest", o.Rest.Of)
	}
	s := j.Saw
	line("saw", int64(s.Kerf), int64(s.ResawKerf), int64(s.RipCapacity), int64(s.CrosscutCapacity), int64(s.NarrowestRip), s.Stages,
		s.FirstCut.String(), s.BoardFirstCut.String(), int64(j.Shortest), int64(j.Offcut.Length), int64(j.Offcut.Width))
	for _, b := range p.Bill {
		line("blank", b.Mark, b.Part.Name, b.Part.Material, int64(b.Length), int64(b.Width), int64(b.Thickness),
			int64(b.Part.Length), int64(b.Part.Width), int64(b.Part.Thickness), b.Count, b.Gang, b.Layers, b.Spare, b.Part.DryFit)
	}
	for _, b := range p.Buy {
		line("buy", b.Stock.Name, b.Count, int64(b.Cost))
	}
	for _, d := range p.AtSeller {
		line("seller", d.Stock.Name, d.Count, d.Cut.String(), fmt.Sprintf("%d", d.Pieces), int64(d.Kerf), int64(d.Cost))
	}
	for _, l := range p.Layouts {
		of, t := l.Stock, l.Stock.Trims()
		line("layout", of.Name, of.Kind.String(), of.Material, of.OnHand, of.From, l.Repeat, int64(of.Length), int64(of.Width), int64(of.Thickness),
			int64(t.NearEnd), int64(t.FarEnd), int64(t.NearEdge), int64(t.FarEdge), int64(of.Section.From), int64(of.Section.Board))
		writeNode(w, l.Root)
	}
	for _, u := range p.Unplaced {
		line("unplaced", u.Blank, u.Count)
	}
	for _, e := range p.Estimates {
		line("estimate", e.Rough.Material, e.Rough.Quarter.String(), e.Rough.Grade.String(), e.Least, e.Usual, fmt.Sprintf("%d", e.Blanks))
	}
	line("cost", int64(p.Cost), int64(p.Bound))
	if o.Case != nil {
		writeCase(o.Case, line)
	}
}

func writeNode(w io.Writer, n cutplan.Node) {
	fmt.Fprintln(w, "node", int64(n.Length), int64(n.Width), int(n.Use), int(n.Cut), n.Blank, n.Turned, len(n.Children))
	for _, c := range n.Children {
		writeNode(w, c)
	}
}

// writeCase writes a design as far as the blanks do not show it.
func writeCase(c *casework.Case, line func(string, ...any)) {
	for _, s := range c.Sizes {
		line("size", s.Dimension, int64(s.Sum.Total()))
	}
	for _, m := range c.Marks {
		line("mark", m.Part, m.On, m.What, m.From.String(), fmt.Sprintf("%d", m.At), m.Across.From.String(), fmt.Sprintf("%d", m.Across.At),
			int64(m.Width), int64(m.Depth))
	}
	for _, h := range c.Hardware {
		line("hardware", h.Name, h.Count)
	}
}
