package report

import (
	"strings"

	"sawbill/nest/cutplan"
)

// whatIf says how the job differs from its file: "what if: without back, height 2 mm
// less". It is empty if it does not.
func whatIf(o Options) string {
	if len(o.WhatIf) == 0 {
		return ""
	}
	separator := ", "
	if strings.Contains(strings.Join(o.WhatIf, ""), ", ") { // as in the name of a part
		separator = "; "
	}
	return "what if: " + strings.Join(o.WhatIf, separator)
}

// withWhatIf adds what if to a title.
func withWhatIf(title string, o Options) string {
	if said := whatIf(o); said != "" {
		return title + ", " + said
	}
	return title
}

// captionStart names the plan, as the caption of a picture begins.
func captionStart(p *cutplan.Plan, code string, o Options) string {
	return withWhatIf(title(p)+", plan "+code, o)
}
