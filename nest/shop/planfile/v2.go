package planfile

// Version 2 of the file, its keys in this order. Lengths count 25 nm, prices cents; words.go
// has the words. Parts and stock have lists of their own; everything else refers to them by
// number, from 0. A way leads to a node of a layout's tree: the numbers of the children from
// the root on.
//
// Later programs read this version for ever. A new key, or a new meaning of one, takes a
// version 3 with structs of its own; shape_test.go fails otherwise.

const formatV2 = "sawbill plan file 2"

type fileV2 struct {
	Format string `json:"format"`
	Sum    string `json:"sum"` // over the bytes of the file, with nothing between these quotes
	About  string `json:"about"`

	Code      string       `json:"code"`
	Number    int          `json:"number"`              // in its lineage, from 1
	Continues *continuesV2 `json:"continues,omitempty"` // left out for a first plan
	Job       string       `json:"job"`                 // from the plan's folder, with slashes
	WhatIf    []string     `json:"what_if,omitempty"`
	Changes   *changesV2   `json:"changes,omitempty"`
	Sources   []sourceV2   `json:"sources,omitempty"`
	Rack      string       `json:"rack,omitempty"` // from the plan's folder, with slashes
	OnRack    []string     `json:"on_rack,omitempty"`
	Begun     []string     `json:"begun,omitempty"`
	Made      []madeV2     `json:"made,omitempty"`
	Marks     int          `json:"marks"`

	Parts []partV2  `json:"parts,omitempty"`
	Stock []stockV2 `json:"stock,omitempty"`
	Asked jobV2     `json:"asked"`

	Bill      []blankV2    `json:"bill,omitempty"`
	Buy       []purchaseV2 `json:"buy,omitempty"`
	AtSeller  []divisionV2 `json:"at_seller,omitempty"`
	Layouts   []layoutV2   `json:"layouts,omitempty"`
	Offcuts   []offcutV2   `json:"offcuts,omitempty"`
	Unplaced  []unplacedV2 `json:"unplaced,omitempty"`
	Estimates []estimateV2 `json:"estimates,omitempty"`
	Cost      int64        `json:"cost"`
	Bound     int64        `json:"bound"`
	Unpriced  []unpricedV2 `json:"unpriced,omitempty"`
	Seconds   float64      `json:"seconds"`
	Totals    totalsV2     `json:"totals"`
	Cover     coverV2      `json:"cover"`
}

// continuesV2 lists the codes of the plans before, oldest first. Folder is the folder of the
// last, from the plan's own, with slashes.
type continuesV2 struct {
	Codes  []string `json:"codes,omitempty"`
	Folder string   `json:"folder,omitempty"`
}

type changesV2 struct {
	Without     []string `json:"without,omitempty"`
	Spare       int      `json:"spare,omitempty"`
	Counts      []string `json:"counts,omitempty"`
	Thicknesses []string `json:"thicknesses,omitempty"`
	Smaller     []string `json:"smaller,omitempty"`
	Added       []string `json:"added,omitempty"`
	Sizes       []string `json:"sizes,omitempty"`
	Kerf        string   `json:"kerf,omitempty"`
}

// sourceV2 is a file of the job, the job file first. Its name begins at the job's folder.
type sourceV2 struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

type madeV2 struct {
	blankV2
	From   *stockV2 `json:"from,omitempty"`
	Turned bool     `json:"turned,omitempty"`
	Known  bool     `json:"known,omitempty"`
}

type partV2 struct {
	Name      string         `json:"name"`
	Material  string         `json:"material"`
	Length    int64          `json:"length"`
	Width     int64          `json:"width"`
	Thickness int64          `json:"thickness"`
	Count     int            `json:"count"`
	Grain     string         `json:"grain"`
	Allowance allowanceV2    `json:"allowance"`
	Resaw     bool           `json:"resaw,omitempty"`
	Alone     bool           `json:"alone,omitempty"`
	DryFit    bool           `json:"dry_fit,omitempty"`
	From      string         `json:"from,omitempty"`
	How       []derivationV2 `json:"how,omitempty"`
	Note      string         `json:"note,omitempty"`
}

type allowanceV2 struct {
	Edge   int64 `json:"edge,omitempty"`
	Face   int64 `json:"face,omitempty"`
	End    int64 `json:"end,omitempty"`
	Miter  int64 `json:"miter,omitempty"`
	Edges  int   `json:"edges,omitempty"`
	Faces  int   `json:"faces,omitempty"`
	Ends   int   `json:"ends,omitempty"`
	Miters int   `json:"miters,omitempty"`
}

