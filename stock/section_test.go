package stock

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestBoardIsCutApartAtItsDefects(t *testing.T) {
	zones := func(ends ...Length) (all []Zone) {
		for i := 0; i < len(ends); i += 2 {
			all = append(all, Zone{ends[i], ends[i+1]})
		}
		return all
	}
	const kerf = 4
	for _, test := range []struct {
		reason  string
		trim    Length
		defects []Zone
		want    []Zone
	}{
		{"in the middle", 0, zones(300, 360), zones(0, 300, 360, 1000)},
		{"as wide as a kerf", 0, zones(300, 304), zones(0, 300, 304, 1000)},
		{"a little narrower: it costs a kerf", 0, zones(300, 303), zones(0, 300, 304, 1000)},
		{"a hair: it costs a kerf", 0, zones(300, 301), zones(0, 300, 304, 1000)},
		{"a little wider than a kerf: it costs its width", 0, zones(300, 305), zones(0, 300, 305, 1000)},
		{"trim off the outer ends only", 20, zones(300, 360), zones(20, 300, 360, 980)},
		{"at the reference end, where no kerf is lost", 0, zones(0, 1), zones(1, 1000)},
		{"at the far end", 0, zones(999, 1000), zones(0, 999)},
		{"within the trim: the board stays whole", 20, zones(0, 15, 990, 1000), zones(0, 1000)},
		{"reaching out of the trim", 20, zones(10, 21, 979, 1000), zones(21, 979)},
		{"near the end", 0, zones(995, 997), zones(0, 995, 999, 1000)},
		{"the kerf takes what is behind it", 0, zones(996, 997), zones(0, 996)},
		{"overlapping", 0, zones(300, 360, 340, 400), zones(0, 300, 400, 1000)},
		{"one within another", 0, zones(300, 400, 340, 350), zones(0, 300, 400, 1000)},
		{"touching", 0, zones(300, 360, 360, 400), zones(0, 300, 400, 1000)},
		{"not in order", 0, zones(700, 710, 300, 360), zones(0, 300, 360, 700, 710, 1000)},
		{"two within a kerf: one cut takes both", 0, zones(300, 301, 302, 303), zones(0, 300, 304, 1000)},
		{"two a kerf apart: the clear wood between them is sawdust", 0, zones(300, 301, 304, 305), zones(0, 300, 305, 1000)},
		{"two a kerf and a hair apart", 0, zones(300, 301, 305, 306), zones(0, 300, 304, 305, 309, 1000)},
		{"everywhere", 0, zones(0, 1000), nil},
		{"all but the trim", 20, zones(20, 980), nil},
		{"none", 20, nil, zones(0, 1000)},
	} {
		board := Stock{Name: "A", Kind: Board, Length: 1000, Width: 200, Trim: test.trim, Count: 1, OnHand: true}
		var got []Zone
		for _, s := range board.ClearSections(test.defects, kerf) {
			got = append(got, s.OnBoard())
		}
		if d := cmp.Diff(test.want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", test.reason, d)
		}
	}
}

// What is not in a section is trim, defect or the kerf of a cut that frees a
// section, and every section is as long as can be.
func TestSectionsAndDefectsAndTrimAreTheBoard(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	for range 3000 {
		kerf, trim := Length(r.IntN(6)), Length(r.IntN(8))
		board := Stock{Kind: Board, Length: 60 + Length(r.IntN(60)), Width: 9, Trim: trim}
		var defects []Zone
		for range 1 + r.IntN(5) {
			from := Length(r.IntN(int(board.Length)))
			defects = append(defects, Zone{from, min(board.Length, from+1+Length(r.IntN(9)))})
		}
		if wrong := accountFor(board, defects, kerf, board.ClearSections(defects, kerf)); wrong != "" {
			t.Fatalf("board %d, trim %d, kerf %d, defects %v: %s", board.Length, trim, kerf, defects, wrong)
		}
	}
}

// accountFor paints the board hair by hair and says what is wrong.
func accountFor(board Stock, defects []Zone, kerf Length, sections []Stock) string {
	const clear, bad, cut, section = 0, 1, 2, 3
	wood := make([]int, board.Length)
	paint := func(from, to Length, with int, unless ...int) bool {
		for x := max(from, 0); x < min(to, board.Length); x++ {
			for _, u := range unless {
				if wood[x] == u {
					return false
				}
			}
			wood[x] = with
		}
		return true
	}
	paint(0, board.Trim, bad)
	paint(board.Length-board.Trim, board.Length, bad)
	for _, d := range defects {
		paint(d.From, d.To, bad)
	}
	before := append([]int(nil), wood...)
	for i, s := range sections {
		z := s.OnBoard()
		if !s.IsSection() { // whole, for no defect reaches beyond the trim
			z = Zone{board.Trim, board.Length - board.Trim}
		} else if s.Trim != 0 || s.Section.Board != board.Length || z.To > board.Length || z.To <= z.From {
			return fmt.Sprintf("section %d is %+v", i, s)
		}
		if i > 0 && z.From-sections[i-1].OnBoard().To < kerf {
			return fmt.Sprintf("no kerf before section %d", i)
		}
		if !paint(z.From, z.To, section, bad, cut, section) {
			return fmt.Sprintf("section %v holds a defect, trim, a kerf or another section", z)
		}
		if z.To < board.Length { // the cut that frees its far end
			paint(z.To, z.To+kerf, cut)
		}
		if z.To < board.Length && before[z.To] == clear {
			return fmt.Sprintf("section %v could be longer", z)
		}
	}
	for x, w := range wood {
		if w == clear {
			return fmt.Sprintf("at %d there is clear wood in no section", x)
		}
	}
	return ""
}
