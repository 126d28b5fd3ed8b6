package stock

import "math/big"

// Rough is hardwood for sale by the board foot, in boards of random widths and
// lengths. No layout can be made of boards that nobody has seen: what can be
// told is about how much to ask for. See [Rough.Estimate].
type Rough struct {
	Material string
	Quarter  Quarter
	Grade    Grade
	// Price is of one board foot, 0 when none was given.
	Price Money
	// Yield is the share that is expected to become blanks; 0 is the grade's.
	Yield Yield
}

// Yield is a share of what is bought, as a fraction. The zero Yield is none.
type Yield struct{ part, whole int64 }

// Percent is so many hundredths.
func Percent(n int) Yield { return Yield{int64(n), 100} }

// YieldOf returns part of whole as a yield; false unless 0 < part <= whole.
func YieldOf(part, whole int64) (Yield, bool) {
	if part <= 0 || part > whole {
		return Yield{}, false
	}
	return Yield{part, whole}, true
}

// Fraction returns y as a part of a whole; both are 0 for the zero Yield.
func (y Yield) Fraction() (part, whole int64) { return y.part, y.whole }

// String writes percents, "66 2/3 %".
func (y Yield) String() string { return mixed(big.NewRat(100*y.part, y.whole)) + " %" }

// Share is y as a number, 1 for all of what is bought.
func (y Yield) Share() float64 { return float64(y.part) / float64(y.whole) }

// LongestRough is the longest of the standard lengths of hardwood, which are 4
// to 16 ft (NHLA rules, from memory).
const LongestRough = 16 * Foot

// Largest is the largest board that r may hold: as long as is sold, and wide
// enough for anything, since blanks are glued up where no board is.
func (r Rough) Largest() Stock {
	return Stock{
		Name: r.Quarter.String() + " " + r.Material, Kind: Board, Material: r.Material,
		Length: LongestRough, Width: Longest, Thickness: r.Quarter.Rough(),
	}
}

// Estimate is how much rough lumber to ask for. It is no plan: boards differ.
type Estimate struct {
	Rough Rough
	// Net are the board feet of the blanks alone, at the rough thickness.
	Net BoardFeet
	// Least and Usual are whole board feet to ask for: at the yield that the
	// grade promises, and at that of practice. Both are the same where the
	// yield was given.
	Least, Usual           int
	LeastYield, UsualYield Yield
	// Longest and Widest are of the blanks: some boards must be as long, and
	// some as wide unless blanks are glued up.
	Longest, Widest Length
}

// Estimate computes the lumber that the blanks take, each as often as it is wanted.
func (r Rough) Estimate(blanks []Blank) Estimate {
	e := Estimate{Rough: r, LeastYield: r.Grade.Least(), UsualYield: r.Grade.Usual()}
	if r.Yield != (Yield{}) {
		e.LeastYield, e.UsualYield = r.Yield, r.Yield
	}
	var net Volume
	for _, b := range blanks {
		net = net.Add(b.Length, b.Width, max(r.Quarter.Rough(), Inch), b.Count)
		e.Longest, e.Widest = max(e.Longest, b.Length), max(e.Widest, b.Width)
	}
	e.Net = net.BoardFeet()
	e.Least, e.Usual = net.at(e.LeastYield), net.at(e.UsualYield)
	return e
}

// at is how many whole board feet yield v, rounded up.
func (v Volume) at(y Yield) int {
	gross := new(big.Rat).Mul(v.boardFeet(1), big.NewRat(y.whole, y.part))
	whole, rest := new(big.Int).QuoRem(gross.Num(), gross.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		whole.Add(whole, big.NewInt(1))
	}
	return int(whole.Int64())
}

// RoughFor is the lumber for sale by the board foot that b is to come from: the
// thinnest of its material from which its thickness can be planed, and that gives
// as many layers. It returns false when there is none.
func (j Job) RoughFor(b Blank) (Rough, bool) {
	var thinnest Rough
	found := false
	for _, r := range j.Rough {
		board := r.Largest()
		if !board.Serves(b) || b.Part.Resaw && j.LayersIn(b.Part, board) != b.Layers {
			continue
		}
		if !found || r.Quarter.Rough() < thinnest.Quarter.Rough() {
			thinnest, found = r, true
		}
	}
	return thinnest, found
}
