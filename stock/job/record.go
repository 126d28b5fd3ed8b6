package job

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/fault"
)

// reader gathers what is wrong while a job is read.
type reader struct {
	changes  Changes
	settle   Settler  // of the job's rack; nil if there is none
	layout   []key    // of the file that is read first
	files    []string // as they are read; faults are told in this order
	faults   []fault.Fault
	warnings []fault.Fault
	ruler    stock.Ruler
}

// place is where something stands, and what it is called: "saw", `part "shelf"`.
type place struct {
	file    string
	line    int
	subject string
}

func (p place) at(line int) place {
	p.line = line
	return p
}

func (p place) of(key string) place {
	switch {
	case key == "":
	case p.subject == "":
		p.subject = key
	case strings.HasSuffix(p.subject, `"`) || strings.ContainsRune(p.subject, ' '):
		p.subject += ": " + key
	default:
		p.subject += "." + key
	}
	return p
}

func (p place) fault(found fault.Fault) fault.Fault {
	return fault.Fault{File: p.file, Line: p.line, Key: brief(p.subject), Cause: brief(found.Cause), Remedy: brief(found.Remedy)}
}

// mostSaid is in bytes, a few lines of a terminal.
const mostSaid = 600

// brief cuts the middle out of a text that nobody would read whole. It keeps the end,
// where causes say what is wrong with the value that they begin with.
func brief(said string) string {
	if len(said) <= mostSaid {
		return said
	}
	const half = mostSaid / 2
	return strings.ToValidUTF8(said[:half], "") + " ... " + strings.ToValidUTF8(said[len(said)-half:], "")
}

func (r *reader) fault(p place, found fault.Fault) {
	r.faults = append(r.faults, p.fault(found))
}

// mistakes adds faults in the notation of one file: each knows its line, and its key if
// that can be made out.
func (r *reader) mistakes(at place, all []fault.Fault) {
	for _, m := range all {
		r.fault(at.at(m.Line).of(m.Key), m)
	}
}

// refuse finds fault with a key of rec, or with all of it for the key "".
func (r *reader) refuse(rec *record, key string, found fault.Fault) {
	r.fault(rec.where(key).of(key), found)
	rec.sound = false
}

func (r *reader) warn(p place, found fault.Fault) {
	r.warnings = append(r.warnings, p.fault(found))
}

// record is a table, read with its keys: every value is there, be it written
// or the default.
type record struct {
	place
	fields map[string]field
	// sound is false when something in it could not be read. It then takes no
	// part in checks against others, which would only repeat the fault.
	sound bool
}

// field is what one key holds; which of the values counts is told by the key.
type field struct {
	line   int
	given  bool
	length stock.Length
	count  int
	price  stock.Money
	text   string
	truth  bool
	files  []string
	widths []stock.Length
	dowels []casework.Dowel
	zones  []record
}

func (rec record) given(name string) bool          { return rec.fields[name].given }
func (rec record) length(name string) stock.Length { return rec.fields[name].length }
func (rec record) count(name string) int           { return rec.fields[name].count }
func (rec record) text(name string) string         { return rec.fields[name].text }
func (rec record) material() string                { return rec.text("material") }
func (rec record) isSound() bool                   { return rec.sound }

// where is the place of a key: its line, or that of the table when the key was
// not written.
func (rec record) where(name string) place {
	if f := rec.fields[name]; f.given {
		return rec.place.at(f.line)
	}
	return rec.place
}

// read reads a table with its keys. Sections are left to the caller.
func (r *reader) read(t *table, keys []key, p place) record {
	rec := record{place: p.at(t.line), fields: make(map[string]field), sound: true}
	for _, k := range keys {
		if written := r.fallback(k); written != "" {
			rec.fields[k.name], _ = r.field(k, value{kind: cell, text: written})
		}
	}
	seen := make(map[string]int)
	for _, e := range t.entries {
		at := slices.IndexFunc(keys, func(k key) bool { return k.name == e.key })
		if at >= 0 && keys[at].holds == sections && e.value.kind == group {
			continue // [part] for [[part]], perhaps several times: the caller tells
		}
		if !r.known(e, namesOf(keys), seen, p) {
			rec.sound = false
			continue
		}
		k := keys[at]
		if k.holds == section || k.holds == sections {
			continue
		}
		f, found := r.field(k, e.value)
		if k.holds == zones && !found.Found() {
			f.zones = r.zones(k, e.value, p)
			rec.sound = rec.sound && !slices.ContainsFunc(f.zones, func(z record) bool { return !z.sound })
		}
		f.line, f.given = e.value.line, true
		rec.fields[k.name] = f
		if found.Found() {
			r.fault(p.at(f.line).of(k.name), found)
		}
		if found.Found() || e.value.kind == broken {
			rec.sound = false
		}
	}
	for _, k := range keys {
		if _, there := seen[k.name]; k.need && !there {
			r.fault(rec.place, fault.New(k.name+" is missing", k.add(t.made)))
			rec.sound = false
		}
	}
	return rec
}

