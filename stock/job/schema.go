package job

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// holding is the kind of value that a key must hold.
type holding int

const (
	aText holding = iota
	aWord
	aLength
	aCount
	aPrice
	aPercentage
	aTruth
	aDay      // a date, as text
	anID      // what is written on a piece, as text
	fileNames // one text, or a list of them
	widths    // one length, or a list of them
	dowels    // one size of dowel, as text, or a list of them
	zones     // a list of {from = , to = }
	section   // a [table]
	sections  // a [[table]], any number of times
)

// key is one key of a table: what it holds, and what of it is sensible.
type key struct {
	name  string
	holds holding
	need  bool
	// example is a value to write, for keys that are needed.
	example string
	// metric and inch are the default in a job of either units, as it would be
	// written; inch is the same as metric when empty.
	metric, inch string
	zero         bool         // of lengths and counts: 0 may be meant
	longest      stock.Length // of lengths; 0 is stock.Longest
	most         int          // of counts, of texts the most characters (at least longestName), and of how many [[tables]] there may be
	words        []string     // of words
	usual        string       // what is sensible, said when a value is not
	none         string       // of counts: what to do when 0 or less was written
	keys         []key        // of a section, or of each zone
}

// Limits beyond which a value is a slip of the pen. They are generous: none is
// meant to teach anybody the trade. All are common practice, no source.
const (
	widestKerf      = 12 * stock.Millimeter
	longestStock    = 20_000 * stock.Millimeter
	thickestSheet   = 150 * stock.Millimeter
	thickestBoard   = 400 * stock.Millimeter
	largestTrim     = 500 * stock.Millimeter
	largestMilling  = 25 * stock.Millimeter
	largestEnd      = 300 * stock.Millimeter
	widestNarrowRip = 500 * stock.Millimeter
	longestMilled   = 1000 * stock.Millimeter

	mostPieces = 10_000
	mostStock  = 100_000
	mostStages = 20

	// mostOffers keeps the time bounded in which each is held against all others.
	mostOffers = 5000

	dearestBoardFoot stock.Money = 10_000_00
)

// fileKeys is the whole job file.
var fileKeys = []key{
	{name: "title", holds: aText},
	{name: "units", holds: aWord, words: []string{"mm", "in"}, metric: "mm"},
	{name: "saw", holds: section, keys: sawKeys},
	{name: "tools", holds: section, keys: toolKeys},
	{name: "milling", holds: section, keys: millingKeys},
	{name: "allowance", holds: section, keys: allowanceKeys},
	{name: "material", holds: sections, keys: materialKeys, most: mostMaterials},
	{name: "offcut", holds: section, keys: offcutKeys},
	{name: "offers", holds: fileNames},
	{name: "shopping", holds: section, keys: shoppingKeys},
	{name: "transport", holds: section, keys: transportKeys},
	{name: "labels", holds: section, keys: labelKeys},
	{name: "sheet", holds: sections, keys: sheetKeys, most: mostOffers},
	{name: "board", holds: sections, keys: boardKeys, most: mostOffers},
	{name: "rough", holds: sections, keys: roughKeys, most: mostOffers},
	{name: "part", holds: sections, keys: partKeys, most: mostRows},
	{name: "parts", holds: fileNames},
	{name: "rack", holds: fileNames},
	{name: "case", holds: section}, // its keys are the fields of casework.Design
}

var sawKeys = []key{
	// A full-kerf table saw blade cuts 1/8 in, label 3.2 mm, a thin one 3/32 in,
	// label 2.4 mm: confirmed with blade makers' figures.
	{name: "kerf", holds: aLength, metric: "3.2 mm", inch: "1/8 in", zero: true, longest: widestKerf,
		usual: "table saws cut 2.4 to 3.2 mm (3/32 to 1/8 in); measure a cut of yours"},
	// A band saw for resawing takes 1/16 to 3/32 in: common practice, no source.
	{name: "resaw_kerf", holds: aLength, metric: "1.6 mm", inch: "1/16 in", zero: true, longest: widestKerf,
		usual: "band saws cut 1 to 2.4 mm (1/24 to 3/32 in); measure a cut of yours"},
	{name: "rip_capacity", holds: aLength, longest: longestStock,
		usual: "measure from the blade to the fence at its farthest"},
	{name: "crosscut_capacity", holds: aLength, longest: longestStock,
		usual: "give the widest piece that the saw can cut across"},
	{name: "narrowest_rip", holds: aLength, longest: widestNarrowRip,
		usual: "give the narrowest strip your saw's manual lets you rip"},
	{name: "stages", holds: aCount, metric: "0", zero: true, most: mostStages,
		usual: "write 0 for any number, 2 for rips and then crosscuts"},
	{name: "first_cut", holds: aWord, words: []string{"any", "rip", "crosscut"}, metric: "any"},
	// Short pieces are safer and straighter to rip. Common practice, no source.
	{name: "board_first_cut", holds: aWord, words: []string{"crosscut", "rip", "any"}, metric: "crosscut"},
}

