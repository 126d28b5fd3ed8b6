package rack

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

// Change holds the pieces that leave a rack and those that enter it, at once.
type Change struct {
	Take []string      // ids
	Put  []stock.Piece // the rack gives them their ids, and the day where there is none
	// What tells of the change in a few words; empty: what leaves and enters.
	What string
	// Plan is the code of the plan that is carried out with the change: a second
	// time it is refused. Empty: there is none.
	Plan string
	// Continues are the codes of the plans before it, which are carried out with it.
	Continues []string
	// Sure, if not nil, is called when nothing stands in the way of the change any more, and
	// before it is made. Its error refuses the change. A rack that begins with the change
	// has its file by then, empty.
	Sure func() error
	Date string // of the change, "2026-03-05"
	// Units apply to a rack that begins with the change.
	Units stock.Units
}

// Done is a change as it was made.
type Done struct {
	Entry
	Took, Put []stock.Piece
	// ByHand tells that the file had been edited since the change before, which
	// the history now says too.
	ByHand bool
}

// Change makes a change, or none of it. It waits for other programs until ctx
// ends. When it returns without an error the change is on the disk. The error
// is of type [fault.Faults].
func (r Rack) Change(ctx context.Context, c Change) (Done, error) {
	if c.Date != "" && !job.IsDay(c.Date) {
		panic("rack: a date that is none: " + c.Date)
	}
	if len(c.Take) > 0 && !r.begun() {
		return Done{}, r.none() // not even a lock is left behind
	}
	var made Done
	err := r.locked(ctx, func(s *standing) error {
		if c.Plan != "" {
			if e, already := s.past.carriedOut(c.Plan, s.past.last()); already {
				return r.fault("", fmt.Sprintf("plan %s was carried out already (change %d%s)", c.Plan, e.Number, on(e.Date)),
					"look at sawbill rack history; undo that change if the plan was not carried out")
			}
		}
		file, err := s.read(c.Units)
		if err != nil {
			return err
		}
		gone, err := r.find(file, c.Take, "see sawbill rack list; nothing was changed")
		if err != nil {
			return err
		}
		number := max(s.past.highest(), highest(file.Pieces))
		made = Done{ByHand: s.byHand()}
		for _, i := range gone {
			made.Took = append(made.Took, file.Pieces[i])
		}
		for _, p := range c.Put {
			number++
			p.ID, p.Since = idOf(number), cmp.Or(p.Since, c.Date)
			for _, said := range []*string{&p.Name, &p.Material, &p.From, &p.Note} {
				*said = strings.Join(strings.Fields(*said), " ") // as it will be read
			}
			made.Put = append(made.Put, p)
		}
		if err := r.sameKind(file, made.Put); err != nil {
			return err
		}
		after := edited(file, gone, made.Put)
		if err := r.confirm(after, file, gone, made.Put); err != nil {
			return err
		}
		made.Entry = Entry{Date: c.Date, What: cmp.Or(c.What, told(made.Took, made.Put)), Out: idsOf(made.Took), In: idsOf(made.Put), Plan: c.Plan, Continues: c.Continues, Highest: number}
		if c.Sure == nil {
			return s.make(&made.Entry, after)
		}
		return s.agreed(c.Sure, func() error { return s.make(&made.Entry, after) })
	})
	return made, err
}

// agreed makes a change after sure, which writes down the name of the rack. So there is a
// rack by then, even if the program is stopped before it has made the change.
func (s *standing) agreed(sure, change func() error) error {
	begins := !s.there && s.past.last() == 0
	if begins {
		if err := store.Write(s.rack.path, "", s.rack.path); err != nil {
			return s.rack.cannot("written", s.rack.path, err)
		}
	}
	if err := sure(); err != nil {
		if begins {
			os.Remove(s.rack.path)
		}
		return err
	}
	return change()
}

// find finds pieces by their ids. The error lists all that are not there.
func (r Rack) find(file *job.Rack, ids []string, remedy string) (at []int, err error) {
	var faults fault.Faults
	for _, id := range ids {
		i := indexOf(file.Pieces, id)
		switch {
		case i < 0:
			faults = append(faults, fault.Fault{File: r.path, Key: fmt.Sprintf("piece %q", id), Cause: "is not on the rack", Remedy: remedy})
		case slices.Contains(at, i):
			faults = append(faults, fault.Fault{File: r.path, Key: fmt.Sprintf("piece %q", id), Cause: "is named twice", Remedy: "name it once"})
		default:
			at = append(at, i)
		}
	}
	return at, faults.OrNil()
}

// Pick is the pieces with these ids, or all if there are none. Those that are
// not there are told.
func (r Rack) Pick(file *job.Rack, ids []string) ([]stock.Piece, error) {
	if len(ids) == 0 {
		return file.Pieces, nil
	}
	at, err := r.find(file, ids, "see sawbill rack list")
	var picked []stock.Piece
	for _, i := range at {
		picked = append(picked, file.Pieces[i])
	}
	return picked, err
}

