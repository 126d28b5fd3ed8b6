package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// view is what a diagram needs to know of layout i.
func view(p *cutplan.Plan, i int, names offcutNames, lie lies, r stock.Ruler) diagram.View {
	l := p.Layouts[i]
	return diagram.View{Layout: l, Steps: p.Steps(l), Rows: p.StepRows(i), Kerf: p.Job.Saw.Kerf, Bill: p.Bill, Ruler: r, Lie: lie.of(i),
		Name: func(n *cutplan.Node) string { return names.said(located{i, n}) }}
}

// boardViews are the views of all boards that are cut.
func boardViews(p *cutplan.Plan, names offcutNames, lie lies, r stock.Ruler) []diagram.View {
	var all []diagram.View
	for i, l := range p.Layouts {
		if l.Stock.Kind == stock.Board && !staysWhole(l) {
			all = append(all, view(p, i, names, lie, r))
		}
	}
	return all
}

// A diagram may take this much of a page's height at least and at most; between
// the two the steps below it decide.
const (
	leastDiagram = 0.4
	mostDiagram  = 0.75
)

// legibleDiagram is what the diagram of a whole sheet takes at least, in mm: a sheet of
// 2,440 x 1,220 at 1:20.
const legibleDiagram = 60.0

// diagramRoom is how high the diagram of a sheet may be so that its steps fit
// below it, in mm; other text around it takes so much.
func diagramRoom(b *paper.Book, steps work, around float64) float64 {
	left := b.Height() - around - steps.least(b)
	return max(min(max(left, leastDiagram*b.Height()), mostDiagram*b.Height()), legibleDiagram)
}

// layoutPages draws each sheet on a page of its own, boards several to a page, and tells
// last of what stays whole.
func layoutPages(b *paper.Book, p *cutplan.Plan, names offcutNames, o Options) {
	r, lie := o.Ruler, liesOf(p, o.Case)
	afterBoard, signsTold, told := false, false, false
	for i, l := range p.Layouts {
		if staysWhole(l) {
			continue
		}
		board := l.Stock.Kind == stock.Board
		v := view(p, i, names, lie, r)
		steps := workOf(p, i, names, r)
		mind, later := heed(p, l, v.Steps, r), afterwards(p, l, r)
		if !told && !board {
			later = append(later, aboutLines(o.Case))
			told = true
		}
		short := func(picture diagram.Picture) paper.Table { return key(p, picture.Short, r) }
		picture, around := fit(b, v, steps, slices.Concat(mind, later), short, board)
		parts := short(picture)
		m, mapped := boardMap(p, i, r)
		whole := m.Draw(b.Width())
		switch {
		case board && afterBoard:
			need := around - headingRoom + boardRoom + steps.least(b)
			if mapped {
				need += headingRoom + whole.Height
			}
			b.Space(4)
			b.Keep(need)
		case board:
			b.Page("boards")
			if !signsTold {
				about := aboutMarks
				if !told {
					about += aboutFaces(o.Case)
				}
				b.Paragraph(about)
				b.Picture(diagram.BoardSigns(boardViews(p, names, lie, r), b.Width()))
				signsTold, told = true, true
			}
		default:
			b.Page(fmt.Sprintf("layout %d of %d", i+1, len(p.Layouts)))
		}
		room := 0.0
		if !board {
			room = b.Height() - around
		}
		stepsHigh, write := steps.fit(b, room)
		if mapped {
			b.Heading(mapName(l.Stock))
			b.Picture(whole)
			b.Paragraph(aboutMap)
		}
		afterBoard = board
		b.Heading(layoutHeading(l, i, r))
		b.Paragraph(layoutFacts(p, l, r))
		say(b, later)
		if board {
			for _, row := range picture.Rows {
				b.Picture(row)
			}
		} else {
			b.Picture(picture.Drawing)
			b.Space(2)
		}
		notes(b, picture, v.Steps)
		b.Table(parts)
		if over := stepsHigh + heightOf(b, mind) - b.Room(); over > 0 {
			b.Repeat(again(b, v, picture, over))
		}
		if len(v.Steps) == 0 {
			b.Paragraph("No cut is needed.")
		}
		if b.Room() < stepsHigh+heightOf(b, mind) {
			say(b, mind) // what is said behind the last step could stand alone on a page
			write()
		} else {
			write()
			say(b, mind)
		}
		b.Repeat(drawing.Drawing{})
	}
	b.Lie(false)
	untouched(b, p, names, r, afterBoard)
}

