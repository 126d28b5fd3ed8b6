// Package recut replans the rest of a job from the stock at hand. It uses begun pieces,
// uncut stock, leftovers, spoiled blanks and the rack before new purchases.
//
// As much as possible goes on as planned. Missing blanks are first cut from free stock. If
// that needs purchases, all pieces of those materials are replanned at the lowest cost.
// Then the search looks for the fewest changes at that cost (recut.go).
//
// The rest is one job. Begun pieces are stock on hand of their own sizes, and the trees that
// go on are layouts of them. A leftover of such a piece is cut further, first across the cut
// that it comes off (stock.NextCut), so nothing else of its tree changes.
//
// The cutting bill is kept: blanks that go on keep gangs, layers and marks, and missing
// blanks are added. So one bill serves every attempt, and a bound found for one attempt
// holds for the others. Good blanks of earlier plans stand at the end of the bill
// (progress.State.Bill), so they can still be reported spoiled or lost. No mark is given
// to another part, however many plans follow.
package recut
