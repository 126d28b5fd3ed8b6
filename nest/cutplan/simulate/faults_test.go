package simulate

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock"
	"sawbill/stock/job"
)

const kerfs = 32 * stock.Millimeter / 10

// fault is one that rows may have. Plant makes it at row i, and returns false if there is no
// place for it.
type fault struct {
	name  string
	plant func(p *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool)
}

// at is a fault of a single row.
func at(name string, plant func(r *cutplan.Row) bool) fault {
	return fault{name, func(_ *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) { return rows, plant(&rows[i]) }}
}

// inCut is a fault of the first cut of the last piece.
func inCut(name string, plant func(r *cutplan.Row, c *cutplan.RowCut) bool) fault {
	return at(name, func(r *cutplan.Row) bool { return plant(r, &r.Pieces[len(r.Pieces)-1].Cuts[0]) })
}

// inLast is a fault of the last cut of a chain.
func inLast(name string, plant func(r *cutplan.Row, c *cutplan.RowCut) bool) fault {
	return at(name, func(r *cutplan.Row) bool {
		cuts := r.Pieces[0].Cuts
		return len(cuts) > 1 && plant(r, &cuts[len(cuts)-1])
	})
}

// inHand is a fault of the last piece in hand.
func inHand(name string, plant func(r *cutplan.Row, h *cutplan.Held) bool) fault {
	return at(name, func(r *cutplan.Row) bool { return plant(r, &r.Pieces[len(r.Pieces)-1]) })
}

// asNode is n told as something else.
func asNode(n *cutplan.Node, change func(n *cutplan.Node)) *cutplan.Node {
	if n == nil {
		return nil
	}
	other := *n
	change(&other)
	return &other
}

