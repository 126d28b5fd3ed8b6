package job

import (
	"fmt"
	"slices"

	"sawbill/stock/fault"
)

// A job has room for so many rows of parts and so many materials. Beyond them the work
// before and after the search would take minutes, and no shop has such a job.
const (
	mostRows      = mostPieces
	mostMaterials = 1000
	mostColumns   = 100 // of a list
)

// fewer is the remedy for too many tables or rows of one kind.
func fewer(of string) string {
	switch of {
	case "part":
		return "write parts alike in one row with their count, or plan it as several jobs"
	case "piece":
		return "enter them as several lists"
	}
	return "leave out what no part is cut from, or plan it as several jobs"
}

// tooMany counts the tables [[name]] of a file, tells how many may be there, and the line
// of the first beyond them.
func (r *reader) tooMany(root *table, name string) (beyond, n, most int) {
	most = r.layout[slices.IndexFunc(r.layout, func(k key) bool { return k.name == name })].most
	if most == 0 {
		return 0, 0, 0
	}
	for _, e := range root.entries {
		if e.key != name || e.value.kind == broken {
			continue
		}
		found, _ := tables(name, e.value)
		for _, t := range found {
			if n++; n == most+1 {
				beyond = t.line
			}
		}
	}
	return beyond, n, most
}

// roomForRows finds fault with the first row of parts that a job has no room for.
func (r *reader) roomForRows(parts []wanted) bool {
	if len(parts) <= mostRows {
		return true
	}
	r.fault(parts[mostRows].place, fault.New(fmt.Sprintf("the job has %d rows of parts, and at most %d are planned", len(parts), mostRows),
		fewer("part")))
	return false
}

// roomForMaterials finds fault with the first mention of a material that a job has no
// room for.
func (r *reader) roomForMaterials(offers []offer, rough []lumber, parts []wanted) bool {
	var said []record
	for _, o := range offers {
		said = append(said, o.record)
	}
	for _, l := range rough {
		said = append(said, l.record)
	}
	for _, w := range parts {
		said = append(said, w.record)
	}
	slices.SortStableFunc(said, func(a, b record) int { return slices.Index(r.files, a.file) - slices.Index(r.files, b.file) })
	known := map[string]bool{}
	var beyond *record
	for i := range said {
		name := said[i].text("material")
		if known[name] || name == "" {
			continue
		}
		known[name] = true
		if len(known) == mostMaterials+1 {
			beyond = &said[i]
		}
	}
	if beyond == nil {
		return true
	}
	r.fault(beyond.where("material").of("material"), fault.New(fmt.Sprintf("the job has %d materials, and at most %d are planned", len(known), mostMaterials),
		"plan it as several jobs"))
	return false
}
