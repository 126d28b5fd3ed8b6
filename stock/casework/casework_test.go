package casework

import (
	"fmt"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/sample"

	"github.com/google/go-cmp/cmp"
)

// Designs and words of package sample.
var (
	metric         = sample.Metric
	imperial       = sample.Imperial
	word           = sample.Word
	count          = sample.Count
	workshop       = sample.Workshop
	weighed        = sample.Weighed
	plain          = sample.Plain
	framed         = sample.Framed
	measured       = sample.Measured
	made           = sample.Made
	edgedCase      = sample.Edged
	behindTwoDoors = sample.BehindTwoDoors
	twoDoors       = sample.TwoDoors
	withOak        = sample.WithOak
	randomDesign   = sample.Random
	oneWord        = sample.OneWord
)

// derive wants a case.
func derive(t *testing.T, d Design, from Context) *Case {
	t.Helper()
	c, faults := Derive(d, from)
	for _, f := range faults {
		t.Errorf("fault: %s: %s; %s", f.Key, f.Cause, f.Remedy)
	}
	if c == nil {
		t.FailNow()
	}
	return c
}

// cut writes each part in one line: "2 side 720 x 300 x 18 carcass".
func cut(c *Case, r stock.Ruler) []string {
	var lines []string
	for _, p := range c.Parts {
		lines = append(lines, fmt.Sprintf("%d %s %s x %s %s", p.Count, p.Name, r.Size(p.Length, p.Width), r.Print(p.Thickness), p.Material))
	}
	return lines
}

// derivations writes the derivation of each size of the case.
func derivations(c *Case, r stock.Ruler) []string {
	var lines []string
	for _, d := range c.Sizes {
		lines = append(lines, d.Dimension+" "+d.Sum.Print(r))
	}
	return lines
}

func wantLines(t *testing.T, want, got []string) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