// sameKind refuses a sheet of what is on the rack as boards, and the reverse.
func (r Rack) sameKind(file *job.Rack, put []stock.Piece) error {
	var faults fault.Faults
	for _, p := range put {
		other := slices.IndexFunc(file.Pieces, func(q stock.Piece) bool { return q.Material == p.Material && q.Kind != p.Kind })
		if other >= 0 {
			q := file.Pieces[other]
			faults = append(faults, fault.Fault{File: r.path, Key: fmt.Sprintf("material %q", p.Material),
				Cause:  fmt.Sprintf("is on the rack as a %s (%s), and as a %s here", q.Kind, q.ID, p.Kind),
				Remedy: fmt.Sprintf("say that it is a %s, or give sheets and boards different materials; nothing was changed", q.Kind)})
		}
	}
	return faults.OrNil()
}

// confirm reads what is about to be written: it must hold what was there, less
// what leaves and with what enters.
func (r Rack) confirm(after string, before *job.Rack, gone []int, added []stock.Piece) error {
	file, err := job.ParseRack(r.path, []byte(after))
	if err != nil {
		return err
	}
	var want []stock.Piece
	for i, p := range before.Pieces {
		if !slices.Contains(gone, i) {
			want = append(want, p)
		}
	}
	if want = append(want, added...); !slices.Equal(file.Pieces, want) {
		return r.fault("", "the file cannot be changed without changing other pieces", "write each piece under a [[piece]] of its own, in plain lines; nothing was changed")
	}
	return nil
}

// Restore makes the file what it was after a change; 0 is before the first.
// The error is of type [fault.Faults].
func (r Rack) Restore(ctx context.Context, number int, date string) (Done, error) {
	if !r.begun() {
		return Done{}, r.none()
	}
	var made Done
	err := r.locked(ctx, func(s *standing) error {
		if last := s.past.last(); number < 0 || number > last {
			return r.fault("", fmt.Sprintf("there is no change %d (the last is %d)", number, last), "see sawbill rack history")
		}
		made.Entry = Entry{Date: date, What: fmt.Sprintf("back to what change %d left", number), Back: &number}
		if number == 0 {
			made.What = "back to the beginning"
		}
		return s.goBack(&made)
	})
	return made, err
}

// Undo takes the last change back, an edit by hand included, and the next time
// the one before. It returns that change too. The error is of type [fault.Faults].
func (r Rack) Undo(ctx context.Context, date string) (made Done, undone Entry, err error) {
	if !r.begun() {
		return Done{}, Entry{}, r.none()
	}
	err = r.locked(ctx, func(s *standing) error {
		if err := s.noteEdit(date); err != nil {
			return err
		}
		back, change := s.past.before(s.past.last())
		if change == 0 {
			return r.fault("", "there is no change to take back", "see sawbill rack history")
		}
		undone = s.past.entries[change-1]
		made.Entry = Entry{Date: date, What: fmt.Sprintf("took back change %d", change), Back: &back, Undo: true}
		return s.goBack(&made)
	})
	return made, undone, err
}

// goBack makes the change to the state that the entry names. The files on both
// sides may be any: what was edited by hand into something that cannot be read is
// gone back from too.
func (s *standing) goBack(made *Done) error {
	made.ByHand = s.byHand()
	after := s.past.state(*made.Back)
	made.Took, made.Put = s.rack.difference(s.text, after)
	made.Out, made.In = idsOf(made.Took), idsOf(made.Put)
	return s.make(&made.Entry, after)
}

// difference tells by their ids which pieces left and entered between two texts;
// none if one of them cannot be read.
func (r Rack) difference(before, after string) (gone, come []stock.Piece) {
	was, err := job.ParseRack(r.path, []byte(before))
	is, wrong := job.ParseRack(r.path, []byte(after))
	if err != nil || wrong != nil {
		return nil, nil
	}
	without := func(all, of []stock.Piece) []stock.Piece {
		return slices.DeleteFunc(slices.Clone(all), func(p stock.Piece) bool { return indexOf(of, p.ID) >= 0 })
	}
	return without(was.Pieces, is.Pieces), without(is.Pieces, was.Pieces)
}

func idsOf(pieces []stock.Piece) []string {
	var ids []string
	for _, p := range pieces {
		ids = append(ids, p.ID)
	}
	return ids
}

func told(took, put []stock.Piece) string {
	switch {
	case len(took) > 0 && len(put) > 0:
		return "exchanged"
	case len(took) > 0:
		return "taken"
	}
	return "added"
}

func on(date string) string {
	if date == "" {
		return ""
	}
	return " of " + date
}

// List writes ids as one says them: "R1, R2 and R3", and runs "R1 to R9".
func List(ids []string) string {
	var runs []string
	for i := 0; i < len(ids); {
		n := i + 1
		for n < len(ids) && follows(ids[n-1], ids[n]) {
			n++
		}
		if n-i > 2 {
			runs = append(runs, ids[i]+" to "+ids[n-1])
		} else {
			runs = append(runs, ids[i:n]...)
		}
		i = n
	}
	if len(runs) < 2 {
		return strings.Join(runs, "")
	}
	return strings.Join(runs[:len(runs)-1], ", ") + " and " + runs[len(runs)-1]
}

func follows(a, b string) bool {
	first := highest([]stock.Piece{{ID: a}})
	return first > 0 && highest([]stock.Piece{{ID: b}}) == first+1
}
