package report

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/rename"
)

// standIns are what pages call that whose name has signs that their fonts lack.
type standIns struct {
	of    map[string]string // by name
	names []string          // the longest first: one may be part of another
}

// standInsOf finds the names of a plan that cannot be printed. A part goes by its mark,
// all else by a number.
func standInsOf(p *cutplan.Plan) standIns {
	s := standIns{of: map[string]string{}}
	for _, b := range p.Bill {
		s.add(b.Name(), "part "+b.Mark)
	}
	numbered := map[string]int{}
	number := func(name, kind string) {
		if s.add(name, fmt.Sprintf("%s %d", kind, numbered[kind]+1)) {
			numbered[kind]++
		}
	}
	for _, l := range p.Job.Parts {
		number(l.Material, "material")
	}
	offers := slices.Clone(p.Job.Stock)
	for _, l := range p.Layouts {
		offers = append(offers, l.Stock)
	}
	for _, d := range p.AtSeller {
		offers = append(offers, d.Stock)
	}
	for _, o := range offers {
		number(o.Material, "material")
		number(o.Name, "stock")
		number(o.From, "stock")
		number(o.Seller, "seller")
	}
	for _, l := range p.Job.Rough {
		number(l.Material, "material")
	}
	s.add(p.Job.Title, cmp.Or(writableOf(p.Job.Title), "Cutting plan"))
	for _, l := range p.Job.Parts {
		s.add(l.Note, "(see plan.html)")
	}
	slices.SortStableFunc(s.names, func(a, b string) int { return len(b) - len(a) })
	return s
}

// writableOf is what the fonts have of a text, without the commas and spaces that then hang.
func writableOf(text string) string {
	kept := strings.Map(func(r rune) rune {
		if !drawing.Writable(string(r)) {
			return -1
		}
		return r
	}, text)
	return strings.Trim(kept, " ,;:-")
}

// add reports whether a name needs a stand-in that it did not have.
func (s *standIns) add(name, standIn string) bool {
	if drawing.Writable(name) || s.of[name] != "" {
		return false
	}
	s.of[name] = standIn
	s.names = append(s.names, name)
	return true
}

// in replaces the names within a text.
func (s standIns) in(text string) string {
	if drawing.Writable(text) {
		return text
	}
	for _, name := range s.names {
		text = strings.ReplaceAll(text, name, s.of[name])
	}
	return text
}

// writable is a plan with what is told about it, in signs that the fonts of the pages have.
// The front page says so where that differs.
func writable(p *cutplan.Plan, o Options) (*cutplan.Plan, Options) {
	s := standInsOf(p)
	if len(s.names) == 0 {
		return p, o
	}
	o.Code = Identity(p, o)
	type told struct {
		Plan    *cutplan.Plan
		Options Options
	}
	t := rename.Texts(told{p, o}, s.in)
	t.Options.standIns = true
	return t.Plan, t.Options
}

const aboutStandIns = "Some names are in signs that the fonts of these pages lack. Parts go by their marks here, materials, stock and sellers by numbers; plan.html shows the names."

// standInWarnings tell which name became what.
func standInWarnings(p *cutplan.Plan) []string {
	s := standInsOf(p)
	if len(s.names) == 0 {
		return nil
	}
	var pairs []string
	for _, name := range s.names {
		pairs = append(pairs, strconv.Quote(name)+" "+s.of[name])
	}
	return []string{"plan.pdf: the fonts lack signs of some names; it calls " + strings.Join(pairs, ", ")}
}
