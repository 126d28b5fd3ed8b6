package job

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// fit checks that p can be cut from one of the offers, which are all of its
// material, with the machines of job, which has no stock yet. A thickness that
// was left out is the usual one, if there is but one.
func (r *reader) fit(p *wanted, of []offer, job stock.Job, usual []stock.Length) {
	kind := of[0].Kind
	for _, o := range of {
		job.Stock = append(job.Stock, o.Stock)
	}
	if p.Thickness == 0 {
		if kind == stock.Board || len(usual) > 1 {
			remedy := fmt.Sprintf("add thickness = %s, as the %ss of %s are", quoted(exactly(usual, r.ruler)), kind, p.Material)
			if p.From == "added" {
				remedy = fmt.Sprintf("write it behind the width: the %ss of %s are %s", kind, p.Material, strings.Join(exactly(usual, r.ruler), " or "))
			}
			r.fault(p.place, fault.New("thickness is missing", remedy))
			return
		}
		p.Thickness = usual[0]
	}
	if kind == stock.Sheet && p.given("face") && p.Allowance.Face > 0 {
		r.warn(p.where("face").of("face"), fault.New("the faces of a sheet are not planed", "it is left out of account"))
	}
	f := fitting{part: p, blank: p.Blank(kind), kind: kind, ruler: r.ruler, saw: job.Saw}
	for _, o := range of {
		if o.Serves(f.blank) {
			f.sources = append(f.sources, o.pieces()...)
		}
	}
	f.several = len(thicknesses(of)) > 1
	if len(f.sources) == 0 {
		r.fault(p.where("thickness"), f.thickness(thicknesses(of)))
		return
	}
	if key, found := f.tooLarge(); found.Found() {
		r.fault(p.where(key), found)
		return
	}
	if found := f.tooNarrow(); found.Found() {
		r.fault(p.where("width"), found)
	}
	r.warnOfMilling(f, job)
}

// warnOfMilling says what of the milling of a part is unsafe or comes to nothing.
func (r *reader) warnOfMilling(f fitting, job stock.Job) {
	if found := f.tooShortToMill(job); found.Found() {
		r.warn(f.part.where("length"), found)
	}
	if found := f.notResawn(job); found.Found() {
		r.warn(f.part.where("resaw").of("resaw"), found)
	}
}

// exactly writes lengths without rounding, for a rounded thickness, written
// back, would match no sheet.
func exactly(all []stock.Length, ruler stock.Ruler) []string {
	written := make([]string, len(all))
	for i, l := range all {
		written[i] = l.Decimal() + " mm"
		if ruler.Exact(l) {
			written[i] = ruler.PrintUnit(l)
		}
	}
	return written
}

// fitting is one part held against the stock that has its material and
// thickness.
type fitting struct {
	part    *wanted
	blank   stock.Blank
	kind    stock.Kind
	sources []stock.Stock
	several bool // the material comes in several thicknesses
	ruler   stock.Ruler
	saw     stock.Saw
}

// way is one way a blank may lie: what there is along it and across it.
type way struct {
	from          stock.Stock
	along, across stock.Length
	turned        bool
}

// ways lists all ways in which the grain lets the blank lie; with grain set
// aside, those in which it could.
func (f fitting) ways(grain stock.Grain) []way {
	var all []way
	for _, s := range f.sources {
		length, width := s.Usable()
		upright, turned := grain.Lies(s.Grain)
		if upright {
			all = append(all, way{s, length, width, false})
		}
		if turned {
			all = append(all, way{s, width, length, true})
		}
	}
	return all
}

func (f fitting) fits(ways []way) bool {
	return slices.ContainsFunc(ways, func(w way) bool { return f.blank.Length <= w.along && f.blank.Width <= w.across })
}