var millingKeys = []key{
	{name: "shortest", holds: aLength, metric: stock.ShortestMilled.Decimal() + " mm", inch: "12 in", zero: true, longest: longestMilled,
		usual: "give the shortest piece that the manuals of planer, jointer and saw allow"},
}

var allowanceKeys = []key{
	{name: "edge", holds: aLength, metric: "0", zero: true, longest: largestMilling, usual: usualEdge},
	{name: "face", holds: aLength, metric: "0", zero: true, longest: largestMilling, usual: usualFace},
	{name: "end", holds: aLength, metric: "0", zero: true, longest: largestEnd, usual: usualEnd},
	// By default half the saw's kerf.
	{name: "miter", holds: aLength, zero: true, longest: largestMilling, usual: usualMiter},
}

// materialKeys are the allowances of one material in place of the job's, and
// its properties.
var materialKeys = []key{
	{name: "name", holds: aText, need: true, example: `"spruce"`},
	{name: "edge", holds: aLength, zero: true, longest: largestMilling, usual: usualEdge},
	{name: "face", holds: aLength, zero: true, longest: largestMilling, usual: usualFace},
	{name: "end", holds: aLength, zero: true, longest: largestEnd, usual: usualEnd},
	{name: "miter", holds: aLength, zero: true, longest: largestMilling, usual: usualMiter},
	{name: "wood", holds: aWord, words: casework.Woods()},
	{name: "density", holds: aCount, most: 2000, usual: "give kg/m3: wood weighs 350 to 800, panels 500 to 950"},
	{name: "modulus", holds: aCount, most: 50_000, usual: "give N/mm2: wood has 8000 to 14000, panels 2700 to 8500"},
}

// Common practice, no source.
const (
	usualEdge = "a jointed edge takes about 1 mm (1/32 in)"
	usualFace = "planing a face takes 1 to 3 mm (1/32 to 1/8 in)"
	usualEnd  = "squaring an end takes 5 to 25 mm (1/4 to 1 in)"

	usualMiter = "a miter takes half a kerf, about 1.6 mm (1/16 in)"
)

var offcutKeys = []key{
	{name: "length", holds: aLength, metric: "300 mm", usual: usualOffcut},
	{name: "width", holds: aLength, metric: "80 mm", usual: usualOffcut},
}

const usualOffcut = "give the smallest leftover that you would keep"

var sheetKeys = []key{
	{name: "name", holds: aText, need: true, example: `"birch 18, 8x4"`},
	{name: "material", holds: aText, need: true, example: `"birch ply 18"`},
	{name: "thickness", holds: aLength, need: true, example: `"18 mm"`, longest: thickestSheet, usual: "sheets are 3 to 40 mm (1/8 to 1 1/2 in) thick"},
	{name: "length", holds: aLength, need: true, example: `"2440 mm"`, longest: longestStock, usual: "a large sheet is 3 m (10 ft) long"},
	{name: "width", holds: aLength, need: true, example: `"1220 mm"`, longest: longestStock, usual: "a large sheet is 2 m (6 ft) wide"},
	{name: "grain", holds: aWord, words: []string{"length", "width", "none"}, metric: "length"},
	{name: "trim", holds: aLength, metric: "0", zero: true, longest: largestTrim, usual: "a factory edge loses 6 to 10 mm (1/4 to 3/8 in)"},
	{name: "price", holds: aPrice, metric: "0"},
	{name: "per", holds: aWord, words: stock.Pers, metric: stock.Pers[stock.PerPiece]},
	{name: "seller", holds: aText},
	{name: "count", holds: aCount, most: mostStock, usual: usualStockCount, none: noStock},
	{name: "on_hand", holds: aTruth, metric: "false"},
}

const (
	usualStockCount = "leave count out when there is no limit"
	noStock         = "leave the offer out when there is none, or count when there is no limit"
)

var boardKeys = []key{
	{name: "name", holds: aText, need: true, example: `"2x4 x 8 ft"`},
	{name: "material", holds: aText, need: true, example: `"spruce"`},
	{name: "nominal", holds: aText},
	{name: "sawn", holds: aText},
	{name: "quarter", holds: aText},
	{name: "surfaced", holds: aWord, words: surfacings(stock.AsSawn, stock.OneSide, stock.TwoSides, stock.AllRound), metric: stock.AsSawn.String()},
	{name: "thickness", holds: aLength, longest: thickestBoard, usual: "boards are 12 to 100 mm (1/2 to 4 in) thick"},
	{name: "width", holds: aLength, longest: longestStock, usual: "boards are 50 to 300 mm (2 to 12 in) wide"},
	{name: "length", holds: aLength, need: true, example: `"8 ft"`, longest: longestStock, usual: "boards are 1.8 to 6 m (6 to 20 ft) long"},
	{name: "trim", holds: aLength, metric: "0", zero: true, longest: largestTrim, usual: "a checked end loses 12 to 25 mm (1/2 to 1 in)"},
	{name: "price", holds: aPrice, metric: "0"},
	{name: "per", holds: aWord, words: stock.Pers, metric: stock.Pers[stock.PerPiece]},
	{name: "seller", holds: aText},
	{name: "count", holds: aCount, most: mostStock, usual: usualStockCount, none: noStock},
	{name: "on_hand", holds: aTruth, metric: "false"},
	{name: "defects", holds: zones, keys: zoneKeys},
}

