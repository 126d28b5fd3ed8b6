package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/report"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// mutants are the example jobs, each changed in a few places as by a slip of the pen, a
// bad copy or a wrong guess. The nth is the same on every machine.
type mutants struct {
	names []string
	texts map[string]string // of all files beside the jobs, too
	words []string          // what values are replaced by
}

func newMutants(t *testing.T) *mutants {
	t.Helper()
	m := &mutants{texts: make(map[string]string)}
	paths, err := filepath.Glob(filepath.Join(jobs, "*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		name := filepath.Base(path)
		m.texts[name] = fileText(t, path)
		if filepath.Ext(name) == ".toml" {
			m.names = append(m.names, name)
		}
	}
	m.words = strings.Split(`0|1|2|3|-1|0.000025|0.00001|1e9|99999|1000|20000|100000|"27 1/2 in"|"1/3 in"|"8 ft"|"5/4"|""|" "|true|false|[]|{}|"none"|"any"|"width"|"length"|"rip"|"overlay"|"inset"|"in"|"mm"|'|"|=|#|[case]|[[part]]|[[case.bay]]|[[case.bay.opening]]|doors = 2|shelves = 3|`, "|")
	return m
}

var (
	aNumber = regexp.MustCompile(`\d+(\.\d+)?`)
	aValue  = regexp.MustCompile(`=[^=\n]*`)
)

// nth is the job called name with some changes, and its files.
func (m *mutants) nth(n int) (name, text string, files fstest.MapFS) {
	random := rand.New(rand.NewPCG(uint64(n), 20))
	name = m.names[random.IntN(len(m.names))]
	changed := name
	if list := strings.TrimSuffix(name, ".toml") + ".csv"; m.texts[list] != "" && random.IntN(4) == 0 {
		changed = list
	}
	text = m.texts[changed]
	if random.IntN(2) == 0 { // most of these can be read
		for range 1 + random.IntN(3) {
			text = replaceOne(text, aNumber, random, func(old string) string { return otherNumber(old, random) })
		}
	} else {
		for range 1 + random.IntN(4) {
			text = m.change(text, random)
		}
	}
	files = fstest.MapFS{}
	for other, t := range m.texts {
		files[other] = &fstest.MapFile{Data: []byte(t)}
	}
	files[changed] = &fstest.MapFile{Data: []byte(text)}
	return name, text, files
}

// change makes one change.
func (m *mutants) change(text string, random *rand.Rand) string {
	if text == "" {
		return m.words[random.IntN(len(m.words))]
	}
	lines := strings.SplitAfter(text, "\n")
	at := random.IntN(len(lines))
	word := m.words[random.IntN(len(m.words))]
	switch random.IntN(12) {
	case 0: // a line is lost
		return strings.Join(append(lines[:at:at], lines[at+1:]...), "")
	case 1: // or there twice
		return strings.Join(append(lines[:at+1:at+1], lines[at:]...), "")
	case 2: // or somewhere else
		to := random.IntN(len(lines))
		lines[at], lines[to] = lines[to], lines[at]
		return strings.Join(lines, "")
	case 3, 4, 5: // a number is another
		return replaceOne(text, aNumber, random, func(old string) string { return otherNumber(old, random) })
	case 6, 7: // a value is another word, or that of another key
		values := aValue.FindAllString(text, -1)
		if len(values) > 0 && random.IntN(2) == 0 {
			word = strings.TrimPrefix(values[random.IntN(len(values))], "=")
		}
		return replaceOne(text, aValue, random, func(string) string { return "= " + word })
	case 8: // a word more
		return strings.Join(lines[:at], "") + word + "\n" + strings.Join(lines[at:], "")
	case 9: // a byte is lost
		i := random.IntN(len(text))
		return text[:i] + text[i+1:]
	case 10: // or another
		i := random.IntN(len(text))
		return text[:i] + string([]byte{byte(random.IntN(256))}) + text[i+1:]
	}
	return text[:random.IntN(len(text))] // the end is lost
}

// replaceOne replaces one of all places where there is such a thing.
func replaceOne(text string, what *regexp.Regexp, random *rand.Rand, with func(old string) string) string {
	found := what.FindAllStringIndex(text, -1)
	if len(found) == 0 {
		return text
	}
	f := found[random.IntN(len(found))]
	return text[:f[0]] + with(text[f[0]:f[1]]) + text[f[1]:]
}

func otherNumber(old string, random *rand.Rand) string {
	v, _ := strconv.ParseFloat(old, 64)
	switch random.IntN(9) {
	case 0:
		return fmt.Sprint(v * 10)
	case 1:
		return fmt.Sprint(v / 10)
	case 2:
		return fmt.Sprint(v + 1)
	case 3:
		return fmt.Sprint(random.IntN(60))
	case 4:
		return "-" + old
	case 5:
		return strconv.FormatFloat(v*random.Float64(), 'f', 1, 64)
	}
	return strconv.FormatFloat(v*(0.8+0.4*random.Float64()), 'f', 0, 64)
}

// try calls do with each of the mutants and reports those that make it panic. One that
// takes minutes counts as hanging.
func (m *mutants) try(t *testing.T, count int, do func(name string, files fstest.MapFS) error) {
	t.Helper()
	read := 0
	for n := range count {
		name, text, files := m.nth(n)
		hangs := time.AfterFunc(10*time.Minute, func() { panic(fmt.Sprintf("mutant %d, of %s, hangs:\n%s", n, name, text)) })
		func() {
			defer func() {
				if v := recover(); v != nil {
					t.Errorf("mutant %d, of %s: %v\n%s\n%s", n, name, v, strings.Join(shortStack(string(stackOf(v))), "\n"), text)
				}
			}()
			switch err := do(name, files); err.(type) {
			case nil:
				read++
			case fault.Faults:
			default:
				t.Errorf("mutant %d, of %s: %v\n%s", n, name, err, text)
			}
		}()
		hangs.Stop()
	}
	t.Logf("%d mutants, %d of them without a fault", count, read)
	if read == 0 {
		t.Error("none of them could be read: they test nothing but the parser")
	}
}

func stackOf(v any) []byte {
	if p, ok := v.(interface{ Stack() []byte }); ok {
		return p.Stack()
	}
	return debug.Stack()
}

func mutantCount(short, long int) int {
	if os.Getenv("SAWBILL_LONG") == "1" {
		return long
	}
	return short
}

// What parts does with a job: read it, derive its case, print the part list. No fault
// may hold what steers a terminal.
func TestMutatedJobsAreReadOrRefused(t *testing.T) {
	m := newMutants(t)
	m.try(t, mutantCount(600, 60_000), func(name string, files fstest.MapFS) error {
		file, err := job.ReadFS(files, name)
		if err != nil {
			if text := strings.NewReplacer("\t", " ", "\r", " ").Replace(err.Error()); visible(text) != text { // these two are in lists
				t.Errorf("%s: %q", name, text)
			}
			return err
		}
		return report.PartList(io.Discard, file.Job, report.Options{Ruler: stock.Ruler{Units: file.Units}, Case: file.Case})
	})
}

// What plan does with a job: a few steps of the search, and all that is written.
func TestMutatedJobsArePlanned(t *testing.T) {
	m := newMutants(t)
	m.try(t, mutantCount(40, 5_000), func(name string, files fstest.MapFS) error {
		file, err := job.ReadFS(files, name)
		if err != nil {
			return err
		}
		made, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 20})
		if err != nil {
			return err
		}
		o := report.Options{Ruler: stock.Ruler{Units: file.Units}, Case: file.Case}
		if _, _, err := planPages(made, o); err != nil {
			return err
		}
		return report.Summary(io.Discard, made, o)
	})
}
