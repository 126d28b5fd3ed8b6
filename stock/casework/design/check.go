package design

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/internal/wording"
)

// Most is the greatest count; beyond it, as beyond stock.Longest, a value is a
// slip of the pen. Both keep every sum of a case within what a Length can hold.
const Most = 1000

// checker checks each value of a design alone, by the tags of its field.
type checker struct {
	*Reader
	jointWords func(tag string) []string
}

func (r checker) table(table reflect.Value, a Place) {
	for i := range table.NumField() {
		field := table.Type().Field(i)
		key := field.Tag.Get("toml")
		zero := field.Tag.Get("zero") == "allowed"
		switch v := table.Field(i).Addr().Interface().(type) {
		case *Length:
			r.length(*v, a.Under(v.Line, key), zero)
		case *Count:
			r.count(*v, a.Under(v.Line, key), zero)
		case *Word:
			words := strings.Fields(field.Tag.Get("words"))
			if site := field.Tag.Get("joint"); site != "" {
				words = r.jointWords(site)
			}
			if v.Set && len(words) > 0 {
				r.word(v, words, a.Under(v.Line, key))
			}
		default:
			r.tables(table.Field(i), a, key)
		}
	}
}

func (r checker) tables(v reflect.Value, a Place, key string) {
	switch v.Kind() {
	case reflect.Struct:
		r.table(v, a.Under(lineOf(v), key))
	case reflect.Slice:
		for i := range v.Len() {
			r.table(v.Index(i), a.Nth(lineOf(v.Index(i)), key, i+1))
		}
	}
}

func lineOf(table reflect.Value) int {
	return int(table.FieldByName("Line").Int())
}

func (r checker) length(l Length, a Place, zero bool) {
	switch {
	case !l.Set:
	case l.Value < 0:
		r.refuse(a, "a length of "+r.Print(l.Value)+" is less than nothing", "give a length above 0")
	case l.Value == 0 && !zero:
		r.refuse(a, "a length of 0 leaves nothing to cut", "give a length above 0, or leave the key out")
	case l.Value > stock.Longest:
		r.refuse(a, r.Print(l.Value)+" is longer than any case", "check the unit")
	}
}

func (r checker) count(c Count, a Place, zero bool) {
	switch {
	case !c.Set:
	case c.Value < 0 || c.Value == 0 && !zero:
		r.refuse(a, "a count of "+strconv.Itoa(c.Value)+" is less than one", "give a whole number from 1, or leave it out")
	case c.Value > Most:
		r.refuse(a, fmt.Sprintf("%d is more than a case can hold", c.Value), fmt.Sprintf("give at most %d", Most))
	}
}

// word refuses a word that is not allowed. A British one becomes the American one.
func (r checker) word(w *Word, allowed []string, a Place) {
	if american := stock.American(w.Value); slices.Contains(allowed, american) {
		w.Value = american
	}
	word := w.Value
	if slices.Contains(allowed, word) {
		return
	}
	remedy := "write " + wording.OneOf(allowed)
	if near, ok := stock.Nearest(word, allowed); ok {
		remedy = fmt.Sprintf("did you mean %q?", near)
	}
	r.refuse(a, fmt.Sprintf("%q is not a word for this", word), remedy)
}
