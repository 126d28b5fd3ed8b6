package report

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/paper"
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
	atTheSaw = block{"At the saw, always", []string{
		"Keep the blade guard on for every through cut.",                                                             // 29 CFR 1910.213(c)(1), from memory
		"Use a riving knife or spreader in line with the blade whenever ripping.",                                    // 29 CFR 1910.213(c)(2), from memory
		"Fit anti-kickback fingers for ripping where the saw provides them.",                                         // 29 CFR 1910.213(c)(3), from memory
		"Stand to one side of the blade line; a pinched board can be thrown back hard.",                              // common practice, no source
		"Rip only stock with a straight edge on the fence and a flat face on the table.",                             // common practice, no source
		"Never crosscut freehand; use a miter gauge, sled or stop.",                                                  // common practice, no source
		"Never trap an offcut between blade and fence: set a stop block well before the blade.",                      // common practice, no source
		"Stop the machine and disconnect it before changing blades or clearing a jam.",                               // 29 CFR 1910.213(b)(3)
		"Wear eye and hearing protection; no gloves, loose cuffs or rings near rotating cutters.",                    // common practice, no source
		"The plan counts on the kerf it states: measure a test cut of your own blade before the first piece.",        // common practice, no source
		"Collect dust at the source and wear a rated respirator: wood dust can cause cancer of the nose and asthma.", // IARC Monographs 62 and 100C, from memory
	}}
	withSheets = block{"Sheets", []string{
		"Support full sheets on the infeed and outfeed before starting the cut.",                        // common practice, no source
		"Break large sheets down with a guided saw on a full support rather than alone on a small saw.", // common practice, no source
	}}
	withBoards = block{"Boards", []string{
		"Support long boards on the infeed and outfeed before starting the cut.", // common practice, no source
		"Check reclaimed wood for metal before cutting.",                         // common practice, no source
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
)

// cautionPage tells what applies to the plan.
func cautionPage(b document, p *cutplan.Plan, o Options) {
	if len(p.Layouts) == 0 {
		return
	}
	b.Page("cautions")
	b.Heading(cautionsHeading)
	for _, block := range blocks(p, o) {
		b.Subheading(block.heading)
		b.Items(block.cautions)
	}
	b.Paragraph(deferral)
}

const cautionsHeading = "Cautions"

// paperCautions is the same in two columns, on half a page.
func paperCautions(b *paper.Book, p *cutplan.Plan, o Options) {
	if len(p.Layouts) == 0 {
		return
	}
	b.Page("cautions")
	b.Heading(cautionsHeading)
	var notes []paper.Note
	for _, block := range blocks(p, o) {
		notes = append(notes, paper.Note{Heading: block.heading, Items: block.cautions})
	}
	b.Notes(notes)
	b.Paragraph(deferral)
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

// blocks are the cautions of a plan: those that concern it first, then those of its
// case, and last what holds at every saw.
func blocks(p *cutplan.Plan, o Options) []block {
	var all []block
	if of := inThisPlan(p); of != nil {
		all = append(all, block{"In this plan", of})
	}
	if o.Case != nil && len(o.Case.Cautions) > 0 {
		of := block{heading: "The finished case"}
		for _, c := range o.Case.Cautions {
			if said := c.Subject + ": " + c.Text; !slices.Contains(of.cautions, said) {
				of.cautions = append(of.cautions, said)
			}
		}
		all = append(all, of)
	}
	for _, of := range []struct {
		stock.Kind
		block
	}{{stock.Sheet, withSheets}, {stock.Board, withBoards}} {
		if slices.ContainsFunc(p.Layouts, func(l cutplan.Layout) bool { return l.Stock.Kind == of.Kind }) {
			all = append(all, of.block)
		}
	}
	return append(all, atTheSaw)
}

// inThisPlan is what to mind at cuts that the plan has, with their layouts.
func inThisPlan(p *cutplan.Plan) []string {
	in := make([][]int, len(hazards)) // layouts, by hazard
	var breakdown []int
	milled := false
	for i, l := range p.Layouts {
		for _, s := range p.Steps(l) {
			for _, h := range hazardsOf(p, l, s) {
				in[h] = append(in[h], i+1)
			}
			if s.Breakdown() {
				breakdown = append(breakdown, i+1)
			}
		}
		for _, n := range l.Leaves() {
			milled = milled || n.Use == cutplan.Part && (n.Length < shortest(p) || p.Bill[n.Blank].Gang > 1)
		}
	}
	var said []string
	say := func(layouts []int, caution string) {
		if layouts = slices.Compact(layouts); layouts != nil {
			word := "Layout "
			if len(layouts) > 1 {
				word = "Layouts "
			}
			said = append(said, word+ranges(layouts)+": "+caution)
		}
	}
	say(breakdown, "BREAKDOWN cuts are beyond the saw. Use a guided saw on a full support.") // common practice, no source
	for _, h := range hazards {
		if advice := h.inPlan(); advice != "" {
			say(in[h], advice)
		}
	}
	if milled {
		said = append(said, "Do not plane or joint pieces shorter than the machine's manual allows.") // makers' manuals
	}
	if limits := limitsUnsaid(p.Job.Saw); limits != "" {
		said = append(said, limits)
	}
	return said
}