var faults = []fault{
	// The wrong side.
	at("the kerf on the other side", func(r *cutplan.Row) bool { r.Waste = 1 - r.Waste; return true }),
	at("the blade on the near side of the line", func(r *cutplan.Row) bool { r.Setting -= kerfs; return r.Setting > 0 }),
	at("the kerf counted into the setting", func(r *cutplan.Row) bool { r.Setting += kerfs; return !r.SawOff }),
	at("trim sawn off at a mark, the kerf beyond it", func(r *cutplan.Row) bool { r.Setting += kerfs; return r.SawOff }),
	at("set to what is left, not to what comes off", func(r *cutplan.Row) bool {
		left := r.Pieces[0].Last().Left.Size
		size := left.Width
		if r.Cut == cutplan.Crosscut {
			size = left.Length
		}
		if size == r.Setting {
			return false
		}
		r.Setting = size
		return size > 0
	}),
	// The wrong edge.
	at("a rip for a crosscut", func(r *cutplan.Row) bool { r.Cut = 1 - r.Cut; return true }),
	at("a raw edge on the fence", func(r *cutplan.Row) bool {
		was := r.SawOff
		r.SawOff, r.Setting = false, 1000*stock.Millimeter
		return was
	}),
	at("an amount sawn off, told as a setting", func(r *cutplan.Row) bool { was := r.SawOff; r.SawOff = false; return was }),
	at("a setting told as an amount", func(r *cutplan.Row) bool { was := r.SawOff; r.SawOff = true; return !was }),
	at("a cut told as trim", func(r *cutplan.Row) bool { was := r.Trim; r.Trim = true; return !was }),
	at("trim told as a cut", func(r *cutplan.Row) bool { was := r.Trim; r.Trim = false; return was }),
	at("a wide piece along the fence", func(r *cutplan.Row) bool {
		h := r.Pieces[0].Size
		r.Guide = cutplan.Fence
		return r.Cut == cutplan.Rip && h.Width > h.Length || r.Cut == cutplan.Crosscut && h.Length > h.Width
	}),
	at("a long rip at a stop", func(r *cutplan.Row) bool {
		r.Guide = cutplan.Stop
		return r.Cut == cutplan.Rip && r.Pieces[0].Size.Length >= r.Pieces[0].Size.Width
	}),
	{"a fence beyond its reach", func(p *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) {
		r := &rows[i]
		long := r.Cut == cutplan.Rip && r.Pieces[0].Size.Length >= r.Pieces[0].Size.Width
		r.Guide = cutplan.Fence
		return rows, long && !r.SawOff && p.Job.Saw.RipCapacity > 0 && r.Setting > p.Job.Saw.RipCapacity
	}},
	// Numbers that are off.
	at("a setting off by a hair", func(r *cutplan.Row) bool { r.Setting++; return true }),
	at("a setting with its figures swapped", func(r *cutplan.Row) bool {
		was := r.Setting / stock.Millimeter
		swapped := was/100*100 + was%10*10 + was/10%10
		r.Setting = swapped * stock.Millimeter
		return swapped != was && swapped > 0
	}),
	{"the setting of the row before", func(_ *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) {
		if i == 0 || rows[i-1].Setting == rows[i].Setting {
			return nil, false
		}
		rows[i].Setting = rows[i-1].Setting
		return rows, true
	}},
	at("no setting", func(r *cutplan.Row) bool { r.Setting = 0; return true }),
	inLast("marks without the kerf between", func(_ *cutplan.Row, c *cutplan.RowCut) bool { c.Mark -= kerfs; return true }),
	inLast("marks here without the kerf between", func(_ *cutplan.Row, c *cutplan.RowCut) bool { c.Here -= kerfs; return true }),
	inLast("a mark measured from the cut before", func(r *cutplan.Row, c *cutplan.RowCut) bool { c.Mark = r.Setting; return true }),
	inLast("a mark from the piece in hand measured from the cut before", func(r *cutplan.Row, c *cutplan.RowCut) bool { c.Here = r.Setting; return true }),
	inCut("a mark off by a hair", func(r *cutplan.Row, c *cutplan.RowCut) bool { c.Mark++; return true }),
	inCut("the mark of a rest measured from the rest", func(_ *cutplan.Row, c *cutplan.RowCut) bool { was := c.Mark; c.Mark = c.Here; return was != c.Here }),
	// Rounding.
	at("a setting rounded to whole millimeters", func(r *cutplan.Row) bool {
		was := r.Setting
		r.Setting = (was + stock.Millimeter/2) / stock.Millimeter * stock.Millimeter
		return r.Setting != was
	}),
	inLast("a mark added up from rounded figures", func(_ *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Mark
		c.Mark = (was + stock.Millimeter/2) / stock.Millimeter * stock.Millimeter
		return c.Mark != was
	}),
	inCut("a rounded size", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Left.Size
		c.Left.Size.Length = was.Length / stock.Millimeter * stock.Millimeter
		c.Left.Size.Width = was.Width / stock.Millimeter * stock.Millimeter
		return c.Left.Size != was
	}),
	// The wrong piece.
	inHand("the piece of another cut", func(_ *cutplan.Row, h *cutplan.Held) bool { h.By++; return true }),
	inHand("the piece for the rest", func(_ *cutplan.Row, h *cutplan.Held) bool { was := h.Rest; h.Rest = false; return was }),
	inHand("the rest for the piece", func(_ *cutplan.Row, h *cutplan.Held) bool { was := h.Rest; h.Rest = true; return !was && h.By > 0 }),
	inHand("a piece of another layout", func(_ *cutplan.Row, h *cutplan.Held) bool { h.Layout = 1 - min(h.Layout, 1); return true }),
	inHand("a size with length for width", func(_ *cutplan.Row, h *cutplan.Held) bool {
		h.Size.Length, h.Size.Width = h.Size.Width, h.Size.Length
		return h.Size.Length != h.Size.Width
	}),
	inHand("a piece told too large", func(_ *cutplan.Row, h *cutplan.Held) bool { h.Size.Length += stock.Millimeter; return true }),
	inHand("a piece told as the stock", func(_ *cutplan.Row, h *cutplan.Held) bool { h.Stock = !h.Stock; return true }),
	at("a piece left out", func(r *cutplan.Row) bool { r.Pieces = r.Pieces[1:]; return len(r.Pieces) > 0 }),
	at("a piece taken twice", func(r *cutplan.Row) bool { r.Pieces = append(r.Pieces, r.Pieces[0]); return true }),
	// The wrong number and count.
	at("a cut too many told", func(r *cutplan.Row) bool { r.Count++; return true }),
	at("a cut too few told", func(r *cutplan.Row) bool { r.Count--; return true }),
	at("a cut left out", func(r *cutplan.Row) bool {
		h := &r.Pieces[0]
		h.Cuts = h.Cuts[:len(h.Cuts)-1]
		return len(h.Cuts) > 0
	}),
	at("a cut given to another piece", func(r *cutplan.Row) bool {
		last := len(r.Pieces) - 1
		if last < 1 || len(r.Pieces[0].Cuts) < 2 {
			return false
		}
		from := &r.Pieces[0]
		r.Pieces[last].Cuts = append(r.Pieces[last].Cuts, from.Last())
		from.Cuts = from.Cuts[:len(from.Cuts)-1]
		return true
	}),
	inCut("a number twice", func(_ *cutplan.Row, c *cutplan.RowCut) bool { c.Number--; return true }),
	inCut("a number left out", func(_ *cutplan.Row, c *cutplan.RowCut) bool { c.Number += 1000; return true }),
	at("two numbers exchanged", func(r *cutplan.Row) bool {
		a, last := &r.Pieces[0].Cuts[0].Number, &r.Pieces[len(r.Pieces)-1]
		b := &last.Cuts[len(last.Cuts)-1].Number
		*a, *b = *b, *a
		return *a != *b && r.Pieces[0].Layout == last.Layout
	}),
	// The wrong thing comes off.
	inCut("a part under another mark", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		c.Off.Node = asNode(c.Off.Node, func(n *cutplan.Node) { n.Blank = 1 - min(n.Blank, 1) })
		r.Off.Node = c.Off.Node
		return c.Off.Node != nil && c.Off.Node.Use == cutplan.Part
	}),
	inCut("a part turned", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		c.Off.Node = asNode(c.Off.Node, func(n *cutplan.Node) { n.Turned = !n.Turned })
		r.Off.Node = c.Off.Node
		return c.Off.Node != nil && c.Off.Node.Use == cutplan.Part
	}),
	inCut("a part told as waste", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		c.Off.Node = asNode(c.Off.Node, func(n *cutplan.Node) { n.Use = cutplan.Waste })
		r.Off.Node = c.Off.Node
		return c.Off.Node != nil
	}),
	inCut("a part that has no name", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Off.Node
		c.Off.Node, r.Off.Node = nil, nil
		return was != nil
	}),
	inCut("an offcut told at another place", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Left.Node
		c.Left.Node = asNode(was, func(n *cutplan.Node) { n.X += stock.Millimeter })
		return was != nil && was.Use == cutplan.Offcut
	}),
	inCut("an offcut told as waste", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Left.Node
		c.Left.Node = asNode(was, func(n *cutplan.Node) { n.Use = cutplan.Waste })
		return was != nil && was.Use == cutplan.Offcut
	}),
	inCut("a part that is left has no name", func(_ *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Left.Node
		c.Left.Node = nil
		return was != nil && was.Use == cutplan.Part
	}),
	inCut("what is left told with the kerf", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		if r.Cut == cutplan.Rip {
			c.Left.Size.Width += kerfs
		} else {
			c.Left.Size.Length += kerfs
		}
		return true
	}),
	inCut("something left where the blade ran off the edge", func(r *cutplan.Row, c *cutplan.RowCut) bool {
		was := c.Left.Size
		c.Left.Size = c.Off.Size
		return was == cutplan.Size{}
	}),
	at("the row names another piece than its cut", func(r *cutplan.Row) bool { r.Off.Size.Length++; return r.Off.Node != nil || !r.Trim }),
	// The wrong order.
	{"a row left out", func(_ *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) {
		return slices.Delete(rows, i, i+1), true
	}},
	{"a row twice", func(_ *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) {
		return slices.Insert(rows, i, rows[i]), true
	}},
	{"a rest ahead of the row that makes it", func(_ *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) {
		for _, h := range rows[i].Pieces {
			if by := maker(rows, i, h); by >= 0 {
				row := rows[i]
				return slices.Insert(slices.Delete(rows, i, i+1), by, row), true
			}
		}
		return nil, false
	}},
	{"a cut joined to an earlier row, past the one before it", func(_ *cutplan.Plan, rows []cutplan.Row, i int) ([]cutplan.Row, bool) {
		r := &rows[i]
		last := len(r.Pieces) - 1
		h := r.Pieces[last]
		by := maker(rows, i, h)
		for early := 0; early < by; early++ {
			if e := &rows[early]; e.Setting == r.Setting && e.Cut == r.Cut && e.Guide == r.Guide && same(e.Off.Node, r.Off.Node) && e.Off.Size == r.Off.Size {
				e.Pieces = append(slices.Clone(e.Pieces), h)
				e.Count += len(h.Cuts)
				if r.Pieces, r.Count = r.Pieces[:last], r.Count-len(h.Cuts); last == 0 {
					rows = slices.Delete(rows, i, i+1)
				}
				return rows, true
			}
		}
		return nil, false
	}},
	at("the fence told to stay", func(r *cutplan.Row) bool { was := r.Stays; r.Stays = true; return !was }),
}

