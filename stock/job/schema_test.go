package job

import (
	"slices"
	"testing"

	"sawbill/stock"
)

// Defaults and examples are told to people as what may be written: so they
// must be readable, in a job of either units.
func TestSchemaCanReadItsOwnDefaultsAndExamples(t *testing.T) {
	tables := [][]key{fileKeys}
	for _, k := range fileKeys {
		tables = append(tables, k.keys)
		for _, below := range k.keys {
			tables = append(tables, below.keys)
		}
	}
	for _, units := range []stock.Units{stock.Millimeters, stock.Inches} {
		r := &reader{ruler: stock.Ruler{Units: units}}
		for _, k := range slices.Concat(tables...) {
			if written := r.fallback(k); written != "" {
				if _, found := r.field(k, value{kind: cell, text: written}); found.Found() {
					t.Errorf("%s: the default %q: %s; %s", k.name, written, found.Cause, found.Remedy)
				}
			}
			if k.need != (k.example != "") {
				t.Errorf("%s: needed: %v, example: %q", k.name, k.need, k.example)
			}
			if k.need {
				root, mistakes := parseTOML([]byte(k.name + " = " + k.example))
				v, _ := root.last(k.name)
				if _, found := r.field(k, *v); len(mistakes) > 0 || found.Found() {
					t.Errorf("%s: the example %s: %s; %s", k.name, k.example, found.Cause, found.Remedy)
				}
			}
			if k.holds == aCount && k.most == 0 || k.holds == aWord && len(k.words) == 0 {
				t.Errorf("%s: nothing is allowed", k.name)
			}
		}
	}
}

func TestOtherWordsLeadToKeys(t *testing.T) {
	for other, key := range otherWords {
		if len(homesOf(key, fileKeys)) == 0 {
			t.Errorf("%q leads to %q, which is no key", other, key)
		}
	}
}
