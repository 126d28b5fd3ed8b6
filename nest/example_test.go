package nest_test

import (
	"context"
	"fmt"

	"sawbill/nest"
)

// Rolls of 100 are cut into three lengths, without kerf. Proven reports that no plan needs fewer.
func ExampleSolve() {
	roll := nest.Stock{Length: 100, Width: 1, Price: 1}
	any := []nest.Source{{Stock: 0, Upright: true}}
	problem := nest.Problem{
		Stock: []nest.Stock{roll},
		Blanks: []nest.Blank{
			{Length: 45, Width: 1, Count: 4, From: any},
			{Length: 36, Width: 1, Count: 3, From: any},
			{Length: 14, Width: 1, Count: 6, From: any},
		},
	}
	plan, err := nest.Solve(context.Background(), problem, nest.Options{Iterations: 100})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("cost", plan.Cost, "bound", plan.Bound, "proven", plan.Proven())
	for _, l := range plan.Layouts {
		fmt.Print(l.Repeat, " x")
		for _, piece := range l.Root.Children {
			if piece.Use == nest.Part {
				fmt.Print(" ", piece.Length)
			}
		}
		fmt.Println()
	}
	// Output:
	// cost 4 bound 4 proven true
	// 1 x 45 45
	// 1 x 45 36 14
	// 1 x 36 36 14 14
	// 1 x 45 14 14 14
}

// The kerf is paid between parts only: three parts of 32 and two kerfs of 2 fill 100 exactly.
// A blank that fits no stock is listed as unplaced, with the reason.
func ExampleSolve_kerf() {
	any := []nest.Source{{Stock: 0, Upright: true}}
	problem := nest.Problem{
		Kerf:  2,
		Stock: []nest.Stock{{Length: 100, Width: 50, Price: 7}},
		Blanks: []nest.Blank{
			{Length: 32, Width: 50, Count: 3, From: any},
			{Length: 101, Width: 50, Count: 1, From: any},
		},
	}
	plan, err := nest.Solve(context.Background(), problem, nest.Options{Iterations: 100})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("cost", plan.Cost, "complete", plan.Complete())
	for _, piece := range plan.Layouts[0].Root.Children {
		fmt.Println(piece.Length, "x", piece.Width)
	}
	for _, u := range plan.Unplaced {
		fmt.Println("blank", u.Blank, "is too large:", u.Reason == nest.TooLarge)
	}
	// Output:
	// cost 7 complete false
	// 32 x 50
	// 32 x 50
	// 32 x 50
	// blank 1 is too large: true
}

// Verify recomputes a plan from scratch. Here the plan takes a sheet more than there are, and
// claims a cost that is too low.
func ExampleVerify() {
	problem := nest.Problem{
		Stock:  []nest.Stock{{Length: 100, Width: 50, Price: 7, Count: 1}},
		Blanks: []nest.Blank{{Length: 100, Width: 50, Count: 2, From: []nest.Source{{Stock: 0, Upright: true}}}},
	}
	plan := nest.Plan{
		Layouts: []nest.Layout{{Stock: 0, Repeat: 2, Root: nest.Node{Length: 100, Width: 50, Use: nest.Part, Blank: 0}}},
		Cost:    7,
		Bound:   7,
	}
	fmt.Println(nest.Verify(problem, plan))
	// Output:
	// stock 0: 2 pieces taken, there are 1
	// cost: 7, the stock bought costs 14
}

// One part of 60 x 50 leaves an offcut of 40 x 50, which holds a replacement for the small
// blank but not for the large one.
func ExampleCoverOf() {
	any := []nest.Source{{Stock: 0, Upright: true}}
	problem := nest.Problem{
		Stock: []nest.Stock{{Length: 100, Width: 50, Price: 7}},
		Keep:  nest.Size{Length: 10, Width: 10},
		Blanks: []nest.Blank{
			{Length: 60, Width: 50, Count: 1, From: any},
			{Length: 10, Width: 10, Count: 1, From: any},
		},
	}
	plan, err := nest.Solve(context.Background(), problem, nest.Options{Iterations: 100})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, c := range nest.CoverOf(problem, plan) {
		fmt.Println("blank", i, "covered by an offcut:", c == nest.FromOffcut)
	}
	// Output:
	// blank 0 covered by an offcut: false
	// blank 1 covered by an offcut: true
}
