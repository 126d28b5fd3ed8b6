package stock

import "strings"

// Nearest returns the known word that word was most likely meant to be, for
// "did you mean". It returns false when none is near: when more than a third
// of the letters would have to change. Case does not count; of words equally
// near the first is returned.
func Nearest(word string, known []string) (string, bool) {
	if len(word) > longestWord {
		return "", false
	}
	best, least := "", -1
	a := []rune(strings.ToLower(word))
	for _, k := range known {
		if len(k) > longestWord {
			continue
		}
		b := []rune(strings.ToLower(k))
		if longer := max(len(a), len(b)); 3*(longer-min(len(a), len(b))) > longer {
			continue // each letter too many is a slip
		}
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

// longestWord is in bytes. What is longer was not mistyped, and takes long to compare.
const longestWord = 1000

// typingSlips counts the slips that turn a into b: a letter too many, one too
// few, a wrong one, two neighbors exchanged (optimal string alignment, after
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
