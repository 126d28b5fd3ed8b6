package rename

import (
	"strings"
	"testing"
)

type piece struct {
	Name   string
	Next   *piece
	Of     map[string][]string
	Any    any
	hidden string
}

func TestTexts(t *testing.T) {
	ring := &piece{Name: "a", Of: map[string][]string{"k": {"x", "y"}}, Any: [2]string{"p", "q"}, hidden: "h"}
	ring.Next = ring
	all := []*piece{ring, ring, nil}
	got := Texts(all, strings.ToUpper)
	if got[0] != got[1] || got[0].Next != got[0] || got[2] != nil || got[0] == ring {
		t.Error("pointers that were equal are not")
	}
	c := got[0]
	if c.Name != "A" || c.Of["K"][1] != "Y" || c.Any != [2]string{"P", "Q"} || c.hidden != "h" {
		t.Errorf("%+v", c)
	}
	if ring.Name != "a" || ring.Of["k"][0] != "x" {
		t.Errorf("%+v was changed", ring)
	}
}