// thickness says that no stock is as thick as the part needs.
func (f fitting) thickness(choice []stock.Length) fault.Fault {
	thickest := choice[len(choice)-1]
	if f.kind == stock.Sheet {
		return fault.New(fmt.Sprintf("no sheet of %s is %s thick (there is %s)", f.part.Material, f.unit(f.part.Thickness), strings.Join(exactly(choice, f.ruler), ", ")),
			"take one of these, or add a sheet of that thickness")
	}
	remedy := "make it thinner, or add a thicker board"
	if f.blank.Thickness > f.part.Thickness && f.part.Thickness <= thickest {
		remedy = "set faces = 0 if it is not planed, make it thinner, or add a thicker board"
	}
	return fault.New(fmt.Sprintf("thickness %s is more than any board of %s gives (thickest %s)",
		f.sum(f.part.Thickness, f.part.Allowance.Faces, f.part.Allowance.Face, "planing"), f.part.Material, f.unit(thickest)), remedy)
}

// tooLarge says which size keeps the blank from every piece of stock, and the
// key that gives it.
func (f fitting) tooLarge() (key string, found fault.Fault) {
	ways := f.ways(f.part.Grain)
	if f.fits(ways) {
		return "", fault.Fault{}
	}
	longest, widest := ways[0], ways[0]
	for _, w := range ways {
		if w.along > longest.along {
			longest = w
		}
		if w.across > widest.across {
			widest = w
		}
	}
	length := f.sum(f.part.Length, f.part.Allowance.Ends, f.part.Allowance.End, "its ends")
	if a := f.part.Allowance; a.Miters > 0 && a.Miter > 0 {
		length += fmt.Sprintf(" plus %d x %s for its miters", a.Miters, f.unit(a.Miter))
	}
	width := f.sum(f.part.Width, f.part.Allowance.Edges, f.part.Allowance.Edge, "its edges")
	stockWord := fmt.Sprintf("%s of %s", f.kind, f.part.Material)
	if f.several {
		stockWord += " that is thick enough"
		if f.kind == stock.Sheet {
			stockWord = fmt.Sprintf("%s sheet of %s", f.unit(f.part.Thickness), f.part.Material)
		}
	}
	switch {
	case f.blank.Length > longest.along:
		cause := fmt.Sprintf("length %s is longer than any %s (longest %s)", length, stockWord, f.reach(longest, !longest.turned))
		return "length", fault.New(cause, f.smaller()+" or add a longer "+f.kind.String())
	case f.blank.Width > widest.across:
		cause := fmt.Sprintf("width %s is wider than any %s (widest %s)", width, stockWord, f.reach(widest, widest.turned))
		if f.kind == stock.Board {
			return "width", fault.New(cause, "glue it up from narrower parts or add a wider board")
		}
		return "width", fault.New(cause, f.smaller()+" or add a wider sheet")
	}
	return "length", fault.New(fmt.Sprintf("length %s and width %s together are more than any one %s gives", length, width, stockWord),
		f.smaller()+" or add a larger "+f.kind.String())
}

// smaller offers to ignore the grain, where that would do, or to make less of the
// part: one that follows from a case is as large as the case makes it.
func (f fitting) smaller() string {
	switch {
	case f.part.From == "case":
		return "make the case smaller"
	case f.kind == stock.Sheet && f.part.Grain != stock.GrainAny && f.fits(f.ways(stock.GrainAny)):
		return `turn it with grain = "any", split the part`
	}
	return "split the part"
}

// reach is the size of the stock of w that counts, with what trimming takes.
func (f fitting) reach(w way, alongLength bool) string {
	size, trim := w.from.Width, w.from.Trims().NearEdge
	if alongLength {
		size, trim = w.from.Length, w.from.Trim
	}
	grain := ""
	if w.turned && f.part.Grain != stock.GrainAny {
		grain = ", as the grain lies"
	}
	if w.from.IsSection() && alongLength {
		return f.unit(size) + " clear of defects" + grain
	}
	if trim == 0 {
		return f.unit(size) + grain
	}
	return fmt.Sprintf("%s less 2 x %s of trim%s", f.unit(size), f.unit(trim), grain)
}

// sum writes a size with its allowance: "900 mm plus 2 x 5 mm for its ends".
func (f fitting) sum(size stock.Length, times int, each stock.Length, what string) string {
	if times == 0 || each == 0 {
		return f.unit(size)
	}
	return fmt.Sprintf("%s plus %d x %s for %s", f.unit(size), times, f.unit(each), what)
}

func (f fitting) unit(l stock.Length) string { return f.ruler.PrintUnit(l) }

