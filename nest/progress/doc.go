// Package progress tracks a plan in the shop: cuts made, blanks good, spoiled or lost,
// stock missing, and the pieces in the shop now.
//
// The maker reports events (event.go), each a word and a value, as written on a command
// line and in the plan's record. A State is the sum of the events. It lists the pieces in
// the shop at any time (pieces.go); together with kerf, trim and blanks they are exactly
// the stock.
package progress
