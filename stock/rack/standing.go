package rack

import (
	"context"
	"errors"
	"fmt"
	"os"

	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

// standing is how things stand with a rack while its lock is held.
type standing struct {
	rack  Rack
	past  past
	text  string // of the file
	there bool   // the file is
}

// locked puts right what a program that was stopped left behind, and does what
// is to be done while no other program does.
func (r Rack) locked(ctx context.Context, do func(*standing) error) error {
	wrong := error(nil) // of what was done, which is no trouble with the lock
	err := store.Locked(ctx, r.lockFile(), func() error {
		wrong = r.stand(do)
		return wrong
	})
	switch {
	case wrong != nil:
		return wrong
	case errors.Is(err, store.ErrBusy):
		return r.fault("", "another program is changing the rack", "wait until it has ended, and try again; nothing was changed")
	case err != nil:
		return r.cannot("locked", r.path, err)
	}
	return nil
}

func (r Rack) stand(do func(*standing) error) (err error) {
	s := &standing{rack: r}
	if s.past, err = r.readPast(); err != nil {
		return err
	}
	if s.text, s.there, err = store.Contents(r.path); err != nil {
		return r.cannot("read", r.path, err)
	}
	if err := s.recover(); err != nil {
		return err
	}
	return do(s)
}

// recover ends a change that was stopped on the way, or gives it up, and removes what is
// left of it.
func (s *standing) recover() error {
	r := s.rack
	ready, there, err := store.Contents(r.newFile())
	if err != nil {
		return r.cannot("read", r.newFile(), err)
	}
	if err := store.CutTorn(r.history(), s.past.good); err != nil {
		return r.cannot("written", r.history(), err)
	}
	switch {
	case !there:
		return nil
	case s.promised(ready):
		err := s.place()
		if err == nil {
			err = store.SyncFolder(r.folder())
		}
		if err != nil {
			return r.cannot("replaced", r.path, err)
		}
		return nil
	case s.past.last() > 0 && s.text != s.past.text && ready == s.past.text:
		back := s.past.last() - 1
		e := Entry{What: "gave up the change before, which was stopped: the file was edited meanwhile", Back: &back, Undo: true}
		if err := s.note(&e, s.past.state(back)); err != nil {
			return err
		}
	}
	if err := os.Remove(r.newFile()); err != nil {
		return r.cannot("removed", r.newFile(), err)
	}
	return nil
}

// promised reports whether the new file is the state that the last line of the history
// promises, and the rack's file still the state before.
func (s *standing) promised(ready string) bool {
	last := s.past.last()
	return last > 0 && ready == s.past.text && s.text != s.past.text && s.text == s.past.state(last-1)
}

// byHand reports whether the file was edited since the last change.
func (s *standing) byHand() bool { return s.text != s.past.text }

// read reads the file as it stands. A rack that has none yet is begun, in the
// units given.
func (s *standing) read(units stock.Units) (*job.Rack, error) {
	switch {
	case s.text != "":
		return job.ParseRack(s.rack.path, []byte(s.text))
	case s.past.text != "":
		return nil, s.rack.fault("", "the file is gone or empty, though its history is there",
			"bring it back with sawbill rack undo or restore, or move "+s.rack.history()+" away to begin anew")
	}
	return begun(s.rack.path, units)
}

// noteEdit adds to the history that the file was edited by hand, if it was.
func (s *standing) noteEdit(date string) error {
	if s.text == s.past.text {
		return nil
	}
	e := Entry{Date: date, What: "edited by hand"}
	switch {
	case !s.there:
		e.What = "the file was gone"
	case s.past.last() == 0:
		e.What = "as it was found"
	}
	if file, err := job.ParseRack(s.rack.path, []byte(s.text)); err != nil {
		e.What += ", and cannot be read"
	} else {
		e.Highest = highest(file.Pieces)
	}
	gone, come := s.rack.difference(s.past.text, s.text)
	e.Out, e.In = idsOf(gone), idsOf(come)
	return s.note(&e, s.text)
}

// note adds an entry to the history that leads to a state.
func (s *standing) note(e *Entry, state string) error {
	e.Version, e.Number = versionNow, s.past.last()+1
	e.Highest = max(e.Highest, s.past.highest())
	e.leads(s.past.text, state)
	line := e.line()
	if err := store.Append(s.rack.history(), s.past.good, line); err != nil {
		return s.rack.cannot("written", s.rack.history(), err)
	}
	s.past.entries = append(s.past.entries, *e)
	s.past.text = state
	s.past.good += int64(len(line))
	return nil
}

// make makes a change: see the order of its steps in the package's comment. An edit is
// noted before the new file is written: else a new file that is like the last state could
// be of a change made and not put in place, or of one not made that goes back.
func (s *standing) make(e *Entry, after string) error {
	if err := s.noteEdit(e.Date); err != nil {
		return err
	}
	r, good := s.rack, s.past.good
	if err := store.Write(r.newFile(), after, r.path); err != nil {
		os.Remove(r.newFile())
		return r.cannot("written", r.newFile(), err)
	}
	if err := s.note(e, after); err != nil {
		os.Remove(r.newFile())
		return err
	}
	if err := s.place(); err != nil {
		// Perhaps an editor holds the file open. Without its line the change was
		// never made.
		if os.Truncate(r.history(), good) == nil {
			os.Remove(r.newFile())
		}
		return r.cannot("replaced", r.path, err)
	}
	if err := store.SyncFolder(r.folder()); err != nil {
		return r.fault("", fmt.Sprintf("the change was made, but the folder cannot be synced (%v)", err), "it may be lost if the power fails now")
	}
	return nil
}

// place puts the new file in place of the old one.
func (s *standing) place() error {
	if err := os.Rename(s.rack.newFile(), s.rack.path); err != nil {
		return err
	}
	s.text, s.there = s.past.text, true
	return nil
}
