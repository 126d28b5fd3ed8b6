package main

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/pflag"
)

// hostile texts steer a terminal, turn text around, or are no text.
var hostile = []string{"\x1b]0;owned\a\x1b[2J", "a\rb\b", "a\u009b2J", "a\u202eb\u2066", "a\u2028b", "\xff\xfe", "a\x00b"}

// No command writes what steers a terminal, whatever stands in a file, a name or a flag.
func TestNoCommandPassesOnWhatSteersTheTerminal(t *testing.T) {
	t.Chdir(t.TempDir())
	writeText(t, "good.toml", smallJob)
	writeText(t, "good-rack.toml", smallRack)
	if status, _, errs := call(t, "plan", "good.toml", "--iterations", "1"); status != exitDone {
		t.Fatal(errs)
	}
	record := fileText(t, "good-plan/plan.sawbill")
	try := func(args ...string) {
		t.Helper()
		_, out, errs := call(t, args...)
		clean(t, fmt.Sprintf("%q", args), out+errs)
	}
	for _, bad := range hostile {
		for _, c := range commands() {
			try(c.name, bad)
			try(c.name, "good.toml", bad)
			try(c.name, "good-plan", "--"+bad)
			c.flagSet(new(settings)).VisitAll(func(f *pflag.Flag) { try(c.name, "good.toml", "--"+f.Name, bad) })
		}
		for _, v := range rackVerbs {
			try("rack", v.name, bad, "--rack", "good-rack.toml")
			try("rack", v.name, "--rack", bad)
		}
		try(bad)
		try("help", bad)
		try("rack", bad)
		for _, quoted := range []string{bad, strings.Trim(fmt.Sprintf("%+q", bad), `"`)} { // as it is, and as TOML writes it
			for _, text := range []string{
				"title = \"" + quoted + "\"\n" + smallJob,
				quoted + " = 1\n" + smallJob,
				"\"" + quoted + "\" = 1\n" + smallJob,
				"[" + quoted + "]\n" + smallJob,
				"parts = \"" + quoted + "\"\n" + smallJob,
				strings.Replace(smallJob, "shelf", quoted, 1),
				strings.ReplaceAll(smallJob, "birch ply", quoted),
				strings.Replace(smallJob, "2440", "2440"+quoted, 1),
			} {
				writeText(t, "bad.toml", text)
				try("parts", "bad.toml")
				try("plan", "bad.toml", "--iterations", "1")
				try("compare", "bad.toml", "--iterations", "1")
			}
			writeText(t, "list.csv", "name,material,length,width,"+quoted+"\n"+quoted+",birch ply,900,300,1\n"+quoted+";birch\n")
			writeText(t, "lists.toml", "parts = \"list.csv\"\n"+smallJob)
			try("parts", "lists.toml")
			try("rack", "import", "list.csv", "--rack", "good-rack.toml")
			writeText(t, "bad-rack.toml", strings.Replace(smallRack, "birch ply", quoted, 1)+"note = \""+quoted+"\"\n")
			for _, v := range rackVerbs {
				try("rack", v.name, "--rack", "bad-rack.toml")
			}
			writeText(t, "good-plan/plan.sawbill", strings.ReplaceAll(record, "shelf", quoted))
			try("progress", "good-plan")
			try("recut", "good-plan")
			writeText(t, "good-plan/plan.sawbill", record)
			try("progress", "good-plan", "--good", quoted)
			writeText(t, "good-plan/progress.jsonl", quoted+"\n")
			try("progress", "good-plan")
			try("rack", "book", "good-plan", "--rack", "good-rack.toml")
			writeText(t, "good-plan/progress.jsonl", "")
		}
	}
}

// clean fails if text holds what a terminal could obey.
func clean(t *testing.T, what, text string) {
	t.Helper()
	obeyed := func(r rune) bool {
		return r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 || strings.ContainsRune("\u202e\u2066\u2028", r)
	}
	if !utf8.ValidString(text) || strings.ContainsFunc(text, obeyed) {
		t.Errorf("%s: %q", what, text)
	}
}
