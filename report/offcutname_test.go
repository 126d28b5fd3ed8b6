package report

import (
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// An offcut has one name for each repeat of its layout, the same in the diagram,
// in the steps, in the list of what is kept and in the plan file.
func TestOffcutsHaveOneNameEverywhere(t *testing.T) {
	p := bench()
	p.Layouts[0].Repeat = 2
	names := namesOf(p, "H7KMQ")
	var all []string
	for _, k := range p.Offcuts() {
		at := located{k.Layout, &k.Node}
		all = append(all, names.each(at)...)
		said := names.said(at)
		if want := "H7KMQ-"; !strings.HasPrefix(said, want) {
			t.Errorf("an offcut is called %q", said)
		}
		v := view(p, k.Layout, names, nil, stock.Ruler{})
		if got := v.Name(&k.Node); got != said {
			t.Errorf("the diagram says %q, want %q", got, said)
		}
		steps := stepTable(p, k.Layout, names, stock.Ruler{})
		if !slices.ContainsFunc(steps.Rows, func(row []string) bool {
			return slices.ContainsFunc(row, func(cell string) bool {
				return strings.Contains(cell, "write "+said) || strings.Contains(cell, "write H7KMQ-") && strings.Contains(cell, strings.TrimPrefix(said, "H7KMQ-"))
			})
		}) {
			t.Errorf("no step of layout %d says to write %q", k.Layout+1, said)
		}
	}
	for i, name := range all {
		if slices.Index(all, name) != i {
			t.Errorf("two offcuts are called %q", name)
		}
	}
	total := 0
	for _, row := range kept(p, names, stock.Ruler{}).rows {
		if !strings.HasPrefix(row[4], "H7KMQ-") {
			t.Errorf("the list of what is kept says %q", row)
		}
		total += len(row[0])
	}
	if total == 0 || len(all) < 4 {
		t.Errorf("%d names", len(all))
	}
}

func TestNamesAreSaidShortly(t *testing.T) {
	p := &cutplan.Plan{Layouts: []cutplan.Layout{
		{Repeat: 3, Root: cutplan.Node{Use: cutplan.Offcut}}, {Repeat: 1, Root: cutplan.Node{Use: cutplan.Offcut}},
	}}
	for code, want := range map[string][]string{
		"":      {"offcut 1–3", "offcut 4", "offcut 1–4"},
		"H7KMQ": {"H7KMQ-1–3", "H7KMQ-4", "H7KMQ-1–4"},
	} {
		n := namesOf(p, code)
		first, second := located{0, &p.Layouts[0].Root}, located{1, &p.Layouts[1].Root}
		if got := []string{n.said(first), n.said(second), n.said(second, first)}; !slices.Equal(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got, want := namesOf(p, "H7KMQ").each(located{0, &p.Layouts[0].Root}), []string{"H7KMQ-1", "H7KMQ-2", "H7KMQ-3"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
