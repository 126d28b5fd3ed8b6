// Package simulate saws a plan by its rows, as somebody does who has nothing but the
// printed page: it keeps a bench of pieces, takes the piece that a row names, lays the side
// that the row names against fence or stop, and saws on the side of the line that the row
// names. In the end exactly the blanks, offcuts and waste of the layouts must lie there,
// each in its place.
//
// It shares no code with what makes the rows. No plan is shown that does not pass.
package simulate
