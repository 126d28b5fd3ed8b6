package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"sawbill/nest/shop/planfile"
	"sawbill/report"
	"sawbill/stock/store"
)

// write makes the pages of a plan, has them put into their folder and says what is in the
// plan.
func (in *invocation) write(p *planfile.Plan, o report.Options, folder string, put func(context.Context, []store.File) error) (int, error) {
	p.Code = report.Identity(p.Plan, o)
	if whole, err := filepath.Abs(folder); err == nil {
		o.Folder = filepath.Base(whole) // equal jobs give equal pages wherever they lie
	}
	pages, warnings, err := planPages(p.Plan, o)
	if err != nil {
		return 0, err
	}
	if err := in.patiently(func(ctx context.Context) error { return put(ctx, pages) }); err != nil {
		return 0, err
	}
	warn(in, warnings)
	if err := report.Summary(in.stdout, p.Plan, o); err != nil {
		return 0, printed(err)
	}
	fmt.Fprintf(in.stdout, "\nWritten to %s: plan.pdf, plan.html, plan.json, cutting-bill.csv%s and %s.\n", filepath.ToSlash(folder), elevationsSaid(o), pictures(len(p.Plan.Layouts)))
	if !p.Plan.Complete() {
		return exitIncomplete, nil
	}
	return exitDone, nil
}

func elevationsSaid(o report.Options) string {
	if o.Case == nil || o.Rest != nil {
		return ""
	}
	return ", elevation-*.svg"
}

// patiently calls do, which may wait for other programs for some time, until Ctrl-C.
func (in *invocation) patiently(do func(context.Context) error) error {
	ctx, end := waiting()
	defer end()
	return do(ctx)
}

// replace writes a file beside its place and moves it there, if it may go. A program that
// is stopped leaves a file that the next one takes for its own.
func (in *invocation) replace(path string, data []byte, mayGo func(path string) error) error {
	refused := error(nil)
	err := in.patiently(func(ctx context.Context) error {
		beside := filepath.Join(filepath.Dir(path), "."+filepath.Base(path))
		return store.Locked(ctx, beside+".lock", func() error {
			if refused = mayGo(path); refused != nil {
				return refused
			}
			err := store.Write(beside+".new", string(data), path)
			if err == nil {
				err = os.Rename(beside+".new", path)
			}
			if err != nil {
				os.Remove(beside + ".new")
			}
			return err
		})
	})
	switch {
	case refused != nil:
		return refused
	case errors.Is(err, store.ErrBusy):
		return fmt.Errorf("%s: another program is writing it; wait until it has ended, and try again", path)
	case err != nil:
		return fmt.Errorf("%s: cannot be written: %w; name another file with -o, or close it where it is open", path, store.Bare(err))
	}
	return nil
}
