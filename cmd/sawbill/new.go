package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"sawbill/stock/store"
)

//go:embed starter.toml
var starter string

func newCommand() command {
	return command{
		name:  "new",
		args:  "[FILE]",
		about: "a commented starter job",
		more: `Writes a small job with a comment on every key to FILE, which must not be there
yet, or prints it.
`,
		run: newJob,
	}
}

func newJob(in *invocation) (int, error) {
	switch len(in.operands) {
	case 0:
		fmt.Fprint(in.stdout, starter)
		return exitDone, nil
	case 1:
	default:
		return 0, usage(fmt.Sprintf("new takes one file, not %d", len(in.operands)), "see \"sawbill help new\"")
	}
	name := in.operands[0]
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return 0, fmt.Errorf("%s: is there already and stays as it is; choose another name", name)
	}
	if err != nil {
		return 0, fmt.Errorf("%s: cannot be written: %w; choose another folder", name, store.Bare(err))
	}
	_, err = f.WriteString(starter)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		os.Remove(name)
		return 0, fmt.Errorf("%s: cannot be written: %w; choose another folder", name, store.Bare(err))
	}
	fmt.Fprintf(in.stdout, "%s is a small job to change into yours. Next: sawbill plan %s\n", name, name)
	return exitDone, nil
}
