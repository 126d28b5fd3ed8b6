package report

import (
	"strings"
	"testing"

	"sawbill/nest/cutplan"
)

// Cuts that wait for the dry fit are named by their numbers: those that divide pieces of
// which all parts wait, and none that another part needs.
func TestCutsThatWaitAreNamed(t *testing.T) {
	named := 0
	for _, e := range examples(t) {
		for _, l := range e.plan.Layouts {
			said := cutLater(e.plan, l)
			late, now := 0, 0
			for _, n := range l.Leaves() {
				switch {
				case n.Use != cutplan.Part:
				case e.plan.Bill[n.Blank].Part.DryFit:
					late++
				default:
					now++
				}
			}
			if (said != "") != (late > 0) || late > 0 && (now == 0) != strings.HasPrefix(said, "After the dry fit: all") {
				t.Errorf("%s: %d parts wait, %d do not: %q", e.name, late, now, said)
			}
			wait := waitingCuts(e.plan, l)
			for _, s := range wait {
				named++
				for _, n := range []*cutplan.Node{s.OffNode, s.LeftNode} {
					if n == nil {
						continue
					}
					for _, leaf := range n.Leaves() {
						if leaf.Use == cutplan.Part && !e.plan.Bill[leaf.Blank].Part.DryFit {
							t.Errorf("%s: cut %d waits, and frees %s", e.name, s.Number, e.plan.Bill[leaf.Blank].Mark)
						}
					}
				}
			}
			freed := map[int]bool{}
			for _, s := range wait {
				freed[s.Number] = true
			}
			for _, s := range e.plan.Steps(l) {
				if n := s.OffNode; n != nil && n.Use == cutplan.Part && e.plan.Bill[n.Blank].Part.DryFit && !freed[s.Number] && now == 0 {
					t.Errorf("%s: cut %d frees %s and does not wait", e.name, s.Number, e.plan.Bill[n.Blank].Mark)
				}
			}
		}
	}
	if named == 0 {
		t.Error("no cut waits")
	}
}
