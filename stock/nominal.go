package stock

import (
	"cmp"
	"sawbill/stock/fault"
	"slices"
	"strings"
)

// Nominal is the trade name of a softwood size, such as 2x4, or 38x89 for
// Canadian lumber (CLS) as sold in Europe. Its zero value is no size;
// [ParseNominal] gives only sizes that exist.
type Nominal struct {
	thickness, width dressing
	metric           bool // CLS: named in millimeters, by its finished size
}

// dressing is a nominal dimension and what is left of it, at the least, once
// the wood is dry (19 % moisture content or less) and planed.
type dressing struct{ nominal, dry Length }

// ParseNominal reads a trade name: "2x4", "1 x 12", "5/4×6", "2-1/2x4", or
// "38x89" in millimeters. The thickness stands first. Every error is a
// [fault.Fault] and names the sizes nearest to what was written.
func ParseNominal(text string) (Nominal, error) {
	n, wrong := readNominal(text)
	return n, notation("nominal size", text, wrong)
}

// Dressed is the minimum dressed dry size after PS 20-20, or the target size of
// CLS after EN 336. A piece may be larger: what was measured goes before what is
// listed.
func (n Nominal) Dressed() (thickness, width Length) { return n.thickness.dry, n.width.dry }

// String writes the trade name, "2x4" or "5/4x6".
func (n Nominal) String() string {
	if n.metric {
		return n.thickness.nominal.Decimal() + "x" + n.width.nominal.Decimal()
	}
	return nominalName(n.thickness.nominal) + "x" + nominalName(n.width.nominal)
}

// nominalName writes "2", "2-1/2", and quarters where the yard says them.
func nominalName(l Length) string {
	switch l {
	case 5 * Inch / 4:
		return "5/4"
	case 6 * Inch / 4:
		return "6/4"
	}
	return strings.Replace(Ruler{Units: Inches}.Print(l), " ", "-", 1)
}

func readNominal(text string) (Nominal, *fault.Fault) {
	thickness, width, wrong := readSection(text, Inch, "2x4 or 5/4x6")
	if wrong != nil {
		return Nominal{}, wrong
	}
	if thickness > thickestTimber { // so it is in millimeters
		return readCLS(thickness, width)
	}
	sizes := nominalSizes()
	for _, n := range sizes {
		if n.thickness.nominal == thickness && n.width.nominal == width {
			return n, nil
		}
	}
	return Nominal{}, &fault.Fault{
		Cause:  "no softwood is sold by this name",
		Remedy: "the nearest are " + nearestNames(sizes, thickness, width) + "; or give thickness and width as measured",
	}
}

// readCLS finds the section whose millimeters were read as inches.
func readCLS(thickness, width Length) (Nominal, *fault.Fault) {
	inches := func(l Length) Length { return l / Millimeter * Inch }
	names := make([]string, len(clsSizes))
	for i, n := range clsSizes {
		if inches(n.thickness.nominal) == thickness && inches(n.width.nominal) == width {
			return n, nil
		}
		names[i] = n.String()
	}
	return Nominal{}, &fault.Fault{
		Cause:  "no softwood is sold by this name, in inches or in millimeters",
		Remedy: "CLS is " + strings.Join(names, ", ") + "; or give thickness and width as measured",
	}
}

// readSection reads a thickness and a width in units; example is one.
func readSection(text string, units Length, example string) (thickness, width Length, wrong *fault.Fault) {
	if len(text) > longestText {
		return 0, 0, &tooLong
	}
	plain := typed(text)
	if units == Inch {
		plain = strings.ReplaceAll(plain, `"`, "")
	}
	first, second, two := strings.Cut(plain, "x")
	first, second = strings.TrimSpace(first), strings.TrimSpace(second)
	if !two || !isAmount(first) || !isAmount(second) {
		return 0, 0, &fault.Fault{Cause: "this is not a thickness and a width", Remedy: "write it like " + example}
	}
	if thickness, wrong = readFigure(first, units); wrong != nil {
		return 0, 0, wrong
	}
	width, wrong = readFigure(second, units)
	return thickness, width, wrong
}

func readFigure(text string, units Length) (Length, *fault.Fault) {
	value, wrong := readAmount(text)
	if wrong != nil {
		return 0, wrong
	}
	return exactly(value, units)
}

// nearestNames lists the three sizes nearest by thickness, then by width. A name
// with its figures exchanged is as good as right.
func nearestNames(sizes []Nominal, thickness, width Length) string {
	thickness, width = min(thickness, width), max(thickness, width)
	byDistance := func(a, b Nominal) int {
		return cmp.Or(
			cmp.Compare(apart(a.thickness.nominal, thickness), apart(b.thickness.nominal, thickness)),
			cmp.Compare(apart(a.width.nominal, width), apart(b.width.nominal, width)),
		)
	}
	sizes = slices.Clone(sizes)
	slices.SortStableFunc(sizes, byDistance)
	return enumerated([]string{sizes[0].String(), sizes[1].String(), sizes[2].String()})
}

// apart is how far a and b differ.
func apart(a, b Length) Length { return max(a-b, b-a) }
