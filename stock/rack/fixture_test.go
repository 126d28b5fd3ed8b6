package rack_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
	"sawbill/stock/rack"
)

// fixture copies a rack and its history as a version of the program wrote them.
func fixture(t *testing.T, version int) (r rack.Rack, file, history string) {
	t.Helper()
	name := filepath.Join("testdata", fmt.Sprintf("rack-%d.toml", version))
	file, history = text(t, name), text(t, name+".history")
	path := filepath.Join(t.TempDir(), "rack.toml")
	for name, content := range map[string]string{path: file, path + ".history": history} {
		if err := os.WriteFile(name, []byte(content), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return rack.At(path), file, history
}

// Histories of every version are read for ever, in files that each version wrote, and go
// on: every earlier state can be restored, and lines of version 2 follow those of version 1.
func TestEveryVersionOfAHistoryIsRead(t *testing.T) {
	one := `1 added from l.csv []->[R1 R2 R3]
2 added []->[R4]
3 edited by hand []->[]
4 taken: a tray [R2]->[]
5 taken [R1]->[]
6 took back change 5 []->[R1]
7 plan 8TXEA carried out [R1 R3]->[R5 R6] 8TXEA
8 edited by hand, and cannot be read []->[]
9 took back change 8 []->[]
10 took back change 7 [R5 R6]->[R1 R3]
`
	two := one + `11 taken [R4]->[]
12 added []->[R7]
13 plan 7XYLX carried out [R1 R3]->[R8 R9 R10] 7XYLX 8TXEA
14 edited by hand, and cannot be read []->[]
15 took back change 14 []->[]
`
	for version, want := range map[int]string{1: one, 2: two} {
		r, file, history := fixture(t, version)
		entries, err := r.History()
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, e := range entries {
			got += strings.TrimSpace(fmt.Sprintln(e.Number, e.What, fmt.Sprint(e.Out)+"->"+fmt.Sprint(e.In), e.Plan, strings.Join(e.Continues, " "))) + "\n"
		}
		if d := cmp.Diff(strings.Split(want, "\n"), strings.Split(got, "\n")); d != "" {
			t.Errorf("version %d (-want +got):\n%s", version, d)
		}
		if _, booked, err := r.BookedBy("8TXEA"); err != nil || booked != (version == 2) {
			t.Errorf("version %d: booked is %v, error %v", version, booked, err)
		}
		states := rack.States(r.Path())
		for number, state := range states {
			if _, err := r.Restore(t.Context(), number, today); err != nil {
				t.Errorf("version %d: %v", version, err)
			}
			if now, _ := os.ReadFile(r.Path()); string(now) != state {
				t.Errorf("version %d: state %d is %q, want %q", version, number, now, state)
			}
		}
		if _, err := r.Restore(t.Context(), len(states)-1, today); err != nil || text(t, r.Path()) != file {
			t.Errorf("version %d: error %v, the file is %q, was %q", version, err, text(t, r.Path()), file)
		}
		put := change(t, r, rack.Change{Put: []stock.Piece{plank}})
		if highest := entries[len(entries)-1].Highest; put.Put[0].ID != fmt.Sprintf("R%d", highest+1) || put.Version != 2 {
			t.Errorf("version %d: put as %s, highest was %d", version, put.Put[0].ID, highest)
		}
		if now := text(t, r.Path()+".history"); !strings.HasPrefix(now, history) {
			t.Errorf("version %d: the history became %q", version, now)
		}
	}
}

// A line of a newer version is refused, and not taken for a torn one, whatever it says.
func TestANewerHistoryIsRefused(t *testing.T) {
	r, file, history := fixture(t, 2)
	history += `{"v":3,"n":16,"what":["taken"],"highest":"R10"}` + "\n"
	if err := os.WriteFile(r.Path()+".history", []byte(history), 0o666); err != nil {
		t.Fatal(err)
	}
	_, err := r.Change(t.Context(), rack.Change{Put: []stock.Piece{plank}, Date: today})
	if want := r.Path() + ".history:16: the line is of version 3 of the history, this program reads versions 1 to 2; use the newer Sawbill that wrote it"; err == nil || err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
	if read, err := r.Read(); err != nil || read.Text != file {
		t.Errorf("error %v, readers see %v", err, read)
	}
	if text(t, r.Path()) != file || text(t, r.Path()+".history") != history {
		t.Error("a file was changed")
	}
}

// The keys of a version never change. Whoever adds a key raises the version, adds a
// fixture, and only then a line here.
func TestTheKeysOfAHistoryNeverChange(t *testing.T) {
	shape := ""
	entry := reflect.TypeFor[rack.Entry]()
	for i := range entry.NumField() {
		f := entry.Field(i)
		shape += fmt.Sprintf("%s %s %s\n", f.Name, f.Type, f.Tag.Get("json"))
	}
	want := map[int]string{2: "Version int v,omitempty\nNumber int n\nDate string date,omitempty\nWhat string what\n" +
		"Out []string out,omitempty\nIn []string in,omitempty\nPlan string plan,omitempty\nContinues []string continues,omitempty\n" +
		"Back *int back,omitempty\nUndo bool undo,omitempty\nHighest int highest\nAt int at\nCut rack.passage cut,omitempty\n" +
		"Put rack.passage put,omitempty\nSum string sum\n"}
	r, _ := written(t, byHand)
	version := change(t, r, rack.Change{Put: []stock.Piece{plank}}).Version
	if d := cmp.Diff(want[version], shape); d != "" {
		t.Errorf("version %d (-want +got):\n%s", version, d)
	}
	if _, err := os.Stat(filepath.Join("testdata", fmt.Sprintf("rack-%d.toml.history", version))); err != nil {
		t.Error(err)
	}
}
