package report

import (
	"bytes"
	"strings"
	"testing"
)

// A part to be cut after the dry fit is told so wherever it is listed.
func TestDryFitIsTold(t *testing.T) {
	p := bench()
	plain := cuttingBill(p, inches)
	p.Bill[0].Part.DryFit, p.Job.Parts[0].DryFit = true, true
	p.Bill[0].Part.Note = "best face out"
	l := cuttingBill(p, inches)
	if last := len(l.columns) - 1; last != len(plain.columns) || l.rows[0][last] != "after the dry fit; best face out" || l.rows[1][last] != "" {
		t.Errorf("the cutting bill has %q and %q", l.rows[0], l.rows[1])
	}
	first := strings.Split(string(CuttingBill(p)), "\n")[1]
	if !strings.HasSuffix(first, ",true,1") {
		t.Errorf("as CSV: %s", first)
	}
	if told := bytes.Count(JSON(p, Options{}), []byte(`"after_dry_fit": true`)); told != 1 {
		t.Errorf("plan.json tells it %d times", told)
	}
	var b bytes.Buffer
	if err := PartList(&b, p.Job, Options{}); err != nil || !strings.Contains(b.String(), "after the dry fit") {
		t.Errorf("the part list: %v\n%s", err, b.String())
	}
}
