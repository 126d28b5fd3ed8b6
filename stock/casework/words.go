package casework

import (
	"fmt"
	"strconv"
	"strings"
)

// many is the word for n of something, in the singular for 1 alone.
func many(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}

// counted writes "1 shelf" or "3 shelves".
func counted(n int, one, several string) string { return fmt.Sprint(n, " ", many(n, one, several)) }

// and joins words as a sentence does.
func and(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// oneOf writes `"butt", "rabbet" or "dado"`.
func oneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	return alternatives(quoted)
}

// alternatives writes "a, b or c".
func alternatives(choices []string) string {
	last := len(choices) - 1
	if last < 1 {
		return strings.Join(choices, "")
	}
	return strings.Join(choices[:last], ", ") + " or " + choices[last]
}