// untouched tells of the stock that stays whole, on a page of its own unless it goes on
// with one.
func untouched(b *paper.Book, p *cutplan.Plan, names offcutNames, r stock.Ruler, goesOn bool) {
	for i, l := range p.Layouts {
		if !staysWhole(l) {
			continue
		}
		if !goesOn {
			b.Page("kept whole")
			goesOn = true
		}
		b.Space(4)
		b.Need(headingRoom)
		b.Heading(layoutHeading(l, i, r))
		b.Paragraph(layoutFacts(p, l, r))
		b.Paragraph(keptWhole(names, i, l))
	}
}

// leastRepeated and mostRepeated are shares of a page that a diagram takes where it is
// drawn once more: between the two the steps left decide.
const (
	leastRepeated = 0.28
	mostRepeated  = 0.4
)

// mostShrunk is how many times smaller a diagram may be where it is drawn once more.
const mostShrunk = 2.5

// again is a diagram once more, for the pages to which its steps run on by over, in mm:
// steps are of no use without it.
func again(b *paper.Book, v diagram.View, picture diagram.Picture, over float64) drawing.Drawing {
	most := min(max(b.Height()-over-lostAtTurn, leastRepeated*b.Height()), mostRepeated*b.Height())
	if picture.Height > most && v.Layout.Stock.Kind == stock.Sheet {
		first := picture.Scale
		if picture = diagram.New(v, b.Width(), most); float64(picture.Scale) > mostShrunk*float64(first) {
			picture = diagram.New(v, b.Width(), mostRepeated*b.Height())
		}
		if float64(picture.Scale) > mostShrunk*float64(first) {
			return drawing.Drawing{} // nobody could read it
		}
	}
	if picture.Height > mostRepeated*b.Height() {
		return drawing.Drawing{}
	}
	return picture.Drawing
}

// staysWhole reports whether nothing comes of a piece of stock but itself.
func staysWhole(l cutplan.Layout) bool {
	return l.Root.Use == cutplan.Offcut || l.Root.Use == cutplan.Waste
}

func say(b *paper.Book, paragraphs []string) {
	for _, said := range paragraphs {
		b.Paragraph(said)
	}
}

func heightOf(b *paper.Book, paragraphs []string) float64 {
	high := 0.0
	for _, said := range paragraphs {
		high += b.ParagraphHeight(said)
	}
	return high
}

// heed lists what to mind at the cuts of a layout.
func heed(p *cutplan.Plan, l cutplan.Layout, steps []cutplan.Step, r stock.Ruler) []string {
	mind := stepCautions(p, l, steps, r)
	if l.Stock.Kind == stock.Sheet && len(steps) > 0 {
		mind = append([]string{pencil}, mind...) // of boards it is said once, with their marks
	}
	return mind
}

// afterwards lists what is done to the parts of a layout once they are cut, and
// which are cut later.
func afterwards(p *cutplan.Plan, l cutplan.Layout, r stock.Ruler) []string {
	return slices.DeleteFunc([]string{planing(p, l, r), truing(p, l, r), cutLater(p, l)},
		func(said string) bool { return said == "" })
}

// aboutLines says how the lines of a cutting diagram are meant.
func aboutLines(c *casework.Case) string {
	return "The blade runs on the waste side of each line. " + aboutStop + aboutFaces(c)
}

// aboutStop says where a stop is: common practice, no source.
const aboutStop = "A stop is a block on the sled or miter gauge."

// aboutFaces says which face of a part a diagram shows; empty where parts have no inside.
func aboutFaces(c *casework.Case) string {
	if c == nil {
		return ""
	}
	return " Parts show their good face: the outside, if their label is on the inside."
}

// aboutMarks says how the figures below a board are meant.
const aboutMarks = "Marks are measured from the squared reference end of the board or piece in hand, all from that one end; the blade cuts beyond the mark, on the side of the tick. The stop, a block on the miter gauge, is set to the length of the piece that comes off. Fences are set from the reference edge, the lower one, which must be straight. " + pencil

