package planfile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/stock"
	"sawbill/stock/job"
)

// Nothing of a plan is lost in its file: every field that the program's structs have, today
// or later, is written and read back. A field that fails here wants a key, and if files of
// this version lie in shops already, a new version.
func TestEveryFieldOfAPlanIsInItsFile(t *testing.T) {
	f := filler{}
	want := &Plan{}
	f.fill(reflect.ValueOf(want).Elem())
	for i := range want.Plan.Layouts {
		l := &want.Plan.Layouts[i]
		l.Root = f.tree()
		for k := range l.Printed {
			s := &l.Printed[k]
			s.Number, s.InHand, s.Trim = k+1, k, false
			s.OffNode, s.LeftNode = &l.Root.Children[k], &l.Root.Children[k+1]
		}
	}
	for i := range want.Plan.Numbered {
		want.Plan.Numbered[i].Layout, want.Plan.Numbered[i].Node = i, want.Plan.Layouts[i].Root.Children[1]
	}
	for i := range 2 {
		want.Plan.Unplaced[i].Blank, want.Plan.Cover.Uncovered[i].Blank = i, 1-i
		want.Plan.Estimates[i].Blanks[0].Blank, want.Plan.Estimates[i].Blanks[1].Blank = 1, 0
	}
	want.File = &job.File{Sources: []job.Source{{Name: "../jobs/chest.toml", Text: "title = 1"}, {Name: "../jobs/lists/parts.csv", Text: "name"}, {Name: "../rack.toml", Text: "units"}}}

	written, err := json.Marshal(want.fileV2())
	if err != nil {
		t.Fatal(err)
	}
	got, err := readV2(written)
	if err != nil {
		t.Fatal(err)
	}
	if got.Unread == nil {
		t.Error("a job that makes no sense is read")
	}
	names := []string{}
	for _, s := range got.File.Sources {
		names = append(names, s.Name)
	}
	if d := cmp.Diff([]string{"chest.toml", "lists/parts.csv", "../rack.toml"}, names); d != "" {
		t.Errorf("sources (-want +got):\n%s", d)
	}
	want.File, got.File, got.Unread = nil, nil, nil
	same := cmp.Options{cmp.Comparer(func(a, b stock.Rough) bool { return a == b }), cmp.Comparer(func(a, b stock.Yield) bool { return a == b }),
		cmp.Comparer(func(a, b stock.BoardFeet) bool { return a == b })}
	if d := cmp.Diff(want, got, same); d != "" {
		t.Errorf("lost in the file (-plan +read):\n%s", d)
	}
	again, err := json.Marshal((&Plan{Plan: want.Plan, File: &job.File{}}).fileV2())
	if err != nil || bytes.Equal(again, written) {
		t.Error("a plan without its lineage is written as one that has it", err)
	}
}

// filler gives every field a value that is like no other, as far as there are as many.
type filler struct{ n int64 }

func (f *filler) fill(v reflect.Value) {
	f.n++
	if of, known := map[reflect.Type]any{
		reflect.TypeFor[stock.Units]():    stock.Inches,
		reflect.TypeFor[stock.Kind]():     stock.Board,
		reflect.TypeFor[stock.Grain]():    stock.GrainWidth,
		reflect.TypeFor[stock.FirstCut](): stock.FirstCrosscut,
		reflect.TypeFor[stock.NextCut]():  stock.NextRip,
		reflect.TypeFor[cutplan.Cut]():    cutplan.Crosscut,
		reflect.TypeFor[cutplan.Guide]():  cutplan.Marked,
		reflect.TypeFor[stock.Grade]():    stock.GradeOf("Selects"),
		reflect.TypeFor[stock.Yield]():    stock.Percent(int(f.n%90) + 1),
		reflect.TypeFor[cutplan.Node]():   cutplan.Node{}, // filled in by the test
		reflect.TypeFor[error]():          nil,
	}[v.Type()]; known {
		if of != nil {
			v.Set(reflect.ValueOf(of))
		}
		return
	}
	if v.Type() == reflect.TypeFor[stock.Quarter]() {
		quarter, err := stock.ParseQuarter("5/4")
		if err != nil {
			panic(err)
		}
		v.Set(reflect.ValueOf(quarter))
		return
	}
	switch v.Kind() {
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int, reflect.Int64:
		v.SetInt(f.n)
	case reflect.Float64:
		v.SetFloat(float64(f.n) / 4)
	case reflect.String:
		v.SetString(fmt.Sprintf("text %d", f.n))
	case reflect.Struct:
		for i := range v.NumField() {
			f.fill(v.Field(i))
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			f.fill(v.Index(i))
		}
	case reflect.Map:
		key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		f.fill(key)
		f.fill(value)
		v.Set(reflect.MakeMap(v.Type()))
		v.SetMapIndex(key, value)
	case reflect.Pointer:
		if v.Type() == reflect.TypeFor[*job.File]() || v.Type() == reflect.TypeFor[*cutplan.Node]() {
			return // filled in by the test
		}
		v.Set(reflect.New(v.Type().Elem()))
		f.fill(v.Elem())
	default:
		panic(fmt.Sprintf("a field of a kind that the test does not know: %v", v.Type()))
	}
}

// tree is a split into a part, an offcut, and a split of its own.
func (f *filler) tree() cutplan.Node {
	one := func(n cutplan.Node) cutplan.Node {
		f.n += 4
		n.X, n.Y, n.Length, n.Width = stock.Length(f.n), stock.Length(f.n+1), stock.Length(f.n+2), stock.Length(f.n+3)
		return n
	}
	waste, below := one(cutplan.Node{Use: cutplan.Waste}), one(cutplan.Node{Use: cutplan.Part, Blank: 0})
	return one(cutplan.Node{Use: cutplan.Split, Cut: cutplan.Crosscut, Children: []cutplan.Node{
		one(cutplan.Node{Use: cutplan.Part, Blank: 1, Turned: true}), one(cutplan.Node{Use: cutplan.Offcut}),
		one(cutplan.Node{Use: cutplan.Split, Cut: cutplan.Rip, Children: []cutplan.Node{below, waste}}),
	}})
}
