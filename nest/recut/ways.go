package recut

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Ways lists alternatives to cutting a spoiled blank again.
type Ways struct {
	Blank cutplan.Blank
	Left  progress.Size
	// Enough: the usable size holds the finished part, with less trim than planned.
	Enough bool
	// Others lists wanted blanks that could be cut from the usable size.
	Others []cutplan.Blank
	// SizeChanges lists changes of the job after which the usable size suffices.
	SizeChanges []SizeChange
	// Splice makes the blank long enough again; nil if none of its parts may be spliced.
	Splice *Splice
}

// SizeChange is a change of sizes that saves a spoiled blank.
type SizeChange struct {
	// Size is the dimension of the case that shrinks from Was to Is: "height". It is empty
	// without a case; the maker then decides if the joining parts allow it.
	Size    string
	Was, Is stock.Length
	Parts   []Changed // the spoiled one first
}

// Changed is a part that becomes smaller, or larger if none of it is cut yet.
type Changed struct {
	Was, Is stock.Part
	Good    int // already cut, and to be cut down
}

// Splice lengthens a spoiled blank by a piece of the same stock.
type Splice struct {
	Length, Width stock.Length // of the added piece
	// Back is the length of the blank once it is cut back, so that the added piece is long
	// enough to handle.
	Back stock.Length
	// Overlap is the length of a scarf joint over both pieces. It is 0 if they are butted,
	// with a plate glued behind the joint.
	Overlap stock.Length
	From    string // the leftover that would give it; empty if none does
	// Unknown: without a case, the program cannot decide if the part is hidden.
	Unknown bool
}

// Design is a job, and the case from which its parts follow; nil without one.
type Design struct {
	Job  stock.Job
	Case *casework.Case
}

// Redesign rereads the job with smaller sizes, each "height=6 mm".
type Redesign func(sizes ...string) (stock.Job, *casework.Case, error)

// leastShare limits a change to one part in leastShare of a size. A larger change is
// another design.
const leastShare = 20

// ScarfSlope is the length of a scarf joint in thicknesses. The usual slope is 1 in 8 or
// flatter (Forest Products Laboratory, Wood Handbook, chapter on fastenings and adhesive
// joints, from memory).
const ScarfSlope = 8

// leastSplice is the shortest piece to splice on. A shorter one can be neither held at the
// saw nor clamped. Common practice, no source.
const leastSplice = 150 * stock.Millimeter

// WaysToSave lists the alternatives for each spoiled blank with a usable size, except
// those in saved. The job is as read when it was planned.
func WaysToSave(s *progress.State, code string, of Design, redesign Redesign, saved ...cutplan.Blank) []Ways {
	var all []Ways
	pieces := s.Pieces(code)
	for _, p := range pieces {
		if p.Kind != progress.Scrap {
			continue
		}
		b := s.Bill()[p.Spoiled.Blank]
		if slices.ContainsFunc(saved, func(is cutplan.Blank) bool { return is.Mark == b.Mark }) {
			continue
		}
		w := Ways{Blank: b, Left: p.Spoiled.Left}
		for _, open := range s.Blanks() {
			if open.Open > 0 && open.Mark != b.Mark && p.Stock.Serves(open.Blank.Blank) && p.Stock.HasRoom(open.Blank.Blank) {
				open.Count = open.Open
				w.Others = append(w.Others, open.Blank)
			}
		}
		if b.Gang*b.Layers == 1 {
			w.Enough = w.Left.Length >= b.Part.Length && w.Left.Width >= b.Part.Width && p.Stock.Thickness >= b.Part.Thickness
			w.SizeChanges = sizeChanges(s, of, b, w.Left, redesign)
			w.Splice = splice(of.Case, b, w.Left, p.Stock, pieces)
		}
		if w.Enough || w.Others != nil || w.SizeChanges != nil || w.Splice != nil {
			all = append(all, w)
		}
	}
	return all
}

// sizeChanges lists changes after which the usable size holds the part.
func sizeChanges(s *progress.State, of Design, b cutplan.Blank, left progress.Size, redesign Redesign) []SizeChange {
	short := max(b.Length-left.Length, b.Width-left.Width)
	if short <= 0 {
		return nil
	}
	by := upTo(short, s.Plan().Job.Units)
	if of.Case == nil || b.Part.From != "case" {
		is := b.Part
		is.Length -= b.Length - min(b.Length, left.Length)
		is.Width -= b.Width - min(b.Width, left.Width)
		if short*leastShare > max(b.Length, b.Width) || is.Length <= 0 || is.Width <= 0 {
			return nil
		}
		return []SizeChange{{Parts: []Changed{{b.Part, is, goodOf(s, b.Part.Name)}}}}
	}
	var all []SizeChange
	for _, size := range []string{"width", "height", "depth"} {
		for _, times := range []stock.Length{1, 2} {
			was := sizeOf(of.Case, size)
			if by*times*leastShare > was {
				break
			}
			job, is, err := redesign(fmt.Sprintf("%s=%s mm", size, (by * times).Decimal()))
			if err != nil || is == nil {
				break
			}
			if parts, ok := changes(s, of.Job, job, b, left); ok {
				all = append(all, SizeChange{size, was, sizeOf(is, size), parts})
				break
			}
		}
	}
	return all
}

