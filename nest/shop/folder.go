package shop

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
	"sawbill/stock/fault"
	"sawbill/stock/store"
)

// RecordName is the name of the record in the folder.
const RecordName = "progress.jsonl"

// kind names the contents of the folder in a refusal.
const kind = "plan"

// Folder is the folder of a plan under way. It keeps plan, record and state from one call
// to the next, and renews them where another program changed the folder. It is for one
// goroutine at a time.
type Folder struct {
	path   string
	files  store.Folder
	record store.Record

	read    os.FileInfo // of plan.sawbill when it was read
	plan    *planfile.Plan
	entries []store.Entry
	life    life
	state   *progress.State
	pred    *Folder // of the plan before, once it was read
}

func folderAt(path string) *Folder {
	path = filepath.Clean(path)
	return &Folder{path: path, files: store.FolderAt(path, kind), record: store.RecordAt(filepath.Join(path, RecordName))}
}

// Open opens the folder at path; a file in it means the folder. The error is of type
// [fault.Faults].
func Open(ctx context.Context, path string) (*Folder, error) {
	if info, err := os.Stat(path); err == nil && !info.IsDir() {
		path = filepath.Dir(path)
	}
	f := folderAt(path)
	return f, f.Refresh(ctx)
}

// Refresh reads what other programs have changed.
func (f *Folder) Refresh(ctx context.Context) error {
	if !f.files.There() {
		_, err := planfile.Read(f.planPath()) // which says that there is none
		return err
	}
	return f.files.Look(ctx, func(h *store.Held) error { return f.readAgain(ctx, h) })
}

// change calls do with the lock of the folder held and all that it says read anew.
func (f *Folder) change(ctx context.Context, do func() error) error {
	return f.files.Look(ctx, func(h *store.Held) error {
		if err := f.readAgain(ctx, h); err != nil {
			return err
		}
		if h.Unlocked() {
			return f.refuse("the folder takes no new file, so nothing can be noted in it", "make the folder writable and try again; nothing was changed")
		}
		return do()
	})
}

func (f *Folder) readAgain(ctx context.Context, h *store.Held) error {
	if !h.Listed() {
		f.tidy1()
	}
	return f.renew(ctx)
}

// renew reads the plan, if it was replaced, and the record, if it grew.
func (f *Folder) renew(ctx context.Context) error {
	info, err := os.Stat(f.planPath())
	if err != nil || f.read == nil || !unchanged(f.read, info) {
		plan, err := planfile.Read(f.planPath())
		if err != nil {
			return err
		}
		f.read, f.plan, f.state, f.pred = info, plan, nil, nil
	}
	f.record.Settle()
	entries, err := f.record.Read()
	if err != nil {
		return err
	}
	life, err := f.lifeOf(entries)
	if err != nil {
		return err
	}
	if life.next == nil {
		life.next = f.oldSuccessor(entries)
	} else if next := store.FolderAt(life.next.Folder, kind); next.Unsettled() {
		// The program was stopped before it had put the pages of the rest in place.
		if err := next.Look(ctx, func(*store.Held) error { return nil }); err != nil {
			return err
		}
	}
	state, err := f.stateAfter(life.events)
	if err != nil {
		return err
	}
	f.entries, f.life, f.state = entries, life, state
	return nil
}

// unchanged reports whether a file is the one that was read.
func unchanged(was, is os.FileInfo) bool {
	return os.SameFile(was, is) && is.ModTime().Equal(was.ModTime()) && is.Size() == was.Size()
}

// stateAfter is the state of the plan after these events. The state so far goes on if it
// is one of their beginning.
func (f *Folder) stateAfter(events []store.Entry) (*progress.State, error) {
	state, told := f.state, len(f.life.events)
	if state == nil || told > len(events) || !slices.EqualFunc(f.life.events, events[:told], sameEntry) {
		state, told = f.begin(), 0
	}
	f.state = nil // until all of them are told
	return state, f.tell(state, events[told:])
}

// tell applies the events to a state. The error names the line of the record.
func (f *Folder) tell(state *progress.State, events []store.Entry) error {
	for _, e := range events {
		for _, did := range e.Did {
			event, err := progress.ParseEvent(did)
			if err == nil {
				err = state.Apply(event)
			}
			if err != nil {
				return fault.Faults{{File: f.record.Path(), Line: e.Number, Cause: err.Error(), Remedy: "put back a copy of the file, or delete this line and those behind it"}}
			}
		}
	}
	return nil
}

func sameEntry(a, b store.Entry) bool { return a.ID == b.ID && slices.Equal(a.Did, b.Did) }

// begin is the state of the plan before anything was reported.
func (f *Folder) begin() *progress.State {
	s := progress.Begin(f.plan.Plan, f.plan.Made...)
	s.Code = f.plan.Code
	return s
}

// Path is where the folder is.
func (f *Folder) Path() string { return f.path }

// Plan is the plan of the folder.
func (f *Folder) Plan() *planfile.Plan { return f.plan }

// State is how far the plan has come by its record. Only the folder changes it.
func (f *Folder) State() *progress.State { return f.state }

// RackPath is where the rack of the job is from here; empty where the job names none.
func (f *Folder) RackPath() string { return f.from(f.plan.Rack) }

func (f *Folder) planPath() string { return filepath.Join(f.path, planfile.Name) }

// from is a path that is written in the folder, as it is from here.
func (f *Folder) from(path string) string {
	if path == "" || filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(f.path, filepath.FromSlash(path))
}

// refuse is one fault of the folder.
func (f *Folder) refuse(cause, remedy string) error {
	return fault.Faults{{File: f.path, Cause: cause, Remedy: remedy}}
}

func present(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// printed is a path as the program prints it in a command.
func printed(path string) string {
	path = filepath.ToSlash(path)
	for _, r := range path {
		if !(r == '/' || r == '.' || r == '-' || r == '_' || r == ':' || r == '~' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' || r > 127) {
			return fmt.Sprintf("%q", path)
		}
	}
	return path
}
