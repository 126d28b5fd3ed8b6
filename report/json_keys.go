package report

import (
	"reflect"
	"strconv"

	"sawbill/report/internal/schema"
	"sawbill/stock"
)

// The plan file. The order of the fields is the order in the file; the tags "about" and
// "words" describe the keys in its schema.

// number is written as it stands: a plain decimal without exponent.
type number string

func (n number) MarshalJSON() ([]byte, error) { return []byte(n), nil }

// Numbers of a meaning that many keys have.
type (
	length       number // a dimension, in millimeters
	amount       number // of money
	share        number // of a whole
	grams        number
	squareMeters number
)

func (l length) MarshalJSON() ([]byte, error)       { return []byte(l), nil }
func (a amount) MarshalJSON() ([]byte, error)       { return []byte(a), nil }
func (s share) MarshalJSON() ([]byte, error)        { return []byte(s), nil }
func (g grams) MarshalJSON() ([]byte, error)        { return []byte(g), nil }
func (s squareMeters) MarshalJSON() ([]byte, error) { return []byte(s), nil }

// limit is a limit of values in a schema.
func limit(v float64) *float64 { return &v }

func (number) Schema() schema.Value {
	return schema.Value{Name: "number", Type: "number", About: "a plain decimal"}
}

func (length) Schema() schema.Value {
	return schema.Value{Name: "length", Type: "number", Least: limit(0),
		About: "millimeters, exact: a multiple of 0.000025, with six decimals at most. No unit or paper of the printed pages changes it."}
}

func (amount) Schema() schema.Value {
	return schema.Value{Name: "money", Type: "number", Least: limit(0), About: "money, in the one currency of the job, with two decimals"}
}

func (share) Schema() schema.Value {
	return schema.Value{Name: "share", Type: "number", Least: limit(0), Most: limit(1), About: "a part of a whole"}
}

func (grams) Schema() schema.Value {
	return schema.Value{Name: "grams", Type: "number", Least: limit(0), About: "a weight in grams"}
}

func (squareMeters) Schema() schema.Value {
	return schema.Value{Name: "square_meters", Type: "number", Least: limit(0), About: "an area in square meters"}
}

func mm(l stock.Length) length   { return length(l.Decimal()) }
func money(m stock.Money) amount { return amount(m.String()) }
func fraction(v float64) share   { return share(strconv.FormatFloat(v, 'f', -1, 64)) }
func seconds(v float64) number   { return number(strconv.FormatFloat(v, 'f', 2, 64)) }
func mmOrNone(l stock.Length) length {
	if l == 0 {
		return ""
	}
	return mm(l)
}

// planFormat is the format and version of the plan file.
const planFormat = "sawbill plan 2"

// PlanSchema is the JSON Schema of the plan file, version 2020-12 of that standard.
func PlanSchema() []byte {
	return schema.Of(planFile{}, planFormat, schema.Unions{
		reflect.TypeFor[nodeFile](): {
			reflect.TypeFor[splitFile](), reflect.TypeFor[partNodeFile](), reflect.TypeFor[offcutNodeFile](), reflect.TypeFor[wasteNodeFile](),
		},
		reflect.TypeFor[freedFile](): {
			reflect.TypeFor[furtherFile](), reflect.TypeFor[partNodeFile](), reflect.TypeFor[offcutNodeFile](), reflect.TypeFor[wasteNodeFile](),
		},
	})
}

type planFile struct {
	_         struct{}       `about:"A plan of cuts: what to buy, how to divide it, and in what order. A part is named by \"part\", a blank of it by its \"mark\": the letters to pencil on the piece. Later versions of the program may add keys; a reader ignores keys that it does not know."`
	Format    string         `json:"format" words:"sawbill plan 2" about:"the format and its version"`
	Title     string         `json:"title" about:"of the job"`
	Identity  string         `json:"identity" about:"code of this plan, on every page of it"`
	RestOf    string         `json:"rest_of,omitempty" about:"code of the plan that this one continues"`
	WhatIf    []string       `json:"what_if,omitempty" about:"how the plan differs from the job file, by flags"`
	Complete  bool           `json:"complete" about:"whether every blank is cut or estimated"`
	Cost      amount         `json:"cost" about:"of everything in buy, with the seller's cuts; no tax"`
	Bound     amount         `json:"bound" about:"no plan under these rules costs less"`
	Proven    bool           `json:"proven" about:"cost equals bound"`
	Seconds   number         `json:"seconds" about:"that the search took; 0 if the number of its iterations was given"`
	Saw       sawFile        `json:"saw" about:""`
	Rules     rulesFile      `json:"rules" about:""`
	Blanks    []blankFile    `json:"blanks" about:"the cutting bill"`
	Buy       []buyFile      `json:"buy" about:"the shopping list; stock on hand is not in it"`
	Receipts  []receiptFile  `json:"receipts" about:"what is paid to each seller, in the order of the shopping list"`
	AtSeller  []divisionFile `json:"cut_by_seller,omitempty" about:"cuts that the seller makes before the stock is carried home"`
	Haul      *haulFile      `json:"haul,omitempty" about:""`
	Layouts   []layoutFile   `json:"layouts" about:"in the order of their printed numbers"`
	Setups    []gatheredFile `json:"setups" about:"the order of work of the whole shop, another than layout by layout"`
	Unplaced  []unplacedFile `json:"unplaced" about:"blanks that could not be cut"`
	Estimates []estimateFile `json:"estimates,omitempty" about:"rough lumber to ask for; cost and bound leave it out"`
	Totals    totalsFile     `json:"totals" about:""`
	Cover     coverFile      `json:"cover" about:""`
	Case      *caseFile      `json:"case,omitempty" about:""`
	Takes     *takesFile     `json:"takes,omitempty" about:""`
	Checks    []checkFile    `json:"checks,omitempty" about:"estimates of a case design's strength and stability"`
}

