package job

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// match finds each part the stock it can come from, and says what keeps it
// from being cut. A thickness that was left out becomes that of its sheets.
// In a job that is not whole, nothing is said to be missing. Of the job with
// only the machines are known here.
func (r *reader) match(parts []wanted, offers, onHand []offer, rough []lumber, with stock.Job, whole bool) {
	forJob := offers
	offers = slices.Concat(offers, onHand)
	materials := materialsOf(offers, rough)
	pieces, sound := 0, true
	told := r.misspelt(parts, forJob, materials)
	for i := range parts {
		p := &parts[i]
		pieces += p.Count
		sound = sound && p.sound
		if p.Material == "" {
			continue
		}
		of, sawn := ofMaterial(offers, p.Material), ofMaterial(rough, p.Material)
		switch {
		case told[p.Material]:
		case len(of)+len(sawn) == 0 && whole && len(offers)+len(rough) > 0 && allNamed(offers, rough):
			r.fault(p.where("material"), unknownMaterial(p.Material, materials))
		case len(sawn) > 0 && !(allSound(of) && allSound(sawn) && p.sound):
		case len(sawn) > 0:
			r.fitRough(p, sawn, of, with)
		case len(of) > 0 && allSound(of) && p.sound:
			r.fit(p, of, with, thicknesses(unlessNone(ofMaterial(forJob, p.Material), of)))
		}
	}
	top := place{file: r.files[0]}
	faultless := whole && len(r.faults) == 0
	if faultless && len(parts) == 0 {
		r.fault(top, fault.New("the job has no parts", "add a [[part]], a part list with parts =, or a [case]"))
	}
	if faultless && len(parts) > 0 && len(offers)+len(rough) == 0 {
		r.fault(top, fault.New("the job has no stock to cut the parts from", "add a [[sheet]], a [[board]] or [[rough]]"))
	}
	if pieces > mostPieces && sound {
		r.fault(top, fault.New(fmt.Sprintf("the job has %d pieces, more than can be meant (at most %d)", pieces, mostPieces),
			"check the counts, or plan it as several jobs"))
	}
	if whole {
		r.unused(forJob, rough, parts)
	}
}

// misspelt tells once, at the offer, of a material that several parts are of and nobody
// offers, while no part is of one that is spelt nearly so. It returns these materials.
func (r *reader) misspelt(parts []wanted, offers []offer, materials []string) map[string]bool {
	wanted := map[string]int{}
	for _, p := range parts {
		wanted[p.Material]++
	}
	told := map[string]bool{}
	for _, o := range offers {
		if wanted[o.Material] > 0 || o.Material == "" {
			continue
		}
		for _, p := range parts {
			m := p.Material
			if _, near := stock.Nearest(m, []string{o.Material}); !near || wanted[m] < 2 || slices.Contains(materials, m) {
				continue
			}
			r.fault(o.where("material").of("material"), fault.New(
				fmt.Sprintf("no part is of %q, and %d parts are of %q, which nothing is offered of", o.Material, wanted[m], m), fmt.Sprintf("did you mean %q?", m)))
			told[m] = true
			break
		}
	}
	return told
}

func unknownMaterial(material string, known []string) fault.Fault {
	cause := fmt.Sprintf("unknown material %q", material)
	if near, ok := stock.Nearest(material, known); ok {
		return fault.New(cause, fmt.Sprintf("did you mean %q?", near))
	}
	return fault.New(cause, "add a sheet or a board of it, or take "+quoted(known))
}

// unused warns of stock that no part is cut from.
func (r *reader) unused(offers []offer, rough []lumber, parts []wanted) {
	check := func(rec record, material string) {
		serves := func(p wanted) bool { return material == p.Material }
		if rec.sound && len(parts) > 0 && !slices.ContainsFunc(parts, serves) {
			r.warn(rec.place, fault.New(fmt.Sprintf("no part is of %s", material), "it will not be used"))
		}
	}
	for _, o := range offers {
		check(o.record, o.Material)
	}
	for _, l := range rough {
		check(l.record, l.Material)
	}
}

// materialsOf lists the materials on offer, each once, in their order.
func materialsOf(offers []offer, rough []lumber) []string {
	var all []string
	add := func(material string) {
		if material != "" && !slices.Contains(all, material) {
			all = append(all, material)
		}
	}
	for _, o := range offers {
		add(o.Material)
	}
	for _, l := range rough {
		add(l.Material)
	}
	return all
}

func ofMaterial[T interface{ material() string }](all []T, material string) []T {
	return slices.DeleteFunc(slices.Clone(all), func(t T) bool { return t.material() != material })
}

func allSound[T interface{ isSound() bool }](all []T) bool {
	return !slices.ContainsFunc(all, func(t T) bool { return !t.isSound() })
}

// allNamed reports whether the material of all that is offered could be read.
func allNamed(offers []offer, rough []lumber) bool {
	return !slices.ContainsFunc(offers, func(o offer) bool { return o.Material == "" }) &&
		!slices.ContainsFunc(rough, func(l lumber) bool { return l.Material == "" })
}

// unlessNone is first, or else second.
func unlessNone(first, second []offer) []offer {
	if len(first) > 0 {
		return first
	}
	return second
}

// thicknesses lists those of offers, each once, from the thinnest.
func thicknesses(offers []offer) []stock.Length {
	var all []stock.Length
	for _, o := range offers {
		all = append(all, o.Thickness)
	}
	slices.Sort(all)
	return slices.Compact(all)
}
