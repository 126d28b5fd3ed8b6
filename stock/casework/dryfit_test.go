package casework

import (
	"strings"
	"testing"
)

// What closes or covers something is cut last; what it goes into is not.
func TestWhatIsCutAfterADryFit(t *testing.T) {
	eachRandomCase(t, func(t *testing.T, _ Context, _ Design, c *Case) {
		for _, p := range c.Parts {
			role, _, _ := strings.Cut(p.Name, ",")
			var want bool
			switch {
			case role == "back", role == "drawer bottom", role == "false front", role == "door", strings.HasSuffix(role, "edging"), strings.HasSuffix(role, "trim"):
				want = true
			}
			if p.DryFit != want {
				t.Errorf("%s: after a dry fit: %v, want %v", p.Name, p.DryFit, want)
			}
		}
	})
}
