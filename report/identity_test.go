package report

import (
	"bytes"
	"strings"
	"testing"

	"github.com/ledongthuc/pdf"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/samples"
)

// The code is that of the plan: the same in every format, on every page, whatever the
// units, the paper and the time that the search took; another plan has another.
func TestIdentityIsThatOfThePlan(t *testing.T) {
	p := bench()
	code := Identity(p, Options{})
	p.Seconds += 7
	if again := Identity(p, Options{Ruler: inches, Paper: Letter}); again != code || len(code) != identityLength {
		t.Errorf("codes %q and %q", code, again)
	}
	for i, page := range lay(p, Options{Pages: AllPages, Ruler: inches}).Pages {
		found := false
		for _, text := range page.Texts() {
			found = found || strings.HasPrefix(text.String, "plan "+code+", page ")
		}
		if !found {
			t.Errorf("page %d does not say which plan it is of", i+1)
		}
	}
	if !bytes.Contains(JSON(p, Options{}), []byte(`"identity": "`+code+`"`)) || !bytes.Contains(LayoutSVGs(p, Options{})[0], []byte(code)) {
		t.Error("plan.json or a picture lacks the code")
	}
	seen := map[string]bool{code: true}
	short := *p
	short.Job.Saw.CrosscutCapacity = 400_000_000 // the steps go by it
	seen[Identity(&short, Options{})] = true
	if len(seen) != 2 {
		t.Error("with another saw the plan is called the same")
	}
	for seed := range uint64(40) {
		p := samples.Random(seed)
		other := Identity(&p, Options{})
		if seen[other] {
			t.Errorf("two plans are called %s", other)
		}
		seen[other] = true
	}
}

// The bookmarks, read back by another library, name every section, and every layout
// below one of them.
func TestBookmarksNameSectionsAndLayouts(t *testing.T) {
	data, _, err := PDF(bench(), Options{Pages: AllPages})
	if err != nil {
		t.Fatal(err)
	}
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	layouts := 0
	for _, of := range r.Outline().Child {
		got = append(got, of.Title)
		if of.Title == "Layouts" {
			layouts = len(of.Child)
		}
	}
	if want := "Buy; Keep; Cutting bill; Cautions; Layouts; Setups; Milling; Labels"; strings.Join(got, "; ") != want || layouts != len(bench().Layouts) {
		t.Errorf("%q with %d layouts, want %q with %d", got, layouts, want, len(bench().Layouts))
	}
}

// Names in any Latin, Greek or Cyrillic script are printed; what no font has is
// named, and nothing breaks.
func TestNamesInOtherScripts(t *testing.T) {
	p := bench()
	for i, name := range []string{"Tấm đỡ trái ẵ", "ἀνώτερον φύλλον ᾧ", "Қабырға тақтасы ѳ", "Ɓaƙin ƴa̱r | a/b ŋ", strings.Repeat("shelf of many words ", 10)} {
		p.Bill[i].Part.Name = name
	}
	data, warned, err := PDF(p, Options{})
	if err != nil || warned != nil {
		t.Fatalf("%v, warned %q", err, warned)
	}
	text := readBack(t, data)
	for _, want := range []string{"Tấm", "φύλλον", "Қабырға", "| a/b"} {
		if !strings.Contains(text, folded(want)) {
			t.Errorf("the PDF does not say %q", want)
		}
	}
	p.Bill[0].Part.Name, p.Bill[1].Part.Name = "棚板", "مدرف"
	if _, warned, err = PDF(p, Options{}); err != nil || len(warned) != 1 || !strings.Contains(warned[0], "棚") {
		t.Errorf("%v, warned %q", err, warned)
	}
	for _, page := range lay(p, Options{Pages: AllPages}).Pages {
		if err := drawing.CheckWriting(page); err != nil {
			t.Error(err)
		}
	}
}
