package shop_test

import (
	"os"
	"strings"
	"testing"

	"sawbill/nest/shop"
	"sawbill/stock/store"
)

// A plan takes the place of an earlier plan of its job, and of nothing else. All that is
// refused changes nothing.
func TestWhatAPlanNeverReplaces(t *testing.T) {
	tests := []struct {
		name   string
		before func(w workshop)
		want   []string // nil: the plan is written
	}{
		{"nothing", func(w workshop) {}, nil},
		{"an empty folder", func(w workshop) { os.Mkdir(w.at("p"), 0o777) }, nil},
		{"files with other names", func(w workshop) { w.write("p/photo.jpg", "mine") }, nil},
		{"an earlier plan", func(w workshop) { w.must(w.plan("bench.toml", "p", "H4XYZ")) }, nil},
		{"progress that was taken back", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.must(w.report("p", "cut 1"))
			w.must(w.undo("p"))
		}, nil},
		{"a rest that was withdrawn", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.recut("p", "", "J5ABC")
			w.must(w.withdraw("p-2"))
		}, nil},
		{"progress", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.must(w.report("p", "cut 1"))
		}, []string{"p/progress.jsonl: the record has progress of plan H4XYZ", "another folder with -o", "sawbill recut"}},
		{"progress without its plan", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.must(w.report("p", "cut 1"))
			os.Remove(w.at("p/plan.sawbill"))
		}, []string{"p/progress.jsonl: the record has progress of plan H4XYZ"}},
		{"a plan that goes on", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.recut("p", "", "J5ABC")
		}, []string{"p: plan H4XYZ goes on as plan J5ABC in", "p-2, and would be replaced; name another folder with -o"}},
		{"a plan with progress that goes on", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.must(w.report("p", "cut 1"))
			w.recut("p", "", "J5ABC")
		}, []string{"p: plan H4XYZ goes on as plan J5ABC in", "p-2, and would be replaced; name another folder with -o"}},
		{"the rest of a plan", func(w workshop) {
			w.must(w.plan("bench.toml", "first", "H4XYZ"))
			w.recut("first", "p", "J5ABC")
		}, []string{"p: plan J5ABC in it is the rest of plan H4XYZ"}},
		{"a booked plan", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.book("p", true)
		}, []string{"plan H4XYZ is booked on the rack", "and would be replaced"}},
		{"the plan of another job", func(w workshop) {
			w.write("other/bench.toml", bench)
			w.write("other/rack.toml", "")
			w.must(w.plan("other/bench.toml", "p", "H4XYZ"))
		}, []string{"p: the folder holds plan H4XYZ of", "/other/bench.toml, which would be replaced by one of", "name another folder with -o"}},
		{"pages of the user's own", func(w workshop) { w.write("p/plan.pdf", "mine") },
			[]string{"p/plan.pdf: this program did not write it", "name another folder with -o, or move the file away"}},
		{"pages that were edited", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.write("p/layout-01.svg", "coloured")
		}, []string{"p/layout-01.svg: it was changed by hand"}},
		{"a plan file that was edited", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.write("p/plan.sawbill", "edited")
		}, []string{"p/plan.sawbill:", "would be replaced", "name another folder with -o"}},
		{"a comparison", func(w workshop) {
			w.must(store.FolderAt(w.at("p"), "comparison").Change(w.Context(), func(h *store.Held) error {
				return h.Replace([]store.File{{Name: "compare.csv", Data: []byte("table")}})
			}))
		}, []string{"p: the folder holds a comparison, which would be replaced; name another folder with -o"}},
		{"a file", func(w workshop) { w.write("p", "mine") }, []string{"p: the folder cannot be made", "name another folder with -o"}},
		{"a record that cannot be read", func(w workshop) {
			w.must(w.plan("bench.toml", "p", "H4XYZ"))
			w.write("p/progress.jsonl", "mine\n")
		}, []string{"p/progress.jsonl:1: the line is not as it was written, and would be replaced"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			w := in(t)
			test.before(w)
			before := w.files()
			free := shop.Free(t.Context(), w.at("p"), w.at("bench.toml"))
			if !same(before, w.files()) {
				t.Error("a look changed something")
			}
			err := w.plan("bench.toml", "p", "K7F2M")
			if test.want == nil {
				if err != nil || free != nil || w.open("p").Plan().Code != "K7F2M" {
					t.Error(err, free)
				}
				if photo, there := before["p/photo.jpg"]; there && photo != w.files()["p/photo.jpg"] {
					t.Error("a file of the user has changed")
				}
				return
			}
			w.refused(err, test.want...)
			if err != nil && free == nil && !strings.Contains(err.Error(), "by hand") && !strings.Contains(err.Error(), "did not write") && !strings.Contains(err.Error(), "cannot be made") {
				t.Error("what is refused could have been before the search")
			}
			if !same(before, w.files()) {
				t.Error("a refused plan changed something")
			}
		})
	}
}

// A list of files that is damaged, with no copy of it, takes the plan with it only until it
// is deleted.
func TestAListThatIsDamaged(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.write("p/.sawbill-files", "half a li")
	w.refused(w.report("p", "cut 1"), "p/.sawbill-files: the list of the folder's files is not as it was written", "delete it")
	w.must(os.Remove(w.at("p/.sawbill-files")))
	w.must(w.report("p", "cut 1"))
	w.must(w.undo("p"))
	w.must(w.plan("bench.toml", "p", "M2ABC"))
}
