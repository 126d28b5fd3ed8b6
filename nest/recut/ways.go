package recut

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/job"
)

// Ways are what else could be done about a spoiled blank than to cut another.
type Ways struct {
	Blank cutplan.Blank
	Left  progress.Size
	// Enough: what is left holds the finished part, with less to trim than was meant.
	Enough bool
	// Others are blanks still wanted that could be cut from what is left.
	Others []cutplan.Blank
	// SizeChanges are changes of the job after which what is left is large enough.
	SizeChanges []SizeChange
	// Splice makes it long enough again; nil where that is none of its parts.
	Splice *Splice
}

// SizeChange is a change of sizes.
type SizeChange struct {
	// Size is that of the case which becomes less, from Was to Is: "height". Empty: there
	// is no case, and it is for the maker to see what the part meets.
	Size    string
	Was, Is stock.Length
	Parts   []Changed // the spoiled one first
}

// Changed is a part that becomes smaller, or larger where none of it is cut yet.
type Changed struct {
	Was, Is stock.Part
	Good    int // that are cut already, and to be cut down
}

// Splice lengthens what is left by a piece of the same stock.
type Splice struct {
	Length, Width stock.Length // of that piece
	// Back is what is left of the blank when it is cut back for the piece to be long enough
	// to handle.
	Back stock.Length
	// Overlap is how far a scarf joint reaches over both; 0 where they are butted and a
	// plate is glued behind the joint.
	Overlap stock.Length
	From    string // the leftover that would give it; empty if none does
	// Unknown: without a case nobody can tell whether the part is hidden.
	Unknown bool
}

// Redesign reads the job again with sizes less, each "height=6 mm".
type Redesign func(sizes ...string) (*job.File, job.Changes, error)

// leastShare is by which share of itself a size is changed at the most: 1 in so many. More
// is another design.
const leastShare = 20

// ScarfSlope is the length of a scarf joint in thicknesses: 1 in 8 or flatter (Forest
// Products Laboratory, Wood Handbook, chapter on fastenings and adhesive joints, from
// memory).
const ScarfSlope = 8

// leastSplice is the shortest piece that is spliced to another: a shorter one can neither
// be held at the saw nor clamped. Common practice, no source.
const leastSplice = 150 * stock.Millimeter

// WaysToSave lists for each spoiled blank of which something is left, and that is not saved
// already, what else could be done. The job is as it was read when it was planned.
func WaysToSave(s *progress.State, code string, of *job.File, redesign Redesign, saved ...cutplan.Blank) []Ways {
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

// sizeChanges lists changes after which what is left is the part.
func sizeChanges(s *progress.State, of *job.File, b cutplan.Blank, left progress.Size, redesign Redesign) []SizeChange {
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
			changed, _, err := redesign(fmt.Sprintf("%s=%s mm", size, (by * times).Decimal()))
			if err != nil || changed.Case == nil {
				break
			}
			if parts, ok := changes(s, of, changed, b, left); ok {
				all = append(all, SizeChange{size, was, sizeOf(changed.Case, size), parts})
				break
			}
		}
	}
	return all
}

// upTo rounds up to what is read off a rule: a millimeter, or a sixteenth of an inch.
func upTo(l stock.Length, units stock.Units) stock.Length {
	mark := stock.Millimeter
	if units == stock.Inches {
		mark = stock.Inch / 16
	}
	return (l + mark - 1) / mark * mark
}

// sizeOf is an outside size of a case; 0 where it is not told.
func sizeOf(c *casework.Case, size string) stock.Length {
	for _, d := range c.Sizes {
		if d.Dimension == "outside "+size {
			return d.Sum.Total()
		}
	}
	return 0
}

// changes are the parts that differ between two readings of a job, the spoiled one first;
// false where what is left of that is too small still, where others are wanted, or where
// one that is cut would have to grow.
func changes(s *progress.State, was, is *job.File, spoiled cutplan.Blank, left progress.Size) ([]Changed, bool) {
	changed, wrong := Differences(s, was, is)
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

// holds reports whether a blank is in what is left of another.
func holds(left progress.Size, b stock.Blank) bool {
	return b.Length <= left.Length && b.Width <= left.Width
}

// Differences are the parts whose sizes differ between two readings of a job. What is
// wrong is told where others are wanted, or one that is cut would have to grow.
func Differences(s *progress.State, was, is *job.File) (all []Changed, wrong string) {
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

// goodOf is how many of a part are cut and good.
func goodOf(s *progress.State, part string) int {
	n := 0
	for _, b := range s.Blanks() {
		if b.Part.Name == part {
			n += b.Parts
		}
	}
	return n
}

// splice tells how what is left could be lengthened, of a part that is hidden and carries
// nothing; at least half of it must be there.
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
