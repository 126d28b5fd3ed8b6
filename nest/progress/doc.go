// Package progress tracks a plan in the shop: cuts made, blanks good, spoiled or lost,
// stock missing, and the pieces in the shop now.
//
// The maker reports events (event.go), each a word and a value, as written on a command
// line and in the plan's record. A State is the sum of the events. It lists the pieces in
// the shop at any time (pieces.go); together with kerf, trim and blanks they are exactly
// the stock.
//
// Events are kept, not the state, so an undo only has to name one. A cut that was made
// implies all cuts that it depends on, since cuts are reported in any order, by setups for
// instance. The plan's purchases count as bought; stock that was missing is reported.
package progress
