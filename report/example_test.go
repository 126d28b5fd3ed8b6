package report_test

import (
	"context"
	"fmt"
	"os"

	"sawbill/nest/cutplan"
	"sawbill/report"
	"sawbill/stock"
)

// planned is a plan of two shelves and a back from one sheet, the same in every run.
func planned() (*cutplan.Plan, error) {
	mm := stock.Millimeter
	return cutplan.Make(context.Background(), stock.Job{
		Title: "wall shelf",
		Saw:   stock.Saw{Kerf: 3 * mm},
		Stock: []stock.Stock{{Name: "half sheet", Kind: stock.Sheet, Material: "plywood",
			Length: 1220 * mm, Width: 1220 * mm, Thickness: 18 * mm, Price: 4500}},
		Parts: []stock.Part{
			{Name: "shelf", Material: "plywood", Count: 2, Length: 800 * mm, Width: 250 * mm, Thickness: 18 * mm},
			{Name: "back", Material: "plywood", Count: 1, Length: 800 * mm, Width: 600 * mm, Thickness: 18 * mm},
		},
	}, cutplan.Options{Iterations: 100})
}

// The summary is all that is needed before the trip and at the saw.
func ExampleSummary() {
	p, err := planned()
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := report.Summary(os.Stdout, p, report.Options{Code: "SHELF"}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// wall shelf, plan SHELF
	//
	// Buy
	//        buy  stock       size (mm)         material   each   cost
	//   [ ]    1  half sheet  1220 x 1220 x 18  plywood   45.00  45.00
	//          1  in all                                         45.00
	//
	// 1 sheet, 45.00: no plan can cost less.
	// Yield 59.1 %, kept as offcuts 40.1 %, waste with kerf, trim and allowances 0.7 %.
	// No part could be recut from what is kept: each spoiled one takes another trip.
	//
	// Keep
	//   keep  size (mm)        material  layout  write on it
	//      1  417 x 1220 x 18  plywood   1       SHELF-2
	//      1  800 x 111 x 18   plywood   1       SHELF-1
	//
	// Where each part is cut
	//   mark  part   count  cut to (mm)     layout
	//   A     shelf      2  800 x 250 x 18  1
	//   B     back       1  800 x 600 x 18  1
	//
	// Setups
	//   material  round  set (mm)   how                                                           comes off               layout
	//   plywood   1      stop 800   crosscut; large panel; wide: sled or guided saw; score first  piece 800 x 1220        1
	//   plywood   2      stop 600   rip at a stop, not the fence; wide: sled or guided saw        B back, 800 x 600       1
	//                    fence 250  rip                                                           2 x A shelf, 800 x 250  1
}

// The part list can be shown before any plan is made.
func ExamplePartList() {
	p, err := planned()
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := report.PartList(os.Stdout, p.Job, report.Options{}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// wall shelf
	//
	// Parts
	//   part   count  finished (mm)   cut to (mm)     material  grain   allowances  from
	//   shelf      2  800 x 250 x 18  800 x 250 x 18  plywood   length  none
	//   back       1  800 x 600 x 18  800 x 600 x 18  plywood   length  none
}

// The cutting bill has a row for each part.
func ExampleCuttingBill() {
	p, err := planned()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(string(report.CuttingBill(p)))
	// Output:
	// name,material,length (mm),width (mm),thickness (mm),count,grain,edge (mm),face (mm),end (mm),miter (mm),edges,faces,ends,miters,gang,resaw,note,mark,blanks,parts of each,cut to length (mm),cut to width (mm),cut to thickness (mm),after the dry fit,layouts
	// shelf,plywood,800,250,18,2,length,0,0,0,0,0,0,0,0,true,false,,A,2,1,800,250,18,false,1
	// back,plywood,800,600,18,1,length,0,0,0,0,0,0,0,0,true,false,,B,1,1,800,600,18,false,1
}
