package casework

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"sawbill/stock"
)

// most is the greatest count; beyond it, as beyond stock.Longest, a value is a
// slip of the pen. Both keep every sum of a case within what a Length can hold.
const most = 1000

// checkValues checks each value of the design alone, by the tags of its field.
func (r *reader) checkValues() {
	r.checkTable(reflect.ValueOf(r.design), r.place)
}

func (r *reader) checkTable(table reflect.Value, a at) {
	for i := range table.NumField() {
		field := table.Type().Field(i)
		key := field.Tag.Get("toml")
		zero := field.Tag.Get("zero") == "allowed"
		switch v := table.Field(i).Interface().(type) {
		case Length:
			r.checkLength(v, a.under(v.Line, key), zero)
		case Count:
			r.checkCount(v, a.under(v.Line, key), zero)
		case Word:
			words := strings.Fields(field.Tag.Get("words"))
			if site := field.Tag.Get("joint"); site != "" {
				words = wordsOf(site)
			}
			if v.Set && len(words) > 0 {
				r.checkWord(v.Value, words, a.under(v.Line, key))
			}
		default:
			r.checkTables(table.Field(i), a, key)
		}
	}
}

func (r *reader) checkTables(v reflect.Value, a at, key string) {
	switch v.Kind() {
	case reflect.Struct:
		r.checkTable(v, a.under(lineOf(v), key))
	case reflect.Slice:
		for i := range v.Len() {
			r.checkTable(v.Index(i), a.nth(lineOf(v.Index(i)), key, i+1))
		}
	}
}

func lineOf(table reflect.Value) int {
	return int(table.FieldByName("Line").Int())
}

func (r *reader) checkLength(l Length, a at, zero bool) {
	switch {
	case !l.Set:
	case l.Value < 0:
		r.refuse(a, "a length of "+r.print(l.Value)+" is less than nothing", "give a length above 0")
	case l.Value == 0 && !zero:
		r.refuse(a, "a length of 0 leaves nothing to cut", "give a length above 0, or leave the key out")
	case l.Value > stock.Longest:
		r.refuse(a, r.print(l.Value)+" is longer than any case", "check the unit")
	}
}

func (r *reader) checkCount(c Count, a at, zero bool) {
	switch {
	case !c.Set:
	case c.Value < 0 || c.Value == 0 && !zero:
		r.refuse(a, "a count of "+strconv.Itoa(c.Value)+" is less than one", "give a whole number from 1, or leave it out")
	case c.Value > most:
		r.refuse(a, fmt.Sprintf("%d is more than a case can hold", c.Value), fmt.Sprintf("give at most %d", most))
	}
}

func (r *reader) checkWord(word string, allowed []string, a at) {
	for _, w := range allowed {
		if word == w {
			return
		}
	}
	remedy := "write " + oneOf(allowed)
	if near, ok := stock.Nearest(word, allowed); ok {
		remedy = fmt.Sprintf("did you mean %q?", near)
	}
	r.refuse(a, fmt.Sprintf("%q is not a word for this", word), remedy)
}
