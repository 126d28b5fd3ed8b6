package job

import (
	"fmt"
	"path/filepath"
	"strconv"

	"sawbill/stock"
)

// wanted is a part and where it is written.
type wanted struct {
	stock.Part
	record
}

// parts reads every [[part]].
func (r *reader) parts(root *table, at place, allowance record) []wanted {
	var all []wanted
	for _, rec := range r.each(root, "part", at) {
		all = append(all, partOf(rec, allowance))
	}
	return all
}

// partOf builds a part. What it does not say of its allowance is as for every
// part of the job.
func partOf(rec, allowance record) wanted {
	a := allowanceOf(allowance)
	for name, amount := range map[string]*stock.Length{"edge": &a.Edge, "face": &a.Face, "end": &a.End} {
		if rec.given(name) {
			*amount = rec.length(name)
		}
	}
	a.Edges, a.Faces, a.Ends = rec.count("edges"), rec.count("faces"), rec.count("ends")
	return wanted{stock.Part{
		Name:      rec.text("name"),
		Material:  rec.text("material"),
		Length:    rec.length("length"),
		Width:     rec.length("width"),
		Thickness: rec.length("thickness"),
		Count:     rec.count("count"),
		Grain:     map[string]stock.Grain{"width": stock.GrainWidth, "any": stock.GrainAny}[rec.text("grain")],
		Allowance: a,
		Note:      rec.text("note"),
		From:      filepath.Base(rec.file) + ":" + strconv.Itoa(rec.line),
	}, rec}
}

// allowanceOf is the [allowance] of a job: on both edges, faces and ends.
func allowanceOf(rec record) stock.Allowance {
	return stock.Allowance{
		Edge: rec.length("edge"), Face: rec.length("face"), End: rec.length("end"),
		Edges: 2, Faces: 2, Ends: 2,
	}
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
		r.warn(w.where("name").of("name"), problem{
			fmt.Sprintf("%s has the same name; this one is called %q", earlier.From, name),
			"give each part its own name"})
		w.Name = name
		first[name] = *w
	}
}
