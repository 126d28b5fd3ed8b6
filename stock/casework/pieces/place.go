package pieces

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// where names the places of a piece: "bay 1 + bay 3"; those that follow one another
// and differ in their last number alone as one, "bay 1 drawers 2 to 4"; of many the
// first.
func (p Piece) where() string {
	places := slices.Compact(slices.Clone(p.places))
	var said []string
	var counts []int
	for len(places) > 0 {
		n := alike(places)
		said, counts = append(said, inARow(places[:n])), append(counts, n)
		places = places[n:]
	}
	if len(said) > 3 {
		more := 0
		for _, n := range counts[1:] {
			more += n
		}
		return fmt.Sprintf("%s + %d more", said[0], more)
	}
	return strings.Join(said, " + ")
}

// alike is how many places from the first on are of one kind and counted on.
func alike(places []string) int {
	stem, first, ok := numbered(places[0])
	n := 1
	for ; ok && n < len(places); n++ {
		if s, number, _ := numbered(places[n]); s != stem || number != first+n {
			break
		}
	}
	return n
}

// inARow names places that are alike.
func inARow(places []string) string {
	stem, first, _ := numbered(places[0])
	switch n := len(places); n {
	case 1:
		return places[0]
	case 2:
		return fmt.Sprintf("%ss %d and %d", stem, first, first+1)
	default:
		return fmt.Sprintf("%ss %d to %d", stem, first, first+n-1)
	}
}

// numbered parts "bay 1 drawer 2" before its last number.
func numbered(place string) (stem string, number int, ok bool) {
	at := strings.LastIndexByte(place, ' ')
	if at < 0 {
		return place, 0, false
	}
	number, err := strconv.Atoi(place[at+1:])
	return place[:at], number, err == nil
}
