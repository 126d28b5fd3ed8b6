package planfile

import (
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The shape of a version stays as it is: files of it lie in shops. If this fails, leave the
// structs as they were and make a version 3 with structs of its own; the golden file
// of a version is never written anew.
func TestTheShapeOfAVersionStays(t *testing.T) {
	for name, file := range map[string]any{"v1": fileV1{}, "v2": fileV2{}} {
		var b strings.Builder
		shapeOf(&b, reflect.TypeOf(file), map[reflect.Type]bool{})
		want, err := os.ReadFile("testdata/" + name + "-shape.golden")
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(string(want), b.String()); d != "" {
			t.Errorf("version %s has another shape (-was +is): that is a new version\n%s", name, d)
		}
	}
}

// shapeOf lists the keys of a struct with their types, and those of the structs in it.
func shapeOf(b *strings.Builder, of reflect.Type, seen map[reflect.Type]bool) {
	if seen[of] {
		return
	}
	seen[of] = true
	fmt.Fprintf(b, "%s\n", of.Name())
	var below []reflect.Type
	for _, f := range reflect.VisibleFields(of) {
		if !f.Anonymous {
			fmt.Fprintf(b, "  %s: %s\n", keyOf(f), strings.ReplaceAll(f.Type.String(), "planfile.", ""))
			below = append(below, f.Type)
		}
	}
	for _, in := range below {
		for in.Kind() == reflect.Slice || in.Kind() == reflect.Pointer || in.Kind() == reflect.Map {
			in = in.Elem()
		}
		if in.Kind() == reflect.Struct && in.Name() != "" {
			shapeOf(b, in, seen)
		}
	}
}

func keyOf(f reflect.StructField) string {
	if tag := f.Tag.Get("json"); tag != "" {
		return tag
	}
	return f.Name
}
