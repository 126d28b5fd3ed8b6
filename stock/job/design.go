package job

import (
	"fmt"
	"reflect"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// mostOfCase is more shelves or drawers alike than any case has.
const mostOfCase = 1000

// Sizes of a case are judged by package casework: here they need only be
// readable. So 0 may be written.
var (
	caseLength = key{holds: aLength, zero: true, longest: longestStock}
	caseCount  = key{holds: aCount, zero: true, most: mostOfCase}
)

// derive reads the [case] of a job file and derives its parts. It reports
// whether that could be done: a case is not derived from a file with faults,
// for what it misses may only be misspelt.
func (r *reader) derive(root *table, at place, offers []offer, rough []lumber, allowed allowances, into *File, whole bool) ([]wanted, bool) {
	v, there := root.last("case")
	if !there {
		return nil, true
	}
	t, found := single("case", *v)
	if found.found() {
		r.fault(at.at(v.line).of("case"), found)
		return nil, false
	}
	var design casework.Design
	before := len(r.faults)
	r.fill(reflect.ValueOf(&design).Elem(), t, at.of("case"))
	if !whole || len(r.faults) > before || t.broken() || !allSound(offers) || !allSoundRough(rough) || !allowed.sound {
		return nil, false
	}
	var onOffer []stock.Stock
	for _, o := range offers {
		onOffer = append(onOffer, o.Stock)
	}
	for _, l := range rough { // the thickness that is left when both faces are planed
		finished, _ := l.Quarter.Surfaced(stock.TwoSides)
		onOffer = append(onOffer, stock.Stock{Kind: stock.Board, Material: l.Material, Thickness: finished})
	}
	made, faults := casework.Derive(design, casework.Context{
		Ruler:     r.ruler,
		Materials: casework.MaterialsOf(onOffer),
		Kerf:      into.Saw.Kerf,
	})
	for _, f := range faults {
		r.fault(place{at.file, f.Line, f.Key}, problem{f.Cause, f.Remedy})
	}
	if len(faults) > 0 {
		return nil, false
	}
	into.Case = made
	var all []wanted
	for _, p := range made.Parts {
		p.Allowance = allowed.to(p.Material)
		subject := fmt.Sprintf("part %q of the case", p.Name)
		all = append(all, wanted{p, record{place: place{at.file, t.line, subject}, sound: true}})
	}
	return all, true
}

// fill sets the fields of a struct of package casework from a table: the tag
// of a field is its key.
func (r *reader) fill(into reflect.Value, t *table, at place) {
	into.FieldByName("Line").SetInt(int64(t.line))
	fields := make(map[string]reflect.Value)
	var known []string
	for i := range into.NumField() {
		if name := into.Type().Field(i).Tag.Get("toml"); name != "-" {
			fields[name] = into.Field(i)
			known = append(known, name)
		}
	}
	seen := make(map[string]int)
	for _, e := range t.entries {
		if !r.known(e, known, seen, at) {
			continue
		}
		into, here := fields[e.key], place{at.file, e.line, at.subject + "." + e.key}
		if into.Kind() == reflect.Slice {
			r.fillEach(into, e, here)
			continue
		}
		if found := r.fillOne(into, e, here); found.found() {
			r.fault(here, found)
		}
	}
}

// fillOne sets one field: a value that can be given, or a table of its own.
func (r *reader) fillOne(into reflect.Value, e entry, here place) (found problem) {
	if e.value.kind == broken {
		return problem{}
	}
	switch given := into.Addr().Interface().(type) {
	case *casework.Length:
		given.Value, found = caseLength.length(e.value, r.ruler)
		given.Set, given.Line = true, e.line
	case *casework.Count:
		given.Value, found = caseCount.count(e.value)
		given.Set, given.Line = true, e.line
	case *casework.Word:
		given.Value, found = words(e.value)
		given.Set, given.Line = true, e.line
	default:
		var t *table
		if t, found = single(e.key, e.value); !found.found() {
			r.fill(into, t, here)
		}
	}
	return found
}

// fillEach sets a slice from the tables of a [[key]].
func (r *reader) fillEach(into reflect.Value, e entry, here place) {
	if e.value.kind == broken {
		return
	}
	each, found := tables(here.subject, e.value)
	if found.found() {
		r.fault(here, found)
	}
	for i, t := range each {
		element := reflect.New(into.Type().Elem()).Elem()
		r.fill(element, t, place{here.file, t.line, fmt.Sprintf("%s %d", here.subject, i+1)})
		into.Set(reflect.Append(into, element))
	}
}
