// Package nest plans edge-to-edge cuts: rectangular blanks from sheets, and
// lengths from boards.
//
// A [Problem] says what is wanted and what can be cut. [Solve] returns a
// [Plan]: one tree of cuts per piece of stock, in the order a saw can make
// them, with a proven lower bound on the cost. [Verify] recomputes a plan from
// scratch and shares no code with the solver.
//
// The package knows no wood and no files. Grain reaches it as "may lie upright,
// or turned", a material as the list of stock a blank may come from; package
// cutplan translates. So the same code runs on published instances, which have
// neither. Lengths are whole numbers of any unit.
package nest
