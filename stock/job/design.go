package job

import (
	"fmt"
	"reflect"
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/fault"
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
// whether that could be done. Where something could not be read, be it of the case
// or of the stock, its faults are told that do not follow from that.
func (r *reader) derive(root *table, at place, offers []offer, rough []lumber, allowed allowances, into *File, whole bool) (all []wanted, left []string, ok bool) {
	v, there := root.last("case")
	if !there {
		return nil, nil, true
	}
	t, found := single("case", *v)
	if found.Found() {
		r.fault(at.at(v.line).of("case"), found)
		return nil, nil, false
	}
	var design casework.Design
	d := designer{reader: r}
	d.fill(reflect.ValueOf(&design).Elem(), t, at.of("case"))
	if !whole { // any key may be meant by what could not be made out
		d.doubt(at.of("case"))
	}
	left = r.changes.leaveOut(&design)
	left = append(left, r.changes.reduceCase(r, &design)...)
	onOffer, inDoubt := materialsOnOffer(root, offers, rough)
	made, faults := casework.Derive(design, casework.Context{
		Ruler:        r.ruler,
		Materials:    allowed.describe(casework.MaterialsOf(onOffer)),
		StockInDoubt: inDoubt || !whole,
		Doubts:       d.doubts,
		Kerf:         into.Saw.Kerf,
		Tools:        r.tools(root, at),
	})
	for _, f := range faults {
		r.fault(place{at.file, f.Line, f.Key}, fault.New(f.Cause, f.Remedy))
	}
	if made == nil {
		return nil, nil, false
	}
	into.Case = made
	for _, p := range made.Parts {
		miters := p.Allowance.Miters
		p.Allowance = allowed.to(p.Material)
		p.Allowance.Miters = miters
		subject := fmt.Sprintf("part %q of the case", p.Name)
		all = append(all, wanted{p, record{place: place{at.file, t.line, subject}, sound: allowed.sound}})
	}
	return all, left, true
}

// materialsOnOffer is all stock whose material and thickness are known, and whether
// there may be more.
func materialsOnOffer(root *table, offers []offer, rough []lumber) (known []stock.Stock, inDoubt bool) {
	for _, o := range offers {
		known = append(known, o.Stock)
	}
	for _, l := range rough { // the thickness that is left when both faces are planed
		finished, _ := l.Quarter.Surfaced(stock.TwoSides)
		known = append(known, stock.Stock{Kind: stock.Board, Material: l.Material, Thickness: finished})
	}
	lacks := func(s stock.Stock) bool { return s.Material == "" || s.Thickness <= 0 }
	inDoubt = slices.ContainsFunc(known, lacks) || slices.ContainsFunc(root.entries, func(e entry) bool {
		at := slices.IndexFunc(fileKeys, func(k key) bool { return k.name == e.key })
		if at < 0 {
			return true // it may be meant for stock
		}
		if !slices.Contains([]string{"sheet", "board", "rough"}, e.key) {
			return false
		}
		_, wrong := tables(e.key, e.value)
		return wrong.Found()
	})
	return slices.DeleteFunc(known, lacks), inDoubt
}

// designer reads the tables of a case, and keeps what could not be read.
type designer struct {
	*reader
	doubts []string
}

func (d *designer) doubt(at place) { d.doubts = append(d.doubts, at.subject) }

// fill sets the fields of a struct of package casework from a table: the tag
// of a field is its key.
func (d *designer) fill(into reflect.Value, t *table, at place) {
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
		if !d.known(e, known, seen, at) {
			if meant, ok := d.meantBy(e.key, known); ok {
				d.doubt(place{subject: at.subject + "." + meant})
			}
			continue
		}
		into, here := fields[e.key], place{at.file, e.line, at.subject + "." + e.key}
		if into.Kind() == reflect.Slice {
			d.fillEach(into, e, here)
			continue
		}
		if found := d.fillOne(into, e, here); found.Found() {
			d.fault(here, found)
		}
	}
}

// fillOne sets one field: a value that can be given, or a table of its own.
func (d *designer) fillOne(into reflect.Value, e entry, here place) (found fault.Fault) {
	if e.value.kind == broken {
		d.doubt(here)
		return fault.Fault{}
	}
	given := func(set *bool, line *int) {
		if *set, *line = !found.Found(), e.line; found.Found() {
			d.doubt(here)
		}
	}
	switch v := into.Addr().Interface().(type) {
	case *casework.Length:
		v.Value, found = caseLength.length(e.value, d.ruler)
		given(&v.Set, &v.Line)
	case *casework.Count:
		v.Value, found = caseCount.count(e.value)
		given(&v.Set, &v.Line)
	case *casework.Word:
		v.Value, found = words(e.value)
		given(&v.Set, &v.Line)
	default:
		var t *table
		if t, found = single(e.key, e.value); found.Found() {
			d.doubt(here)
			return found
		}
		d.fill(into, t, here)
	}
	return found
}

// fillEach sets a slice from the tables of a [[key]].
func (d *designer) fillEach(into reflect.Value, e entry, here place) {
	if e.value.kind == broken {
		d.doubt(here)
		return
	}
	each, found := tables(here.subject, e.value)
	if found.Found() {
		d.fault(here, found)
		d.doubt(here)
	}
	for i, t := range each {
		element := reflect.New(into.Type().Elem()).Elem()
		d.fill(element, t, place{here.file, t.line, fmt.Sprintf("%s %d", here.subject, i+1)})
		into.Set(reflect.Append(into, element))
	}
}
