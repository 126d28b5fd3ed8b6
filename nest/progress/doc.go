// Package progress tells how far a plan has come in the shop: which cuts are made,
// which blanks are good, spoiled or lost, what was not there to be cut, and so what
// pieces lie there now.
//
// What happened is told in events (event.go), each a word and a value as they stand on
// a command line and in the file beside the plan. A State is what they add up to; it
// knows at any time the pieces that there are (pieces.go), which together with kerf,
// trim and blanks are exactly the stock.
package progress
