package report

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/samples"
)

// awkward are names that break tables, formats and lines.
var awkward = []string{
	"side | left", "shelf a/b", `"top"; <upper>`, "مدرف علوي", "棚板", "Tấm đỡ trái ẵ", "ἀνώτερον φύλλον", "Қабырға тақтасы",
	strings.Repeat("long ", 40), strings.Repeat("w", 200), strings.Repeat("Ổ", 200), "ọ̀rọ̀ ẹ́", "1-1/2\" x 3/4 | foot", "🪚\t\u202emirrored",
}

// 300 different parts with such names break nothing: no text touches another, and the
// document reads back, page for page.
func TestManyPartsWithAwkwardNames(t *testing.T) {
	p := samples.Sheets(25, func(part int) string { return fmt.Sprintf("%s %d", awkward[part%len(awkward)], part) })
	p.Job.Title, p.Job.Stock[0].Name = awkward[8], awkward[9]
	for i := range p.Layouts {
		p.Layouts[i].Stock.Name = awkward[i%len(awkward)]
	}
	for _, o := range papers {
		laid := lay(&p, whole(o))
		for i, page := range laid.Pages {
			if err := drawing.CheckLegible(page); err != nil {
				t.Fatalf("on %v in %s, page %d: %v", o.Paper, o.Ruler.Units, i+1, err)
			}
		}
	}
	data, warned, err := PDF(&p, Options{})
	if err != nil || len(warned) != 1 || !strings.Contains(warned[0], "板") {
		t.Fatalf("%v, warned %q", err, warned)
	}
	text := readBack(t, data)
	pages := len(lay(&p, Options{}).Pages)
	for _, want := range []string{"side | left 0", "shelf a/b 1", "Tấm đỡ trái ẵ 5", "ἀνώτερον φύλλον 6", "Қабырға тақтасы 7", fmt.Sprintf("page %d of %d", pages, pages)} {
		if !strings.Contains(text, folded(want)) {
			t.Errorf("the PDF does not say %q", want)
		}
	}
}

// What 100 different layouts of 1,200 parts take, and what names in the wide fonts add.
func BenchmarkPDF(b *testing.B) {
	for _, name := range []string{"shelf", "kệ trên"} {
		b.Run(strings.ReplaceAll(name, " ", "_"), func(b *testing.B) {
			p := samples.Sheets(100, func(part int) string { return fmt.Sprintf("%s %d", name, part) })
			size := 0
			b.ReportAllocs()
			for b.Loop() {
				data, _, err := PDF(&p, Options{})
				if err != nil {
					b.Fatal(err)
				}
				size = len(data)
			}
			b.ReportMetric(float64(size), "file-bytes")
		})
	}
}
