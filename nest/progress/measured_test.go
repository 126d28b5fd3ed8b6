package progress_test

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/fault"
)

func report(t *testing.T, s *progress.State, all ...string) error {
	t.Helper()
	for i, said := range all {
		e, err := progress.ParseEvent(said)
		if err == nil {
			err = s.Apply(e)
		}
		switch {
		case err != nil && i == len(all)-1:
			return err
		case err != nil:
			t.Fatal(said, err)
		}
	}
	return nil
}

// A piece with a measured size keeps its name and gives no blanks as planned.
func TestAPieceCountsAsItIsMeasured(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	sheet := ""
	for _, l := range p.Layouts {
		if l.Stock.Kind == stock.Sheet && l.Stock.OnHand == false {
			sheet = l.Stock.Name
		}
	}
	tests := []struct {
		reason   string
		happened []string
		piece    string // its name then
		length   stock.Length
		width    stock.Length
		lacks    bool
	}{
		{"a leftover", []string{"cut 1", "measured K7F2M-1=290 x 90 mm"}, "K7F2M-1", 290, 90, false},
		{"a leftover, twice", []string{"cut 1", "measured K7F2M-1=290 x 90 mm", "measured k7f2m-1=280 x 90 mm"}, "K7F2M-1", 280, 90, false},
		{"a sheet that is not cut", []string{"measured " + sheet + "=1000 x 1200 mm"}, "K7F2M measured (1)", 1000, 1200, true},
		{"the same again", []string{"measured " + sheet + "=1000 x 1200 mm", "measured K7F2M measured (1)=900 x 1200 mm"}, "K7F2M measured (1)", 900, 1200, true},
	}
	for _, test := range tests {
		s := progress.Begin(p)
		s.Code = "K7F2M"
		if err := report(t, s, test.happened...); err != nil {
			t.Errorf("%s: %v", test.reason, err)
			continue
		}
		found := 0
		for _, piece := range s.Pieces("K7F2M") {
			if piece.Stock.Name != test.piece {
				continue
			}
			found++
			if piece.Stock.Length != test.length*stock.Millimeter || piece.Stock.Width != test.width*stock.Millimeter || !piece.Stock.OnHand || piece.Stock.Count != 1 {
				t.Errorf("%s: %+v", test.reason, piece.Stock)
			}
			if piece.Root.Use == cutplan.Split || piece.Root.Use == cutplan.Part {
				t.Errorf("%s: it is to be cut as planned", test.reason)
			}
		}
		if found != 1 || s.Lacks() != test.lacks {
			t.Errorf("%s: %d pieces are called %s; lacks: %v", test.reason, found, test.piece, s.Lacks())
		}
	}
}

// A sheet is trimmed side by side, from the reference corner. Between two trim cuts the remnant is the sheet less the
// cuts so far, with a kerf of zero too.
func TestASheetIsTrimmedSideBySide(t *testing.T) {
	const mm = stock.Millimeter
	for _, kerf := range []stock.Length{0, 3 * mm} {
		job := stock.Job{
			Saw:   stock.Saw{Kerf: kerf},
			Stock: []stock.Stock{{Name: "birch 18", Material: "birch ply", Length: 700 * mm, Width: 500 * mm, Thickness: 18 * mm, Trim: 10 * mm}},
			Parts: []stock.Part{{Name: "shelf", Material: "birch ply", Length: 600 * mm, Width: 300 * mm, Thickness: 18 * mm, Count: 1}},
		}
		p, err := cutplan.Make(t.Context(), job, cutplan.Options{Iterations: 100})
		if err != nil {
			t.Fatal(err)
		}
		s := progress.Begin(p)
		for n, want := range []string{"700 x 490", "690 x 490", "690 x 480"} {
			if err := report(t, s, fmt.Sprintf("cut 1/1:%d", n+1)); err != nil {
				t.Fatal(err)
			}
			is := s.Pieces("K7F2M")[0].Stock
			if got := is.Length.Decimal() + " x " + is.Width.Decimal(); got != want {
				t.Errorf("kerf %s: after trim cut %d the piece is %s, want %s", kerf.Decimal(), n+1, got, want)
			}
		}
	}
}

// A begun piece with a changed size is not cut further as planned. A size larger than
// possible is refused.
func TestSizesThatCannotBe(t *testing.T) {
	p := planOf(t, "../../testdata/jobs/potting-bench.toml")
	begun := func(s *progress.State) string {
		for _, piece := range s.Pieces("K7F2M") {
			if piece.Kind == progress.Unfinished {
				return piece.Stock.Name
			}
		}
		t.Fatal("nothing is begun")
		return ""
	}
	s := progress.Begin(p)
	s.Code = "K7F2M"
	if err := report(t, s, "cut 1/1:1"); err != nil {
		t.Fatal(err)
	}
	name := begun(s)
	if err := report(t, s, "measured "+name+"=50 x 50 mm"); err != nil {
		t.Fatal(err)
	}
	before := fmt.Sprint(s.Blanks(), s.Layouts(), s.Pieces(""))
	for _, test := range []struct{ said, cause string }{
		{"cut 1", "has another size now"},
		{"measured " + name + "=51 x 50 mm", "cannot be larger"},
		{"measured K7F2M-99=50 x 50 mm", `no piece "K7F2M-99"`},
		{"measured " + name, "tells no size"},
		{"measured " + name + "=50 mm", "is no size"},
		{"measured " + name + "=50 x 0 mm", "makes no sense"},
	} {
		err := report(t, s, test.said)
		if wrong, ok := err.(fault.Fault); !ok || !strings.Contains(wrong.Cause, test.cause) {
			t.Errorf("%s: %v", test.said, err)
		}
		if after := fmt.Sprint(s.Blanks(), s.Layouts(), s.Pieces("")); after != before {
			t.Errorf("%s changed the state", test.said)
		}
	}
}
