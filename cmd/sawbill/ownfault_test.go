package main

import (
	"bytes"
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/report"
	"sawbill/stock"
	"sawbill/stock/job"
)

// jammed panics when it is written to.
type jammed struct{}

func (jammed) Write([]byte) (int, error) { panic("the paper\njams") }

// A panic anywhere in a command becomes a report with a status of its own.
func TestAPanicIsReportedAsAFaultOfTheProgram(t *testing.T) {
	var errs bytes.Buffer
	if status := run([]string{"help", "plan"}, jammed{}, &errs); status != exitOwnFault {
		t.Errorf("status %d", status)
	}
	got := errs.String()
	for _, want := range []string{
		`^sawbill: the program itself is at fault: the paper<U\+000A>jams; no file is half written\.\n`,
		`(?m)^Keep the job file and all files that it names`,
		`(?m)^  command: sawbill help plan$`,
		`(?m)^  version: \S+, go1\.\d+\S*, \w+/\w+$`,
		`(?m)^  sawbill/cmd/sawbill\.jammed\.Write ownfault_test\.go:\d+$`,
	} {
		if !regexp.MustCompile(want).MatchString(got) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
	if n := strings.Count(got, "\n"); n > 5+deepest {
		t.Errorf("%d lines are too many:\n%s", n, got)
	}
}

// A plan whose steps do not give its pieces makes no pages.
func TestAPlanThatCannotBeSawnIsNotShown(t *testing.T) {
	file, err := job.Read("../../testdata/jobs/van-shelves.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := cutplan.Make(t.Context(), file.Job, cutplan.Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := planPages(p, report.Options{}); err != nil {
		t.Fatal(err)
	}
	steps := slices.Clone(p.Steps(p.Layouts[0]))
	steps[5].Setting += stock.Millimeter
	p.Layouts[0].Printed = steps
	files, _, err := planPages(p, report.Options{})
	var own ownFault
	if files != nil || !errors.As(err, &own) {
		t.Errorf("%d pages, error %v", len(files), err)
	}
}

func TestTheShortStackBeginsWhereItPanicked(t *testing.T) {
	const stack = `goroutine 7 [running]:
runtime/debug.Stack()
	/usr/local/go/src/runtime/debug/stack.go:26 +0x5e
sawbill/nest/internal/crew.Run.func1.1()
	/src/sawbill/nest/internal/crew/crew.go:40 +0x38
panic({0x1, 0x2})
	/usr/local/go/src/runtime/panic.go:792 +0x132
runtime.goPanicIndex(0x3, 0x2)
	/usr/local/go/src/runtime/panic.go:115 +0x74
sawbill/nest/internal/search.(*walk).step(0xc000, {0x1, 0x2})
	/src/sawbill/nest/internal/search/walk.go:81 +0x17c
created by sync.(*WaitGroup).Go in goroutine 1
	/usr/local/go/src/sync/waitgroup.go:237 +0x6c
`
	want := []string{"sawbill/nest/internal/search.(*walk).step walk.go:81"}
	if d := cmp.Diff(want, shortStack(stack)); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func TestTheCommandLineIsToldAsItIsTyped(t *testing.T) {
	got := commandLine([]string{"plan", "my job.toml", "--without", "", "it's", "a\x1b"})
	if want := ` plan 'my job.toml' --without '' 'it'\''s' 'a<U+001B>'`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
