package paper

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
)

func TestColumnsNeverAskForMoreThanThePage(t *testing.T) {
	long := strings.Repeat("a long name of a part ", 12)
	tests := []struct {
		reason  string
		columns []Column
		row     []string
	}{
		{"all fits", []Column{{Head: "a"}, {Head: "b", Wrap: true}}, []string{"1", "shelf"}},
		{"one column gives way", []Column{{Head: "a"}, {Head: "b", Wrap: true}}, []string{"1", long}},
		{"two give way alike", []Column{{Head: "a", Wrap: true}, {Head: "b", Wrap: true}}, []string{long, long}},
		{"no column may, so all must", []Column{{Head: "a"}, {Head: "b"}}, []string{long, long}},
		{"fixed ones leave too little", []Column{{Head: "a"}, {Head: "b", Wrap: true}}, []string{long, long}},
	}
	for _, tt := range tests {
		widths := Table{Columns: tt.columns, Rows: [][]string{tt.row}, Size: 9}.widths(180)
		sum := 0.0
		for _, w := range widths {
			sum += w
		}
		if sum > 180.001 {
			t.Errorf("%s: columns take %v of 180 mm", tt.reason, sum)
		}
	}
}

func TestShortColumnKeepsItsWidthBesideALongOne(t *testing.T) {
	table := Table{Columns: []Column{{Head: "a", Wrap: true}, {Head: "b", Wrap: true}},
		Rows: [][]string{{"shelf", strings.Repeat("long ", 60)}}, Size: 9}
	widths := table.widths(180)
	if want := drawing.Width("shelf", drawing.Regular, 9) + 2*cellPad; widths[0] != want {
		t.Errorf("short column %v mm, want %v", widths[0], want)
	}
}

func TestLongTableRunsOnUnderItsHead(t *testing.T) {
	b := New(A4, "title", "", "foot")
	b.Page("rows")
	table := Table{Columns: []Column{{Head: "number"}}}
	for i := range 200 {
		table.Rows = append(table.Rows, []string{fmt.Sprint("row ", i)})
	}
	b.Table(table)
	seen := map[string]int{}
	pages := b.Close().Pages
	for _, p := range pages {
		if err := drawing.CheckWriting(p); err != nil {
			t.Fatal(err)
		}
		for _, text := range p.Texts() {
			seen[text.String]++
		}
	}
	if len(pages) < 3 || seen["number"] != len(pages) {
		t.Errorf("%d pages, %d heads", len(pages), seen["number"])
	}
	for i := range 200 {
		if seen[fmt.Sprint("row ", i)] != 1 {
			t.Errorf("row %d is written %d times", i, seen[fmt.Sprint("row ", i)])
		}
	}
}

func TestTableHeightIsWhatTheTableTakes(t *testing.T) {
	b := New(Letter, "title", "", "foot")
	b.Page("rows")
	table := Table{Columns: []Column{{Head: "n", Number: true}, {Head: "words", Wrap: true, Size: 13}}, Total: 1,
		Rows: [][]string{{"1", "ÉÅ"}, {"12", strings.Repeat("many words ", 30)}, {"3", "sum"}}}
	before := b.Room()
	b.Table(table)
	if took, want := before-b.Room(), b.TableHeight(table); took < want-0.001 || took > want+0.001 {
		t.Errorf("took %v mm, measured %v", took, want)
	}
}

func TestNoRowStandsAloneOnAPage(t *testing.T) {
	for rows := 55; rows < 75; rows++ {
		b := New(A4, "title", "", "foot")
		b.Page("rows")
		table := Table{Columns: []Column{{Head: "number"}}}
		for i := range rows {
			table.Rows = append(table.Rows, []string{fmt.Sprint("row ", i)})
		}
		b.Table(table)
		for i, p := range b.Close().Pages {
			count := 0
			for _, text := range p.Texts() {
				if strings.HasPrefix(text.String, "row ") {
					count++
				}
			}
			if count < fewestRows {
				t.Errorf("of %d rows %d are on page %d", rows, count, i+1)
			}
		}
	}
}

func TestNarrowColumnsPartNoWord(t *testing.T) {
	table := Table{Columns: []Column{{Head: "a", Wrap: true}, {Head: "b", Wrap: true}, {Head: "c"}}, Size: 9,
		Rows: [][]string{{strings.Repeat("many words ", 9), "keep 1090.8 x 426.4", "fixed"}, {strings.Repeat("many words ", 12), "waste", "fixed"}}}
	widths := table.widths(110)
	if least := drawing.LongestWord("1090.8 x 426.4", drawing.Regular, 9) + 2*cellPad; widths[1] < least-0.01 {
		t.Errorf("%.1f mm for a size that takes %.1f", widths[1], least)
	}
}
