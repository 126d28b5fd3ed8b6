package shop

import (
	"context"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"sawbill/nest/shop/planfile"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

// ours are the names of the files that version 1 wrote into the folder of a plan, which
// kept no list of them.
var ours = regexp.MustCompile(`^(plan\.(pdf|html|json|sawbill)|cutting-bill\.csv|layout-\d{2,}\.svg|elevation-(front|side|section|plan)\.svg)$`)

// dead1 are the names of files that version 1 left in the folder of a plan when it was
// stopped, and of the lock that it left in any case.
var dead1 = regexp.MustCompile(`^\.((plan\.(pdf|html|json|sawbill)|cutting-bill\.csv|layout-\d{2,}\.svg|elevation-(front|side|section|plan)\.svg)-\d+|progress\.jsonl\.lock)$`)

// tidy1 removes what version 1 left. A file that cannot be removed goes the next time.
func (f *Folder) tidy1() {
	there, err := os.ReadDir(f.path)
	if err != nil || !present(f.planPath()) {
		return
	}
	for _, e := range there {
		if e.Type().IsRegular() && dead1.MatchString(e.Name()) {
			os.Remove(filepath.Join(f.path, e.Name()))
		}
	}
}

// DefaultFolder names the folder of a job's plan, or of a what-if, if the user names none.
func DefaultFolder(path string, what job.Changes, units stock.Units) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if slug := what.Slug(units); slug != "" {
		return name + "-" + slug
	}
	return name + "-plan"
}

const elsewhere = "name another folder with -o"

// Free refuses a folder into which a plan of the job at that path may not be written, before
// there is a plan. [Place] checks it again.
func Free(ctx context.Context, folder, job string) error {
	f := folderAt(folder)
	if !f.files.There() {
		return nil // what is wrong with the path is said when the folder is made
	}
	return f.files.Look(ctx, func(h *store.Held) error {
		if err := f.adopt(h); err != nil {
			return err
		}
		if err := h.Check(nil); err != nil {
			return err
		}
		return f.claim(h, &planfile.Plan{Job: planfile.FromFolder(folder, job)})
	})
}

// Place writes a plan that was just made into a folder: its pages and, made here of p, the
// file of the program itself. It never replaces the plan of another job, a plan with progress, or
// one that goes on as another or is itself a rest. Nor does it replace files that the
// program did not write. The error is of type [fault.Faults] or [store.Waits]. Without the latter
// nothing was changed.
func Place(ctx context.Context, folder string, p *planfile.Plan, pages []store.File) error {
	f := folderAt(folder)
	return f.files.Change(ctx, func(h *store.Held) error {
		if err := f.adopt(h); err != nil {
			return err
		}
		if err := f.claim(h, p); err != nil {
			return err
		}
		files, err := f.withPlan(p, pages)
		if err != nil {
			return err
		}
		return h.Replace(files)
	})
}

// withPlan are the pages of a plan and its own file.
func (f *Folder) withPlan(p *planfile.Plan, pages []store.File) ([]store.File, error) {
	data, err := p.Written(f.planPath())
	return append(slices.Clone(pages), store.File{Name: planfile.Name, Data: data}), err
}

// adopt counts the files of version 1 as written by the program.
func (f *Folder) adopt(h *store.Held) error {
	if h.Listed() || !present(f.planPath()) {
		return nil
	}
	if _, err := planfile.Read(f.planPath()); err != nil {
		return nil // not the program's, as far as it can see
	}
	f.tidy1()
	return h.Adopt(ours.MatchString)
}

// claim refuses to replace what is in the folder by plan p.
func (f *Folder) claim(h *store.Held, p *planfile.Plan) error {
	if h.Kind() == kind && present(f.planPath()) {
		old, err := planfile.Read(f.planPath())
		if err != nil {
			return replacing(err)
		}
		f.plan = old
		if err := f.otherJob(p); err != nil {
			return err
		}
		if len(old.Continues) > 0 {
			return f.refuse(fmt.Sprintf("plan %s in it is the rest of plan %s, and would be replaced", old.Code, old.Continues[len(old.Continues)-1]), elsewhere)
		}
	} else {
		f.plan = &planfile.Plan{Code: p.Code, Number: 1}
	}
	entries, err := f.record.Read()
	if err != nil {
		return replacing(err)
	}
	standing := store.Standing(entries)
	if other := slices.IndexFunc(standing, func(e store.Entry) bool { return e.Plan != f.plan.Code }); other >= 0 {
		return fault.Faults{{File: f.record.Path(), Cause: fmt.Sprintf("the record has progress of plan %s, which would be replaced", standing[other].Plan), Remedy: elsewhere + ", or move the file away"}}
	}
	f.entries = entries
	if f.life, err = f.lifeOf(entries); err != nil {
		return err
	}
	if f.life.next == nil {
		f.life.next = f.oldSuccessor(entries)
	}
	fate, err := f.Fate()
	switch {
	case err != nil:
		return err
	case fate.Ended():
		cause, _ := fate.words(f.plan)
		return f.refuse(cause+", and would be replaced", elsewhere)
	case len(f.life.events) > 0:
		return fault.Faults{{File: f.record.Path(), Cause: fmt.Sprintf("the record has progress of plan %s, which would be replaced", f.plan.Code),
			Remedy: elsewhere + ", or plan what is left with sawbill recut"}}
	}
	return nil
}

// replacing is the refusal to replace what could not be read.
func replacing(err error) error {
	faults, ok := err.(fault.Faults)
	if !ok {
		return err
	}
	faults = slices.Clone(faults)
	for i := range faults {
		faults[i].Cause += ", and would be replaced"
		faults[i].Remedy = elsewhere + ", or move this one away"
	}
	return faults
}

// otherJob refuses to replace the plan of another job.
func (f *Folder) otherJob(p *planfile.Plan) error {
	is := path.Clean(p.Job)
	if was := f.jobPath(); was != is {
		return f.refuse(fmt.Sprintf("the folder holds plan %s of %s, which would be replaced by one of %s", f.plan.Code, printed(f.from(was)), printed(f.from(is))), elsewhere)
	}
	return nil
}

// jobPath is the path of the job from the folder. Version 1 of the file has it as it was
// typed, and the folder was made where that was typed if nothing else was said.
func (f *Folder) jobPath() string {
	if f.plan.Job != "" {
		return path.Clean(f.plan.Job)
	}
	typed := f.plan.File.Sources[0].Name
	if !filepath.IsAbs(typed) {
		typed = filepath.Join(filepath.Dir(besides(f.path)), filepath.FromSlash(typed))
	}
	return path.Clean(planfile.FromFolder(f.path, typed))
}
