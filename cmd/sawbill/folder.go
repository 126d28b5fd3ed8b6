package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

// progressName is that of the record of progress in a plan's folder.
const progressName = "progress.jsonl"

// underWay is what the folder's file holds.
type underWay = planfile.Plan

// planFolder is the folder of a plan, with what was told of its progress.
type planFolder struct {
	path string
	*underWay
	record  store.Record
	entries []store.Entry
	state   *progress.State
}

// openFolder opens the folder that is the command's only operand; a file in it means
// the same.
func (in *invocation) openFolder() (*planFolder, error) {
	if len(in.operands) != 1 {
		return nil, usageError{fmt.Sprintf("%s takes the folder of one plan, not %d", in.name, len(in.operands)), fmt.Sprintf("see \"sawbill help %s\"", in.name)}
	}
	return folderAt(in.operands[0])
}

func folderAt(path string) (*planFolder, error) {
	if info, err := os.Stat(path); err == nil && !info.IsDir() {
		path = filepath.Dir(path)
	}
	p, err := planfile.Read(filepath.Join(path, planfile.Name))
	if err != nil {
		return nil, err
	}
	f := &planFolder{path: path, underWay: p, record: store.RecordAt(filepath.Join(path, progressName))}
	if f.entries, err = f.record.Read(); err != nil {
		return nil, err
	}
	f.state, err = f.stateAfter(f.entries)
	return f, err
}

// stateAfter is what the entries add up to.
func (f *planFolder) stateAfter(entries []store.Entry) (*progress.State, error) {
	s := progress.Begin(f.Plan, f.Made...)
	s.Code = f.Code
	for _, e := range store.Standing(entries) {
		if e.Plan != f.Code {
			return nil, job.Faults{{File: f.record.Path(), Line: e.Number, Cause: fmt.Sprintf("tells of plan %s, the folder is of %s", e.Plan, f.Code), Remedy: "move the file away: it belongs to a plan that was replaced"}}
		}
		for _, did := range e.Did {
			event, err := progress.ParseEvent(did)
			if err == nil {
				err = s.Tell(event)
			}
			if err != nil {
				return nil, job.Faults{{File: f.record.Path(), Line: e.Number, Cause: err.Error(), Remedy: "delete this line and those behind it, or move the file away"}}
			}
		}
	}
	return s, nil
}

// tell adds events to the record, all or none.
func (f *planFolder) tell(ctx context.Context, events []progress.Event, date string) (store.Entry, error) {
	return f.add(ctx, func(before []store.Entry) (store.Entry, error) {
		s, err := f.stateAfter(before)
		if err != nil {
			return store.Entry{}, err
		}
		var wrong job.Faults
		e := store.Entry{Plan: f.Code, Date: date}
		for _, event := range events {
			if err := s.Tell(event); err != nil {
				told := err.(progress.Wrong)
				wrong = append(wrong, job.Fault{File: "--" + event.String(), Cause: told.Cause, Remedy: told.Remedy})
				continue
			}
			e.Did = append(e.Did, event.String())
		}
		if wrong != nil {
			return store.Entry{}, wrong
		}
		f.state = s
		return e, nil
	})
}

// undo takes the last entry that counts back, and returns it.
func (f *planFolder) undo(ctx context.Context, date string) (undone store.Entry, err error) {
	_, err = f.add(ctx, func(before []store.Entry) (store.Entry, error) {
		standing := store.Standing(before)
		if len(standing) == 0 {
			return store.Entry{}, job.Faults{{File: f.record.Path(), Cause: "there is nothing to take back", Remedy: "what is done is told there first"}}
		}
		undone = standing[len(standing)-1]
		return store.Entry{Plan: f.Code, Date: date, Undoes: undone.ID}, nil
	})
	return undone, err
}

// add adds the entry that next makes of those before it, while no other program adds any.
func (f *planFolder) add(ctx context.Context, next func(before []store.Entry) (store.Entry, error)) (added store.Entry, err error) {
	wrong := error(nil) // with the entry, not with the lock
	err = store.Locked(ctx, filepath.Join(f.path, ".sawbill.lock"), func() error {
		var before []store.Entry
		if before, wrong = f.record.Read(); wrong == nil {
			if added, wrong = next(before); wrong == nil {
				added, wrong = f.record.Add(added)
			}
		}
		return wrong
	})
	switch {
	case wrong != nil:
		return store.Entry{}, wrong
	case errors.Is(err, store.ErrBusy):
		return store.Entry{}, job.Faults{{File: f.path, Cause: "another program is writing to it", Remedy: "wait until it has ended, and try again; nothing was changed"}}
	case err != nil:
		return store.Entry{}, job.Faults{{File: f.path, Cause: fmt.Sprintf("cannot be locked (%v)", err), Remedy: "nothing was changed; look at the folder and its permissions"}}
	}
	return added, nil
}

// rackPath is where the rack's file is from here; empty where the job names none.
func (f *planFolder) rackPath() string { return f.fromHere(f.Rack) }

// jobPath is where the job's file is from here; empty where that is not known.
func (f *planFolder) jobPath() string { return f.fromHere(f.Job) }

func (f *planFolder) fromHere(path string) string {
	if path == "" || filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(f.path, filepath.FromSlash(path))
}

// unclaimed refuses a folder in which there is progress of another plan: to write over
// that plan would lose what was told.
func unclaimed(folder, code string) error {
	path := filepath.Join(folder, progressName)
	if _, err := os.Stat(path); err != nil {
		return nil // what is wrong with the folder is told when it is written
	}
	entries, err := store.RecordAt(path).Read()
	if err != nil {
		return err
	}
	if i := slices.IndexFunc(entries, func(e store.Entry) bool { return e.Plan != code }); i >= 0 {
		return job.Faults{{File: path, Cause: fmt.Sprintf("tells how far plan %s has come, which would be replaced", entries[i].Plan),
			Remedy: "name another folder with -o, or plan what is left with sawbill recut"}}
	}
	return nil
}

// nextFolder is where the rest of a plan goes if nothing else is said: the same name
// with the next number.
func nextFolder(path string) string {
	path = filepath.Clean(path)
	if base := filepath.Base(path); base == "." || base == ".." { // beside it, not in it
		if whole, err := filepath.Abs(path); err == nil {
			path = whole
		}
	}
	at := strings.LastIndex(path, "-")
	if n, err := strconv.Atoi(path[at+1:]); at >= 0 && err == nil && n > 1 && n < 100 { // not a year
		return path[:at+1] + strconv.Itoa(n+1)
	}
	return path + "-2"
}
