package stock

import "cmp"

// Grade of hardwood lumber. Its zero value is none.
type Grade struct {
	name string
	// least is the share of a board's face that the grade promises in clear
	// cuttings; usual is the share that becomes blanks in practice, 0 where
	// practice tells no more than the grade.
	least, usual Yield
	width, feet  int // the least board: inches wide, feet long
}

// grades lists the standard grades, best first. Source: rules of the National
// Hardwood Lumber Association (NHLA), standard grades: basic yield in clear face
// cuttings and least board. Yields of FAS and No. 1 Common and the least board
// of FAS are confirmed in "Hardwood Lumber - Dimensions",
// engineeringtoolbox.com, the others in a company's chart of the minimum
// requirements. Yield is judged on the poorer face, which of Selects and of FAS
// one face is No. 1 Common.
//
// Usual: 20 to 30 % of what is bought is waste with FAS, 40 % and more with lower
// grades (common practice, no source); the higher figure counts. Below No. 1
// Common the grade itself promises no more than that.
var grades = []Grade{
	{"FAS", Yield{5, 6}, Percent(70), 6, 8},
	{"FAS one face", Yield{2, 3}, Percent(60), 6, 8},
	{"Selects", Yield{2, 3}, Percent(60), 4, 6},
	{"No. 1 Common", Yield{2, 3}, Percent(60), 3, 4},
	{"No. 2A Common", Yield{1, 2}, Yield{}, 3, 4},
	{"No. 3A Common", Yield{1, 3}, Yield{}, 3, 4},
	{"No. 3B Common", Yield{1, 4}, Yield{}, 3, 4},
}

// Grades lists the names of the grades, the best first.
func Grades() []string {
	names := make([]string, len(grades))
	for i, g := range grades {
		names[i] = g.name
	}
	return names
}

// GradeOf is the grade of a name in [Grades]. It panics on any other.
func GradeOf(name string) Grade {
	for _, g := range grades {
		if g.name == name {
			return g
		}
	}
	panic("stock: there is no grade " + name)
}

// String writes the name.
func (g Grade) String() string { return g.name }

// Least is the yield that the grade promises in clear cuttings.
func (g Grade) Least() Yield { return g.least }

// Usual is the yield in blanks that practice expects, or the least yield where no such
// figure is known.
func (g Grade) Usual() Yield {
	return cmp.Or(g.usual, g.least)
}

// LeastBoard is the smallest board of the grade.
func (g Grade) LeastBoard() (length, width Length) {
	return Length(g.feet) * Foot, Length(g.width) * Inch
}
