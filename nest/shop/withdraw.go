package shop

import (
	"context"
	"fmt"

	"sawbill/nest/shop/planfile"
	"sawbill/stock/fault"
	"sawbill/stock/rack"
	"sawbill/stock/store"
)

// Withdraw takes a rest back of which nothing was reported: its predecessor goes on. The
// folder stays, and refuses everything; its number stays used. A plan whose rest has lost
// its folder can be named in place of that. The plan that goes on is returned, with the
// folder it is in.
func (f *Folder) Withdraw(ctx context.Context, date string) (on *Folder, code string, err error) {
	if next := f.life.next; next != nil && !next.there() {
		return f, next.Code, f.change(ctx, func() error {
			if next := f.life.next; next == nil || next.there() {
				return f.refuse("the folder of the rest is there again", "name that folder")
			}
			if e, booked, err := rack.At(f.RackPath()).BookedBy(f.plan.Code); f.RackPath() != "" && (err != nil || booked) {
				if err != nil {
					return err
				}
				return f.refuse(Fate{Booked: &e, Rack: f.RackPath()}.words(f.plan))
			}
			return f.release(nil, f.life.next.Number, date)
		})
	}
	if len(f.plan.Continues) == 0 {
		return nil, "", f.refuse(fmt.Sprintf("plan %s is the rest of no other", f.plan.Code), "name the folder of a rest that sawbill recut wrote")
	}
	b := f.before()
	if b == nil {
		return nil, "", f.refuse(fmt.Sprintf("the folder of plan %s, which would go on, is not there", f.plan.Continues[len(f.plan.Continues)-1]), "put that folder back")
	}
	return b, f.plan.Code, b.change(ctx, func() error {
		return f.change(ctx, func() error {
			if err := f.going(); err != nil {
				return err
			}
			if n := len(f.life.events); n > 0 {
				return fault.Faults{{File: f.record.Path(), Line: f.life.events[n-1].Number, Cause: fmt.Sprintf("there is progress of plan %s", f.plan.Code), Remedy: "take it back first with sawbill progress --undo, or plan what is left with sawbill recut"}}
			}
			return b.release(f, max(f.plan.Number, f.life.highest), date)
		})
	})
}

// release makes a plan go on by itself again in place of its rest; numbers up to highest
// stay used.
func (b *Folder) release(rest *Folder, highest int, date string) error {
	next := b.life.next
	if next == nil || rest != nil && next.Code != rest.plan.Code {
		return b.refuse(fmt.Sprintf("plan %s does not go on as plan %s", b.plan.Code, rest.plan.Code), "look at both folders with sawbill progress")
	}
	if next.id == "" { // a rest of version 1, of which the record does not tell
		e, err := b.record.Add(store.Entry{Plan: b.plan.Code, Date: date, Did: []string{next.says(planfile.FromFolder(b.path, next.Folder))}})
		if err != nil {
			return err
		}
		next.id = e.ID
	}
	if highest > max(b.life.highest, next.Number) {
		if _, err := b.record.Add(store.Entry{Plan: b.plan.Code, Date: date, Did: []string{fmt.Sprintf("%s %d", usedWord, highest)}}); err != nil {
			return err
		}
	}
	_, err := b.record.Add(store.Entry{Plan: b.plan.Code, Date: date, Undoes: next.id})
	return err
}
