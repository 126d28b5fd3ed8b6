package cutplan

import (
	"fmt"
	"slices"
	"testing"

	"sawbill/stock"
)

// A sheet 2440 x 1220 that loses 5 on each side: 5 falls off the reference edge and end,
// then fence and stop are set to 1210 and 2430, the sawn side against them.
func TestTrimIsSawnOffAndThenSetTo(t *testing.T) {
	p := Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 3 * mm}}, Bill: make([]Blank, 1)}
	s := stock.Stock{Length: 2440 * mm, Width: 1220 * mm, Trim: 5 * mm}
	p.Layouts = []Layout{{Stock: s, Repeat: 2, Root: Node{X: 5 * mm, Y: 5 * mm, Length: 2430 * mm, Width: 1210 * mm, Use: Part}}}
	var got []string
	for _, r := range p.StepRows(0) {
		how := "set to"
		if r.SawOff {
			how = "saw off"
		}
		got = append(got, fmt.Sprintf("%v %v %d, waste %d, of %d x %d, part %v",
			r.Cut, how, r.Setting/mm, r.Waste, r.Pieces[0].Size.Length/mm, r.Pieces[0].Size.Width/mm, r.Off.Node != nil))
	}
	want := []string{
		"rip saw off 5, waste 0, of 2440 x 1220, part false",
		"crosscut saw off 5, waste 0, of 2440 x 1215, part false",
		"rip set to 1210, waste 1, of 2435 x 1215, part false",
		"crosscut set to 2430, waste 1, of 2435 x 1210, part true",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if rows := p.SetupRows(p.Setups()[0]); len(rows) != 4 || rows[3].Count != 2 || rows[3].Off.Node == nil {
		t.Errorf("setups %+v", rows)
	}
}
