package report

import (
	"encoding/json"
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// sawnPlan is what another program would read to saw a plan: its keys are written from the
// schema's words, not from the writer.
type sawnPlan struct {
	Saw    struct{ Kerf json.Number }
	Blanks []struct {
		Part, Mark string
		readSize
		Count int
	}
	Layouts []struct {
		Number, Repeat int
		readSize
		Root  sawnPiece
		Steps []sawnStep
	}
	Setups []struct {
		Rows []struct {
			Count   int
			Cut     string
			Setting json.Number
			Cuts    []sawnCut
		}
	}
	Unplaced []struct {
		Mark  string
		Count int
	}
	Estimates []struct {
		Blanks []struct {
			Mark  string
			Count int
		}
	}
}

type sawnCut struct{ Layout, Number int }

type sawnStep struct {
	Number            int
	InHand            int `json:"in_hand"`
	Rest              bool
	Piece             readSize
	Cut, Guide, Waste string
	Setting           json.Number
	SawOff            bool `json:"saw_off"`
	Off               sawnPiece
	Left              *sawnPiece
}

type sawnPiece struct {
	readSize
	Use, Mark string
	Turned    bool
	Names     []string
}

// Pieces are sawn from plan.json alone, with the saw set as each step says: every blank
// comes off in its size, as often as it is asked for.
func TestPiecesSawnFromThePlanFileAreTheBlanks(t *testing.T) {
	paths, err := filepath.Glob("../testdata/golden/*/plan.json")
	if err != nil || len(paths) < 10 {
		t.Fatal(len(paths), "examples", err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := saw(data); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	for _, p := range []*cutplan.Plan{bench(), incomplete(), trimmedToSize(), uncut()} {
		if err := saw(JSON(p, Options{})); err != nil {
			t.Errorf("%s: %v", p.Job.Title, err)
		}
	}
}

// trimmedToSize is a plan whose one blank is free once its sheet is trimmed.
func trimmedToSize() *cutplan.Plan {
	const mm = stock.Millimeter
	job := stock.Job{Title: "trimmed to size", Saw: stock.Saw{Kerf: 3 * mm}}
	sheet := stock.Stock{Name: "sheet", Material: "ply", Length: 110 * mm, Width: 60 * mm, Thickness: 9 * mm, Trim: 5 * mm}
	part := stock.Part{Name: "lid", Material: "ply", Length: 100 * mm, Width: 50 * mm, Thickness: 9 * mm, Count: 1}
	bill := stock.Blank{Part: part, Length: part.Length, Width: part.Width, Thickness: part.Thickness, Count: 1, Gang: 1, Layers: 1}
	return &cutplan.Plan{
		Job: job, Bill: []cutplan.Blank{{Blank: bill, Mark: "A"}},
		Layouts: []cutplan.Layout{{Stock: sheet, Repeat: 1, Root: cutplan.Node{
			X: sheet.Trim, Y: sheet.Trim, Length: part.Length, Width: part.Width, Use: cutplan.Part,
		}}},
	}
}

// uncut is the same with a sheet that is the blank.
func uncut() *cutplan.Plan {
	p := trimmedToSize()
	l := &p.Layouts[0]
	l.Stock.Length, l.Stock.Width, l.Stock.Trim = l.Root.Length, l.Root.Width, 0
	l.Root.X, l.Root.Y = 0, 0
	return p
}

// Each of these changes makes a part of another size, or none.
func TestAWrongStepIsNoticed(t *testing.T) {
	data := JSON(bench(), Options{})
	if err := saw(data); err != nil {
		t.Fatal(err)
	}
	for i, change := range []func(p *sawnPlan){
		func(p *sawnPlan) { p.Saw.Kerf = "4" },
		func(p *sawnPlan) { p.Layouts[0].Steps[0].Setting = "7" },
		func(p *sawnPlan) { p.Layouts[0].Steps[2].Waste = "near" },
		func(p *sawnPlan) { p.Layouts[0].Steps[2].Rest = !p.Layouts[0].Steps[2].Rest },
		func(p *sawnPlan) { p.Layouts[0].Steps = p.Layouts[0].Steps[1:] },
		func(p *sawnPlan) { p.Layouts[0].Steps[1].SawOff = !p.Layouts[0].Steps[1].SawOff },
		func(p *sawnPlan) { p.Setups[0].Rows = p.Setups[0].Rows[1:] },
		func(p *sawnPlan) { p.Layouts[1].Repeat++ },
	} {
		var p sawnPlan
		if err := json.Unmarshal(data, &p); err != nil {
			t.Fatal(err)
		}
		change(&p)
		if p.saw() == nil {
			t.Errorf("change %d is not noticed", i+1)
		}
	}
}

func saw(data []byte) error {
	var p sawnPlan
	if err := json.Unmarshal(data, &p); err != nil {
		return err
	}
	return p.saw()
}

func (p sawnPlan) saw() error {
	got := map[string]int{}
	blanks := map[string]readSize{}
	for _, b := range p.Blanks {
		blanks[b.Mark] = b.readSize
		got[b.Mark] -= b.Count
	}
	for _, u := range p.Unplaced {
		got[u.Mark] += u.Count
	}
	for _, e := range p.Estimates {
		for _, b := range e.Blanks {
			got[b.Mark] += b.Count
		}
	}
	finish := func(s sawnPiece, times int) error {
		if s.Use != "part" {
			return nil
		}
		b := blanks[s.Mark]
		if s.Turned {
			b.Length, b.Width = b.Width, b.Length
		}
		if rat(s.Length).Cmp(rat(b.Length)) != 0 || rat(s.Width).Cmp(rat(b.Width)) != 0 {
			return fmt.Errorf("%s comes out %v x %v", s.Mark, s.Length, s.Width)
		}
		got[s.Mark] += times
		return nil
	}
	for _, l := range p.Layouts {
		if len(l.Steps) == 0 {
			if err := finish(l.Root, l.Repeat); err != nil {
				return err
			}
			continue
		}
		bench := map[handle]sawnPiece{{}: {readSize: l.readSize, Use: "split"}}
		for _, s := range l.Steps {
			if err := s.saw(bench, rat(p.Saw.Kerf)); err != nil {
				return fmt.Errorf("layout %d, cut %d: %w", l.Number, s.Number, err)
			}
		}
		for _, piece := range bench {
			if piece.Use == "split" {
				return fmt.Errorf("layout %d: %v is left uncut", l.Number, piece)
			}
			if err := finish(piece, l.Repeat); err != nil {
				return err
			}
		}
	}
	for mark, n := range got {
		if n != 0 {
			return fmt.Errorf("%s: %d too many", mark, n)
		}
	}
	return p.inSetups()
}

// handle names a piece: the cut that freed it, and its side.
type handle struct {
	by   int
	rest bool
}

// saw cuts one piece on the bench in two.
func (s sawnStep) saw(bench map[handle]sawnPiece, kerf *big.Rat) error {
	at := handle{s.InHand, s.Rest}
	piece, found := bench[at]
	if !found || piece.Use != "split" || rat(piece.Length).Cmp(rat(s.Piece.Length)) != 0 || rat(piece.Width).Cmp(rat(s.Piece.Width)) != 0 {
		return fmt.Errorf("the piece in hand is %v, not %v", piece, s.Piece)
	}
	delete(bench, at)
	measure := func(p readSize) *big.Rat {
		if s.Cut == "rip" {
			return rat(p.Width)
		}
		return rat(p.Length)
	}
	whole := measure(piece.readSize)
	guided := rat(s.Setting)
	if s.SawOff {
		guided = new(big.Rat).Sub(whole, guided)
	}
	if measure(s.Off.readSize).Cmp(guided) != 0 {
		return fmt.Errorf("%v comes off, not %v", guided, s.Off)
	}
	bench[handle{s.Number, false}] = s.Off
	left := new(big.Rat).Sub(new(big.Rat).Sub(whole, guided), kerf)
	switch {
	case s.Left != nil && s.Waste == "near":
		return fmt.Errorf("a reference edge is trimmed, and %v is left", *s.Left)
	case s.Left != nil && measure(s.Left.readSize).Cmp(left) != 0:
		return fmt.Errorf("%v is left, not %v", left, *s.Left)
	case s.Left != nil:
		bench[handle{s.Number, true}] = *s.Left
	}
	return nil
}

// inSetups checks that the setups have every cut once, behind the cut that frees its piece.
func (p sawnPlan) inSetups() error {
	steps, repeat, waiting := map[sawnCut]sawnStep{}, map[int]int{}, 0
	for _, l := range p.Layouts {
		repeat[l.Number] = l.Repeat
		for _, s := range l.Steps {
			steps[sawnCut{l.Number, s.Number}] = s
			waiting++
		}
	}
	done := map[sawnCut]bool{}
	for _, g := range p.Setups {
		for _, r := range g.Rows {
			count := 0
			for _, c := range r.Cuts {
				s, found := steps[c]
				if !found || done[c] || s.InHand > 0 && !done[sawnCut{c.Layout, s.InHand}] || s.Cut != r.Cut || s.Setting != r.Setting {
					return fmt.Errorf("setups: layout %d, cut %d cannot be made here", c.Layout, c.Number)
				}
				done[c] = true
				count += repeat[c.Layout]
				waiting--
			}
			if count != r.Count {
				return fmt.Errorf("setups: %d cuts are said to be %d", count, r.Count)
			}
		}
	}
	if waiting != 0 {
		return fmt.Errorf("setups: %d cuts are missing", waiting)
	}
	return nil
}
