package stock

import (
	"sawbill/stock/fault"
	"strings"
)

// Quarter is a thickness in which hardwood is sawn, by its trade name: "8/4" is
// eight quarters of an inch. Its zero value is no thickness; [ParseQuarter]
// gives only those that exist.
type Quarter struct {
	name            string
	rough, s1s, s2s Length // 0: none is listed
}

// Surfacing says how far lumber was planed before it was sold.
type Surfacing int

const (
	AsSawn   Surfacing = iota // rough on all sides
	OneSide                   // S1S: planed on one face
	TwoSides                  // S2S: planed on both faces
	AllRound                  // S4S: planed on both faces and both edges
)

// String writes the trade's short form: "rough", "S1S", "S2S" or "S4S".
func (s Surfacing) String() string { return [...]string{"rough", "S1S", "S2S", "S4S"}[s] }

// Thicknesses of hardwood, rough and surfaced. Source: rules of the National
// Hardwood Lumber Association (NHLA), surfaced lumber; confirmed in "Hardwood
// Lumber - Dimensions", engineeringtoolbox.com, except where marked. What was
// measured goes before what is listed: 4/4 is sold planed anywhere from 3/4 to
// 15/16 in (common practice, no source).
var hardwoodThicknesses = []Quarter{
	{"3/8", 3 * Inch / 8, 0, 3 * Inch / 16},
	{"1/2", Inch / 2, 3 * Inch / 8, 5 * Inch / 16},
	{"5/8", 5 * Inch / 8, Inch / 2, 7 * Inch / 16},
	{"3/4", 3 * Inch / 4, 5 * Inch / 8, 9 * Inch / 16},
	{"4/4", Inch, 7 * Inch / 8, 13 * Inch / 16},
	{"5/4", 5 * Inch / 4, 9 * Inch / 8, 17 * Inch / 16},
	{"6/4", 3 * Inch / 2, 11 * Inch / 8, 21 * Inch / 16},
	{"7/4", 7 * Inch / 4, 0, 3 * Inch / 2},
	{"8/4", 2 * Inch, 29 * Inch / 16, 7 * Inch / 4},
	{"10/4", 5 * Inch / 2, 0, 9 * Inch / 4}, // S2S from memory
	{"12/4", 3 * Inch, 45 * Inch / 16, 11 * Inch / 4},
	{"14/4", 7 * Inch / 2, 0, 13 * Inch / 4},
	{"16/4", 4 * Inch, 61 * Inch / 16, 15 * Inch / 4},
}

// ParseQuarter reads a trade name: "8/4"; the thicknesses below 4/4 are "3/4",
// "5/8", "1/2" and "3/8". Every error is a [fault.Fault] and names what
// exists.
func ParseQuarter(text string) (Quarter, error) {
	if len(text) > longestText {
		return Quarter{}, notation("hardwood thickness", text, &tooLong)
	}
	name := strings.ReplaceAll(strings.Trim(typed(text), `" `), " ", "")
	names := make([]string, len(hardwoodThicknesses))
	for i, q := range hardwoodThicknesses {
		if q.name == name {
			return q, nil
		}
		names[i] = q.name
	}
	wrong := fault.New("hardwood is not sold by this name",
		"there are "+enumerated(names))
	return Quarter{}, notation("hardwood thickness", text, &wrong)
}

// String writes the trade name, "8/4".
func (q Quarter) String() string { return q.name }

// Rough is the thickness as sawn, from which board feet are computed.
func (q Quarter) Rough() Length { return q.rough }

// Surfaced is the thickness that is left when q is planed as s says. The error,
// a [fault.Fault], names what the rules list where that is not among it. The
// zero Quarter has no thickness at all.
func (q Quarter) Surfaced(s Surfacing) (Length, error) {
	listed := [...]Length{AsSawn: q.rough, OneSide: q.s1s, TwoSides: q.s2s, AllRound: 0}
	if listed[s] > 0 {
		return listed[s], nil
	}
	var there []string
	for as, thickness := range listed {
		if thickness > 0 {
			there = append(there, Surfacing(as).String()+" ("+Ruler{Units: Inches, Denominator: 64}.PrintUnit(thickness)+")")
		}
	}
	if len(there) == 0 {
		wrong := fault.New("there is no such thickness", "give one that hardwood is sold in, such as 4/4")
		return 0, notation("hardwood thickness", q.name, &wrong)
	}
	wrong := fault.New("no thickness of "+q.name+" is listed surfaced so",
		"listed are "+enumerated(there)+"; or give the thickness as measured")
	return 0, notation("surfacing", s.String(), &wrong)
}
