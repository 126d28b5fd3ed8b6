package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"sawbill/report"
	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/rack"
	"sawbill/stock/store"
)

// rackFlags are the values of the flags that only the rack has.
type rackFlags struct {
	set *pflag.FlagSet

	file, date                                            string
	kind, name, material, length, width, thickness, grain string
	count, from, note, kerf                               string
	giveUp                                                bool
}

// rackVerb is one thing to do with the rack.
type rackVerb struct {
	name  string
	args  string // of the usage line
	about string
	flags []string // of those that not every verb has
	most  int      // operands; -1 is any number
	least int
	run   func(*rackCall) error
}

var rackVerbs = []rackVerb{
	{name: "list", about: "what is on hand", run: (*rackCall).list},
	{name: "add", about: "enter pieces: --material, --length, --width, --thickness and what else is known",
		flags: []string{"kind", "name", "material", "length", "width", "thickness", "grain", "count", "from", "note", "date"}, run: (*rackCall).add},
	{name: "take", args: "ID...", about: "pieces are used up or given away", flags: []string{"note", "date"}, least: 1, most: -1, run: (*rackCall).take},
	{name: "book", args: "PLAN", about: "a plan has ended: what it cut leaves, what it kept enters", flags: []string{"date", "give-up"}, least: 1, most: 1, run: (*rackCall).book},
	{name: "import", args: "FILE.csv", about: "enter all pieces of a list, or none", flags: []string{"date"}, least: 1, most: 1, run: (*rackCall).importList},
	{name: "find", about: "what would make a part: --material, --length, --width", flags: []string{"material", "length", "width", "thickness", "grain", "kerf"}, run: (*rackCall).find},
	{name: "labels", args: "[ID...]", about: "a PDF of labels, of all pieces or of some", flags: []string{"output", "paper"}, most: -1, run: (*rackCall).labels},
	{name: "history", about: "every change so far", run: (*rackCall).history},
	{name: "undo", about: "take the last change back; again, the one before", flags: []string{"date"}, run: (*rackCall).undo},
	{name: "restore", args: "N", about: "go back to what change N left, 0 is the beginning", flags: []string{"date"}, least: 1, most: 1, run: (*rackCall).restore},
}

// fits refuses operands that the verb does not take.
func (v rackVerb) fits(operands []string) error {
	write := fmt.Sprintf("write sawbill %s", strings.TrimSpace("rack "+v.name+" "+v.args))
	switch n := len(operands); {
	case n < v.least:
		return usage(fmt.Sprintf("rack %s needs %s", v.name, v.args), write)
	case v.most == 0 && n > 0:
		return usage(fmt.Sprintf("rack %s takes flags alone, and %q belongs to none", v.name, operands[0]), "put quotes around a value that has blanks, or leave the word out")
	case v.most > 0 && n > v.most:
		return usage(fmt.Sprintf("rack %s takes one %s, not %d", v.name, v.args, n), write)
	}
	return nil
}

// everyVerb are the flags that all of them have.
var everyVerb = []string{"rack", "units", "quiet"}

func rackCommand() command {
	var f rackFlags
	return command{
		name:  "rack",
		args:  "[list|add|...]",
		about: "what is on hand: sheets, boards and offcuts",
		more:  rackHelp(),
		flags: func(set *pflag.FlagSet, s *settings) {
			f.set = set
			set.StringVar(&f.file, "rack", "rack.toml", "the `file` of the rack")
			set.StringVar(&f.material, "material", "", "what the piece or part is of, by the `name` in jobs")
			set.StringVar(&f.length, "length", "", "along the grain of the face: `600` or \"23 5/8 in\"")
			set.StringVar(&f.width, "width", "", "across it, written `likewise`")
			set.StringVar(&f.thickness, "thickness", "", "written `likewise`; to find a piece, any if left out")
			set.StringVar(&f.kind, "kind", "", "of a piece, `sheet|board`; without it a sheet")
			set.StringVar(&f.grain, "grain", "", "of a piece `length|width|none|unknown`, of a part\nlength|width|any; without it along the length")
			set.StringVar(&f.count, "count", "", "`n` alike, each with an id of its own")
			set.StringVar(&f.name, "name", "", "what it was bought `as`")
			set.StringVar(&f.from, "from", "", "`where` it came from")
			set.StringVar(&f.note, "note", "", "a `remark`; of what is taken, why")
			set.StringVar(&f.date, "date", "", "the `day` of the change, 2026-03-05, if it is not today")
			set.BoolVar(&f.giveUp, "give-up", false, "book a plan that is not carried out: what is left of it goes\nto the rack, and nothing more is cut by it")
			set.StringVar(&f.kerf, "kerf", "", "what a `cut` takes, for what would be left;\nwithout it 3.2 mm or 1/8 in")
			set.StringVarP(&s.output, "output", "o", "", "the `file` of the labels (rack-labels.pdf)")
			set.StringVar(&s.paper, "paper", "", "of the labels, `a4|letter`: without it, letter for\nlengths in inches, else a4")
			set.StringVar(&s.units, "units", "", "`mm|in`: of bare numbers said here, and for printing;\nwithout it the rack's")
			set.BoolVar(&s.quiet, "quiet", false, "no warnings")
		},
		run: func(in *invocation) (int, error) { return exitDone, onRack(in, &f) },
	}
}

func rackHelp() string {
	var b strings.Builder
	b.WriteString("Keeps what is on hand in a plain file that you may also edit, each piece with an\nid to write on it. Whatever the change, it is made whole or not at all, and\nremembered in a history beside the file, from which every earlier state can be\nhad again.\n\n")
	for _, v := range rackVerbs {
		fmt.Fprintf(&b, "  rack %-16s %s\n", strings.TrimSpace(v.name+" "+v.args), v.about)
	}
	b.WriteString("\nA job that says rack = \"rack.toml\" has these pieces on hand.\n")
	return b.String()
}

