// Package schema writes the JSON Schema of a Go type, as encoding/json writes its values.
// The type is then the one place for the keys: their names, order and meanings.
//
// Tags of a field describe its key: "json" names it, "about" says what it holds, "words"
// lists the words that it allows, with bars between. A field named "_" with the tag "about" describes its
// struct. Every struct has a definition of its own, named after its type without "File".
//
// The dialect is JSON Schema 2020-12.
package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// Dialect is the value of "$schema".
const Dialect = "https://json-schema.org/draft/2020-12/schema"

// Value describes a type that writes itself, not as encoding/json would.
type Value struct {
	Name  string // of its definition
	About string
	Type  string // of JSON: "number", "string"
	// Least and Most are limits, both included; nil is none.
	Least, Most *float64
}

// Described types write themselves.
type Described interface{ Schema() Value }

// Unions lists the structs that may stand where an interface is declared.
type Unions map[reflect.Type][]reflect.Type

// Of returns the schema of root, a struct. It panics if a type cannot be written as JSON or
// a key has no description: both are faults of the program.
func Of(root any, title string, unions Unions) []byte {
	w := writer{unions: unions, defs: map[string]reflect.Type{}}
	t := reflect.TypeOf(root)
	s := object{{"$schema", Dialect}, {"title", title}}
	s = append(s, w.keys(t)...)
	s = append(s, pair{"$defs", w.definitions()})
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(s); err != nil {
		panic("schema: " + err.Error())
	}
	return b.Bytes()
}

// object is a JSON object whose keys keep their order.
type object []pair

type pair struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, p := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		for _, of := range []any{p.key, p.value} {
			e := json.NewEncoder(&b)
			e.SetEscapeHTML(false)
			if err := e.Encode(of); err != nil {
				return nil, err
			}
			if of == p.key {
				b.WriteByte(':')
			}
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// writer collects the types that need a definition.
type writer struct {
	unions  Unions
	defs    map[string]reflect.Type // by name
	waiting []reflect.Type
}

// definitions describes the types met so far and those that they hold, by name.
func (w *writer) definitions() object {
	var all object
	for len(w.waiting) > 0 {
		t := w.waiting[0]
		w.waiting = w.waiting[1:]
		all = append(all, pair{nameOf(t), w.definition(t)})
	}
	slices.SortFunc(all, func(a, b pair) int { return strings.Compare(a.key, b.key) })
	return all
}

func (w *writer) definition(t reflect.Type) object {
	if v, ok := described(t); ok {
		s := object{{"type", v.Type}, {"description", v.About}}
		if v.Least != nil {
			s = append(s, pair{"minimum", *v.Least})
		}
		if v.Most != nil {
			s = append(s, pair{"maximum", *v.Most})
		}
		return s
	}
	if t.Kind() == reflect.Interface {
		var of []object
		for _, one := range w.unions[t] {
			of = append(of, w.ref(one))
		}
		return object{{"oneOf", of}}
	}
	return w.keys(t)
}

// keys describes a struct.
func (w *writer) keys(t reflect.Type) object {
	var properties object
	required := []string{}
	about := ""
	for _, f := range reflect.VisibleFields(t) {
		if f.Name == "_" && len(f.Index) == 1 {
			about = f.Tag.Get("about")
		}
		if !f.IsExported() || f.Anonymous {
			continue
		}
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		said, found := f.Tag.Lookup("about")
		if name == "" || !found {
			panic(fmt.Sprintf("schema: %v.%s has no key or no description", t, f.Name))
		}
		p := w.value(f.Type)
		if said != "" {
			p = append(p, pair{"description", said})
		}
		switch allowed := words(f); {
		case len(allowed) == 1:
			p = append(p, pair{"const", allowed[0]})
		case len(allowed) > 1:
			p = append(p, pair{"enum", allowed})
		}
		properties = append(properties, pair{name, p})
		if options != "omitempty" {
			required = append(required, name)
		}
	}
	s := object{{"type", "object"}}
	if about != "" {
		s = append(s, pair{"description", about})
	}
	return append(s, pair{"properties", properties}, pair{"required", required})
}

// words lists the words that a key allows; nil is any.
func words(f reflect.StructField) []string {
	said := f.Tag.Get("words")
	if said == "" {
		return nil
	}
	return strings.Split(said, "|")
}

// value describes a value of type t.
func (w *writer) value(t reflect.Type) object {
	if _, ok := described(t); ok {
		return w.ref(t)
	}
	switch t.Kind() {
	case reflect.Pointer:
		return w.value(t.Elem())
	case reflect.Bool:
		return object{{"type", "boolean"}}
	case reflect.Int, reflect.Int64:
		return object{{"type", "integer"}, {"minimum", 0}}
	case reflect.String:
		return object{{"type", "string"}}
	case reflect.Slice:
		return object{{"type", "array"}, {"items", w.value(t.Elem())}}
	case reflect.Struct, reflect.Interface:
		return w.ref(t)
	}
	panic(fmt.Sprintf("schema: a value of %v", t))
}

// ref refers to the definition of t.
func (w *writer) ref(t reflect.Type) object {
	name := nameOf(t)
	if other, found := w.defs[name]; !found {
		w.defs[name] = t
		w.waiting = append(w.waiting, t)
	} else if other != t {
		panic(fmt.Sprintf("schema: two types are named %q", name))
	}
	return object{{"$ref", "#/$defs/" + name}}
}

func described(t reflect.Type) (Value, bool) {
	if t.Kind() == reflect.Interface {
		return Value{}, false
	}
	d, ok := reflect.Zero(t).Interface().(Described)
	if !ok {
		return Value{}, false
	}
	return d.Schema(), true
}

func nameOf(t reflect.Type) string {
	if v, ok := described(t); ok {
		return v.Name
	}
	return strings.TrimSuffix(t.Name(), "File")
}
