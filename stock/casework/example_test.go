package casework_test

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// mm is a length as a job file gives it.
func mm(n int) casework.Length {
	return casework.Length{Value: stock.Length(n) * stock.Millimeter, Set: true}
}

func word(s string) casework.Word { return casework.Word{Value: s, Set: true} }

// offered is a job with sheets of plywood and boards of oak.
func offered() casework.Context {
	return casework.Context{
		Materials: casework.MaterialsOf([]stock.Stock{
			{Kind: stock.Sheet, Material: "plywood", Thickness: 18 * stock.Millimeter},
			{Kind: stock.Board, Material: "oak", Thickness: 24 * stock.Millimeter},
		}),
	}
}

// A case of plywood 900 mm wide: dados add their depth to the top and the bottom.
func ExampleDerive() {
	made, faults := casework.Derive(casework.Design{
		OutsideWidth: mm(900), OutsideHeight: mm(720), OutsideDepth: mm(300),
		Carcass: casework.Carcass{Material: word("plywood"), Joint: word("dado"), JointDepth: mm(6)},
	}, offered())
	if made == nil {
		fmt.Println(faults)
		return
	}
	var r stock.Ruler
	for _, p := range made.Parts {
		fmt.Printf("%d %s %s, length %s\n", p.Count, p.Name, r.Size(p.Length, p.Width), p.How[0].Sum.Print(r))
	}
	// Output:
	// 2 side 720 x 300, length 720 = 720 (outside height)
	// 1 top 876 x 300, length 876 = 900 (outside width) - 2 x 18 (side) + 2 x 6 (dado)
	// 1 bottom 876 x 300, length 876 = 900 (outside width) - 2 x 18 (side) + 2 x 6 (dado)
}

// Sizes that cannot all hold are faults, each with its cause and its remedy.
func ExampleDerive_faults() {
	_, faults := casework.Derive(casework.Design{
		Line:         10,
		OutsideWidth: mm(900), InsideWidth: mm(880), OutsideHeight: mm(720), OutsideDepth: mm(300),
		Carcass: casework.Carcass{Material: word("plywood")},
	}, offered())
	for _, f := range faults {
		fmt.Printf("line %d, %s: %s\n%s\n", f.Line, f.Key, f.Cause, f.Remedy)
	}
	// Output:
	// line 10, case.outside_width: outside width 900 mm is given, but inside_width needs 916 mm: inside it is 880 mm (given), and leaves 864 = 900 (outside width) - 2 x 18 (side)
	// make outside_width 916 mm, or leave out one of the two
}

// Marks say where a joint is laid out on both pieces.
func ExampleCase_marks() {
	made, _ := casework.Derive(casework.Design{
		Construction: word("framed"),
		OutsideWidth: mm(900), OutsideHeight: mm(720), OutsideDepth: mm(300),
		Carcass: casework.Carcass{Material: word("plywood")},
		Frame:   casework.Frame{Material: word("oak"), StileWidth: mm(50), RailWidth: mm(60), Corner: word("bridle")},
	}, offered())
	var r stock.Ruler
	for _, k := range made.Marks {
		for _, at := range k.At {
			fmt.Printf("%s, %s: %s %s from the %s\n", made.Parts[k.Part].Name, k.On, k.What, r.Print(at), k.From)
		}
	}
	// Output:
	// stile, both ends: open mortise 8 from the front face
	// rail, both ends: tenon shoulders 50 from the left end
	// rail, both ends: tenon shoulders 850 from the left end
	// rail, both ends: tenon cheeks 8 from the front face
	// rail, both ends: tenon cheeks 16 from the front face
}
