package report

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock/casework"
)

const checksHeading = "Checks"

// subject is all checks on one subject, with what they rest on said once.
type subject struct {
	name   string
	checks []casework.Check
	basis  []string
}

func subjects(c *casework.Case) []subject {
	var all []subject
	for _, k := range c.Checks {
		if n := len(all); n == 0 || all[n-1].name != k.Subject {
			all = append(all, subject{name: k.Subject})
		}
		s := &all[len(all)-1]
		s.checks = append(s.checks, k)
		for _, said := range append(slices.Clone(k.Assumptions), "Source: "+k.Source+".") {
			if !slices.Contains(s.basis, said) {
				s.basis = append(s.basis, said)
			}
		}
	}
	return all
}

// outcome is what a check found: "shelf, beyond the limit: ...".
func outcome(k casework.Check) string {
	return fmt.Sprintf("%s, %s: %s", k.Of, k.Verdict, k.Text)
}

// caseChecks writes the checks on a case.
func (w *writer) caseChecks(o Options) {
	if o.Case == nil || len(o.Case.Checks) == 0 {
		return
	}
	w.line("\n%s", checksHeading)
	for _, s := range subjects(o.Case) {
		w.line("  %s", s.name)
		for _, k := range s.checks {
			w.line("    %s", outcome(k))
			for _, state := range k.States {
				w.line("      %s", state)
			}
		}
		w.line("    Assumed: %s", strings.Join(s.basis, " "))
	}
}

func checksOnPaper(b document, c *casework.Case) {
	if len(c.Checks) == 0 {
		return
	}
	b.Heading(checksHeading)
	for _, s := range subjects(c) {
		b.Strong(s.name)
		for _, k := range s.checks {
			b.Paragraph(outcome(k))
			b.Items(k.States)
		}
		b.Paragraph("Assumed: " + strings.Join(s.basis, " "))
	}
}
