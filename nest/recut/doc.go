// Package recut plans the rest of a job anew from what is really there: pieces that
// were begun, stock that was bought and not cut, leftovers, what spoiled blanks can
// still give, the rack, and only then new purchases.
//
// As much as can be goes on as it was planned. First the blanks that lack are sought in
// what no blank is to come from (level 0); if that is not enough without buying, the
// pieces of their materials are planned anew, all of them for what the least is, then
// as few as reach it (recut.go).
package recut