// upTo rounds up to a mark on a rule: a millimeter, or a sixteenth of an inch.
func upTo(l stock.Length, units stock.Units) stock.Length {
	mark := stock.Millimeter
	if units == stock.Inches {
		mark = stock.Inch / 16
	}
	return (l + mark - 1) / mark * mark
}

// sizeOf returns an outside dimension of a case; 0 if it is unknown.
func sizeOf(c *casework.Case, size string) stock.Length {
	for _, d := range c.Sizes {
		if d.Dimension == "outside "+size {
			return d.Sum.Total()
		}
	}
	return 0
}

// changes lists the parts that differ between two readings of a job, the spoiled one
// first. It returns false if the spoiled part is still too large, if the job wants other
// parts, or if a cut part would have to grow.
func changes(s *progress.State, was, is stock.Job, spoiled cutplan.Blank, left progress.Size) ([]Changed, bool) {
	changed, wrong := differences(s, was, is)
	if wrong != "" {
		return nil, false
	}
	var all []Changed
	saved := false
	for _, c := range changed {
		q := c.Is
		if q.Name != spoiled.Part.Name {
			all = append(all, c)
			continue
		}
		saved = holds(left, q.Blank(was.KindOf(q.Material)))
		all = append([]Changed{c}, all...)
	}
	return all, saved
}

// holds reports whether a blank fits the usable size of another.
func holds(left progress.Size, b stock.Blank) bool {
	return b.Length <= left.Length && b.Width <= left.Width
}

// differences lists the parts whose sizes differ between two readings of a job. It returns
// a reason instead if the job wants other parts, or if a cut part would have to grow.
func differences(s *progress.State, was, is stock.Job) (all []Changed, wrong string) {
	if len(was.Parts) != len(is.Parts) {
		return nil, "the job then has other parts"
	}
	for i, p := range was.Parts {
		q := is.Parts[i]
		if p.Name != q.Name || p.Count != q.Count || p.Material != q.Material {
			return nil, "the job then has other parts"
		}
		if p.Length == q.Length && p.Width == q.Width && p.Thickness == q.Thickness {
			continue
		}
		c := Changed{p, q, goodOf(s, p.Name)}
		if c.Good > 0 && (q.Length > p.Length || q.Width > p.Width || q.Thickness != p.Thickness) {
			return nil, fmt.Sprintf("%s would have to be larger, and %d are cut", p.Name, c.Good)
		}
		all = append(all, c)
	}
	return all, ""
}

// goodOf returns how many of a part are cut and good.
func goodOf(s *progress.State, part string) int {
	n := 0
	for _, b := range s.Blanks() {
		if b.Part.Name == part {
			n += b.Parts
		}
	}
	return n
}

// splice returns a way to lengthen a spoiled blank, or nil. Its part must be hidden and
// carry nothing, and at least half of its length must be usable.
func splice(of *casework.Case, b cutplan.Blank, left progress.Size, from stock.Stock, pieces []progress.Piece) *Splice {
	missing := b.Length - left.Length
	if missing <= 0 || 2*missing > b.Length || left.Width < b.Width {
		return nil
	}
	s := &Splice{Length: max(missing, leastSplice), Width: b.Width, Unknown: true}
	s.Back = b.Length - s.Length
	if of != nil && b.Part.From == "case" {
		for i, p := range of.Parts {
			if p.Name == b.Part.Name && (!of.Unseen(i) || of.Carries(i)) {
				return nil
			}
		}
		s.Unknown = false
	}
	if from.Kind == stock.Board {
		s.Overlap = ScarfSlope * b.Thickness
		s.Length += s.Overlap
	}
	wanted := b.Blank
	wanted.Length = s.Length
	for _, p := range pieces {
		if p.Kind != progress.Scrap && p.Root.Use != cutplan.Split && p.Root.Use != cutplan.Part && p.Stock.Serves(wanted) && p.Stock.HasRoom(wanted) {
			s.From = p.Stock.Name
			break
		}
	}
	return s
}
