package report

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// deferral ends every block of cautions.
const deferral = "Follow the machine's manual, local codes and licensed practice."

// block is a group of cautions for one kind of work.
type block struct {
	heading  string
	cautions []string
}

// The cautions, in our own words, with what they rest on.
var (
	atTheSaw = block{"At the saw", []string{
		"Keep the blade guard on for every through cut.",                                                      // 29 CFR 1910.213(c)(1), from memory
		"Use a riving knife or spreader in line with the blade whenever ripping.",                             // 29 CFR 1910.213(c)(2), from memory
		"Fit anti-kickback fingers for ripping where the saw provides them.",                                  // 29 CFR 1910.213(c)(3), from memory
		"Stand to one side of the blade line; a pinched board can be thrown back hard.",                       // common practice, no source
		"Rip only stock with a straight edge on the fence and a flat face on the table.",                      // common practice, no source
		"Never crosscut freehand; use a miter gauge, sled or stop.",                                           // common practice, no source
		"Never trap an offcut between blade and fence: set a stop block well before the blade.",               // common practice, no source
		"Stop the machine and disconnect it before changing blades or clearing a jam.",                        // 29 CFR 1910.213(b)(3)
		"Wear eye and hearing protection; no gloves, loose cuffs or rings near rotating cutters.",             // common practice, no source
		"The plan counts on the kerf it states: measure a test cut of your own blade before the first piece.", // common practice, no source
	}}
	withSheets = block{"Sheets", []string{
		"Support full sheets on the infeed and outfeed before starting the cut.",                            // common practice, no source
		"Break large sheets down with a guided saw on a full support rather than alone on a small saw.",     // common practice, no source
		"Score a veneered panel across its grain before the cut, or tape the line: the veneer chips there.", // common practice, no source
		fmt.Sprintf("Called large here are panels of %v m2 (16 sq ft) or more, and of %s (%s) or more if they were MDF.",
			largeArea, heavyWeight.PrintUnit(stock.Millimeters), heavyWeight.PrintUnit(stock.Inches)),
		"Get help or use a carrier for heavy sheets: a 4 x 8 ft sheet 3/4 in thick weighs some 27 kg (60 lb) in softwood plywood, 42 kg (94 lb) in MDF.", // area x thickness x density
	}}
	withBoards = block{"Boards", []string{
		"Support long boards on the infeed and outfeed before starting the cut.", // common practice, no source
		"Check reclaimed wood for metal before cutting.",                         // common practice, no source
	}}
	narrowRips = block{"Narrow rips in this plan", []string{
		"Use a push stick or block when the rip is narrow, here below 6 in (152 mm), or hands would come near the blade.", // narrowRip; 29 CFR 1910.213(s), from memory
		"Use feather boards or a jig when the normal guard cannot be used, such as for dadoes and rabbets.",               // Cal. Code Regs. title 8 s. 4296(a)
	}}
	shortPieces = block{"Short pieces in this plan", []string{
		"Do not rip a piece that is wider than it is long against the fence, or too short to control: cut it with a miter gauge, a sled or a guided saw.", // common practice, no source
		"Do not plane or joint pieces shorter than the machine's manual allows.",                                                                          // makers' manuals
	}}
	atThePlaner = []string{
		"Never plane or joint a piece shorter, narrower or thinner than the machine's manual allows; mill a gang in one piece and part it last.", // makers' manuals
		"Over a jointer move the work with push blocks, never with a hand above the cutter.",                                                     // common practice, no source
		"Rip and true narrow pieces with a push block and feather boards; part a gang against a stop that lets the piece come free.",             // common practice, no source
	}
	atTheResaw = []string{
		"A resaw cut is tall and the piece narrow: make it on a band saw, or with a jig and feather boards that hold the piece upright, and finish it with a push block.", // common practice, no source
		"Plane a piece thinner than some 6 mm (1/4 in) on a carrier board only.",                                                                                          // common practice, no source
	}
	dust = block{"Dust", []string{
		"Collect dust at the source and wear a rated respirator; wood dust can cause cancer of the nose and asthma.", // IARC Monographs 62 and 100C, from memory
	}}
)

// cautionPage prints what applies to the plan.
func cautionPage(b document, p *cutplan.Plan, o Options) {
	if len(p.Layouts) == 0 {
		return
	}
	b.Page("cautions")
	b.Heading("Cautions")
	for _, block := range blocks(p, o) {
		b.Subheading(block.heading)
		b.Items(block.cautions)
		b.Paragraph(deferral)
	}
}

// limitsUnsaid tells that no cut can be known to be beyond the saw.
func limitsUnsaid(saw stock.Saw) string {
	var keys []string
	if saw.RipCapacity == 0 {
		keys = append(keys, "rip_capacity")
	}
	if saw.CrosscutCapacity == 0 {
		keys = append(keys, "crosscut_capacity")
	}
	if keys == nil {
		return ""
	}
	return fmt.Sprintf("The job gives no %s: look whether your saw reaches, for no cut beyond it is marked.", strings.Join(keys, " and "))
}

func blocks(p *cutplan.Plan, o Options) []block {
	saw := atTheSaw
	if said := limitsUnsaid(p.Job.Saw); said != "" {
		saw.cautions = append(slices.Clone(saw.cautions), said)
	}
	all := []block{saw}
	var sheets, boards, narrow, short bool
	for _, l := range p.Layouts {
		sheets = sheets || l.Stock.Kind == stock.Sheet
		boards = boards || l.Stock.Kind == stock.Board
		for _, s := range p.Steps(l) {
			of := hazardsOf(p, l, s)
			narrow = narrow || slices.Contains(of, narrowStrip)
			short = short || slices.Contains(of, shortOnFence) || slices.Contains(of, acrossFence)
		}
		for _, n := range l.Leaves() {
			if n.Use == cutplan.Part {
				b := p.Bill[n.Blank]
				short = short || n.Length < shortest(p) || b.Gang > 1
			}
		}
	}
	for _, b := range []struct {
		applies bool
		block
	}{{sheets, withSheets}, {boards, withBoards}, {narrow, narrowRips}, {short, shortPieces}, {true, dust}} {
		if b.applies {
			all = append(all, b.block)
		}
	}
	if o.Case != nil && len(o.Case.Cautions) > 0 {
		of := block{heading: "The finished case"}
		for _, c := range o.Case.Cautions {
			of.cautions = append(of.cautions, c.Subject+": "+c.Text)
		}
		all = append(all, of)
	}
	return all
}