// maker returns the row ahead of row i that makes a piece; -1 if none does.
func maker(rows []cutplan.Row, i int, h cutplan.Held) int {
	for k := range rows[:i] {
		for _, of := range rows[k].Pieces {
			if of.Layout == h.Layout && slices.ContainsFunc(of.Cuts, func(c cutplan.RowCut) bool { return c.Number == h.By }) {
				return k
			}
		}
	}
	return -1
}

// deep is a copy of rows that shares nothing with them but nodes.
func deep(rows []cutplan.Row) []cutplan.Row {
	rows = slices.Clone(rows)
	for i := range rows {
		rows[i].Pieces = slices.Clone(rows[i].Pieces)
		for k := range rows[i].Pieces {
			rows[i].Pieces[k].Cuts = slices.Clone(rows[i].Pieces[k].Cuts)
		}
	}
	return rows
}

// Every fault, planted into every row that has a place for it, is caught by the steps and by
// the setups: of sheets and boards, trimmed and not, with and without limits of the saw.
func TestPlantedFaultsAreCaught(t *testing.T) {
	if len(faults) < 40 {
		t.Errorf("only %d faults", len(faults))
	}
	planted := map[string]int{}
	for _, name := range []string{"testdata/seed-trays.toml", "testdata/oak-with-defects.toml", "../../../testdata/jobs/potting-bench.toml", "../../../testdata/jobs/van-shelves.toml", "../../../testdata/jobs/workbench.toml", "../../../testdata/jobs/sideboard.toml"} {
		file, err := job.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := sellercuts.Make(context.Background(), file.Job, cutplan.Options{Iterations: 200})
		if err != nil {
			t.Fatal(err)
		}
		var made []numbered
		for i := range p.Layouts {
			of, err := steps(p, i, p.StepRows(i))
			if err != nil {
				t.Fatal(err)
			}
			made = append(made, of)
		}
		groups := p.Setups()
		for _, f := range faults {
			try := func(where string, rows []cutplan.Row, check func([]cutplan.Row) error) {
				for i := range rows {
					with, planted1 := f.plant(p, deep(rows), i)
					if !planted1 {
						continue
					}
					planted[f.name]++
					if check(with) == nil {
						t.Errorf("%s, %s, row %d: %s is not caught", name, where, i+1, f.name)
						return
					}
				}
			}
			for i := range p.Layouts {
				try(fmt.Sprintf("layout %d", i+1), p.StepRows(i), func(rows []cutplan.Row) error {
					_, err := steps(p, i, rows)
					return err
				})
			}
			for n, g := range groups {
				try("setups of "+g.Material, p.SetupRows(g), func(rows []cutplan.Row) error {
					at := -1
					return setups(p, groups, func(of cutplan.Gathered) []cutplan.Row {
						if at++; at == n {
							return rows
						}
						return p.SetupRows(of)
					}, made)
				})
			}
		}
	}
	for _, f := range faults {
		if planted[f.name] == 0 {
			t.Errorf("%s: there was no place to plant it", f.name)
		}
	}
	t.Logf("%d kinds of fault: %v", len(faults), planted)
}

