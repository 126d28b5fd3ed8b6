package report

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// Where the job gives no limits of the saw, no cut is marked as beyond it: that is told
// once among the cautions, with the keys that give them.
func TestLimitsOfTheSawThatWereNotGivenAreTold(t *testing.T) {
	const mm = stock.Millimeter
	for _, tt := range []struct {
		saw  stock.Saw
		want string // the keys told, none where empty
	}{
		{stock.Saw{}, "rip_capacity and crosscut_capacity"},
		{stock.Saw{RipCapacity: 760 * mm}, "crosscut_capacity"},
		{stock.Saw{CrosscutCapacity: 1200 * mm}, "rip_capacity"},
		{stock.Saw{RipCapacity: 760 * mm, CrosscutCapacity: 1200 * mm}, ""},
	} {
		p := bench()
		p.Job.Saw.RipCapacity, p.Job.Saw.CrosscutCapacity = tt.saw.RipCapacity, tt.saw.CrosscutCapacity
		var told []string
		for _, b := range blocks(p, Options{}) {
			for _, said := range b.cautions {
				if strings.HasPrefix(said, "The job gives no ") {
					told = append(told, said)
				}
			}
		}
		switch {
		case tt.want == "" && told != nil:
			t.Errorf("limits given, told %q", told)
		case tt.want != "" && (len(told) != 1 || !strings.HasPrefix(told[0], "The job gives no "+tt.want+":")):
			t.Errorf("no %s: told %q", tt.want, told)
		}
	}
	if n := len(atTheSaw.cautions); n != 11 {
		t.Errorf("%d cautions at the saw: what was told of one plan went into the next", n)
	}
}
