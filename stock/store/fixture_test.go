package store_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock/store"
)

// Every version of the record is read for ever, in files that each version wrote. A line
// of version 2 may take back one of version 1.
func TestEveryVersionIsRead(t *testing.T) {
	one := []store.Entry{
		{Version: 1, Number: 1, ID: "1-1", Plan: "AP77R", Date: "2026-03-05", Did: []string{"cut 1"}},
		{Version: 1, Number: 2, ID: "1-2", Plan: "AP77R", Date: "2026-03-06", Did: []string{"cut 3", "lost long rail"}},
		{Version: 1, Number: 3, ID: "1-3", Plan: "AP77R", Date: "2026-03-07", Did: []string{"cut 2", "spoiled C=480 x 300 mm"}},
		{Version: 1, Number: 4, ID: "1-4", Plan: "AP77R", Date: "2026-03-07", Did: []string{"missing spruce 45 x 95, 3.6 m"}},
	}
	two := append(one[:4:4],
		store.Entry{Version: 2, Number: 5, ID: "hV0l5YtTT2mCz3qnH8m1-w", Plan: "AP77R", Date: "2026-03-08", Undoes: "1-4"},
		store.Entry{Version: 2, Number: 6, ID: "3q2-7wAAAAD_____AAAAAA", Plan: "AP77R", Date: "2026-03-08", By: "bench saw", Did: []string{"cut 5/1:1-3"}},
		store.Entry{Version: 2, Number: 7, ID: "AQIDBAUGBwgJCgsMDQ4PEA", Plan: "AP77R", Date: "2026-03-08", By: "desk", Did: []string{"good J", "spoiled I"}},
		store.Entry{Version: 2, Number: 8, ID: "8PHy8_T19vf4-fr7_P3-_w", Plan: "AP77R", By: "bench saw", Undoes: "3q2-7wAAAAD_____AAAAAA"},
	)
	for name, c := range map[string]struct{ want, standing []store.Entry }{
		"record-1.jsonl": {one, one},
		"record-2.jsonl": {two, []store.Entry{two[0], two[1], two[2], two[6]}},
	} {
		file := filepath.Join("testdata", name)
		got, err := store.RecordAt(file).Read()
		if d := cmp.Diff(c.want, got); err != nil || d != "" {
			t.Fatalf("%s: error %v (-want +got):\n%s", name, err, d)
		}
		if d := cmp.Diff(c.standing, store.Standing(got)); d != "" {
			t.Errorf("%s, what counts (-want +got):\n%s", name, d)
		}
		r := newRecord(t)
		before := bytesOf(t, file)
		if err := os.WriteFile(r.Path(), []byte(before), 0o666); err != nil {
			t.Fatal(err)
		}
		added := add(t, r, "cut 6")
		undo := addEntry(t, r, store.Entry{Plan: "AP77R", Undoes: "1-1"})
		if added.Number != len(got)+1 || !strings.HasPrefix(bytesOf(t, r.Path()), before) {
			t.Errorf("%s: %+v added to what became %q", name, added, bytesOf(t, r.Path()))
		}
		after, err := r.Read()
		if d := cmp.Diff(append(got, added, undo), after); err != nil || d != "" {
			t.Errorf("%s: error %v (-want +got):\n%s", name, err, d)
		}
	}
}

// A line of a newer version is refused, and the version named. Nothing is written.
func TestANewerVersionIsRefused(t *testing.T) {
	r := newRecord(t)
	add(t, r, "cut 1")
	text := bytesOf(t, r.Path()) + `{"v":3,"number":2,"device":"saw 2"}` + "\n"
	if err := os.WriteFile(r.Path(), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	_, err := r.Add(store.Entry{Plan: "AP77R", Did: []string{"cut 2"}})
	if want := r.Path() + ":2: the line is of version 3 of the record, this program reads versions 1 to 2; use the newer Sawbill that wrote it"; err == nil || err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
	if got := bytesOf(t, r.Path()); got != text {
		t.Errorf("%q became %q", text, got)
	}
}

// The keys of a version never change. Whoever adds a key raises the version, freezes the
// struct as it was, adds a fixture, and only then a line here.
func TestTheKeysOfAVersionNeverChange(t *testing.T) {
	shape := ""
	entry := reflect.TypeFor[store.Entry]()
	for i := range entry.NumField() {
		f := entry.Field(i)
		shape += fmt.Sprintf("%s %s %s\n", f.Name, f.Type, f.Tag.Get("json"))
	}
	want := map[int]string{2: "Version int v\nNumber int n\nID string id\nPlan string plan\nDate string date,omitempty\n" +
		"By string by,omitempty\nDid []string did,omitempty\nUndoes string undoes,omitempty\n"}
	version := add(t, newRecord(t), "cut 1").Version
	if d := cmp.Diff(want[version], shape); d != "" {
		t.Errorf("version %d (-want +got):\n%s", version, d)
	}
	if _, err := os.Stat(filepath.Join("testdata", fmt.Sprintf("record-%d.jsonl", version))); err != nil {
		t.Error(err)
	}
}
