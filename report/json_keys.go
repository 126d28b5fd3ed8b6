package report

import (
	"strconv"

	"sawbill/stock"
)

// The plan file. The order of the fields below is the order in the file.

// number is written as it stands: a plain decimal without exponent.
type number string

func (n number) MarshalJSON() ([]byte, error) { return []byte(n), nil }

func mm(l stock.Length) number   { return number(l.Decimal()) }
func money(m stock.Money) number { return number(m.String()) }
func fraction(v float64) number  { return number(strconv.FormatFloat(v, 'f', -1, 64)) }
func seconds(v float64) number   { return number(strconv.FormatFloat(v, 'f', 2, 64)) }

type planFile struct {
	Format    string         `json:"format"`
	Title     string         `json:"title"`
	Identity  string         `json:"identity"`
	RestOf    string         `json:"rest_of,omitempty"`
	WhatIf    []string       `json:"what_if,omitempty"`
	Complete  bool           `json:"complete"`
	Cost      number         `json:"cost"`
	Bound     number         `json:"bound"`
	Proven    bool           `json:"proven"`
	Seconds   number         `json:"seconds"`
	Saw       sawFile        `json:"saw"`
	Blanks    []blankFile    `json:"blanks"`
	Buy       []buyFile      `json:"buy"`
	AtSeller  []divisionFile `json:"cut_by_seller,omitempty"`
	Haul      *haulFile      `json:"haul,omitempty"`
	Layouts   []layoutFile   `json:"layouts"`
	Unplaced  []unplacedFile `json:"unplaced"`
	Estimates []estimateFile `json:"estimates,omitempty"`
	Totals    totalsFile     `json:"totals"`
	Cover     coverFile      `json:"cover"`
	Case      *caseFile      `json:"case,omitempty"`
	Takes     *takesFile     `json:"takes,omitempty"`
	Checks    []checkFile    `json:"checks,omitempty"`
}

// sawFile are the rules of the saw; what has no limit is left out.
type sawFile struct {
	Kerf             number `json:"kerf"`
	ResawKerf        number `json:"resaw_kerf,omitempty"`
	RipCapacity      number `json:"rip_capacity,omitempty"`
	CrosscutCapacity number `json:"crosscut_capacity,omitempty"`
	NarrowestRip     number `json:"narrowest_rip,omitempty"`
	Stages           int    `json:"stages,omitempty"`
}

func sawOf(s stock.Saw) sawFile {
	some := func(l stock.Length) number {
		if l == 0 {
			return ""
		}
		return mm(l)
	}
	return sawFile{mm(s.Kerf), some(s.ResawKerf), some(s.RipCapacity), some(s.CrosscutCapacity), some(s.NarrowestRip), s.Stages}
}

type sizeFile struct {
	Length    number `json:"length"`
	Width     number `json:"width"`
	Thickness number `json:"thickness"`
}

type blankFile struct {
	Part string `json:"part"`
	sizeFile
	Count    int      `json:"count"`
	Turnable bool     `json:"turnable"`
	DryFit   bool     `json:"after_dry_fit,omitempty"`
	Material string   `json:"material"`
	Finish   sizeFile `json:"finish"`
	Mark     string   `json:"mark"`
	// Holds is how many of the wanted parts come out of one blank. Those of a
	// gang lie end to end, those to be resawn one on another; gang times resaw,
	// less what is spare, is what it holds.
	Holds int        `json:"holds"`
	Gang  *gangFile  `json:"gang,omitempty"`
	Resaw *resawFile `json:"resaw,omitempty"`
	Spare int        `json:"spare,omitempty"`
	// Milling is the way to the parts, for each thickness of stock that the
	// blank is cut from.
	Milling []millingFile `json:"milling,omitempty"`
}

type millingFile struct {
	From  number         `json:"from"`
	Steps []millStepFile `json:"steps"`
}

// millStepFile is a step of milling: the size that is left, what the piece in
// hand loses, how many come of it, and how thick a piece is kept beside them.
type millStepFile struct {
	Do      string `json:"do"`
	Setting number `json:"setting"`
	Off     number `json:"off"`
	Pieces  int    `json:"pieces"`
	Rest    number `json:"rest,omitempty"` // thickness of what resawing leaves over
}

// gangFile tells of parts end to end, separated by crosscuts after milling.
type gangFile struct {
	Parts int    `json:"parts"`
	Kerf  number `json:"kerf"`
}

// resawFile tells of parts one on another.
type resawFile struct {
	Parts int    `json:"parts"`
	Kerf  number `json:"kerf"`
}

type buyFile struct {
	Stock     string `json:"stock"`
	Count     int    `json:"count"`
	Price     number `json:"price"`
	Cost      number `json:"cost"`
	BoardFeet number `json:"board_feet,omitempty"`
}

type layoutFile struct {
	Stock    string `json:"stock"`
	Kind     string `json:"kind"`
	Material string `json:"material"`
	OnHand   bool   `json:"on_hand"`
	From     string `json:"from,omitempty"` // the offer of which the seller cut it
	Repeat   int    `json:"repeat"`
	sizeFile
	Section *sectionFile `json:"section,omitempty"`
	Kerf    number       `json:"kerf"`
	Trim    number       `json:"trim"`
	Trims   *trimsFile   `json:"trims,omitempty"` // where they differ, since the seller cut a side
	Root    nodeFile     `json:"root"`
}

// sectionFile tells that the stock of a layout is first cut out of a board, and
// where: from so far from the board's reference end.
type sectionFile struct {
	From  number `json:"from"`
	Board number `json:"board_length"`
}

type nodeFile struct {
	Length   number     `json:"length"`
	Width    number     `json:"width"`
	Use      string     `json:"use"`
	Cut      string     `json:"cut,omitempty"`
	Children []nodeFile `json:"children,omitempty"`
	Part     string     `json:"part,omitempty"`
	Turned   *bool      `json:"turned,omitempty"` // on every part, and only there
	// Names are what is written on an offcut: one for each repeat of its layout.
	Names []string `json:"names,omitempty"`
}

// unplacedFile counts blanks, as blankFile does.
type unplacedFile struct {
	Part   string `json:"part"`
	Count  int    `json:"count"`
	Reason string `json:"reason"`
}

// estimateFile is rough lumber to ask for, in board feet, outside cost and
// bound: at the least yield of the grade and at the usual one.
type estimateFile struct {
	Material string       `json:"material"`
	Quarter  string       `json:"quarter"`
	Grade    string       `json:"grade"`
	Net      number       `json:"net"`
	Least    amountFile   `json:"least"`
	Usual    amountFile   `json:"usual"`
	Price    number       `json:"price"` // of a board foot
	Longest  number       `json:"longest"`
	Widest   number       `json:"widest"`
	Blanks   []wantedFile `json:"blanks"`
}

type amountFile struct {
	BoardFeet int    `json:"board_feet"`
	Yield     number `json:"yield"`
	Cost      number `json:"cost"`
}

type wantedFile struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
}

type sharesFile struct {
	Yield  number `json:"yield"`
	Waste  number `json:"waste"`
	Offcut number `json:"offcut"`
}

type totalsFile struct {
	sharesFile
	Sheets *sharesFile `json:"sheets,omitempty"`
	Boards *sharesFile `json:"boards,omitempty"`
}

// coverFile counts the pieces that are cut, those of which a replacement could be
// cut from what is kept, and lists the others.
type coverFile struct {
	Parts     int             `json:"parts"`
	Covered   int             `json:"covered"`
	Uncovered []uncoveredFile `json:"uncovered"`
}

type uncoveredFile struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
}
