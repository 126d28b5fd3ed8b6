// Package rename copies values with other words in their texts.
package rename

import "reflect"

// Texts returns a copy of v in which each text went through f, also texts behind pointers
// and in slices, maps and exported fields. Two equal pointers stay equal in the copy, and v
// stays as it is.
func Texts[T any](v T, f func(string) string) T {
	c := copier{f, map[pointer]reflect.Value{}}
	return c.copied(reflect.ValueOf(&v).Elem()).Interface().(T)
}

type copier struct {
	f    func(string) string
	made map[pointer]reflect.Value
}

type pointer struct {
	to uintptr
	as reflect.Type
}

func (c copier) copied(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.String:
		out.SetString(c.f(v.String()))
	case reflect.Pointer:
		if !v.IsNil() {
			out.Set(c.behind(v))
		}
	case reflect.Interface:
		if !v.IsNil() {
			out.Set(c.copied(v.Elem()))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		fallthrough
	case reflect.Array:
		for i := range v.Len() {
			out.Index(i).Set(c.copied(v.Index(i)))
		}
	case reflect.Map:
		if v.IsNil() {
			break
		}
		out.Set(reflect.MakeMapWithSize(v.Type(), v.Len()))
		for _, k := range v.MapKeys() {
			out.SetMapIndex(c.copied(k), c.copied(v.MapIndex(k)))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out.Field(i).Set(c.copied(v.Field(i)))
			}
		}
	}
	return out
}

// behind is the copy of what a pointer points to.
func (c copier) behind(v reflect.Value) reflect.Value {
	key := pointer{v.Pointer(), v.Type()}
	if made, ok := c.made[key]; ok {
		return made
	}
	made := reflect.New(v.Type().Elem())
	c.made[key] = made
	made.Elem().Set(c.copied(v.Elem()))
	return made
}