// fallback is the default of k in the units of the job.
func (r *reader) fallback(k key) string {
	if r.ruler.Units == stock.Inches && k.inch != "" {
		return k.inch
	}
	return k.metric
}

func (r *reader) field(k key, v value) (f field, found fault.Fault) {
	if v.kind == broken {
		return f, found
	}
	switch k.holds {
	case aText:
		f.text, found = wordsUpTo(max(k.most, longestName), v)
	case aWord:
		f.text, found = k.word(v)
	case aLength:
		f.length, found = k.length(v, r.ruler)
	case aCount:
		f.count, found = k.count(v)
	case aPrice:
		f.price, found = price(v)
	case aPercentage:
		f.price, found = percentage(v)
	case aTruth:
		f.truth, found = isTrue(v)
	case aDay:
		f.text, found = day(v)
	case anID:
		f.text, found = id(v)
	case fileNames:
		f.files, found = names(v)
	case widths:
		f.widths, found = k.widths(v, r.ruler)
	case dowels:
		f.dowels, found = k.dowels(v, r.ruler)
	case zones:
		_, found = tablesIn(v)
	}
	return f, found
}

// zones reads the tables of a key that holds zones.
func (r *reader) zones(k key, v value, p place) []record {
	found, _ := tablesIn(v)
	all := make([]record, len(found))
	for i, t := range found {
		all[i] = r.read(t, k.keys, p.of(fmt.Sprintf("%s %d", k.name, i+1)))
	}
	return all
}

// known reports whether the key of e is one of names, and has not been seen
// before. Otherwise it is a fault.
func (r *reader) known(e entry, names []string, seen map[string]int, p place) bool {
	at := p.at(e.line)
	if first, again := seen[e.key]; again {
		r.fault(at.of(e.key), fault.New(fmt.Sprintf("is given twice, first in line %d", first), "delete one of them"))
		return false
	}
	if !slices.Contains(names, e.key) {
		r.fault(at, r.unknownKey(e.key, names))
		if meant, ok := r.meantBy(e.key, names); ok {
			seen[meant] = e.line // it is misspelt, not missing
		}
		return false
	}
	seen[e.key] = e.line
	return true
}

// unknownKey says that nothing is called key, and what might have been meant.
func (r *reader) unknownKey(key string, names []string) fault.Fault {
	cause := fmt.Sprintf("unknown key %q", key)
	if meant, ok := r.meantBy(key, names); ok {
		return fault.New(cause, fmt.Sprintf("did you mean %q?", meant))
	}
	if homes := homesOf(key, r.layout); len(homes) > 0 && len(homes) < 3 {
		return fault.New(cause, "it belongs "+strings.Join(homes, " or "))
	}
	return fault.New(cause, "known here are "+strings.Join(names, ", "))
}

// meantBy guesses which of names was meant. A word that is right elsewhere is
// misplaced rather than misspelt.
func (r *reader) meantBy(key string, names []string) (string, bool) {
	said := strings.ReplaceAll(strings.ToLower(key), "-", "_")
	if slices.Contains(names, said) {
		return said, true
	}
	if other, ok := otherWords[said]; ok && slices.Contains(names, other) {
		return other, true
	}
	if len(homesOf(key, r.layout)) > 0 {
		return "", false
	}
	return stock.Nearest(said, names)
}

// add says how to add k where it is missing: to a table, to a row of a part
// list or to a command line.
func (k key) add(to making) string {
	switch to {
	case byFlags:
		return fmt.Sprintf("add --%s %s or the like", k.name, k.example)
	case byRow:
		return fmt.Sprintf("fill in its cell, with %s or the like", strings.Trim(k.example, `"`))
	}
	return fmt.Sprintf("add %s = %s or the like", k.name, k.example)
}
