package job_test

import (
	"fmt"
	"strings"
	"testing"
)

// A job beyond a limit is refused in one fault with its place, whatever
// else is wrong with it.
func TestAJobBeyondItsLimitsIsRefused(t *testing.T) {
	row := "shelf,birch ply 18,900,300\n"
	heading := "name,material,length,width\n"
	materials := func(n int, named string) string {
		var text strings.Builder
		for i := range n {
			fmt.Fprintf(&text, named, i)
		}
		return text.String()
	}
	for name, at := range map[string]struct {
		text, list, want string
	}{
		"tables of parts": {sheet18 + strings.Repeat("[[part]]\n", 10_001), "",
			"bench.toml:10008: part: the file has 10001 tables [[part]], and at most 10000 are read; write parts alike in one row with their count, or plan it as several jobs"},
		"rows of a list": {`parts = "list.csv"` + sheet18, heading + strings.Repeat(row, 10_001),
			"list.csv:10002: the list has 10001 rows, and at most 10000 are read; write parts alike in one row with their count, or plan it as several jobs"},
		"tables and rows": {`parts = "list.csv"` + sheet18 + oneShelf, heading + strings.Repeat(row, 10_000),
			`list.csv:10001: part "shelf": the job has 10001 rows of parts, and at most 10000 are planned; write parts alike in one row with their count, or plan it as several jobs`},
		"columns": {`parts = "list.csv"` + sheet18, "name,material,length,width" + strings.Repeat(",x", 97) + "\n" + row,
			"list.csv:1: the heading has 101 columns, and at most 100 are read; delete those that are not of the list"},
		"tables of sheets": {strings.Repeat("[[sheet]]\n", 5001) + oneShelf, "",
			"bench.toml:5001: sheet: the file has 5001 tables [[sheet]], and at most 5000 are read; leave out what no part is cut from, or plan it as several jobs"},
		"tables of materials": {materials(1001, "[[material]]\nname = \"m %d\"\n") + sheet18 + oneShelf, "",
			"bench.toml:2001: material: the file has 1001 tables [[material]], and at most 1000 are read; leave out what no part is cut from, or plan it as several jobs"},
		"materials": {`parts = "list.csv"` + sheet18, heading + materials(1000, "shelf,m %d,900,300\n"),
			`list.csv:1001: part "shelf": material: the job has 1001 materials, and at most 1000 are planned; plan it as several jobs`},
	} {
		if _, err := read(t, at.text, "list.csv", at.list); err == nil || err.Error() != at.want {
			t.Errorf("%s: error is\n%.300v, want\n%s", name, err, at.want)
		}
	}
}

// A job at its limits is read.
func TestAJobAtItsLimitsIsRead(t *testing.T) {
	list := strings.Builder{}
	list.WriteString("name,material,length,width\n")
	for i := range 10_000 {
		fmt.Fprintf(&list, "shelf %d,birch ply 18,900,300\n", i)
	}
	if file := mustRead(t, `parts = "list.csv"`+sheet18, "list.csv", list.String()); len(file.Parts) != 10_000 {
		t.Errorf("%d parts, want 10000", len(file.Parts))
	}
	each := strings.NewReplacer("full sheet", "sheet %d", "birch ply 18", "ply %d").Replace(sheet18 + oneShelf)
	var text strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&text, each, i, i, i)
	}
	if file := mustRead(t, text.String()); len(file.Stock) != 1000 {
		t.Errorf("%d materials, want 1000", len(file.Stock))
	}
}
