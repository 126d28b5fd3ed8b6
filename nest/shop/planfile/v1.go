package planfile

// Version 1 of the file encoded the program's own structs, so its keys are their names and
// its enumerations are numbers. These copies stay as they are, whatever becomes of the
// structs. Lengths count 25 nm, prices cents.

const formatV1 = "sawbill kept plan 1"

type fileV1 struct {
	Format    string        `json:"format"`
	Sum       string        `json:"sum"`
	About     string        `json:"about"`
	Identity  string        `json:"identity"`
	Of        []string      `json:"of"`
	Made      []blankV1     `json:"made"`
	Marks     int           `json:"marks"`
	Rack      string        `json:"rack"`
	Begun     []string      `json:"begun"`
	OnRack    []string      `json:"on_rack"`
	Changes   changesV1     `json:"changes"`
	Sources   []sourceV1    `json:"sources"`
	Plan      planV1        `json:"plan"`
	Estimated []estimatedV1 `json:"estimated"`
}

type changesV1 struct {
	Without     []string
	Spare       int
	Counts      []string
	Thicknesses []string
	Smaller     []string
}

type sourceV1 struct{ Name, Text string }

// estimatedV1 is an estimate: which lumber of the job's files, and of which blanks.
type estimatedV1 struct {
	Rough  int
	Blanks []wantedV1
}

type wantedV1 struct {
	Blank int
	Count int
}

type planV1 struct {
	Job       jobV1
	Bill      []blankV1
	Buy       []purchaseV1
	AtSeller  []divisionV1
	Layouts   []layoutV1
	Unplaced  []unplacedV1
	Estimates []struct{} // always nothing: see estimatedV1
	Cost      int64
	Bound     int64
	Unpriced  []unpricedV1
	Seconds   float64
	Totals    totalsV1
	Cover     coverV1
}

type jobV1 struct {
	Title     string
	Units     int // millimetres, inches
	Saw       sawV1
	Shortest  int64
	Offcut    offcutV1
	Tax       int64
	Worth     int64
	Densities map[string]int
	Transport transportV1
	Stock     []stockV1
	Rough     []struct{} // always nothing: it is read from the job's files
	Parts     []partV1
	Kinds     map[string]int
}

type sawV1 struct {
	Kerf             int64
	ResawKerf        int64
	RipCapacity      int64
	CrosscutCapacity int64
	NarrowestRip     int64
	Stages           int
	FirstCut         int // any, rip, crosscut
	BoardFirstCut    int
}

type offcutV1 struct{ Length, Width int64 }

type transportV1 struct {
	Longest, Widest int64
	Heaviest        int64
	Cuts            int
	CutPrice        int64
	CutKerf         int64
	CutTolerance    int64
}

type stockV1 struct {
	Name                     string
	Kind                     int // sheet, board
	Material                 string
	Length, Width, Thickness int64
	Grain                    int // along the length, along the width, any
	Trim                     int64
	Seller                   string
	Price                    int64
	Count                    int
	OnHand                   bool
	Measure                  measureV1
	From                     string
	Sawn                     trimsV1
	Next                     int // as said, any, rip, crosscut
	Section                  sectionV1
}

type measureV1 struct {
	Thickness, Width int64
	Surface          bool
}

type trimsV1 struct {
	NearEnd, FarEnd, NearEdge, FarEdge int64
}

type sectionV1 struct {
	From  int64
	Board int64
}

type partV1 struct {
	Name                     string
	Material                 string
	Length, Width, Thickness int64
	Count                    int
	Grain                    int
	Allowance                allowanceV1
	Resaw                    bool
	Alone                    bool
	DryFit                   bool
	From                     string
	How                      []derivationV1
	Note                     string
}

type allowanceV1 struct {
	Edge, Face, End, Mitre     int64
	Edges, Faces, Ends, Mitres int
}

type derivationV1 struct {
	Dimension string
	Sum       []termV1
}

type termV1 struct {
	Times int
	Value int64
	Over  int
	Label string
}

type blankV1 struct {
	Part                     partV1
	Length, Width, Thickness int64
	Count                    int
	Gang                     int
	Layers                   int
	Spare                    int
	How                      []derivationV1
	ResawKerf                int64
	Mark                     string
	Turnable                 bool
}

type purchaseV1 struct {
	Stock stockV1
	Count int
	Cost  int64
}

type divisionV1 struct {
	Stock  stockV1
	Count  int
	Cut    int // rip, crosscut
	Pieces []int64
	Kerf   int64
	Cost   int64
}

type layoutV1 struct {
	Stock  stockV1
	Repeat int
	Root   nodeV1
}

type nodeV1 struct {
	X, Y          int64
	Length, Width int64
	Use           int // split, part, offcut, waste
	Cut           int // rip, crosscut
	Children      []nodeV1
	Blank         int
	Turned        bool
}

type unplacedV1 struct {
	Blank  int
	Count  int
	Reason string
}

type unpricedV1 struct {
	Stock       []stockV1
	OneSize     bool
	Area, Bound int64
}

type totalsV1 struct{ All, Sheets, Boards sharesV1 }

type sharesV1 struct{ Yield, Offcut, Waste float64 }

type coverV1 struct {
	Parts         int
	Covered       int
	Uncovered     []wantedV1
	Offcuts, Rack bool
}
