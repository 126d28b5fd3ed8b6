package job_test

import (
	"strings"
	"testing"
)

// What just fits is not refused.
func TestReadAcceptsPartsThatJustFit(t *testing.T) {
	strip := "\n[[sheet]]\nname = \"strip\"\nmaterial = \"birch ply 18\"\nthickness = 18\nlength = 2000\nwidth = 30\n"
	board := "\n[[board]]\nname = \"lath\"\nmaterial = \"birch ply 18\"\nthickness = 18\nwidth = 30\nlength = 2000\n"
	part := func(length, width, more string) string {
		return strings.NewReplacer("900", length, "300", width).Replace(oneShelf) + more
	}
	tests := []struct{ name, text string }{
		{"the whole sheet", sheet18 + part("2440", "1220", "")},
		{"the whole sheet inside the trim", sheet18 + "trim = 5\n" + part("2430", "1210", "")},
		{"the whole sheet with allowances", "[allowance]\nend = 10\nedge = 1\n" + sheet18 + part("2420", "1218", "")},
		{"the sheet turned", sheet18 + part("1220", "2440", `grain = "width"`)},
		{"turned, the grain not minding", sheet18 + part("1220", "2440", `grain = "any"`)},
		{"on stock without grain", sheet18 + "grain = \"none\"\n" + part("1220", "2440", "")},
		{"length on one sheet, width on another", sheet18 + strings.Replace(strip, "2000", "3000", 1) + part("3000", "30", "")},
		{"a sheet as narrow as the part needs no rip", "[saw]\nnarrowest_rip = 50\n" + strip + part("900", "30", "")},
		{"nor does a board", "[saw]\nnarrowest_rip = 50\n" + board + part("900", "30", "thickness = 18")},
		{"a part as wide as the narrowest rip", "[saw]\nnarrowest_rip = 50\n" + sheet18 + part("900", "50", "")},
		{"a narrow part that may be cut off across the sheet", "[saw]\nnarrowest_rip = 50\n" + sheet18 + part("900", "30", `grain = "any"`)},
		{"a board planed to the part", strings.Replace(board, "= 18", "= 21", 1) + part("900", "30", "thickness = 18\nface = 1.5\n")},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { mustRead(t, tt.text) })
	}
}
