package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"sawbill/stock/fault"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

// Exit statuses.
const (
	exitDone       = 0
	exitWrongInput = 1 // nothing was written
	exitWrongUsage = 2
	exitIncomplete = 3 // a plan was written, but not every blank fits
	exitOwnFault   = 4 // of the program itself
	exitAfterwards = 5 // all was written, and something failed after that
)

// command is one thing the program does.
type command struct {
	name  string
	args  string // of the usage line
	about string // one line
	more  string // paragraphs for its own help page
	flags func(*pflag.FlagSet, *settings)
	run   func(*invocation) (int, error)
}

func commands() []command {
	return []command{newCommand(), partsCommand(), planCommand(), compareCommand(), progressCommand(), recutCommand(), rackCommand(), schemaCommand()}
}

// invocation is one call of a command.
type invocation struct {
	command
	settings
	operands       []string
	stdout, stderr *safe
}

// usageError is a mistake on the command line.
type usageError struct{ fault.Fault }

func usage(cause, remedy string) error { return usageError{fault.New(cause, remedy)} }

// afterwards is a failure after all was written: the answer could not be printed.
type afterwards struct{ error }

// printed wraps an error of printing an answer after all was written.
func printed(err error) error {
	if err == nil {
		return nil
	}
	return afterwards{fmt.Errorf("all was written, but the answer cannot be printed: %w", err)}
}

// run does what args say and returns the exit status. Results go to stdout and
// files, all else to stderr. Neither gets a character that steers a terminal.
func run(args []string, stdout, stderr io.Writer) (status int) {
	out, errs := safeWriter(stdout), safeWriter(stderr)
	defer func() {
		if v := recover(); v != nil {
			tellOwnFault(errs, args, v)
			status = exitOwnFault
		}
		out.flush()
		errs.flush()
	}()
	status, err := dispatch(args, out, errs)
	var wrong usageError
	var waits store.Waits
	var after afterwards
	var own ownFault
	switch {
	case errors.As(err, &own):
		tellOwnFault(errs, args, err)
		return exitOwnFault
	case errors.As(err, &waits), errors.As(err, &after):
		fmt.Fprintln(errs, err)
		return exitAfterwards
	case errors.As(err, &wrong):
		fmt.Fprintln(errs, "sawbill:", err)
		return exitWrongUsage
	case err != nil:
		fmt.Fprintln(errs, err)
		return exitWrongInput
	}
	return status
}

func dispatch(args []string, stdout, stderr *safe) (int, error) {
	if err := checkArguments(args); err != nil {
		return 0, err
	}
	if len(args) == 0 {
		return 0, usage("no command given", "try \"sawbill help\"")
	}
	switch name := args[0]; name {
	case "help", "-h", "--help":
		if len(args) > 1 {
			c, err := find(args[1])
			if err != nil {
				return 0, err
			}
			c.help(stdout)
			return exitDone, nil
		}
		overview(stdout)
		return exitDone, nil
	case "version", "--version":
		fmt.Fprintln(stdout, "sawbill", version())
		return exitDone, nil
	default:
		c, err := find(name)
		if err != nil {
			return 0, err
		}
		return c.call(args[1:], stdout, stderr)
	}
}

func find(name string) (command, error) {
	var known []string
	for _, c := range commands() {
		if c.name == name {
			return c, nil
		}
		known = append(known, c.name)
	}
	return command{}, usage(fmt.Sprintf("there is no command %q", name), "the commands are "+strings.Join(known, ", ")+", help and version")
}

// call parses the flags and operands of c and runs it.
func (c command) call(args []string, stdout, stderr *safe) (int, error) {
	in := &invocation{command: c, stdout: stdout, stderr: stderr}
	flags := c.flagSet(&in.settings)
	switch err := flags.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		c.help(stdout)
		return exitDone, nil
	case err != nil:
		return 0, usage(err.Error(), fmt.Sprintf("see \"sawbill help %s\"", c.name))
	}
	in.operands = flags.Args()
	if err := noneEmpty(flags); err != nil {
		return 0, err
	}
	if slices.Contains(in.operands, "") {
		return 0, usage("an operand is empty", "name a file or a folder; a shell variable in it may be empty")
	}
	if err := in.settings.check(); err != nil {
		return 0, err
	}
	return c.run(in)
}

// noneEmpty refuses a flag with an empty text behind it, which would mean something
// else than what was typed.
func noneEmpty(flags *pflag.FlagSet) (wrong error) {
	flags.Visit(func(f *pflag.Flag) {
		if list, ok := f.Value.(pflag.SliceValue); wrong == nil && (f.Value.String() == "" || ok && slices.Contains(list.GetSlice(), "")) {
			wrong = usage(fmt.Sprintf("--%s is empty", f.Name), "write a value behind it, or leave it out")
		}
	})
	return wrong
}

func (c command) flagSet(s *settings) *pflag.FlagSet {
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.Usage = func() {}
	flags.SetOutput(io.Discard)
	if c.flags != nil {
		c.flags(flags, s)
	}
	return flags
}

// read reads the job file that is the command's only operand, and tells of what
// is worth reading in it.
func (in *invocation) read() (*job.File, error) {
	if len(in.operands) != 1 {
		return nil, usage(fmt.Sprintf("%s takes one job file, not %d", in.name, len(in.operands)), fmt.Sprintf("see \"sawbill help %s\"", in.name))
	}
	file, err := job.ReadSettled(in.operands[0], in.changes, settled)
	if err != nil {
		return nil, err
	}
	warn(in, file.Warnings)
	return file, nil
}
