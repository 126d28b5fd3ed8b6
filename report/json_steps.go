package report

import "sawbill/nest/cutplan"

// The order of work in the plan file: the steps of each layout, and the setups.

type stepFile struct {
	_      struct{}      `about:"one cut. The piece in hand is named by the cut that freed it and by its side of that cut."`
	Number int           `json:"number" about:"as printed, from 1 within its layout; sawbill progress --cut LAYOUT:NUMBER reports it"`
	Round  int           `json:"round" about:"how often the piece was turned before: 0 for trim, 1 for the stock itself"`
	InHand int           `json:"in_hand" about:"number of the cut that freed the piece in hand; 0 is the stock as it came"`
	Rest   bool          `json:"rest" about:"the piece is what that cut left, not what came off"`
	Piece  rectangleFile `json:"piece" about:"size of the piece in hand"`
	sawnFile
	Mark length    `json:"mark" about:"of the line, from the reference edge or end of the piece before all cuts in this direction; 0 for trim"`
	Off  freedFile `json:"off" about:"the piece on the guided side"`
	Left freedFile `json:"left,omitempty" about:"the piece on the other side of the kerf, if more than scrap of the trim"`
}

// sawnFile is how the saw is set, for one cut or several.
type sawnFile struct {
	Cut     string `json:"cut" words:"rip|crosscut" about:"a rip divides the width, a crosscut the length"`
	Guide   string `json:"guide" words:"fence|stop|mark" about:"mark: beyond the saw, cut by a guided saw along a line"`
	Trim    bool   `json:"trim" about:"it squares an edge or end of the stock"`
	Waste   string `json:"waste" words:"near|far" about:"side of the line on which the kerf lies; near is the side of the reference edge or end. The other side is guided."`
	Setting length `json:"setting" about:"from the guided side of the piece to the line"`
	SawOff  bool   `json:"saw_off" about:"the setting is instead what falls off the waste side, kerf included"`
}

func sawnOf(r cutplan.Row) sawnFile {
	f := sawnFile{Cut: r.Cut.String(), Guide: r.Guide.String(), Trim: r.Trim, Waste: "far", Setting: mm(r.Setting), SawOff: r.SawOff}
	if r.Waste == cutplan.Near {
		f.Waste = "near"
	}
	return f
}

// freedFile is a piece that a cut frees: as in the layout's tree, a split without children.
type freedFile interface{ freed() }

func (furtherFile) freed()    {}
func (partNodeFile) freed()   {}
func (offcutNodeFile) freed() {}
func (wasteNodeFile) freed()  {}

type furtherFile struct {
	_ struct{} `about:"a piece that is cut further"`
	rectangleFile
	Use string `json:"use" words:"split" about:""`
}

// stepsOf lists the cuts of layout i.
func stepsOf(p *cutplan.Plan, i int, names offcutNames) []stepFile {
	all := []stepFile{}
	freed := func(f cutplan.Freed) freedFile {
		if f.Size == (cutplan.Size{}) {
			return nil
		}
		if f.Node != nil && f.Node.Use != cutplan.Split {
			return leafOf(p, i, *f.Node, names).(freedFile)
		}
		return furtherFile{rectangleFile: rectangleFile{mm(f.Size.Length), mm(f.Size.Width)}, Use: "split"}
	}
	for _, r := range p.StepRows(i) {
		for _, held := range r.Pieces {
			hand, rest, size := held.By, held.Rest, held.Size
			for _, c := range held.Cuts {
				all = append(all, stepFile{
					Number: c.Number, Round: r.Round, InHand: hand, Rest: rest, Piece: rectangleFile{mm(size.Length), mm(size.Width)},
					sawnFile: sawnOf(r), Mark: mm(c.Mark), Off: freed(c.Off), Left: freed(c.Left),
				})
				hand, rest, size = c.Number, true, c.Left.Size
			}
		}
	}
	return all
}

type gatheredFile struct {
	_         struct{}    `about:"the cuts of all layouts of one material and thickness once more, gathered so that fence and stop are set seldom"`
	Material  string      `json:"material" about:""`
	Thickness length      `json:"thickness" about:""`
	Kind      string      `json:"kind" words:"sheet|board" about:""`
	DryFit    bool        `json:"after_dry_fit" about:"cut when the rest was put together dry and measured"`
	Rows      []setupFile `json:"rows" about:"in an order in which they can be cut"`
}

type setupFile struct {
	_     struct{} `about:"cuts at one setting"`
	Round int      `json:"round" about:"as of the steps"`
	sawnFile
	Stays bool           `json:"stays" about:"fence or stop is at this setting already"`
	Count int            `json:"count" about:"cuts, each as often as its layout repeats"`
	Cuts  []setupCutFile `json:"cuts" about:"in order"`
}

type setupCutFile struct {
	Layout int `json:"layout" about:"number of the layout"`
	Number int `json:"number" about:"of the cut in it"`
}

func setupsOf(p *cutplan.Plan) []gatheredFile {
	all := []gatheredFile{}
	for _, g := range p.Setups() {
		f := gatheredFile{Material: g.Material, Thickness: mm(g.Thickness), Kind: g.Kind.String(), DryFit: g.Late}
		for _, r := range p.SetupRows(g) {
			row := setupFile{Round: r.Round, sawnFile: sawnOf(r), Stays: r.Stays, Count: r.Count}
			for _, held := range r.Pieces {
				for _, c := range held.Cuts {
					row.Cuts = append(row.Cuts, setupCutFile{held.Layout + 1, c.Number})
				}
			}
			f.Rows = append(f.Rows, row)
		}
		all = append(all, f)
	}
	return all
}
