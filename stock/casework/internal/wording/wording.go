// Package wording joins and counts words for messages.
package wording

import (
	"fmt"
	"strconv"
	"strings"
)

// Many is the word for n of something, in the singular for 1 alone.
func Many(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}

// Counted writes "1 shelf" or "3 shelves".
func Counted(n int, one, several string) string { return fmt.Sprint(n, " ", Many(n, one, several)) }

// And joins words as a sentence does.
func And(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// OneOf writes `"butt", "rabbet" or "dado"`.
func OneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	return Alternatives(quoted)
}

// Alternatives writes "a, b or c".
func Alternatives(choices []string) string {
	last := len(choices) - 1
	if last < 1 {
		return strings.Join(choices, "")
	}
	return strings.Join(choices[:last], ", ") + " or " + choices[last]
}
