// Package nest solves guillotine cutting stock: it cuts rectangular blanks from rectangular
// stock by cuts from edge to edge, at least cost.
//
// A [Problem] lists the demand and the stock. [Solve] returns a [Plan] and a proven lower bound
// on its cost. A plan is one tree of cuts per piece of stock, in an order that a saw can
// follow. [Verify] recomputes a plan from scratch and shares no code with the solver.
//
// # Method
//
// Presolve makes one blank of each group, splits a problem into instances that share no stock,
// adds one kerf to every size, and divides by the common divisor. Four methods then work on an
// instance, round by round:
//
//   - ruin and recreate with late acceptance (package search);
//   - column generation for the lower bound, with dives for plans (packages lowerbound, colgen,
//     master, pricing and knapsack);
//   - sequential value correction (package search);
//   - a restricted-master heuristic over a pool of patterns (packages restrictedmaster,
//     setcover and pool).
//
// Postsolve turns the best plan of each instance back.
//
// # Units
//
// Lengths are integers of any unit. The package knows no materials and no files: a blank lists
// the stock that it may come from, and its orientations there.
package nest