type sawFile struct {
	_                struct{} `about:"the saw and the rules for its cuts; a limit that is not set is left out"`
	Kerf             length   `json:"kerf" about:"what one cut removes"`
	ResawKerf        length   `json:"resaw_kerf,omitempty" about:"what a cut removes that divides the thickness"`
	RipCapacity      length   `json:"rip_capacity,omitempty" about:"the fence's reach"`
	CrosscutCapacity length   `json:"crosscut_capacity,omitempty" about:"the widest piece that can be cut across"`
	NarrowestRip     length   `json:"narrowest_rip,omitempty" about:"no part, offcut or split of a sheet is ripped narrower"`
	Stages           int      `json:"stages,omitempty" about:"at most so many levels of cuts, trim included"`
	FirstCut         string   `json:"first_cut" words:"any|rip|crosscut" about:"first cuts of every sheet"`
	BoardFirstCut    string   `json:"board_first_cut" words:"any|rip|crosscut" about:"first cuts of every board"`
}

func sawOf(s stock.Saw) sawFile {
	return sawFile{
		Kerf: mm(s.Kerf), ResawKerf: mmOrNone(s.ResawKerf), RipCapacity: mmOrNone(s.RipCapacity), CrosscutCapacity: mmOrNone(s.CrosscutCapacity),
		NarrowestRip: mmOrNone(s.NarrowestRip), Stages: s.Stages, FirstCut: s.FirstCut.String(), BoardFirstCut: s.BoardFirstCut.String(),
	}
}

type rulesFile struct {
	_         struct{}       `about:"rules of the job that the saw does not set; what is not set is left out"`
	Shortest  length         `json:"shortest,omitempty" about:"no piece that is milled is shorter, where a longer one can be made"`
	Offcut    rectangleFile  `json:"offcut" about:"a leftover smaller in either direction is waste"`
	Transport *transportFile `json:"transport,omitempty" about:""`
}

type transportFile struct {
	_            struct{} `about:"what can be carried home in one piece, and the seller's saw"`
	Longest      length   `json:"longest,omitempty" about:"length of a piece as it lies in the vehicle"`
	Widest       length   `json:"widest,omitempty" about:"its width"`
	Heaviest     int      `json:"heaviest,omitempty" about:"grams in one trip"`
	Cuts         int      `json:"cuts" about:"that the seller makes in one piece at most, all in one direction"`
	CutPrice     amount   `json:"cut_price" about:"of one cut"`
	CutKerf      length   `json:"cut_kerf" about:"of the seller's saw"`
	CutTolerance length   `json:"cut_tolerance" about:"by how much a side that the seller cut may be off"`
}

func rulesOf(j stock.Job) rulesFile {
	f := rulesFile{Shortest: mmOrNone(j.Shortest), Offcut: rectangleFile{mm(j.Offcut.Length), mm(j.Offcut.Width)}}
	if t := j.Transport; t != (stock.Transport{}) {
		f.Transport = &transportFile{
			Longest: mmOrNone(t.Longest), Widest: mmOrNone(t.Widest), Heaviest: int(t.Heaviest),
			Cuts: t.Cuts, CutPrice: money(t.CutPrice), CutKerf: mm(t.CutKerf), CutTolerance: mm(t.CutTolerance),
		}
	}
	return f
}

type rectangleFile struct {
	Length length `json:"length" about:""`
	Width  length `json:"width" about:""`
}

type sizeFile struct {
	Length    length `json:"length" about:""`
	Width     length `json:"width" about:""`
	Thickness length `json:"thickness" about:""`
}

func sizesOf(s stock.Stock) sizeFile { return sizeFile{mm(s.Length), mm(s.Width), mm(s.Thickness)} }

