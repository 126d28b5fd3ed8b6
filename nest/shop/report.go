package shop

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/progress"
	"sawbill/stock/fault"
	"sawbill/stock/store"
)

// Report holds events in the shop, reported at once.
type Report struct {
	Events []progress.Event
	Sender
}

// Sender says who reports. All of it may be empty.
type Sender struct {
	// ID becomes the ID of the entry: 16 random bytes as 22 letters. A report that is sent again
	// with its ID counts once.
	ID string
	// By is the name of the screen.
	By string
	// Plan is the code of the plan that the sender has before its eyes: a report for
	// another plan is refused.
	Plan string
	Date string // "2026-03-05"
}

// NotTaken are the events of a report that cannot have happened. Nothing of the report was
// noted.
type NotTaken []struct {
	Event progress.Event
	Why   fault.Fault
}

func (n NotTaken) Error() string {
	var lines []string
	for _, e := range n {
		lines = append(lines, e.Event.String()+": "+e.Why.Error())
	}
	return strings.Join(lines, "\n")
}

func (n NotTaken) orNil() error {
	if n == nil {
		return nil
	}
	return n
}

// Report adds events to the record, all or none, and returns the entry. It is on the disk
// when Report returns without an error. A plan that has a successor, was withdrawn or is
// booked takes none. The error is of type [NotTaken] or [fault.Faults].
func (f *Folder) Report(ctx context.Context, r Report) (added store.Entry, err error) {
	e := f.entryOf(r.Sender)
	for _, event := range r.Events {
		e.Did = append(e.Did, event.String())
	}
	err = f.change(ctx, func() error {
		if f.knows(e.ID) {
			added, err = f.record.Add(e) // which finds the one that is there
			return err
		}
		if err := f.takes(e.Plan); err != nil {
			return err
		}
		var wrong NotTaken
		for _, event := range r.Events {
			if err := f.state.Apply(event); err != nil {
				wrong = append(wrong, struct {
					Event progress.Event
					Why   fault.Fault
				}{event, err.(fault.Fault)})
			}
		}
		if err = wrong.orNil(); err == nil {
			added, err = f.record.Add(e)
		}
		if err != nil {
			f.state = f.replay()
			return err
		}
		f.entries, f.life.events = append(f.entries, added), append(f.life.events, added)
		return nil
	})
	return added, err
}

// Undo takes the last report back that counts, and returns it. Sent again with the ID of
// its sender, it takes nothing more back. The error is of type [fault.Faults].
func (f *Folder) Undo(ctx context.Context, by Sender) (undone store.Entry, err error) {
	e := f.entryOf(by)
	err = f.change(ctx, func() error {
		if i := slices.IndexFunc(f.entries, func(was store.Entry) bool { return was.ID == e.ID && was.Undoes != "" }); e.ID != "" && i >= 0 {
			undone = f.entry(f.entries[i].Undoes)
			return nil
		}
		if err := f.takes(e.Plan); err != nil {
			return err
		}
		last := len(f.life.events) - 1
		if last < 0 {
			return fault.Faults{{File: f.record.Path(), Cause: "there is nothing to take back", Remedy: "report first what is done"}}
		}
		undone = f.life.events[last]
		e.Undoes = undone.ID
		if _, err := f.record.Add(e); err != nil {
			return err
		}
		return f.renew(ctx)
	})
	return undone, err
}

// takes refuses a report to a plan that takes none any more, and one of another plan than
// that of the folder.
func (f *Folder) takes(plan string) error {
	if err := f.going(); err != nil {
		return err
	}
	if plan != f.plan.Code {
		return f.refuse(fmt.Sprintf("the report is of plan %s, the folder holds plan %s", plan, f.plan.Code), "look at the plan of the folder and report again")
	}
	return nil
}

// replay is the state after the events of the record, from the beginning.
func (f *Folder) replay() *progress.State {
	state := f.begin()
	if err := f.tell(state, f.life.events); err != nil {
		panic("shop: an event that was accepted before: " + err.Error())
	}
	return state
}

// entryOf is an entry about the plan that the sender names; without one, about the
// folder's.
func (f *Folder) entryOf(s Sender) store.Entry {
	return store.Entry{ID: s.ID, By: s.By, Plan: cmp.Or(s.Plan, f.plan.Code), Date: s.Date}
}

// knows reports whether the record has an entry with this id.
func (f *Folder) knows(id string) bool { return id != "" && f.entry(id).ID != "" }

func (f *Folder) entry(id string) store.Entry {
	for _, e := range f.entries {
		if e.ID == id {
			return e
		}
	}
	return store.Entry{}
}