// pencil is what keeps the pieces apart that wait on the bench.
const pencil = "Pencil layout and cut number, such as 2/14, on every piece as it comes off, and the mark on every part."

// headingRoom is what stands above a diagram, with a note below it, in mm.
const headingRoom = 30.0

// boardRoom is what stands above a board, in mm. Its notes are rare.
const boardRoom = 18.0

// fitted gives the steps of a sheet the largest type at which they fit below the
// diagram: they are read from further away than the rest. Steps that do not fit
// anyhow run on at the usual size.
func fitted(b *paper.Book, steps paper.Table, room float64) paper.Table {
	for _, size := range []float64{12, 11, 10, 9.5, 9, 8.5} {
		t := sized(steps, size)
		if b.TableHeight(t) <= room && (size <= 9.5 || b.Natural(t)) {
			return t
		}
	}
	return steps
}

func layoutHeading(l cutplan.Layout, i int, r stock.Ruler) string {
	heading := layoutName(l, i, r)
	if l.Repeat > 1 {
		heading += fmt.Sprintf("  - cut %d like this", l.Repeat)
	}
	return heading
}

func layoutFacts(p *cutplan.Plan, l cutplan.Layout, r stock.Ruler) string {
	s := l.Stock
	facts := []string{
		s.Material,
		s.Kind.String() + " " + stockSize(s, r) + " " + r.Units.String(),
		"kerf " + r.Print(p.Job.Saw.Kerf),
	}
	switch trim := s.Trims().Least(); {
	case trim > 0:
		facts = append(facts, "trim "+r.Print(trim)+" "+trimmedOff(s, r)+", kerf included")
	case l.Stock.IsSection():
	case s.Kind == stock.Sheet:
		facts = append(facts, "no trim: the reference corner must be square")
	default:
		facts = append(facts, "no trim: the reference end must be square")
	}
	if s.OnHand {
		facts = append(facts, "on hand")
	}
	if s.Kind == stock.Sheet {
		facts = append(facts, "good face up at the saw") // a table saw chips the lower face: common practice, no source
	}
	if s.IsSection() {
		facts = append(facts, onMap)
	}
	return strings.Join(facts, ", ")
}

// planing says how thick the parts of a board are in the end, where that is less
// than the board: "to be planed: D, E to 32; F to 20". It is empty where nothing
// is to be planed.
func planing(p *cutplan.Plan, l cutplan.Layout, r stock.Ruler) string {
	marks := map[stock.Length][]string{}
	var thicknesses []stock.Length
	for _, n := range l.Leaves() {
		if n.Use != cutplan.Part {
			continue
		}
		b := p.Bill[n.Blank]
		t := b.Part.Thickness
		if b.Layers > 1 {
			t = b.Thickness // it is resawn then
		}
		if t >= l.Stock.Thickness || slices.Contains(marks[t], b.Mark) {
			continue
		}
		if marks[t] == nil {
			thicknesses = append(thicknesses, t)
		}
		marks[t] = append(marks[t], b.Mark)
	}
	if thicknesses == nil {
		return ""
	}
	slices.Sort(thicknesses)
	slices.Reverse(thicknesses)
	var to []string
	for _, t := range thicknesses {
		to = append(to, strings.Join(marks[t], ", ")+" to "+r.Print(t))
	}
	return "to be planed: " + strings.Join(to, "; ")
}

// cutLater names the cuts of a layout that wait until the rest was put together dry and
// measured, with their parts; empty where there are none. They divide pieces that hold no
// other parts.
func cutLater(p *cutplan.Plan, l cutplan.Layout) string {
	var marks []string
	others := false
	for _, n := range l.Leaves() {
		if n.Use != cutplan.Part {
			continue
		}
		b := p.Bill[n.Blank]
		others = others || !b.Part.DryFit
		if b.Part.DryFit && !slices.Contains(marks, b.Mark) {
			marks = append(marks, b.Mark)
		}
	}
	if marks == nil {
		return ""
	}
	if !others {
		return "After the dry fit: all cuts of this layout."
	}
	said := "Best cut to size after the dry fit: " + strings.Join(marks, ", ") + "."
	if wait := waitingCuts(p, l); wait != nil {
		said = cutsOf(wait) + " wait until after the dry fit: they cut " + strings.Join(marks, ", ") + " to size."
	}
	return said
}