// zoneKeys describe one defect.
var zoneKeys = []key{
	{name: "from", holds: aLength, need: true, example: `"300 mm"`, zero: true, longest: longestStock, usual: usualZone},
	{name: "to", holds: aLength, need: true, example: `"360 mm"`, longest: longestStock, usual: usualZone},
}

const usualZone = "measure from the board's reference end"

var roughKeys = []key{
	{name: "material", holds: aText, need: true, example: `"white oak"`},
	{name: "quarter", holds: aText, need: true, example: `"4/4"`},
	{name: "grade", holds: aWord, need: true, example: `"FAS"`, words: stock.Grades()},
	{name: "price", holds: aPrice, metric: "0"},
	{name: "yield", holds: aCount, most: 100, usual: "give the percentage of what is bought that becomes blanks, 50 to 80 is usual"},
}

// partKeys are the keys of [[part]] and the headings of a part list.
var partKeys = []key{
	{name: "name", holds: aText, need: true, example: `"shelf"`},
	{name: "material", holds: aText, need: true, example: `"birch ply 18"`},
	{name: "length", holds: aLength, need: true, example: `"900 mm"`, longest: longestStock},
	{name: "width", holds: aLength, need: true, example: `"300 mm"`, longest: longestStock},
	{name: "thickness", holds: aLength, longest: thickestBoard},
	{name: "count", holds: aCount, metric: "1", most: mostPieces, none: "leave the part out when none is wanted"},
	{name: "grain", holds: aWord, words: []string{"length", "width", "any"}, metric: "length"},
	{name: "edge", holds: aLength, zero: true, longest: largestMilling, usual: usualEdge},
	{name: "face", holds: aLength, zero: true, longest: largestMilling, usual: usualFace},
	{name: "end", holds: aLength, zero: true, longest: largestEnd, usual: usualEnd},
	{name: "miter", holds: aLength, zero: true, longest: largestMilling, usual: usualMiter},
	{name: "edges", holds: aCount, metric: "2", zero: true, most: 2, usual: "a part has two edges"},
	{name: "faces", holds: aCount, metric: "2", zero: true, most: 2, usual: "a part has two faces"},
	{name: "ends", holds: aCount, metric: "2", zero: true, most: 2, usual: "a part has two ends"},
	{name: "miters", holds: aCount, metric: "0", zero: true, most: 2, usual: "a part has two ends"},
	{name: "gang", holds: aTruth, metric: "true"},
	{name: "resaw", holds: aTruth, metric: "false"},
	{name: "note", holds: aText, most: longestNote},
}

// surfacings lists the words for how lumber may be planed.
func surfacings(of ...stock.Surfacing) []string {
	return mapped(of, stock.Surfacing.String)
}

// keysOf are the keys of a section of a file.
func keysOf(name string, file []key) []key {
	return file[slices.IndexFunc(file, func(k key) bool { return k.name == name })].keys
}

// namesOf lists the names of keys, in their order.
func namesOf(keys []key) []string {
	return mapped(keys, func(k key) string { return k.name })
}

// mapped turns each of all, in order. It is nil for none.
func mapped[A, B any](all []A, turn func(A) B) (turned []B) {
	for _, a := range all {
		turned = append(turned, turn(a))
	}
	return turned
}

// optional is keys with none of them needed.
func optional(keys []key) []key {
	return mapped(keys, func(k key) key {
		k.need = false
		return k
	})
}

// heading is how a table is begun in a job file.
func (k key) heading() string {
	if k.holds == sections {
		return "[[" + k.name + "]]"
	}
	return "[" + k.name + "]"
}

// homesOf tells the tables of a file that have a key called name: "under [saw]".
func homesOf(name string, file []key) []string {
	var homes []string
	for _, k := range file {
		if slices.Contains(namesOf(k.keys), name) {
			homes = append(homes, "under "+k.heading())
		}
	}
	if slices.Contains(namesOf(file), name) {
		homes = append(homes, "at the top of the file, before the first [table]")
	}
	return homes
}

// otherWords maps common words to keys. They are not read, for one word
// for one thing is easier to find, but never passed over either.
var otherWords = map[string]string{
	"qty": "count", "quantity": "count", "number": "count", "amount": "count", "pieces": "count", "pcs": "count",
	"title": "name", "part": "name", "part_name": "name", "description": "name", "label": "name",
	"stock": "material", "wood": "material", "species": "material",
	"long": "length", "len": "length", "l": "length", "wide": "width", "w": "width",
	"thick": "thickness", "t": "thickness",
	"cost": "price", "notes": "note", "remark": "note", "comment": "note",
	"unit": "units", "project": "title",
}
