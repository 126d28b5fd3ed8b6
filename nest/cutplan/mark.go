package cutplan

import "strings"

// letters are those of marks, in order. I and O are left out because they read as 1
// and 0, penciled or printed small, and J because in the font of the pages it has the
// flag of a 1. Plans of an earlier alphabet keep the marks that they were printed with.
const letters = "ABCDEFGHKLMNPQRSTUVWXYZ"

// NextMark returns the number of the first mark that no blank of a bill has.
func NextMark(bill []Blank) int {
	next := 0
	for _, b := range bill {
		next = max(next, numberOf(b.Mark)+1)
	}
	return next
}

// Mark returns mark number i: the letters A to Z but for I, J and O, then AA, AB and so on.
func Mark(i int) string {
	m := string(letters[i%len(letters)])
	if i >= len(letters) {
		m = Mark(i/len(letters)-1) + m
	}
	return m
}

// numberOf is the inverse of Mark; -1 for the empty mark. A letter that Mark leaves
// out counts as the next one, so marks with a greater number are all new.
func numberOf(mark string) int {
	n := 0
	for _, r := range mark {
		n = n*len(letters) + strings.IndexFunc(letters, func(l rune) bool { return l >= r }) + 1
	}
	return n - 1
}
