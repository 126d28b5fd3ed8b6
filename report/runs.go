package report

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// cutNumbers is the numbers of a row of one layout: "7", or "8–12".
func cutNumbers(r cutplan.Row) string {
	first, last := r.Pieces[0].Cuts[0].Number, r.Pieces[len(r.Pieces)-1].Last().Number
	if first == last {
		return strconv.Itoa(first)
	}
	return fmt.Sprintf("%d–%d", first, last)
}

// settingOf is what to set, to measure or to saw off: "fence 380", "stop 1480", "mark 300,
// 603" or "saw off 10". Marks are all from the piece in hand, and the kerf lies beyond them.
func settingOf(r cutplan.Row, ruler stock.Ruler) string {
	figure := ruler.Print(r.Setting)
	switch {
	case r.SawOff:
		return "saw off " + figure
	case r.Trim && r.Guide != cutplan.Fence:
		return "mark " + figure // nobody sets a stop that far
	case r.Guide == cutplan.Marked:
		most := r.Pieces[0]
		for _, h := range r.Pieces {
			if len(h.Cuts) > len(most.Cuts) {
				most = h
			}
		}
		return "mark " + printedOf(most.Cuts, func(c cutplan.RowCut) stock.Length { return c.Here }, ruler)
	}
	return r.Guide.String() + " " + figure
}

// marksOf is the running marks of crosscuts: one after another along one piece, or one mark
// for all of several pieces. Where the setting is measured it is the mark.
func marksOf(r cutplan.Row, ruler stock.Ruler) string {
	if r.Cut == cutplan.Rip || r.Trim || r.Guide == cutplan.Marked {
		return ""
	}
	return printedOf(r.Pieces[0].Cuts, func(c cutplan.RowCut) stock.Length { return c.Mark }, ruler)
}

func printedOf(cuts []cutplan.RowCut, of func(cutplan.RowCut) stock.Length, ruler stock.Ruler) string {
	said := make([]string, len(cuts))
	for i, c := range cuts {
		said[i] = ruler.Print(of(c))
	}
	return strings.Join(said, ", ")
}

// handOf names the piece or pieces of a row of one layout, whole being the stock.
func handOf(r cutplan.Row, whole string, ruler stock.Ruler) string {
	h := r.Pieces[0]
	size := ruler.Size(h.Size.Length, h.Size.Width)
	var by []int
	for _, of := range r.Pieces {
		by = append(by, of.By)
	}
	switch {
	case h.By == 0:
		return "whole " + whole + " " + size
	case h.Stock && r.Trim:
		return whole + " " + size
	case h.Stock:
		return "trimmed " + whole + " " + size
	case len(by) > 1 && h.Rest:
		return fmt.Sprintf("rests of %s: %s each", ranges(by), size)
	case len(by) > 1:
		return fmt.Sprintf("pieces from %s: %s each", ranges(by), size)
	case h.Rest:
		return fmt.Sprintf("rest of %d: %s", h.By, size)
	}
	return fmt.Sprintf("piece from %d: %s", h.By, size)
}

// ranges writes numbers shortly, in their order: "3, 5–8".
func ranges(numbers []int) string {
	var said []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		if j-i < 2 {
			j = i
			said = append(said, strconv.Itoa(numbers[i]))
		} else {
			said = append(said, fmt.Sprintf("%d–%d", numbers[i], numbers[j]))
		}
		i = j + 1
	}
	return strings.Join(said, ", ")
}
