package shop

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/rack"
	"sawbill/stock/store"
)

// Booking is how a plan is booked on a rack.
type Booking struct {
	Rack rack.Rack
	// GiveUp books a plan that is not carried out: what is still to be cut goes to the rack
	// too, and nothing more is cut by the plan.
	GiveUp bool
	Date   string // "2026-03-05"
	Units  stock.Units
}

// Book books the plan, and those that it continues, on a rack. Pieces of the rack that they
// cut leave it. Offcuts enter it, and stock that was bought and not cut. A plan is booked
// once; a "rack undo" of the booking reopens it. The error is of type [fault.Faults]; with
// it nothing is booked.
func (f *Folder) Book(ctx context.Context, b Booking) (done rack.Done, err error) {
	err = f.change(ctx, func() error {
		if err := f.mayBook(b); err != nil {
			return err
		}
		pieces, take, err := f.ownPieces(b.Rack)
		if err != nil {
			return err
		}
		what := "plan " + f.plan.Code + " carried out"
		if !f.state.Done() {
			what = "plan " + f.plan.Code + " given up"
		}
		done, err = b.Rack.Change(ctx, rack.Change{Take: take, Put: f.keeps(pieces, b.GiveUp), Plan: f.plan.Code, Continues: f.plan.Continues, What: what, Date: b.Date, Units: b.Units, Sure: func() error { return f.noteBooking(b) }})
		return err
	})
	return done, err
}

// ownPieces are the pieces on the rack of the job, and the ids of those that leave it when
// the plan is booked on r. On another rack the same ids are other pieces, so a plan that cut
// some of its own is booked on no other. A rack of the job that is not there is the one that
// was moved to r.
func (f *Folder) ownPieces(r rack.Rack) (own []stock.Piece, leave []string, err error) {
	path := f.RackPath()
	if path == "" {
		return nil, nil, nil
	}
	of, other := r, false
	if jobs := rack.At(path); jobs.Exists() && !samePlace(jobs.Path(), r.Path()) {
		of, other = jobs, true
	}
	if own, err = onRack(of); err != nil {
		return nil, nil, err
	}
	leave = begunOf(f.plan, f.state, own)
	if other && len(leave) > 0 {
		return nil, nil, f.refuse(fmt.Sprintf("plan %s cut %s of the rack %s, and would be booked on another", f.plan.Code, rack.List(leave), printed(path)),
			"name the rack of the job: --rack "+printed(path))
	}
	return own, leave, nil
}

// noteBooking names the rack in the record. From then on the plan is booked as soon as the
// rack says so.
func (f *Folder) noteBooking(b Booking) error {
	if slices.ContainsFunc(f.life.books, func(path string) bool { return samePlace(path, b.Rack.Path()) }) {
		return nil
	}
	_, err := f.record.Add(store.Entry{Plan: f.plan.Code, Date: b.Date, Did: []string{bookedWord + " " + planfile.FromFolder(f.path, b.Rack.Path())}})
	return err
}

// mayBook refuses a plan that has ended, one that is not carried out, and one of which a
// predecessor was booked after this rest was planned, as version 1 allowed.
func (f *Folder) mayBook(b Booking) error {
	if err := f.going(); err != nil {
		return err
	}
	if !b.GiveUp && !f.state.Done() {
		return f.refuse(fmt.Sprintf("plan %s is not carried out yet: blanks are still open", f.plan.Code),
			"report first what is cut with sawbill progress, or plan the rest with sawbill recut and book that; to end the plan as it is, add --give-up")
	}
	for _, code := range f.plan.Continues {
		e, booked, err := b.Rack.BookedBy(code)
		if err != nil {
			return err
		}
		known := slices.ContainsFunc(e.In, func(id string) bool { return slices.Contains(f.plan.OnRack, id) })
		if booked && len(e.In) > 0 && !known {
			return fault.Faults{{File: b.Rack.Path(), Cause: fmt.Sprintf("plan %s, which plan %s continues, is booked already (change %d): its offcuts would be on the rack twice", code, f.plan.Code, e.Number),
				Remedy: "take that booking back first with sawbill rack undo"}}
		}
	}
	return nil
}

// keeps are the pieces to lay on the rack.
func (f *Folder) keeps(onRack []stock.Piece, giveUp bool) []stock.Piece {
	var all []stock.Piece
	for _, p := range f.toKeep(onRack, giveUp) {
		s := p.Stock
		piece := stock.Piece{
			Kind: s.Kind, Material: s.Material, Length: s.Length, Width: s.Width, Thickness: s.Thickness, Grain: s.Grain,
			From: f.title() + ", plan " + f.plan.Code,
		}
		if name, whole := progress.OfferOf(s.Name); whole {
			piece.Name = name
		} else {
			piece.Note = "marked " + s.Name
		}
		for range s.Count {
			all = append(all, piece)
		}
	}
	return all
}

// toKeep lists offcuts, whole stock that was bought, and usable pieces of spoiled blanks. If
// the plan is given up, it also lists pieces that are not cut to their end.
func (f *Folder) toKeep(onRack []stock.Piece, giveUp bool) []progress.Piece {
	return slices.DeleteFunc(f.state.Pieces(f.plan.Code), func(p progress.Piece) bool {
		name := p.Stock.Name
		theirs := onIt(onRack, name) ||
			slices.ContainsFunc(f.plan.File.Stock, func(own stock.Stock) bool { return own.OnHand && own.Name == name })
		return theirs || p.Kind == progress.Unfinished && !giveUp || !f.plan.Plan.Job.Offcut.Keeps(p.Stock.Length, p.Stock.Width)
	})
}

func (f *Folder) title() string {
	return cmp.Or(f.plan.Plan.Job.Title, "a job")
}
