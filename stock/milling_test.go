package stock

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

func TestMillingListsSettingsInOrder(t *testing.T) {
	const mm = Millimetre
	part := func(a Allowance) Part {
		return Part{Length: 400 * mm, Width: 60 * mm, Thickness: 20 * mm, Allowance: a}
	}
	all := Allowance{Edge: 2 * mm, Edges: 2, Face: mm, Faces: 2, End: 10 * mm, Ends: 2}
	one := Allowance{Edge: 2 * mm, Edges: 1, Face: mm, Faces: 1, End: 10 * mm, Ends: 1}
	saw := Saw{Kerf: 3 * mm, ResawKerf: 2 * mm}
	for _, test := range []struct {
		reason       string
		part         Part
		gang, layers int
		least, from  Length
		want         []string
	}{
		{"ripped over-wide, an edge trued, turned, the other trued", part(all), 1, 1, 0, 22 * mm, []string{
			"plane 21 off 1", "plane 20 off 1", "true edge 62 off 2", "true edge 60 off 2", "square end 410 off 10", "cut to length 400 off 10"}},
		{"one of each", part(one), 1, 1, 0, 21 * mm, []string{
			"plane 20 off 1", "true edge 60 off 2", "cut to length 400 off 10"}},
		{"nothing is allowed for", part(Allowance{Edges: 2, Faces: 2, Ends: 2}), 1, 1, 0, 20 * mm, nil},
		{"a thicker board loses as much on either face", part(all), 1, 1, 0, 27 * mm, []string{
			"plane 23.5 off 3.5", "plane 20 off 3.5", "true edge 62 off 2", "true edge 60 off 2", "square end 410 off 10", "cut to length 400 off 10"}},
		{"a thicker board, no face counted", part(Allowance{}), 1, 1, 0, 27 * mm, []string{"plane 20 off 7"}},
		{"a gang is parted last", part(one), 3, 1, 0, 21 * mm, []string{
			"plane 20 off 1", "true edge 60 off 2", "square end 1206 off 10", "cut to length 400 off 6 x 3"}},
		{"longer than need be", part(one), 1, 1, 500 * mm, 21 * mm, []string{
			"plane 20 off 1", "true edge 60 off 2", "cut to length 400 off 100"}},
		{"resawn on its true edge", part(all), 1, 2, 0, 50 * mm, []string{
			"plane 46 off 4", "true edge 62 off 2", "true edge 60 off 2", "resaw 22 off 2 x 2", "plane 21 off 1", "plane 20 off 1",
			"square end 410 off 10", "cut to length 400 off 10"}},
		{"mitred, from a gang", part(Allowance{Mitre: 2 * mm, Mitres: 2}), 2, 1, 0, 20 * mm, []string{
			"cut to length 404 off 3 x 2", "mitre 402 off 2", "mitre 400 off 2"}},
	} {
		var got []string
		for _, m := range test.part.inOne(Board, test.gang, test.layers, saw, test.least).Milling(test.from) {
			line := fmt.Sprintf("%v %s off %s", m.Operation, m.Setting.Decimal(), m.Off.Decimal())
			if m.Pieces > 1 {
				line += fmt.Sprintf(" x %d", m.Pieces)
			}
			got = append(got, line)
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: %q, want %q", test.reason, got, test.want)
		}
	}
}

// Whatever parts, allowances and boards there are: the blanks hold the parts
// that are wanted and no other, each contains its parts, their allowances and
// the kerfs between, and milling it step by step ends at the finished part.
func TestMillingLosesNothing(t *testing.T) {
	ganged, resawn, both := 0, 0, 0
	for seed := range uint64(20_000) {
		j := randomJob(rand.New(rand.NewPCG(seed, 1)))
		p := j.Parts[0]
		held := 0
		for _, b := range j.Blanks() {
			held += b.Count * b.Holds()
			if err := checkBlank(j, b); err != nil {
				t.Fatalf("seed %d: %v\nblank %+v\njob %+v", seed, err, b, j)
			}
			switch {
			case b.Gang > 1 && b.Layers > 1:
				both++
			case b.Gang > 1:
				ganged++
			case b.Layers > 1:
				resawn++
			}
		}
		if held != p.Count {
			t.Fatalf("seed %d: the blanks hold %d parts, %d are wanted\n%+v", seed, held, p.Count, j)
		}
	}
	if min(ganged, resawn, both) < 250 {
		t.Errorf("%d gangs, %d to be resawn, %d both: too few to tell anything", ganged, resawn, both)
	}
}

