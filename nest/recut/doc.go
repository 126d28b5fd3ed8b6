// Package recut replans the rest of a job from the stock at hand. It uses begun pieces,
// uncut stock, leftovers, spoiled blanks and the rack before new purchases.
//
// As much as possible goes on as planned. Missing blanks are first cut from free stock. If
// that needs purchases, all pieces of those materials are replanned at the lowest cost.
// Then the search looks for the fewest changes at that cost (recut.go).
package recut
