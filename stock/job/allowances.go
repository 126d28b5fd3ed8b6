package job

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// allowances hold what a job adds to every part, and to those of
// some materials instead.
type allowances struct {
	every stock.Allowance
	of    map[string]record // by material
	sound bool
}

// allowances reads [allowance] and every [[material]].
func (r *reader) allowances(root *table, at place, saw record) allowances {
	rec := r.section(root, "allowance", at)
	all := allowances{
		// A blade at 45 degrees takes 1.414 kerfs along the piece, 0.414 more
		// than a crosscut: half a kerf is on the safe side of that.
		every: stock.Allowance{Miter: saw.length("kerf") / 2, Edges: 2, Faces: 2, Ends: 2},
		of:    make(map[string]record),
		sound: rec.sound,
	}
	rec.overlay(&all.every)
	for _, rec := range r.each(root, "material", at) {
		name := rec.text("name")
		if first, again := all.of[name]; again {
			r.fault(rec.where("name").of("name"), fault.New(
				fmt.Sprintf("the material in line %d has the same name", first.line), "put what is said of it into one [[material]]"))
		}
		all.of[name] = rec
		all.sound = all.sound && rec.sound
	}
	return all
}

// to returns the allowance of a part of material that gives none.
func (a allowances) to(material string) stock.Allowance {
	allowance := a.every
	if rec, there := a.of[material]; there {
		rec.overlay(&allowance)
	}
	return allowance
}

// overlay sets the amounts that rec gives.
func (rec record) overlay(a *stock.Allowance) {
	for name, amount := range map[string]*stock.Length{"edge": &a.Edge, "face": &a.Face, "end": &a.End, "miter": &a.Miter} {
		if rec.given(name) {
			*amount = rec.length(name)
		}
	}
}

// offered makes sure that there is stock of every material that has allowances
// of its own: a name that is misspelt would do nothing.
func (r *reader) offered(all allowances, offers []offer, rough []lumber) {
	if len(offers)+len(rough) == 0 || !allNamed(offers, rough) {
		return
	}
	for name, rec := range all.of {
		if name != "" && len(ofMaterial(offers, name))+len(ofMaterial(rough, name)) == 0 {
			r.fault(rec.where("name").of("name"), unknownMaterial(name, materialsOf(offers, rough)))
		}
	}
}
