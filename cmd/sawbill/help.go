package main

import (
	"fmt"
	"io"
	"runtime/debug"
)

// overview prints what the program does and its commands.
func overview(w io.Writer) {
	fmt.Fprint(w, `Sawbill turns a case design or a part list into a shopping list and diagrams to
saw from.

Usage:
  sawbill COMMAND [FLAGS] [FILE]

Commands:
`)
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-14s %s\n", c.name+" "+c.args, c.about)
	}
	fmt.Fprint(w, `  help COMMAND   more about one of them
  version        the program's version

Exit status: 0 done; 1 the input is wrong and nothing was written; 2 the command
line is wrong; 3 a plan was written, but not every blank fits; 4 the program itself
is at fault, and says what to keep and send; 5 all was written, and what failed
after that is said.
`)
}

func (c command) help(w io.Writer) {
	fmt.Fprintf(w, "sawbill %s: %s\n\nUsage:\n  sawbill %s [FLAGS] %s\n\n%s", c.name, c.about, c.name, c.args, c.more)
	var s settings
	if flags := c.flagSet(&s); flags.HasFlags() {
		fmt.Fprintf(w, "\nFlags:\n%s", flags.FlagUsages())
	}
}

// version returns the module's version, as the build recorded it.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "(unknown)"
}