// rackCall is one call of a verb.
type rackCall struct {
	*invocation
	*rackFlags
	rack  rack.Rack
	stock *job.Rack // what is on hand; nil where there is no file yet
}

// onRack finds the verb, which is list where none is given, and calls it.
func onRack(in *invocation, f *rackFlags) error {
	name := "list"
	if len(in.operands) > 0 {
		name, in.operands = in.operands[0], in.operands[1:]
	}
	at := slices.IndexFunc(rackVerbs, func(v rackVerb) bool { return v.name == name })
	if at < 0 {
		var known []string
		for _, v := range rackVerbs {
			known = append(known, v.name)
		}
		return usage(fmt.Sprintf("there is no \"rack %s\"", name), "the rack knows "+strings.Join(known, ", "))
	}
	v := rackVerbs[at]
	const see = "see \"sawbill help rack\""
	if err := v.fits(in.operands); err != nil {
		return err
	}
	var wrong error
	f.set.Visit(func(flag *pflag.Flag) {
		if wrong == nil && !slices.Contains(v.flags, flag.Name) && !slices.Contains(everyVerb, flag.Name) {
			wrong = usage(fmt.Sprintf("rack %s takes no --%s", name, flag.Name), see)
		}
	})
	if wrong != nil {
		return wrong
	}
	if err := day(&f.date); err != nil {
		return err
	}
	return v.run(&rackCall{invocation: in, rackFlags: f, rack: rack.At(f.file)})
}

// settled is the [job.Settler] of the racks that jobs name.
func settled(path string) (text string, pending bool) { return rack.At(path).Settle() }

// read reads what is on hand.
func (c *rackCall) read() error {
	file, err := c.rack.Read()
	c.stock = file
	return err
}

// inUnits are those that were asked for, or the rack's, which is in millimeters
// where there is none yet.
func (c *rackCall) inUnits() stock.Units {
	if c.stock == nil && c.rack.Exists() {
		c.stock, _ = c.rack.Read() // what is wrong with it is told by the change
	}
	units := stock.Millimeters
	if c.stock != nil {
		units = c.stock.Units
	}
	return c.ruler(units).Units
}

func (c *rackCall) options() report.Options {
	ruler := stock.Ruler{Units: c.inUnits()}
	return report.Options{Ruler: ruler, Paper: c.paperFor(ruler)}
}

func (c *rackCall) list() error {
	if err := c.read(); err != nil {
		return err
	}
	return report.RackList(c.stdout, c.stock.Pieces, c.options())
}

func (c *rackCall) history() error {
	entries, err := c.rack.History()
	if err != nil {
		return err
	}
	return report.RackHistory(c.stdout, entries)
}

// find looks for what would make a part.
func (c *rackCall) find() error {
	if err := c.read(); err != nil {
		return err
	}
	units := c.inUnits()
	part, err := job.PartFromFlags("rack find", c.flags("material", "length", "width", "thickness", "grain"), units)
	if err != nil {
		return err
	}
	kerf := job.DefaultKerf(units)
	if c.kerf != "" {
		if kerf, err = job.LengthFromFlag("rack find", job.Flag{Name: "kerf", Value: c.kerf}, units); err != nil {
			return err
		}
	}
	fits := rack.Find(c.stock.Pieces, part, kerf)
	if len(fits) == 0 {
		if on := report.Materials(c.stock.Pieces); !slices.Contains(on, part.Material) {
			if near, ok := stock.Nearest(part.Material, on); ok {
				fmt.Fprintf(c.stdout, "There is no %s on the rack; did you mean %q?\n", part.Material, near)
				return nil
			}
		}
		fmt.Fprintln(c.stdout, "Nothing on the rack would make it.")
		return nil
	}
	return report.RackFits(c.stdout, fits, c.options())
}

// labels writes the PDF of labels.
func (c *rackCall) labels() error {
	if err := c.read(); err != nil {
		return err
	}
	pieces, err := c.rack.Pick(c.stock, c.operands)
	if err != nil {
		return err
	}
	if len(pieces) == 0 {
		fmt.Fprintln(c.stdout, "The rack is empty: there is nothing to label.")
		return nil
	}
	pdf, warnings, err := report.RackLabels(pieces, c.options())
	if err != nil {
		return err
	}
	name := cmp.Or(c.output, "rack-labels.pdf")
	if err := c.replace(name, pdf, labelsMayGo); err != nil {
		return err
	}
	warn(c.invocation, warnings)
	fmt.Fprintf(c.stdout, "Written to %s: %s.\n", name, counted(len(pieces), "label"))
	return nil
}

// labelsMayGo refuses to replace anything but labels that the program wrote.
func labelsMayGo(path string) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	var data []byte
	if err == nil && info.Mode().IsRegular() && info.Size() <= mostOfLabels {
		data, err = os.ReadFile(path)
	}
	switch {
	case err != nil:
		return fmt.Errorf("%s: cannot be replaced: %w; name another file with -o", path, store.Bare(err))
	case !report.WroteRackLabels(data):
		return fmt.Errorf("%s: this file holds no rack labels that sawbill wrote, and it would be replaced; name another file with -o", path)
	}
	return nil
}

// mostOfLabels is beyond the labels of any rack.
const mostOfLabels = 256 << 20

// flags is what the command line says behind these flags.
func (c *rackCall) flags(words ...string) []job.Flag {
	var all []job.Flag
	for _, w := range words {
		if f := c.set.Lookup(w); f.Changed {
			all = append(all, job.Flag{Name: w, Value: f.Value.String()})
		}
	}
	return all
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
