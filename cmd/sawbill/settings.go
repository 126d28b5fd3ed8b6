package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"sawbill/report"
	"sawbill/stock"
	"sawbill/stock/job"
)

// settings are the values of the flags. Each command takes those it knows.
type settings struct {
	limit      time.Duration
	iterations int64
	seed       uint64
	units      string
	paper      string
	output     string
	pages      string
	changes    job.Changes
	quiet      bool
}

func (s *settings) printing(f *pflag.FlagSet) {
	f.StringVar(&s.units, "units", "", "print lengths in `mm|in` instead of the job's units")
}

func (s *settings) solving(f *pflag.FlagSet) {
	f.DurationVar(&s.limit, "limit", 10*time.Second, "longest time to look for a better plan")
	f.Int64Var(&s.iterations, "iterations", 0, "stop after so many improvement steps for each material,\nwhatever time they take: equal runs write equal files")
	f.Uint64Var(&s.seed, "seed", 1, "seed of the random numbers")
	f.BoolVar(&s.quiet, "quiet", false, "no progress on the terminal, no warnings")
}

// asking adds the flags of what if.
func (s *settings) asking(f *pflag.FlagSet) {
	f.StringArrayVar(&s.changes.Without, "without", nil, "what if: leave out the `part` of that name; of a case design\nalso back, base or doors, and its sizes follow")
	f.StringArrayVar(&s.changes.Counts, "count", nil, "what if: make so many of a part, `name=3`")
	f.IntVar(&s.changes.Spare, "spare", 0, "what if: make so many more of each small part, one that would\nitself be no offcut worth keeping")
	f.StringArrayVar(&s.changes.Smaller, "smaller", nil, "what if: a case is less wide, high or deep, `height=6 mm`, or a\npart shorter, by its name")
	f.StringArrayVar(&s.changes.Thicknesses, "thickness", nil, "what if: a material really measures so much,\n`material=17.7`; a case design follows")
}

func (s *settings) check() error {
	switch {
	case s.changes.Spare < 0 || s.changes.Spare > mostSpare:
		return usage(fmt.Sprintf("--spare %d makes no sense", s.changes.Spare), fmt.Sprintf("use a number from 0 to %d", mostSpare))
	case s.units != "" && s.units != "mm" && s.units != "in":
		return usage(fmt.Sprintf("--units %q is not known", s.units), "use mm or in")
	case s.paper != "" && s.paper != "a4" && s.paper != "letter":
		return usage(fmt.Sprintf("--paper %q is not known", s.paper), "use a4 or letter")
	case s.limit < 0:
		return usage(fmt.Sprintf("--limit %s is negative", s.limit), "use a time such as 10s or 2m")
	case s.iterations < 0:
		return usage(fmt.Sprintf("--iterations %d is negative", s.iterations), "use 0 for no limit, or a number such as 20000")
	}
	return s.checkPages()
}

// mostSpare of a part are more than anybody spoils.
const mostSpare = 100

// ruler prints in the units asked for, or the job's.
func (s *settings) ruler(job stock.Units) stock.Ruler {
	switch s.units {
	case "mm":
		return stock.Ruler{Units: stock.Millimeters}
	case "in":
		return stock.Ruler{Units: stock.Inches}
	}
	return stock.Ruler{Units: job}
}

// onPaper adds the flags of what plan.pdf holds.
func (s *settings) onPaper(f *pflag.FlagSet) {
	f.StringVar(&s.paper, "paper", "", "of plan.pdf, `a4|letter`: without it, letter for\nlengths in inches, else a4")
	f.StringVar(&s.pages, "pages", "", aboutPages())
}

// chosen are the pages asked for; 0 where none are.
func (s *settings) chosen() (pages report.Pages) {
	if s.pages == "" {
		return 0
	}
	for name := range strings.SplitSeq(s.pages, ",") {
		of, _ := report.PagesNamed(strings.TrimSpace(name))
		pages |= of
	}
	return pages
}

// checkPages refuses names of pages that there are not.
func (s *settings) checkPages() error {
	if s.pages == "" {
		return nil
	}
	known := report.PageNames()
	for name := range strings.SplitSeq(s.pages, ",") {
		name = strings.TrimSpace(name)
		if _, found := report.PagesNamed(name); found {
			continue
		}
		remedy := "use " + strings.Join(known, ", ") + ", with commas between them"
		if near, found := stock.Nearest(name, known); found {
			remedy = fmt.Sprintf("did you mean %s? There are %s", near, strings.Join(known, ", "))
		}
		return usage(fmt.Sprintf("--pages %q is not known", name), remedy)
	}
	return nil
}

// paperFor is the paper asked for, or what is usual where the job's units are.
func (s *settings) paperFor(r stock.Ruler) report.Paper {
	if s.paper == "letter" || s.paper == "" && r.Units == stock.Inches {
		return report.Letter
	}
	return report.A4
}

// aboutPages lists the sets of pages for the help of a flag.
func aboutPages() string {
	said := "pages of plan.pdf, `store,case,...`; without it the usual ones,\nstore,case,saw,bench:"
	for _, s := range report.PageSets {
		said += fmt.Sprintf("\n  %-8s %s", s.Name, s.Holds)
	}
	return said + "\n  all      all of these"
}
