package shop_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/nest/shop"
	"sawbill/nest/shop/planfile"
	"sawbill/stock/job"
	"sawbill/stock/rack"
	"sawbill/stock/store"
)

// bench is a job of two sheets.
const bench = `title = "Bench"
rack = "rack.toml"
[[sheet]]
name = "birch 18"
material = "birch ply 18"
thickness = 18
length = 1220
width = 1220
price = 44
[[part]]
name = "side"
material = "birch ply 18"
length = 1150
width = 280
count = 2
[[part]]
name = "shelf"
material = "birch ply 18"
length = 764
width = 280
count = 4
`

// workshop is a folder with the job in it.
type workshop struct {
	*testing.T
	root string
}

func in(t *testing.T) workshop {
	t.Helper()
	w := workshop{t, t.TempDir()}
	w.write("bench.toml", bench)
	w.write("rack.toml", "")
	return w
}

func (w workshop) at(name string) string { return filepath.Join(w.root, filepath.FromSlash(name)) }

func (w workshop) write(name, text string) {
	w.Helper()
	if err := os.MkdirAll(filepath.Dir(w.at(name)), 0o777); err != nil {
		w.Fatal(err)
	}
	if err := os.WriteFile(w.at(name), []byte(text), 0o666); err != nil {
		w.Fatal(err)
	}
}

// planned is a plan of a job for a folder, with a code.
func (w workshop) planned(jobName, folder, code string) *planfile.Plan {
	w.Helper()
	file, err := job.Read(w.at(jobName))
	if err != nil {
		w.Fatal(err)
	}
	made, err := sellercuts.Make(w.Context(), file.Job, cutplan.Options{Iterations: 20})
	if err != nil {
		w.Fatal(err)
	}
	return &planfile.Plan{
		Plan: made, Code: code, Number: 1, Marks: cutplan.NextMark(made.Bill), File: file,
		Job: planfile.FromFolder(w.at(folder), w.at(jobName)), Rack: planfile.FromFolder(w.at(folder), file.Rack),
	}
}

func pagesOf(code string) []store.File {
	return []store.File{{Name: "plan.pdf", Data: []byte("pages of " + code)}, {Name: "layout-01.svg", Data: []byte("picture of " + code)}}
}

func (w workshop) plan(jobName, folder, code string) error {
	w.Helper()
	return shop.Place(w.Context(), w.at(folder), w.planned(jobName, folder, code), pagesOf(code))
}

func (w workshop) open(folder string) *shop.Folder {
	w.Helper()
	f, err := shop.Open(w.Context(), w.at(folder))
	if err != nil {
		w.Fatal(err)
	}
	return f
}

// report reports events, each as it is written down.
func (w workshop) report(folder string, said ...string) error {
	w.Helper()
	f, err := shop.Open(w.Context(), w.at(folder))
	if err != nil {
		return err
	}
	_, err = f.Report(w.Context(), shop.Report{Events: events(w, said...), Sender: shop.Sender{Date: "2026-03-05"}})
	return err
}

func events(t testing.TB, said ...string) []progress.Event {
	t.Helper()
	var all []progress.Event
	for _, s := range said {
		e, err := progress.ParseEvent(s)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, e)
	}
	return all
}

func (w workshop) undo(folder string) error {
	w.Helper()
	f, err := shop.Open(w.Context(), w.at(folder))
	if err == nil {
		_, err = f.Undo(w.Context(), shop.Sender{})
	}
	return err
}

// recut plans the rest of a plan, and says where it is.
func (w workshop) recut(folder, into, code string) (string, error) {
	w.Helper()
	f, err := shop.Open(w.Context(), w.at(folder))
	if err != nil {
		return "", err
	}
	rest, err := f.Rest(w.Context())
	if err != nil {
		return "", err
	}
	return w.writeRest(rest, into, code)
}

func (w workshop) writeRest(rest *shop.Rest, into, code string) (string, error) {
	w.Helper()
	name := ""
	if into != "" {
		name = w.at(into)
	}
	where, number, err := rest.Folder(w.Context(), name)
	if err != nil {
		return "", err
	}
	o := rest.Options()
	o.Iterations = 20
	made, err := recut.Make(w.Context(), rest.State(), o)
	if err != nil {
		w.Fatal(err)
	}
	p := rest.Plan(made, where, number)
	p.Code = code
	err = rest.Write(w.Context(), where, p, pagesOf(code), "2026-03-05")
	relative, _ := filepath.Rel(w.root, where)
	return filepath.ToSlash(relative), err
}

func (w workshop) withdraw(folder string) error {
	w.Helper()
	f, err := shop.Open(w.Context(), w.at(folder))
	if err == nil {
		_, _, err = f.Withdraw(w.Context(), "2026-03-05")
	}
	return err
}

func (w workshop) book(folder string, giveUp bool) (rack.Done, error) {
	w.Helper()
	f, err := shop.Open(w.Context(), w.at(folder))
	if err != nil {
		return rack.Done{}, err
	}
	return f.Book(w.Context(), shop.Booking{Rack: rack.At(w.at("rack.toml")), GiveUp: giveUp, Date: "2026-03-05"})
}

func (w workshop) must(err error) {
	w.Helper()
	if err != nil {
		w.Fatal(err)
	}
}

// refused checks that an error says all of this.
func (w workshop) refused(err error, want ...string) {
	w.Helper()
	for _, part := range want {
		if err == nil || !strings.Contains(filepath.ToSlash(err.Error()), part) {
			w.Errorf("want %q: %v", part, err)
		}
	}
}

// files are the names and contents of all that is in the workshop.
func (w workshop) files() map[string]string {
	w.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(w.root, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(w.root, path)
		all[filepath.ToSlash(name)] = string(data)
		return err
	})
	w.must(err)
	return all
}

func same(a, b map[string]string) bool {
	if len(a) != len(b) {
		return false
	}
	for name, text := range a {
		if is, there := b[name]; !there || is != text {
			return false
		}
	}
	return true
}
