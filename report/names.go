package report

import (
	"strconv"
	"strings"
)

// namesInShort lists names; those that differ in the number at their end only are
// told once: "drawer side, drawer 1–5; top".
func namesInShort(names []string) string {
	var said []string
	for len(names) > 0 {
		stem, number, numbered := numberedName(names[0])
		if !numbered {
			said, names = append(said, names[0]), names[1:]
			continue
		}
		numbers := []int{number}
		var others []string
		for _, n := range names[1:] {
			if s, k, ok := numberedName(n); ok && s == stem {
				numbers = append(numbers, k)
			} else {
				others = append(others, n)
			}
		}
		said, names = append(said, stem+ranges(numbers)), others
	}
	return strings.Join(said, "; ")
}

// numberedName parts "drawer side 12" before its number.
func numberedName(name string) (stem string, number int, ok bool) {
	stem = strings.TrimRight(name, "0123456789")
	if !strings.HasSuffix(stem, " ") || strings.HasPrefix(name[len(stem):], "0") {
		return "", 0, false // no number, or a size such as "4x8" or "1.05"
	}
	number, err := strconv.Atoi(name[len(stem):])
	return stem, number, err == nil
}
