package stock

import "slices"

// Minimum dressed dry sizes of softwood. Source: American Softwood Lumber
// Standard, Voluntary Product Standard PS 20-20. A thickness belongs to one
// class of lumber, and each class has its own widths.

var boardThicknesses = []dressing{
	{3 * Inch / 8, 5 * Inch / 16},
	{Inch / 2, 7 * Inch / 16},
	{5 * Inch / 8, 9 * Inch / 16},
	{3 * Inch / 4, 5 * Inch / 8},
	{Inch, 3 * Inch / 4},
	{5 * Inch / 4, Inch},
	{3 * Inch / 2, 5 * Inch / 4},
}

var boardWidths = []dressing{
	{2 * Inch, 3 * Inch / 2},
	{3 * Inch, 5 * Inch / 2},
	{4 * Inch, 7 * Inch / 2},
	{5 * Inch, 9 * Inch / 2},
	{6 * Inch, 11 * Inch / 2},
	{7 * Inch, 13 * Inch / 2},
	{8 * Inch, 29 * Inch / 4},
	{9 * Inch, 33 * Inch / 4},
	{10 * Inch, 37 * Inch / 4},
	{11 * Inch, 41 * Inch / 4},
	{12 * Inch, 45 * Inch / 4},
	{14 * Inch, 53 * Inch / 4},
	{16 * Inch, 61 * Inch / 4},
}

var dimensionThicknesses = []dressing{
	{2 * Inch, 3 * Inch / 2},
	{5 * Inch / 2, 2 * Inch},
	{3 * Inch, 5 * Inch / 2},
	{7 * Inch / 2, 3 * Inch},
	{4 * Inch, 7 * Inch / 2},
	{9 * Inch / 2, 4 * Inch},
}

var dimensionWidths = []dressing{
	{2 * Inch, 3 * Inch / 2},
	{5 * Inch / 2, 2 * Inch},
	{3 * Inch, 5 * Inch / 2},
	{7 * Inch / 2, 3 * Inch},
	{4 * Inch, 7 * Inch / 2},
	{9 * Inch / 2, 4 * Inch},
	{5 * Inch, 9 * Inch / 2},
	{6 * Inch, 11 * Inch / 2},
	{8 * Inch, 29 * Inch / 4},
	{10 * Inch, 37 * Inch / 4},
	{12 * Inch, 45 * Inch / 4},
	{14 * Inch, 53 * Inch / 4},
	{16 * Inch, 61 * Inch / 4},
}

// The standard sets timbers by rule, from 5 in upwards; beyond 24 in nobody
// keeps them (common practice, no source).
const thickestTimber = 24 * Inch

// timber dresses one dimension of a timber of 5 in or more.
func timber(nominal Length) dressing {
	switch {
	case nominal < 7*Inch:
		return dressing{nominal, nominal - Inch/2}
	case nominal < 16*Inch:
		return dressing{nominal, nominal - 3*Inch/4}
	}
	return dressing{nominal, nominal - Inch}
}

// nominalSizes lists every size that has a name, by class, thickness, width.
// The thickness is the lesser figure, so there is no 4x2.
func nominalSizes() []Nominal {
	var timbers []dressing
	for l := 5 * Inch; l <= thickestTimber; l += Inch {
		timbers = append(timbers, timber(l))
	}
	return slices.Concat(
		crossed(boardThicknesses, boardWidths),
		crossed(dimensionThicknesses, dimensionWidths),
		crossed(timbers, timbers),
	)
}

// crossed lists each thickness in each width not less than it.
func crossed(thicknesses, widths []dressing) []Nominal {
	var sizes []Nominal
	for _, t := range thicknesses {
		for _, w := range widths {
			if t.nominal <= w.nominal {
				sizes = append(sizes, Nominal{thickness: t, width: w})
			}
		}
	}
	return sizes
}