// pieceFile names a blank, everywhere in the same words.
type pieceFile struct {
	Part string `json:"part" about:"name of the part, unique in the job"`
	Mark string `json:"mark" about:"of the blank, unique in the plan: the letters to pencil on the piece"`
}

type blankFile struct {
	_ struct{} `about:"a blank: a part with its allowances, as the saw must deliver it"`
	pieceFile
	sizeFile
	Count    int           `json:"count" about:"blanks to cut"`
	Turnable bool          `json:"turnable" about:"the blank may lie either way in all stock that it can come from"`
	DryFit   bool          `json:"after_dry_fit,omitempty" about:"best cut when the rest was put together dry and measured"`
	Material string        `json:"material" about:""`
	Finish   sizeFile      `json:"finish" about:"size of the finished part"`
	Holds    int           `json:"holds" about:"how many wanted parts come out of one blank: gang times resaw, less spare"`
	Gang     *layersFile   `json:"gang,omitempty" about:"parts end to end, separated by crosscuts after milling"`
	Resaw    *layersFile   `json:"resaw,omitempty" about:"parts one on another"`
	Spare    int           `json:"spare,omitempty" about:"parts in the blank that nobody asked for"`
	Milling  []millingFile `json:"milling,omitempty" about:"the way to the parts, for each thickness of stock that the blank is cut from"`
}

type millingFile struct {
	From  length         `json:"from" about:"thickness of the stock"`
	Steps []millStepFile `json:"steps" about:"in order"`
}

type millStepFile struct {
	Do      string `json:"do" words:"plane|true edge|resaw|square end|cut to length|miter" about:"the operation"`
	Setting length `json:"setting" about:"the size that is left"`
	Off     length `json:"off" about:"what the piece in hand loses"`
	Pieces  int    `json:"pieces" about:"that come of it"`
	Rest    length `json:"rest,omitempty" about:"thickness of a piece that resawing leaves over"`
}

type layersFile struct {
	Parts int    `json:"parts" about:"in one blank"`
	Kerf  length `json:"kerf" about:"between them"`
}

type receiptFile struct {
	_      struct{} `about:"what is paid at one till"`
	Seller string   `json:"seller,omitempty" about:"absent if none is named"`
	Net    amount   `json:"net" about:"of what is bought there and of the seller's cuts"`
	Tax    amount   `json:"tax" about:"on net, rounded once"`
	Paid   amount   `json:"paid" about:"net and tax"`
}

type buyFile struct {
	Stock    string `json:"stock" about:"name of the offer"`
	Kind     string `json:"kind" words:"sheet|board" about:""`
	Material string `json:"material" about:""`
	sizeFile
	Seller    string `json:"seller,omitempty" about:""`
	Count     int    `json:"count" about:""`
	Price     amount `json:"price" about:"of one piece; 0 if none is given"`
	Cost      amount `json:"cost" about:"of all of them"`
	BoardFeet number `json:"board_feet,omitempty" about:"for which they are charged"`
}

type divisionFile struct {
	_      struct{} `about:"how the seller cuts each piece of an offer: straight cuts in one direction"`
	Stock  string   `json:"stock" about:"name of the offer"`
	Count  int      `json:"count" about:"pieces of the offer"`
	Cut    string   `json:"cut" words:"rip|crosscut" about:"a rip divides the width, a crosscut the length"`
	Pieces []length `json:"pieces" about:"sizes in that direction, in order, a kerf between neighbors"`
	Kerf   length   `json:"kerf" about:""`
	Cuts   int      `json:"cuts" about:"in all pieces"`
	Cost   amount   `json:"cost" about:"of all cuts"`
}

type haulFile struct {
	_        struct{} `about:"what is to be carried home: an estimate"`
	Grams    int64    `json:"grams" about:""`
	Trips    int      `json:"trips" about:""`
	TooHeavy []string `json:"too_heavy" about:"stock of which one piece weighs more than a trip may"`
	Unknown  []string `json:"unknown" about:"materials left out, since their density is not known"`
}

type layoutFile struct {
	_        struct{} `about:"how one piece of stock is divided, as often as repeat says"`
	Number   int      `json:"number" about:"as printed"`
	Stock    string   `json:"stock" about:"name of the stock"`
	Kind     string   `json:"kind" words:"sheet|board" about:""`
	Material string   `json:"material" about:""`
	OnHand   bool     `json:"on_hand" about:""`
	From     string   `json:"from,omitempty" about:"the offer of which the seller cut this piece"`
	Repeat   int      `json:"repeat" about:"pieces of stock that are cut like this"`
	sizeFile
	Grain   string       `json:"grain" words:"length|width|any|unknown" about:"direction of the grain"`
	Section *sectionFile `json:"section,omitempty" about:""`
	Kerf    length       `json:"kerf" about:""`
	Trim    length       `json:"trim" about:"off every edge of a sheet, off both ends of a board, as the job gives it; trims is what counts"`
	Trims   trimsFile    `json:"trims" about:""`
	Root    nodeFile     `json:"root" about:"the stock less its trims"`
	Steps   []stepFile   `json:"steps" about:"the cuts in the order of their numbers; none if the stock is used or kept as it came"`
}