// waitingCuts lists the steps that divide pieces of which all parts are cut after the dry fit.
func waitingCuts(p *cutplan.Plan, l cutplan.Layout) []cutplan.Step {
	steps := p.Steps(l)
	type held struct{ late, now bool }
	holds := make(map[int]held) // what the piece in hand of a step holds, by its number
	parts := func(n *cutplan.Node) (h held) {
		if n == nil {
			return h
		}
		for _, leaf := range n.Leaves() {
			if leaf.Use == cutplan.Part {
				h.late = h.late || p.Bill[leaf.Blank].Part.DryFit
				h.now = h.now || !p.Bill[leaf.Blank].Part.DryFit
			}
		}
		return h
	}
	for i := len(steps) - 1; i >= 0; i-- {
		s := steps[i]
		off, left := parts(s.OffNode), parts(s.LeftNode)
		h := held{off.late || left.late, off.now || left.now}
		for _, next := range steps[i+1:] {
			if next.InHand == s.Number {
				h.late, h.now = h.late || holds[next.Number].late, h.now || holds[next.Number].now
			}
		}
		holds[s.Number] = h
	}
	return slices.DeleteFunc(steps, func(s cutplan.Step) bool { return s.Trim || !holds[s.Number].late || holds[s.Number].now })
}

// aboutBreakdown says how cuts beyond the saw are made. Which face lies up: woodworkingtips.com,
// etips 010810 and 010817; the splinter guard is common practice, no source.
const aboutBreakdown = "BREAKDOWN: beyond the saw's fence or crosscut. Use a guided saw on a full support, along the mark, measured from the reference edge or end of the piece in hand; the blade cuts beyond it. Saw off: kerf included. Good face down, the drawing then mirrored, or up under a splinter guard."

// notes says what a reader of the diagram must know beyond it.
func notes(b document, picture diagram.Picture, steps []cutplan.Step) {
	for _, s := range steps {
		if s.Breakdown() {
			b.Strong(aboutBreakdown)
			break
		}
	}
	if picture.Unnamed > 0 {
		b.Strong(fmt.Sprintf("%d narrow pieces or cuts have no label in the diagram: find them in the steps.", picture.Unnamed))
	}
}

// key tells the parts whose labels had to be shortened.
func key(p *cutplan.Plan, blanks []int, r stock.Ruler) paper.Table {
	t := paper.Table{Columns: []paper.Column{
		{Head: "mark", Face: drawing.Bold}, {Head: "part", Wrap: true}, {Head: "cut to"}, {Head: "finished"},
	}}
	for _, i := range blanks {
		b := p.Bill[i]
		t.Rows = append(t.Rows, []string{b.Mark, b.Name(), r.Size(b.Length, b.Width), r.Size(b.Part.Length, b.Part.Width)})
	}
	return t
}

// LayoutSVGs draws each layout as a picture of its own, 240 mm wide.
func LayoutSVGs(p *cutplan.Plan, o Options) [][]byte {
	const width, height = 240.0, 200.0
	names, lie := namesOf(p, Identity(p, o)), liesOf(p, o.Case)
	all := make([][]byte, len(p.Layouts))
	for i, l := range p.Layouts {
		picture := diagram.New(view(p, i, names, lie, o.Ruler), width, height)
		all[i] = picture.SVG(captionStart(p, names.code, o) + ", " + layoutName(l, i, o.Ruler))
	}
	return all
}

func layoutName(l cutplan.Layout, i int, r stock.Ruler) string {
	return "Layout " + strconv.Itoa(i+1) + ": " + stockName(l.Stock, r)
}

// keptWhole is what to do with stock that no cut is made in.
func keptWhole(names offcutNames, i int, l cutplan.Layout) string {
	if l.Root.Use == cutplan.Waste {
		return "No cut is needed, and it is too small to keep."
	}
	return "No cut is needed: keep it, and write " + names.said(located{i, &l.Root}) + " on it."
}
