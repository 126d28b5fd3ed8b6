package stock

import "strings"

// formula is how a cell begins that a spreadsheet would calculate, or that hides one
// which does.
const formula = "=+-@\t\r"

// GuardCell writes a text for a cell of a CSV file. No spreadsheet takes it for a formula:
// it gets an apostrophe before it, if need be. [PlainCell] takes that off again.
func GuardCell(text string) string {
	if guarded(text) || text != "" && strings.ContainsRune(formula, rune(text[0])) {
		return "'" + text
	}
	return text
}

// PlainCell is the text that [GuardCell] was given.
func PlainCell(cell string) string {
	if guarded(cell) {
		return cell[1:]
	}
	return cell
}

// guarded reports whether PlainCell would take something off.
func guarded(cell string) bool {
	return len(cell) > 1 && cell[0] == '\'' && (cell[1] == '\'' || strings.ContainsRune(formula, rune(cell[1])))
}
