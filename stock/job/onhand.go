package job

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// onHand reads the rack that the job names, for its pieces to join the stock.
// What is wrong with them is told with the rack's own file and lines. It
// reports whether there is nothing wrong.
func (r *reader) onHand(top record, open listOpener, offers []offer, rough []lumber, file *File) ([]offer, bool) {
	named := top.fields["rack"].files
	if len(named) == 0 {
		return nil, true
	}
	wrong := func(found fault.Fault) ([]offer, bool) {
		r.fault(top.where("rack").of("rack"), found)
		return nil, false
	}
	if len(named) > 1 {
		return wrong(fault.New("a job has one rack", "name the file of one"))
	}
	full, source, unread := open(named[0], r.settle)
	if len(unread) > 0 {
		r.unread(top.where("rack").of("rack"), named[0], full, unread)
		return nil, false
	}
	r.files = append(r.files, full)
	file.Rack = full
	inner := rackReader(full, stock.Millimeters)
	read, records := inner.rack(source, place{file: full})
	r.faults = append(r.faults, inner.faults...)
	if len(inner.faults) > 0 {
		return nil, false
	}
	var all []offer
	sound := true
	for i, rec := range records {
		o := offer{Stock: read.Pieces[i].Stock(), record: rec}
		sound = r.joins(o, offers, rough) && sound
		all = append(all, o)
	}
	return all, sound
}

// joins checks a piece of the rack against what the job offers.
func (r *reader) joins(o offer, offers []offer, rough []lumber) bool {
	elsewhere := func(of record) string { return fmt.Sprintf("line %d of %s", of.line, r.files[0]) }
	for _, b := range offers {
		switch {
		case strings.EqualFold(o.Name, b.Name):
			r.fault(o.where("id").of("id"), fault.New(fmt.Sprintf("the %s in %s has this name", b.Kind, elsewhere(b.record)), "give that another name"))
			return false
		case o.Material == b.Material && o.Kind != b.Kind:
			r.fault(o.where("material").of("material"), fault.New(
				fmt.Sprintf("%q is a %s in %s and a %s here", o.Material, b.Kind, elsewhere(b.record), o.Kind), "give sheets and boards different materials"))
			return false
		}
	}
	for _, l := range rough {
		if o.Material == l.Material && o.Kind == stock.Sheet {
			r.fault(o.where("material").of("material"), fault.New(
				fmt.Sprintf("%q is lumber in %s and a sheet here", o.Material, elsewhere(l.record)), `write kind = "board", or give the sheet a material of its own`))
			return false
		}
	}
	return true
}

// unlike is the pieces of the rack whose material the job does not offer
// itself: a case takes the thickness of its panels from them. Pieces of
// other materials on the rack must not change a design.
func unlike(onHand, offers []offer, rough []lumber) []offer {
	return slices.DeleteFunc(slices.Clone(onHand), func(o offer) bool {
		return len(ofMaterial(offers, o.Material))+len(ofMaterial(rough, o.Material)) > 0
	})
}

// serving is the pieces of the rack whose material some part is of.
func serving(onHand []offer, parts []wanted) []offer {
	return slices.DeleteFunc(slices.Clone(onHand), func(o offer) bool {
		return !slices.ContainsFunc(parts, func(p wanted) bool { return p.Material == o.Material })
	})
}
