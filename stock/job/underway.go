package job

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// Changes that only a job under way can have. They are checked like the job file.

// added are the parts of --add, each as in "shelf: 600 x 300, birch ply 18, 2, grain
// width". Each becomes a row of a part list, so that it is read as one.
func (c Changes) added(r *reader, there []wanted, allowed allowances) []wanted {
	var all []wanted
	for _, written := range c.Added {
		at := place{file: "--add " + written}
		heading, row, ok := partRow(written)
		if !ok {
			r.fault(at, fault.New("a name, a size and a material are wanted", `write it like --add "shelf: 600 x 300, birch ply 18, 2"`))
			continue
		}
		var list strings.Builder
		w := csv.NewWriter(&list)
		w.WriteAll([][]string{heading, row}) // to a builder: it cannot fail
		faults := len(r.faults)
		for _, part := range r.partList(list.String(), at, allowed) {
			part.line, part.From = 0, "added"
			for key, f := range part.fields {
				f.line = 0
				part.fields[key] = f
			}
			if slices.ContainsFunc(there, func(w wanted) bool { return w.Name == part.Name }) {
				r.fault(at, fault.New(fmt.Sprintf("the job has a part %q already", part.Name), "say --count for more of it, or give the new part a name of its own"))
				continue
			}
			there, all = append(there, part), append(all, part)
		}
		for i := range r.faults[faults:] {
			r.faults[faults+i].Line = 0
		}
	}
	return all
}

// partRow parts what --add says into the columns of a part list. From the end on, a whole
// number is a count and what begins with "grain" is the grain; the rest is the material.
func partRow(written string) (heading, row []string, ok bool) {
	at := strings.LastIndex(written, ":")
	if at < 0 {
		return nil, nil, false
	}
	name := strings.TrimSpace(written[:at])
	size, rest, more := strings.Cut(written[at+1:], ",")
	lengths := strings.Split(strings.ReplaceAll(size, "×", "x"), "x")
	if name == "" || !more || len(lengths) < 2 || len(lengths) > 3 {
		return nil, nil, false
	}
	heading, row = []string{"name"}, []string{name}
	add := func(key, value string) {
		heading, row = append(heading, key), append(row, strings.TrimSpace(value))
	}
	last := strings.TrimSpace(lengths[len(lengths)-1])
	for i, l := range lengths {
		if l = strings.TrimSpace(l); bare(l) {
			l += unitAt(last)
		}
		add([]string{"length", "width", "thickness"}[i], l)
	}
	for {
		before, word, some := cutLastComma(rest)
		kind, grain, two := strings.Cut(word, " ")
		_, err := strconv.Atoi(word)
		switch {
		case some && err == nil && !slices.Contains(heading, "count"):
			add("count", word)
		case some && two && kind == "grain" && !slices.Contains(heading, "grain"):
			add("grain", grain)
		default:
			add("material", rest)
			return heading, row, strings.TrimSpace(rest) != ""
		}
		rest = before
	}
}

// unitAt is the unit at the end of a length, with a space before it; empty without one.
func unitAt(length string) string {
	for _, u := range []stock.Units{stock.Millimeters, stock.Inches} {
		if strings.HasSuffix(length, u.String()) {
			return " " + u.String()
		}
	}
	return ""
}

func cutLastComma(s string) (before, last string, found bool) {
	at := strings.LastIndex(s, ",")
	if at < 0 {
		return s, strings.TrimSpace(s), false
	}
	return s[:at], strings.TrimSpace(s[at+1:]), true
}

// resizeParts gives parts the sizes of --size, each "shelf=620 x 300".
func (c Changes) resizeParts(r *reader, all []wanted, names []string) {
	for _, written := range c.Sizes {
		name, value, at, ok := r.setting("--size", written)
		if !ok {
			continue
		}
		length, width, found := r.lengthAndWidth(value)
		if found.Found() {
			r.fault(at, found)
			continue
		}
		i := slices.IndexFunc(all, func(w wanted) bool { return w.Name == name })
		switch {
		case i < 0:
			r.fault(at, nothingCalled("part", name, names))
		case all[i].From == "case":
			r.fault(at, fault.New(fmt.Sprintf("part %q follows from the sizes of the case", name), "change the case in the job file, and say --reread"))
		default:
			all[i].Length, all[i].Width = length, width
		}
	}
}

func (r *reader) lengthAndWidth(written string) (length, width stock.Length, found fault.Fault) {
	words := strings.Split(strings.ReplaceAll(written, "×", "x"), "x")
	if len(words) != 2 {
		return 0, 0, fault.New(fmt.Sprintf("%q is no length and width", written), `write both, as in "620 x 300"`)
	}
	unit := unitAt(strings.TrimSpace(words[1]))
	var read [2]stock.Length
	for i, w := range words {
		if w = strings.TrimSpace(w); bare(w) {
			w += unit
		}
		l, err := stock.ParseLength(w, r.ruler.Units)
		switch {
		case err != nil:
			return 0, 0, unreadable(w, err)
		case l <= 0 || l > longestStock:
			return 0, 0, fault.New(r.ruler.PrintUnit(l)+" is no size of a part", "give a length above 0")
		}
		read[i] = l
	}
	return read[0], read[1], fault.Fault{}
}

// setKerf gives the saw the kerf of another blade.
func (c Changes) setKerf(r *reader, saw *stock.Saw) {
	if c.Kerf == "" {
		return
	}
	at := place{file: "--kerf " + c.Kerf}
	kerf, found := typedLength(strings.TrimSpace(c.Kerf), r.ruler.Units)
	switch {
	case found.Found():
		r.fault(at, found)
	case kerf < 0 || kerf > widestKerf:
		r.fault(at, fault.New(r.ruler.PrintUnit(kerf)+" is no kerf", "measure a slot that the blade cuts"))
	default:
		saw.Kerf = kerf
	}
}