// What is read from the page may be wrong too.
func TestWrongFiguresAreCaught(t *testing.T) {
	file, err := job.Read("../../../testdata/jobs/keepsake-boxes.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(context.Background(), file.Job, cutplan.Options{Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	const tenth = stock.Millimeter / 10
	in32 := stock.Inch / 32
	for _, wrong := range []struct {
		name string
		half stock.Length
		read func(l stock.Length) stock.Length
	}{
		{"rounded to whole millimeters", tenth / 2, func(l stock.Length) stock.Length { return l / stock.Millimeter * stock.Millimeter }},
		{"a tenth too long", tenth / 2, func(l stock.Length) stock.Length { return l + tenth }},
		{"the sign of the fraction lost", in32 / 2, func(l stock.Length) stock.Length { return l / stock.Inch * stock.Inch }},
		{"rounded up to a thirty-second", in32 / 2, func(l stock.Length) stock.Length { return (l + in32 - 1) / in32 * in32 }},
		{"a kerf added", tenth / 2, func(l stock.Length) stock.Length { return l + kerfs }},
	} {
		_, err := figures(p, wrong.half, func(l stock.Length) (stock.Length, error) { return wrong.read(l), nil })
		if err == nil || !strings.Contains(err.Error(), "is printed as") {
			t.Errorf("%s: %v", wrong.name, err)
		}
	}
}
