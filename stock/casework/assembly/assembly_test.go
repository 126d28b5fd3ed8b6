package assembly

import (
	"strings"
	"testing"

	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// What may be added to any case has its step, or its sentence.
func TestAssemblyOfWhatIsAdded(t *testing.T) {
	tests := []struct {
		role       solid.Role
		unit, says string
	}{
		{"top edging", "edging", "Glue the edging on"},
		{"door", "doors", "try the doors with spacers"},
		{"plinth front and back", "base", "Glue up the plinth"},
		{"foot", "base", "Fix the feet"},
	}
	for _, tt := range tests {
		built := &construction.Construction{In: &design.Reader{}, Corner: joints.Connection{Joint: joints.Butted}, Back: joints.Back{Fit: "none"}}
		steps := Steps(&pieces.Maker{In: built.In, Built: built, Pieces: []pieces.Piece{{Role: tt.role}}}, false)
		found := false
		for _, s := range steps {
			found = found || s.Unit == tt.unit && strings.Contains(s.Text, tt.says)
		}
		if !found {
			t.Errorf("%s: %q is not said: %v", tt.role, tt.says, steps)
		}
	}
}