type derivationV2 struct {
	Dimension string   `json:"dimension"`
	Sum       []termV2 `json:"sum,omitempty"`
}

type termV2 struct {
	Times int    `json:"times"`
	Value int64  `json:"value"`
	Over  int    `json:"over,omitempty"`
	Label string `json:"label,omitempty"`
}

type stockV2 struct {
	Name      string     `json:"name"`
	Kind      string     `json:"kind"`
	Material  string     `json:"material"`
	Length    int64      `json:"length"`
	Width     int64      `json:"width"`
	Thickness int64      `json:"thickness"`
	Grain     string     `json:"grain"`
	Trim      int64      `json:"trim,omitempty"`
	Seller    string     `json:"seller,omitempty"`
	Price     int64      `json:"price,omitempty"`
	Count     int        `json:"count,omitempty"`
	OnHand    bool       `json:"on_hand,omitempty"`
	Measure   *measureV2 `json:"measure,omitempty"`
	From      string     `json:"from,omitempty"`
	Sawn      *trimsV2   `json:"sawn,omitempty"`
	Next      string     `json:"next_cut,omitempty"`
	Section   *sectionV2 `json:"section,omitempty"`
}

type measureV2 struct {
	Thickness int64 `json:"thickness"`
	Width     int64 `json:"width"`
	Surface   bool  `json:"surface,omitempty"`
}

type trimsV2 struct {
	NearEnd  int64 `json:"near_end"`
	FarEnd   int64 `json:"far_end"`
	NearEdge int64 `json:"near_edge"`
	FarEdge  int64 `json:"far_edge"`
}

type sectionV2 struct {
	From  int64 `json:"from"`
	Board int64 `json:"board"`
}

// jobV2 is the job that was planned; for a rest, the part of it that was left.
type jobV2 struct {
	Title     string            `json:"title"`
	Units     string            `json:"units"`
	Saw       sawV2             `json:"saw"`
	Shortest  int64             `json:"shortest"`
	Offcut    [2]int64          `json:"offcut"` // length, width
	Tax       int64             `json:"tax,omitempty"`
	Worth     int64             `json:"worth,omitempty"`
	Densities map[string]int    `json:"densities,omitempty"`
	Transport *transportV2      `json:"transport,omitempty"`
	Stock     []int             `json:"stock,omitempty"`
	Rough     []roughV2         `json:"rough,omitempty"`
	Parts     []int             `json:"parts,omitempty"`
	Kinds     map[string]string `json:"kinds,omitempty"`
}

type sawV2 struct {
	Kerf             int64  `json:"kerf"`
	ResawKerf        int64  `json:"resaw_kerf"`
	RipCapacity      int64  `json:"rip_capacity,omitempty"`
	CrosscutCapacity int64  `json:"crosscut_capacity,omitempty"`
	NarrowestRip     int64  `json:"narrowest_rip,omitempty"`
	Stages           int    `json:"stages,omitempty"`
	FirstCut         string `json:"first_cut"`
	BoardFirstCut    string `json:"board_first_cut"`
}

type transportV2 struct {
	Longest      int64 `json:"longest,omitempty"`
	Widest       int64 `json:"widest,omitempty"`
	Heaviest     int64 `json:"heaviest,omitempty"` // grams
	Cuts         int   `json:"cuts,omitempty"`
	CutPrice     int64 `json:"cut_price,omitempty"`
	CutKerf      int64 `json:"cut_kerf,omitempty"`
	CutTolerance int64 `json:"cut_tolerance,omitempty"`
}

type roughV2 struct {
	Material string  `json:"material"`
	Quarter  string  `json:"quarter"`
	Grade    string  `json:"grade"`
	Price    int64   `json:"price"`
	Yield    yieldV2 `json:"yield"`
}

// yieldV2 is a part and a whole; both are 0 if no yield is given.
type yieldV2 [2]int64

type blankV2 struct {
	Part      int            `json:"part"`
	Mark      string         `json:"mark"`
	Turnable  bool           `json:"turnable,omitempty"`
	Length    int64          `json:"length"`
	Width     int64          `json:"width"`
	Thickness int64          `json:"thickness"`
	Count     int            `json:"count"`
	Gang      int            `json:"gang"`
	Layers    int            `json:"layers"`
	Spare     int            `json:"spare,omitempty"`
	How       []derivationV2 `json:"how,omitempty"`
	ResawKerf int64          `json:"resaw_kerf,omitempty"`
}

