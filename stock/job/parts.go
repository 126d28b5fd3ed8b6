package job

import (
	"fmt"
	"path/filepath"
	"strconv"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// wanted is a part and where it is written.
type wanted struct {
	stock.Part
	record
}

// parts reads every [[part]].
func (r *reader) parts(root *table, at place, all allowances) []wanted {
	var parts []wanted
	for _, rec := range r.each(root, "part", at) {
		parts = append(parts, partOf(rec, all))
	}
	return parts
}

// partOf builds a part. What it does not say of its allowance is as for its
// material.
func partOf(rec record, all allowances) wanted {
	a := all.to(rec.text("material"))
	rec.overlay(&a)
	a.Edges, a.Faces, a.Ends, a.Miters = rec.count("edges"), rec.count("faces"), rec.count("ends"), rec.count("miters")
	return wanted{stock.Part{
		Name:      rec.text("name"),
		Material:  rec.text("material"),
		Length:    rec.length("length"),
		Width:     rec.length("width"),
		Thickness: rec.length("thickness"),
		Count:     rec.count("count"),
		Grain:     map[string]stock.Grain{"width": stock.GrainWidth, "any": stock.GrainAny}[rec.text("grain")],
		Allowance: a,
		Resaw:     rec.fields["resaw"].truth,
		Alone:     !rec.fields["gang"].truth,
		Note:      rec.text("note"),
		From:      filepath.Base(rec.file) + ":" + strconv.Itoa(rec.line),
	}, rec}
}

// nameEach gives every part a name of its own: a repeated name gets the next
// number that is free.
func (r *reader) nameEach(all []wanted) {
	first, latest := make(map[string]wanted), make(map[string]int)
	for _, w := range all {
		if _, there := first[w.Name]; !there {
			first[w.Name] = w
		}
	}
	for i := range all {
		w := &all[i]
		earlier := first[w.Name]
		if w.Name == "" || earlier.place == w.place {
			continue
		}
		n, name := max(latest[w.Name], 1), w.Name
		for taken := true; taken; _, taken = first[name] {
			n++
			name = fmt.Sprintf("%s %d", w.Name, n)
		}
		latest[w.Name] = n
		r.warn(w.where("name").of("name"), fault.New(
			fmt.Sprintf("%s has the same name; this one is called %q", earlier.From, name),
			"give each part its own name"))
		w.Name = name
		first[name] = *w
	}
}
