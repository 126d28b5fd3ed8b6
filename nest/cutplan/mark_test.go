package cutplan

import (
	"strings"
	"testing"
)

// No mark reads as a figure, every number has a mark of its own, and marks of earlier
// plans, whose letters are all 26, are never given again.
func TestMarks(t *testing.T) {
	seen := make(map[string]bool)
	for i := range 2000 {
		m := Mark(i)
		if strings.ContainsAny(m, "IJO") || seen[m] || numberOf(m) != i {
			t.Errorf("mark %d is %q, of number %d", i, m, numberOf(m))
		}
		seen[m] = true
	}
	if Mark(0) != "A" || Mark(8) != "K" || Mark(22) != "Z" || Mark(23) != "AA" {
		t.Errorf("%s, %s, %s, %s", Mark(0), Mark(8), Mark(22), Mark(23))
	}
	var earlier func(i int) string
	earlier = func(i int) string { // as plans had them
		m := string(rune('A' + i%26))
		if i >= 26 {
			m = earlier(i/26-1) + m
		}
		return m
	}
	var bill []Blank
	old := make(map[string]bool)
	for i := range 800 {
		bill = append(bill, Blank{Mark: earlier(i)})
		old[bill[i].Mark] = true
		for _, next := range []int{NextMark(bill), i + 1} { // a plan file has the second
			for k := range 30 {
				if m := Mark(max(next, NextMark(bill)) + k); old[m] {
					t.Fatalf("after %s, %s is given again", bill[i].Mark, m)
				}
			}
		}
	}
}