// tooNarrow says that the blank would have to be ripped narrower than is safe,
// whichever way it lies. The limit is for sheets: strips of lumber are ripped
// narrower, with a jig. A blank as wide as the sheet need not be ripped.
func (f fitting) tooNarrow() fault.Fault {
	for _, w := range f.ways(f.part.Grain) {
		if f.blank.Length > w.along || f.blank.Width > w.across {
			continue
		}
		ripped, full := f.blank.Width, w.across
		if w.turned {
			ripped, full = f.blank.Length, w.along
		}
		if w.from.Kind == stock.Board || ripped >= f.saw.NarrowestRip || ripped == full {
			return fault.Fault{}
		}
	}
	return fault.New(fmt.Sprintf("it would be ripped narrower than the narrowest rip (width %s, saw.narrowest_rip is %s)",
		f.sum(f.part.Width, f.part.Allowance.Edges, f.part.Allowance.Edge, "its edges"), f.unit(f.saw.NarrowestRip)),
		"make it wider, or make it without the table saw and take it out of the job")
}

// tooShortToMill says that a blank is shorter than the machines can take, since
// it may not be ganged or no board is long enough.
func (f fitting) tooShortToMill(job stock.Job) fault.Fault {
	for _, b := range job.BlanksOf(f.part.Part) {
		if !job.ShortToMill(b) {
			continue
		}
		cause := fmt.Sprintf("%s is too short to plane, joint or rip safely (milling.shortest is %s)", f.unit(job.Along(b)), f.unit(job.Shortest))
		remedy := "mill it as part of a longer piece and part that after"
		switch {
		case !f.reaches(job, b):
			cause += fmt.Sprintf(", and no board of %s that it may come from is as long as that", f.part.Material)
			remedy = "add a longer board"
		case f.part.Alone:
			remedy = "leave out gang = false, so that it is cut from a longer piece after milling"
		}
		return fault.New(cause, remedy+"; follow the machine's manual")
	}
	return fault.Fault{}
}

// reaches reports whether a board that b may come from is long enough to be
// milled.
func (f fitting) reaches(job stock.Job, b stock.Blank) bool {
	return slices.ContainsFunc(job.Boards(b), func(s stock.Stock) bool {
		length, width := s.Usable()
		return length >= job.Shortest && width >= b.Length+b.Width-job.Along(b)
	})
}

// notResawn says that resaw = true comes to nothing.
func (f fitting) notResawn(job stock.Job) fault.Fault {
	if !f.part.Resaw {
		return fault.Fault{}
	}
	if f.kind == stock.Sheet {
		return fault.New("sheets are not resawn", "it is left out of account")
	}
	blanks, toBuy := job.BlanksOf(f.part.Part), job
	if toBuy.Stock = nil; len(job.Rough) > 0 {
		blanks = append(blanks, toBuy.BlanksOf(f.part.Part)...)
	}
	if f.part.Count == 1 || slices.ContainsFunc(blanks, func(b stock.Blank) bool { return b.Layers > 1 }) {
		return fault.Fault{}
	}
	const remedy = "it is planed down from one; "
	boards := slices.Clone(job.Stock)
	for _, l := range job.Rough {
		boards = append(boards, l.Largest())
	}
	boards = slices.DeleteFunc(boards, func(s stock.Stock) bool { return !s.HasRoom(f.blank) || job.LayersIn(f.part.Part, s) < 2 })
	if slices.ContainsFunc(boards, stock.Stock.Unlimited) {
		return fault.New(fmt.Sprintf("a board of %s that gives one piece wastes less than a thicker one resawn", f.part.Material),
			remedy+"leave out the thinner boards if it must be resawn")
	}
	if len(boards) > 0 {
		return fault.New(fmt.Sprintf("boards of %s that are thick enough for two pieces may be too few, and others are for sale without limit", f.part.Material),
			remedy+"leave out the thinner boards if it must be resawn")
	}
	return fault.New(fmt.Sprintf("no board of %s that is large enough is thick enough for two pieces of %s with a kerf of %s between",
		f.part.Material, f.unit(f.blank.Thickness), f.unit(job.Saw.ResawKerf)),
		remedy+"add a thicker board")
}