// randomJob has one part and some boards that it can come from by itself.
func randomJob(r *rand.Rand) Job {
	upTo := func(most int) Length { return Length(r.IntN(most+1)) * Millimetre / 8 }
	j := Job{Saw: Saw{Kerf: upTo(32), ResawKerf: upTo(20)}, Planer: Planer{Shortest: upTo(4000)}}
	p := Part{
		Name: "part", Material: "ash", Count: 1 + r.IntN(20), Resaw: r.IntN(2) == 0, Alone: r.IntN(8) == 0,
		Length: Millimetre + upTo(1<<r.IntN(13)), Width: Millimetre + upTo(800), Thickness: Millimetre + upTo(1<<r.IntN(9)), Grain: Grain(r.IntN(3)),
		Allowance: Allowance{
			Edge: upTo(20), Face: upTo(20), End: upTo(80), Mitre: upTo(16),
			Edges: r.IntN(3), Faces: r.IntN(3), Ends: r.IntN(3), Mitres: r.IntN(3),
		},
	}
	alone := p.Blank(Board)
	for range 1 + r.IntN(3) {
		j.Stock = append(j.Stock, Stock{
			Kind: Board, Material: "ash", Trim: upTo(80),
			Length: alone.Length + upTo(1<<r.IntN(15)), Width: alone.Width + upTo(400), Thickness: alone.Thickness + upTo(1<<r.IntN(11)),
		})
		s := &j.Stock[len(j.Stock)-1]
		s.Length += 2 * s.Trim
	}
	j.Parts = []Part{p}
	return j
}

func checkBlank(j Job, b Blank) error {
	p, a := b.Part, b.Part.Allowance
	n, m := Length(b.Gang), Length(b.Layers)
	switch {
	case b.Gang < 1 || b.Layers < 1 || b.Spare < 0 || b.Spare >= b.Layers || b.Count < 1:
		return fmt.Errorf("counts make no sense")
	case b.Spare > 0 && b.Count > 1:
		return fmt.Errorf("more than one has a spare")
	case b.Length < n*(p.Length+Length(a.Mitres)*a.Mitre)+(n-1)*j.Saw.Kerf+Length(a.Ends)*a.End:
		return fmt.Errorf("too short for its parts")
	case b.Width != p.Width+Length(a.Edges)*a.Edge:
		return fmt.Errorf("width")
	case b.Thickness != m*(p.Thickness+Length(a.Faces)*a.Face)+(m-1)*j.Saw.ResawKerf:
		return fmt.Errorf("thickness")
	}
	room := Length(0) // the longest board it may come from
	for _, i := range j.Sources(b) {
		s := j.Stock[i]
		if s.Thickness < b.Thickness {
			return fmt.Errorf("board %d is too thin", i)
		}
		if length, width := s.Usable(); b.Width <= width {
			room = max(room, length)
		}
		if err := mill(b, s.Thickness, j.Saw); err != nil {
			return fmt.Errorf("from board %d: %w", i, err)
		}
	}
	if room < b.Length {
		return fmt.Errorf("longer than any board")
	}
	if short := a.Faces > 0 && a.Face > 0 && b.Length < min(j.Planer.Shortest, room); short && !p.Alone && p.Grain != GrainWidth {
		return fmt.Errorf("too short to be planed")
	}
	return nil
}

// mill does on a piece of wood what the steps say.
func mill(b Blank, from Length, saw Saw) error {
	length, width, thickness := b.Length, b.Width, from
	pieces, trued := 1, 0
	for _, m := range b.Milling(from) {
		size, kerf := &length, saw.Kerf
		switch m.Operation {
		case Plane:
			size = &thickness
		case TrueEdge:
			size = &width
			trued++
		case Resaw:
			size, kerf = &thickness, saw.ResawKerf
		}
		idle := m.Off == 0 && m.Pieces == 1 && m.Operation != CutMitre // that may just take the corner
		if idle || *size != Length(m.Pieces)*m.Setting+m.Off || m.Setting <= 0 || m.Off < Length(m.Pieces-1)*kerf {
			return fmt.Errorf("%v: %d is not %d x %d and %d", m.Operation, *size, m.Pieces, m.Setting, m.Off)
		}
		*size = m.Setting
		pieces *= m.Pieces
	}
	p := b.Part
	if length != p.Length || width != p.Width || thickness != p.Thickness {
		return fmt.Errorf("the part is %d x %d x %d", length, width, thickness)
	}
	if pieces != b.Gang*b.Layers {
		return fmt.Errorf("%d pieces", pieces)
	}
	if p.Allowance.Edge > 0 && trued != p.Allowance.Edges {
		return fmt.Errorf("%d edges trued", trued)
	}
	return nil
}
