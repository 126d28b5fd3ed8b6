package luby

import (
	"slices"
	"testing"
)

// The first terms of the sequence, as published (OEIS A182105; from memory).
func TestTerms(t *testing.T) {
	var got []int
	for n := range 15 {
		got = append(got, Term(n+1))
	}
	if want := []int{1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
