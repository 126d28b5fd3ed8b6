// Package stock holds what there is and what is wanted: lengths, money,
// parts, allowances, blanks, sheets and boards, and the trade's rules that tie
// them together. It knows neither files nor saws at work.
//
// A job flows through the program one way:
//
//	job file -> case design -> [Part] -> [Blank] -> plan -> report
//
// Package stock/job reads the file, stock/casework derives the parts of a case;
// both hand over values of this package, gathered in a [Job]. Nothing here is
// changed after it was handed over.
package stock
