package shop

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/shop/planfile"
	"sawbill/stock/fault"
	"sawbill/stock/rack"
	"sawbill/stock/store"
)

// Words of the record besides the events of package progress.
const (
	continuedWord = "continued"
	usedWord      = "used"
	bookedWord    = "booked"
)

// life holds all that a record says of its plan.
type life struct {
	events  []store.Entry // reports that count
	next    *Successor    // nil: none
	books   []string      // racks on which the plan is booked if they say so too, from here
	highest int           // number used by a rest, also one that was withdrawn; 0: none
}

// Successor is the plan of the rest with which a plan goes on.
type Successor struct {
	Code   string
	Number int
	Folder string // from here
	id     string // of the entry that says so; empty if the record does not
}

// says is the entry of the predecessor's record.
func (s Successor) says(folder string) string {
	return fmt.Sprintf("%s %s %d %s", continuedWord, s.Code, s.Number, folder)
}

// successorOf reads what [Successor.says] wrote.
func (f *Folder) successorOf(value string) (Successor, bool) {
	code, rest, _ := strings.Cut(value, " ")
	number, folder, whole := strings.Cut(rest, " ")
	n, err := strconv.Atoi(number)
	return Successor{Code: code, Number: n, Folder: f.from(folder)}, whole && folder != "" && code != "" && err == nil && n > 1
}

// lifeOf reads the entries of the record. Reports of another plan that count are refused.
func (f *Folder) lifeOf(entries []store.Entry) (life, error) {
	var l life
	wrong := func(e store.Entry, cause, remedy string) (life, error) {
		return life{}, fault.Faults{{File: f.record.Path(), Line: e.Number, Cause: cause, Remedy: remedy}}
	}
	for _, e := range entries { // numbers stay used when an entry is taken back
		for _, did := range e.Did {
			word, value, _ := strings.Cut(did, " ")
			switch word {
			case continuedWord:
				next, ok := f.successorOf(value)
				if !ok {
					return wrong(e, fmt.Sprintf("%q names no plan and folder", did), "put back a copy of the file")
				}
				l.highest = max(l.highest, next.Number)
			case usedWord:
				n, err := strconv.Atoi(value)
				if err != nil {
					return wrong(e, fmt.Sprintf("%q is no number", did), "put back a copy of the file")
				}
				l.highest = max(l.highest, n)
			}
		}
	}
	for _, e := range store.Standing(entries) {
		if e.Plan != f.plan.Code {
			return wrong(e, fmt.Sprintf("the line is of plan %s, the folder holds plan %s", e.Plan, f.plan.Code), "move the file away: it belongs to a plan that was replaced")
		}
		switch word, value, _ := strings.Cut(e.Did[0], " "); word {
		case continuedWord:
			next, _ := f.successorOf(value)
			next.id = e.ID
			l.next = &next
		case bookedWord:
			l.books = append(l.books, f.from(value))
		case usedWord:
		default:
			l.events = append(l.events, e)
		}
	}
	return l, nil
}

// Fate says why a plan takes no more reports. A plan with the zero value takes them.
type Fate struct {
	// Next is the plan with which it goes on.
	Next *Successor
	// Withdrawn says that it is a rest that was taken back; the plan in Before goes on.
	Withdrawn bool
	Before    string
	// Booked is the change of the rack at Rack with which it was booked.
	Booked *rack.Entry
	Rack   string
}

// Ended reports whether the plan takes no more reports.
func (e Fate) Ended() bool { return e.Next != nil || e.Withdrawn || e.Booked != nil }

// Fate says what became of the plan.
func (f *Folder) Fate() (Fate, error) {
	if f.life.next != nil {
		return Fate{Next: f.life.next}, nil
	}
	before, withdrawn, err := f.withdrawn()
	if err != nil || withdrawn {
		return Fate{Withdrawn: withdrawn, Before: before}, err
	}
	for _, path := range f.books() {
		history, err := rack.At(path).History()
		if err != nil {
			return Fate{}, err
		}
		if len(history) == 0 && !rack.At(path).Exists() {
			return Fate{}, fault.Faults{{File: path, Cause: fmt.Sprintf("plan %s is booked on this rack, and it is not there", f.plan.Code), Remedy: "put the rack back with its history; if both are lost, begin a rack of that name with sawbill rack add, and book again"}}
		}
		if e, booked, err := rack.At(path).BookedBy(f.plan.Code); err != nil || booked {
			return Fate{Booked: &e, Rack: path}, err
		}
	}
	return Fate{}, nil
}

// books are the racks on which the plan may be booked. Version 1 noted a booking on the
// rack only, and read no record that a later version had written to.
func (f *Folder) books() []string {
	later := slices.ContainsFunc(f.entries, func(e store.Entry) bool { return e.Version > 1 })
	if of := f.RackPath(); !later && of != "" && rack.At(of).Exists() {
		return append(slices.Clone(f.life.books), of)
	}
	return f.life.books
}

// going refuses what cannot be done any more with a plan that has ended.
func (f *Folder) going() error {
	fate, err := f.Fate()
	if err != nil || !fate.Ended() {
		return err
	}
	return f.refuse(fate.words(f.plan))
}

// words says why a plan takes no more reports, and the way on.
func (e Fate) words(p *planfile.Plan) (cause, remedy string) {
	switch {
	case e.Next != nil:
		folder := printed(e.Next.Folder)
		if !e.Next.there() {
			return fmt.Sprintf("plan %s goes on as plan %s in %s, and that folder does not hold it", p.Code, e.Next.Code, folder),
				"put the folder of the rest back, or take the rest back with sawbill recut --withdraw of this folder if nothing was cut by it"
		}
		return fmt.Sprintf("plan %s goes on as plan %s in %s", p.Code, e.Next.Code, folder),
			fmt.Sprintf("name that folder; if nothing was cut by it, sawbill recut %s --withdraw takes it back", folder)
	case e.Withdrawn:
		return fmt.Sprintf("plan %s was withdrawn, plan %s in %s goes on in its place", p.Code, p.Continues[len(p.Continues)-1], printed(e.Before)), "name that folder"
	}
	named := ""
	if path := printed(e.Rack); path != "rack.toml" { // which the command takes by itself
		named = " --rack " + path
	}
	change := fmt.Sprintf("change %d", e.Booked.Number)
	if e.Booked.Date != "" {
		change += " of " + e.Booked.Date
	}
	return fmt.Sprintf("plan %s is booked on the rack %s (%s)", p.Code, printed(e.Rack), change),
		"if it is not finished, take the booking back with sawbill rack undo" + named
}

// Said says in one sentence what became of the plan; it is empty if the plan goes on.
func (f *Folder) Said() (string, error) {
	fate, err := f.Fate()
	if err != nil || !fate.Ended() {
		return "", err
	}
	cause, _ := fate.words(f.plan)
	return "P" + cause[1:] + ".", nil
}
