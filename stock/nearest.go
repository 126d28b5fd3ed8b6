package stock

import "strings"

// Nearest returns the known word that word was most likely meant to be, for
// "did you mean". It returns false when none is near: when more than a third
// of the letters would have to change. Case does not count; of words equally
// near the first is returned.
func Nearest(word string, known []string) (string, bool) {
	best, least := "", -1
	for _, k := range known {
		a, b := []rune(strings.ToLower(word)), []rune(strings.ToLower(k))
		slips := typingSlips(a, b)
		if 3*slips > max(len(a), len(b)) {
			continue
		}
		if least < 0 || slips < least {
			best, least = k, slips
		}
	}
	return best, least >= 0
}

// typingSlips counts the slips that turn a into b: a letter too many, one too
// few, a wrong one, two neighbours exchanged (optimal string alignment, after
// Damerau, A technique for computer detection and correction of spelling
// errors, CACM 7 (1964); from memory).
func typingSlips(a, b []rune) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row := make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			wrong := last[j]
			if a[i] != b[j] {
				wrong++
			}
			row[j+1] = min(wrong, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
