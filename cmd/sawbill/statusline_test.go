package main

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"sawbill/nest/cutplan"
)

func TestProgressIsOneLineThatIsTakenOffAgain(t *testing.T) {
	var b bytes.Buffer
	p := &statusLine{w: &b, start: time.Now()}
	if !p.draw() || b.Len() > 0 {
		t.Errorf("before the first plan it says %q", &b)
	}
	p.show(cutplan.Progress{Cost: 14900})
	p.show(cutplan.Progress{Cost: 14900, Bound: 7450, Complete: true})
	p.choice(3, 12)
	p.end()
	for _, want := range []string{"not every blank is placed yet", "cost 149.00, no plan costs less than 74.50", "choice 3 of 12"} {
		if strings.Count(b.String(), want) != 1 {
			t.Errorf("%q does not say once: %s", &b, want)
		}
	}
	if strings.Contains(b.String(), "\n") || !strings.HasSuffix(b.String(), wipe) {
		t.Errorf("%q leaves something on the terminal", &b)
	}
	said := b.Len()
	p.show(cutplan.Progress{Cost: 1})
	if p.draw() || b.Len() != said {
		t.Errorf("after the end it goes on: %q", &b)
	}
}
