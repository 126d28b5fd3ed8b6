package stock_test

import (
	"fmt"

	"sawbill/stock"
)

// A length carries its unit; a bare number has the unit of the job. Mixed and decimal inches are both exact.
func ExampleParseLength() {
	for _, text := range []string{"27 1/2 in", "698.5 mm", "27.5"} {
		l, err := stock.ParseLength(text, stock.Inches)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(stock.Ruler{Units: stock.Inches}.PrintUnit(l))
	}
	// Output:
	// 27 1/2 in
	// 27 1/2 in
	// 27 1/2 in
}

// A figure that was rounded stands behind "≈".
func ExampleRuler_Print() {
	metric := stock.Ruler{}
	tape := stock.Ruler{Units: stock.Inches, Denominator: 16}
	for _, l := range []stock.Length{508 * stock.Millimeter, 500 * stock.Millimeter, 3 * stock.Inch / 8} {
		fmt.Println(metric.Print(l), "mm,", tape.Print(l), "in")
	}
	// Output:
	// 508 mm, 20 in
	// 500 mm, ≈19 11/16 in
	// ≈9.5 mm, 3/8 in
}

// Each part becomes a blank with what milling takes away. Short parts are made as gangs.
func ExampleJob_Blanks() {
	job := stock.Job{
		Shortest: 300 * stock.Millimeter,
		Saw:      stock.Saw{Kerf: 3 * stock.Millimeter},
		Stock: []stock.Stock{{Kind: stock.Board, Material: "oak",
			Length: 2400 * stock.Millimeter, Width: 150 * stock.Millimeter, Thickness: 24 * stock.Millimeter}},
		Parts: []stock.Part{
			{Name: "leg", Material: "oak", Count: 4, Length: 700 * stock.Millimeter, Width: 45 * stock.Millimeter, Thickness: 20 * stock.Millimeter,
				Allowance: stock.Allowance{End: 10 * stock.Millimeter, Ends: 2}},
			{Name: "cleat", Material: "oak", Count: 4, Length: 120 * stock.Millimeter, Width: 30 * stock.Millimeter, Thickness: 20 * stock.Millimeter},
		},
	}
	var r stock.Ruler
	for _, b := range job.Blanks() {
		fmt.Printf("blanks: %d, %s; each: %s\n", b.Count, r.Size(b.Length, b.Width), b.Name())
	}
	// Output:
	// blanks: 4, 720 x 45; each: leg
	// blanks: 1, 489 x 30; each: 4 x cleat, gang
}