type purchaseV2 struct {
	Stock int   `json:"stock"`
	Count int   `json:"count"`
	Cost  int64 `json:"cost"`
}

type divisionV2 struct {
	Stock  int     `json:"stock"`
	Count  int     `json:"count"`
	Cut    string  `json:"cut"`
	Pieces []int64 `json:"pieces,omitempty"`
	Kerf   int64   `json:"kerf"`
	Cost   int64   `json:"cost"`
}

// layoutV2 is a layout with its cuts as printed.
type layoutV2 struct {
	Stock  int      `json:"stock"`
	Repeat int      `json:"repeat"`
	Root   nodeV2   `json:"root"`
	Steps  []stepV2 `json:"steps,omitempty"`
}

type nodeV2 struct {
	X        int64    `json:"x"`
	Y        int64    `json:"y"`
	Length   int64    `json:"length"`
	Width    int64    `json:"width"`
	Use      string   `json:"use"`
	Cut      string   `json:"cut,omitempty"`      // of a split
	Children []nodeV2 `json:"children,omitempty"` // of a split
	Blank    *int     `json:"blank,omitempty"`    // of a part: its number in the bill
	Turned   bool     `json:"turned,omitempty"`   // of a part
}

// stepV2 is a cut. Piece, off and left are a length and a width each.
type stepV2 struct {
	Number  int      `json:"number"` // as printed, from 1 on without a gap
	Level   int      `json:"level"`
	InHand  int      `json:"in_hand"`
	Rest    bool     `json:"rest,omitempty"`
	Cut     string   `json:"cut"`
	Guide   string   `json:"guide"`
	Setting int64    `json:"setting"`
	Mark    int64    `json:"mark"`
	Piece   [2]int64 `json:"piece"`
	Off     [2]int64 `json:"off"`
	Left    [2]int64 `json:"left"`
	Trim    bool     `json:"trim,omitempty"`
	OffAt   []int    `json:"off_at,omitempty"`  // the way to the piece that comes off; trim has none
	LeftAt  []int    `json:"left_at,omitempty"` // the way to the piece that remains, if it is cut no further this way
	X       int64    `json:"x"`
	Y       int64    `json:"y"`
	Run     int64    `json:"run"`
}

// offcutV2 is a leftover that is kept. Its copies are numbered from first on.
type offcutV2 struct {
	Layout int   `json:"layout"`
	At     []int `json:"at,omitempty"`
	First  int   `json:"first"`
	Count  int   `json:"count"`
}

type unplacedV2 struct {
	Blank  int    `json:"blank"`
	Count  int    `json:"count"`
	Reason string `json:"reason"`
}

type estimateV2 struct {
	Rough      roughV2    `json:"rough"`
	Net        int64      `json:"net"` // hundredths of a board foot
	Least      int        `json:"least"`
	Usual      int        `json:"usual"`
	LeastYield yieldV2    `json:"least_yield"`
	UsualYield yieldV2    `json:"usual_yield"`
	Longest    int64      `json:"longest"`
	Widest     int64      `json:"widest"`
	Blanks     []wantedV2 `json:"blanks,omitempty"`
}

type wantedV2 struct {
	Blank int `json:"blank"`
	Count int `json:"count"`
}

type unpricedV2 struct {
	Stock   []int `json:"stock,omitempty"`
	OneSize bool  `json:"one_size,omitempty"`
	Area    int64 `json:"area"`
	Bound   int64 `json:"bound"`
}

type totalsV2 struct {
	All    sharesV2 `json:"all"`
	Sheets sharesV2 `json:"sheets"`
	Boards sharesV2 `json:"boards"`
}

type sharesV2 struct {
	Yield  float64 `json:"yield"`
	Offcut float64 `json:"offcut"`
	Waste  float64 `json:"waste"`
}

type coverV2 struct {
	Parts     int        `json:"parts"`
	Covered   int        `json:"covered"`
	Uncovered []wantedV2 `json:"uncovered,omitempty"`
	Offcuts   bool       `json:"offcuts,omitempty"`
	Rack      bool       `json:"rack,omitempty"`
}