type trimsFile struct {
	_        struct{} `about:"what comes off each side before all else, kerf included. The near end and edge are those of the reference corner. A side that the seller cut loses the tolerance."`
	NearEnd  length   `json:"near_end" about:""`
	FarEnd   length   `json:"far_end" about:""`
	NearEdge length   `json:"near_edge" about:""`
	FarEdge  length   `json:"far_edge" about:""`
}

func trimsOf(s stock.Stock) trimsFile {
	t := s.Trims()
	return trimsFile{NearEnd: mm(t.NearEnd), FarEnd: mm(t.FarEnd), NearEdge: mm(t.NearEdge), FarEdge: mm(t.FarEdge)}
}

type sectionFile struct {
	_     struct{} `about:"where the stock of a layout is first cut out of a board with defects"`
	From  length   `json:"from" about:"from the board's reference end"`
	Board length   `json:"board_length" about:""`
}

// nodeFile is a node of a layout's tree: one of the structs below.
type nodeFile interface{ node() }

func (splitFile) node()      {}
func (partNodeFile) node()   {}
func (offcutNodeFile) node() {}
func (wasteNodeFile) node()  {}

type splitFile struct {
	_ struct{} `about:"a piece that is divided. Its children lie in order from the reference edge or end, a kerf between neighbors. Children and kerfs fill it; or after the last child less than a kerf is left, and the blade runs off the edge there."`
	rectangleFile
	Use      string     `json:"use" words:"split" about:""`
	Cut      string     `json:"cut" words:"rip|crosscut" about:"a rip divides the width, a crosscut the length"`
	Children []nodeFile `json:"children" about:""`
}

type partNodeFile struct {
	_ struct{} `about:"a blank"`
	rectangleFile
	Use string `json:"use" words:"part" about:""`
	pieceFile
	Turned bool `json:"turned" about:"its length lies across the stock's"`
}

type offcutNodeFile struct {
	_ struct{} `about:"a leftover to keep"`
	rectangleFile
	Use   string   `json:"use" words:"offcut" about:""`
	Names []string `json:"names" about:"to write on it: one for each repeat of the layout"`
}

type wasteNodeFile struct {
	_ struct{} `about:"a leftover not worth keeping"`
	rectangleFile
	Use string `json:"use" words:"waste" about:""`
}

type unplacedFile struct {
	pieceFile
	Count  int    `json:"count" about:"blanks"`
	Reason string `json:"reason" about:"and what to do"`
}

type estimateFile struct {
	_        struct{}     `about:"rough lumber to ask for, in board feet"`
	Material string       `json:"material" about:""`
	Quarter  string       `json:"quarter" about:"the rough thickness, as 4/4"`
	Grade    string       `json:"grade" about:""`
	Net      number       `json:"net" about:"board feet of the blanks"`
	Least    roughFile    `json:"least" about:"at the least yield of the grade"`
	Usual    roughFile    `json:"usual" about:"at the usual yield"`
	Price    amount       `json:"price" about:"of a board foot; 0 if none is given"`
	Longest  length       `json:"longest" about:"of the blanks"`
	Widest   length       `json:"widest" about:"of the blanks"`
	Blanks   []wantedFile `json:"blanks" about:""`
}

type roughFile struct {
	BoardFeet int    `json:"board_feet" about:""`
	Yield     share  `json:"yield" about:""`
	Cost      amount `json:"cost" about:""`
}

// wantedFile counts blanks.
type wantedFile struct {
	pieceFile
	Count int `json:"count" about:""`
}

type sharesFile struct {
	Yield  share `json:"yield" about:"finished parts"`
	Waste  share `json:"waste" about:"waste, kerf, trim and allowances"`
	Offcut share `json:"offcut" about:"leftovers to keep"`
}

type totalsFile struct {
	_       struct{} `about:"shares of all stock cut; they add up to 1"`
	Measure string   `json:"measure" words:"area|volume" about:"of what they are shares"`
	sharesFile
	Sheets *sharesFile `json:"sheets,omitempty" about:"of the area of the sheets, where there are boards too"`
	Boards *sharesFile `json:"boards,omitempty" about:"of the volume of the boards, where there are sheets too"`
}

type coverFile struct {
	_         struct{}     `about:"pieces of which a replacement could be cut from what is kept, each as if it were the only one spoiled"`
	Parts     int          `json:"parts" about:"pieces that are cut"`
	Covered   int          `json:"covered" about:""`
	Uncovered []wantedFile `json:"uncovered" about:"the others"`
}
