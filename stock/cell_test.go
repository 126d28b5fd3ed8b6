package stock_test

import (
	"strings"
	"testing"

	"sawbill/stock"
)

func TestACellIsNoFormulaAndReadsBackAsItWas(t *testing.T) {
	for text, want := range map[string]string{
		"":           "",
		"shelf":      "shelf",
		"=1+1":       "'=1+1",
		"+cmd|' /C'": "'+cmd|' /C'",
		"-part":      "'-part",
		"@SUM(A1)":   "'@SUM(A1)",
		"\ta":        "'\ta",
		"\ra":        "'\ra",
		"'":          "'",
		"'tis":       "'tis", // no spreadsheet calculates it
		"'=1":        "''=1",
		"''=1":       "'''=1",
		"''":         "'''",
		"a=1":        "a=1",
		"à":          "à",
		"\xe4":       "\xe4",
	} {
		got := stock.GuardCell(text)
		if got != want || stock.PlainCell(got) != text {
			t.Errorf("%q: %q, read back %q, want %q", text, got, stock.PlainCell(got), want)
		}
	}
}

func FuzzGuardCell(f *testing.F) {
	f.Add("=1")
	f.Add("''-1")
	f.Fuzz(func(t *testing.T, text string) {
		cell := stock.GuardCell(text)
		if stock.PlainCell(cell) != text {
			t.Errorf("%q became %q and then %q", text, cell, stock.PlainCell(cell))
		}
		if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
			t.Errorf("%q would be calculated", cell)
		}
	})
}
