package stock

import (
	"sawbill/stock/fault"
	"slices"
)

// Sawn is a size of European softwood by its sawn section: "47x100", in
// millimeters. Its zero value is no size; [ParseSawn] gives only those that
// exist.
type Sawn struct{ thickness, width Length }

// Sawn sizes of softwood. Source: EN 1313-1:2010 with its UK annex, from memory;
// that both 47 and 50 mm are listed is confirmed in a trade journal's column.
var (
	sawnThicknesses = millimeters(16, 19, 22, 25, 32, 38, 47, 50, 63, 75, 100)
	sawnWidths      = millimeters(75, 100, 115, 125, 150, 175, 200, 225, 250, 275, 300)
)

// Planing all round takes 3 mm up to 100 mm and 5 mm above, which gives the
// machined sizes 35, 44, 60, 72, 97, 120, 145 and on of the UK annex of EN 336
// (from memory). A textbook's rule takes 3 mm up to 150 mm (confirmed in "Timber",
// wiki.dtonline.org): with that the two widths between are 2 mm more, and what is
// planned must be there.
const (
	lightPlaning, heavyPlaning = 3 * Millimeter, 5 * Millimeter
	lightlyPlaned              = 100 * Millimeter
)

// clsSizes are sections of Canadian lumber standard (CLS) as sold in Europe, by
// their finished size. Source: EN 336 with its UK annex, from memory; 38x63 is
// confirmed in a trade journal's column.
var clsSizes = func() (sizes []Nominal) {
	for _, width := range millimeters(63, 89, 114, 140, 184, 235, 285) {
		sizes = append(sizes, Nominal{dressing{38 * Millimeter, 38 * Millimeter}, dressing{width, width}, true})
	}
	return sizes
}()

func millimeters(all ...Length) []Length {
	for i := range all {
		all[i] *= Millimeter
	}
	return all
}

// ParseSawn reads a sawn section, thickness first: "47x100". Every error is a
// [fault.Fault] and names what is sawn.
func ParseSawn(text string) (Sawn, error) {
	s, wrong := readSawn(text)
	return s, notation("sawn size", text, wrong)
}

func readSawn(text string) (Sawn, *fault.Fault) {
	thickness, width, wrong := readSection(text, Millimeter, "47x100")
	if wrong != nil {
		return Sawn{}, wrong
	}
	if !slices.Contains(sawnThicknesses, thickness) || !slices.Contains(sawnWidths, width) || thickness > width {
		return Sawn{}, &fault.Fault{Cause: "no softwood is sawn to this size",
			Remedy: "it is " + inMillimeters(sawnThicknesses) + " mm thick and " + inMillimeters(sawnWidths) + " mm wide, thickness first; or give thickness and width as measured"}
	}
	return Sawn{thickness, width}, nil
}

// inMillimeters lists lengths: "16, 19 and 22".
func inMillimeters(all []Length) string {
	words := make([]string, len(all))
	for i, l := range all {
		words[i] = l.Decimal()
	}
	return enumerated(words)
}

// Surfaced is the size that is left: as sawn, or planed all round. Softwood is
// not sold otherwise; the error is a [fault.Fault].
func (s Sawn) Surfaced(how Surfacing) (thickness, width Length, err error) {
	switch how {
	case AsSawn:
		return s.thickness, s.width, nil
	case AllRound:
		return s4s(s.thickness), s4s(s.width), nil
	}
	wrong := fault.New("softwood is sold as sawn or planed all round", `write "rough" or "S4S", or give thickness and width as measured`)
	return 0, 0, notation("surfacing", how.String(), &wrong)
}

func s4s(l Length) Length {
	if l <= lightlyPlaned {
		return l - lightPlaning
	}
	return l - heavyPlaning
}
