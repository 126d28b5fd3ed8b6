package shop_test

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
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
	made, err := cutplan.Make(w.Context(), file.Job, cutplan.Options{Iterations: 20})
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

func TestProgressIsReportedAndTakenBack(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	ctx := t.Context()
	e, err := f.Report(ctx, shop.Report{Events: events(t, "cut 1:2"), Sender: shop.Sender{By: "saw"}})
	if err != nil || e.Number != 1 || e.By != "saw" || e.ID == "" {
		t.Fatal(e, err)
	}
	_, err = f.Report(ctx, shop.Report{Events: events(t, "cut 1", "spoiled Z")})
	var wrong shop.NotTaken
	if !errors.As(err, &wrong) || len(wrong) != 1 || wrong[0].Event.String() != "spoiled Z" {
		t.Error(err)
	}
	if made := f.State().Layouts()[0]; made.Whole == made.Pieces {
		t.Error("what was reported before a wrong report is lost")
	}
	undone, err := f.Undo(ctx, shop.Sender{})
	if err != nil || !slices.Equal(undone.Did, []string{"cut 1:2"}) {
		t.Error(undone, err)
	}
	if made := f.State().Layouts()[0]; made.Whole != made.Pieces {
		t.Error("what was taken back counts")
	}
	_, err = f.Undo(ctx, shop.Sender{})
	w.refused(err, "there is nothing to take back")
	if e, err := f.Report(ctx, shop.Report{Events: events(t, "cut 1")}); err != nil || e.Number != 3 {
		t.Error("a number was used twice", e, err)
	}
}

// A report and an undo that are sent again count once, also after other entries.
func TestWhatIsSentAgainCountsOnce(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	ctx := t.Context()
	count := func(n int) {
		t.Helper()
		entries, err := store.RecordAt(w.at("p/progress.jsonl")).Read()
		if err != nil || len(entries) != n {
			t.Errorf("%d entries, want %d: %v", len(entries), n, err)
		}
	}
	lost := shop.Report{Events: events(t, "lost side"), Sender: shop.Sender{ID: store.NewID(), By: "saw", Plan: "K7F2M"}}
	w.must(w.report("p", "cut 1", "cut 2"))
	first, err := f.Report(ctx, lost)
	w.must(err)
	w.must(w.report("p", "lost shelf"))
	again, err := f.Report(ctx, lost)
	if err != nil || again.Number != first.Number || again.ID != first.ID {
		t.Error(again, err)
	}
	count(3)
	back := shop.Sender{ID: store.NewID(), By: "saw"}
	for range 3 {
		if undone, err := f.Undo(ctx, back); err != nil || undone.Did[0] != "lost shelf" {
			t.Error(undone, err)
		}
	}
	count(4)
	// A late repetition of what was taken back does not bring it back.
	f.Undo(ctx, shop.Sender{})
	if _, err := f.Report(ctx, lost); err != nil {
		t.Error(err)
	}
	count(5)
	for _, b := range f.State().Blanks() {
		if b.Lost > 0 {
			t.Error("a report that was taken back counts again")
		}
	}
}

// A report that is sent again is known also when the plan goes on elsewhere by then; a new
// one is refused with the name of the successor.
func TestALateReport(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	ctx := t.Context()
	lost := shop.Report{Events: events(t, "cut 1", "lost shelf"), Sender: shop.Sender{ID: store.NewID(), By: "saw", Plan: "K7F2M"}}
	_, err := f.Report(ctx, lost)
	w.must(err)
	_, err = w.recut("p", "", "H4XYZ")
	w.must(err)
	if e, err := f.Report(ctx, lost); err != nil || e.Number != 1 {
		t.Error(e, err)
	}
	_, err = f.Report(ctx, shop.Report{Events: events(t, "cut 2"), Sender: shop.Sender{ID: store.NewID(), By: "saw", Plan: "K7F2M"}})
	w.refused(err, "plan K7F2M goes on as plan H4XYZ in", "p-2")
	g := w.open("p-2")
	_, err = g.Report(ctx, shop.Report{Events: events(t, "cut 1"), Sender: shop.Sender{Plan: "K7F2M"}})
	w.refused(err, "the report is of plan K7F2M, the folder holds plan H4XYZ")
}

// The state is kept from one report to the next, and is the one of the record also where
// another program reported, took back or replaced the plan in between.
func TestAFolderSeesWhatOthersDo(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	f := w.open("p")
	state := f.State()
	ctx := t.Context()
	w.must(w.report("p", "cut 1:1"))
	w.must(f.Refresh(ctx))
	if f.State() != state {
		t.Error("the state was made anew")
	}
	if made := f.State().Layouts()[0]; made.Whole == made.Pieces {
		t.Error("a report of another program is not seen")
	}
	w.must(w.undo("p"))
	w.must(f.Refresh(ctx))
	if made := f.State().Layouts()[0]; made.Whole != made.Pieces {
		t.Error("an undo of another program is not seen")
	}
	w.must(w.plan("bench.toml", "p", "H4XYZ"))
	w.must(f.Refresh(ctx))
	if f.Plan().Code != "H4XYZ" {
		t.Error("another plan is not seen")
	}
	_, err := f.Report(ctx, shop.Report{Events: events(t, "cut 1"), Sender: shop.Sender{Plan: "K7F2M"}})
	w.refused(err, "the report is of plan K7F2M, the folder holds plan H4XYZ")
}
