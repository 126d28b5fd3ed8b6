package main

import (
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"
)

// ownFault is an error that only a fault of the program can cause.
type ownFault struct{ error }

// tellOwnFault reports v, the value of a panic or an ownFault, with all that is needed to
// find the cause.
func tellOwnFault(w io.Writer, args []string, v any) {
	stack := debug.Stack()
	if other, ok := v.(interface{ Stack() []byte }); ok {
		stack = other.Stack() // of the goroutine that panicked
	}
	fmt.Fprintf(w, "sawbill: the program itself is at fault: %s; no file is half written.\n", oneLine(fmt.Sprint(v)))
	fmt.Fprintf(w, "Keep the job file and all files that it names, and send them to the makers of\nSawbill with the lines below.\n")
	fmt.Fprintf(w, "  command: sawbill%s\n", commandLine(args))
	fmt.Fprintf(w, "  version: %s, %s, %s/%s\n", version(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
	for _, line := range shortStack(string(stack)) {
		fmt.Fprintf(w, "  %s\n", line)
	}
}

// commandLine is args as somebody would type them.
func commandLine(args []string) string {
	var b strings.Builder
	for _, a := range args {
		a = oneLine(a)
		if len(a) > longestArgument {
			a = a[:longestArgument] + "..."
		}
		if a == "" || strings.ContainsAny(a, " \t'\"\\$&|;<>()*?[]#~`") {
			a = "'" + strings.ReplaceAll(a, "'", `'\''`) + "'"
		}
		b.WriteString(" " + a)
	}
	return b.String()
}

const deepest = 12 // calls that are told

// shortStack is the innermost calls since the panic, each with its place, without
// what the runtime does and without addresses.
func shortStack(stack string) []string {
	lines := strings.Split(stack, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "panic(") {
			lines = lines[i:]
		}
	}
	var told []string
	for i := 0; i+1 < len(lines) && len(told) < deepest; i++ {
		call, place := lines[i], lines[i+1]
		if !strings.HasPrefix(place, "\t") || strings.HasPrefix(call, "panic(") || strings.HasPrefix(call, "runtime.") || strings.HasPrefix(call, "goroutine ") || strings.HasPrefix(call, "created by ") {
			continue
		}
		if at := strings.LastIndex(call, "("); at > 0 {
			call = call[:at]
		}
		place, _, _ = strings.Cut(strings.TrimSpace(place), " +0x")
		if at := strings.LastIndex(place, "/"); at >= 0 {
			place = place[at+1:]
		}
		told = append(told, call+" "+place)
		i++
	}
	return told
}
