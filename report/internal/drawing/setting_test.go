package drawing

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"github.com/ledongthuc/pdf"
)

// alphabets hold the letters of languages beyond the usual fonts, by the charts of
// Unicode (from memory): Latin Extended-A, -B and Additional, Greek Extended,
// Cyrillic and Cyrillic Supplement.
var alphabets = map[string]string{
	"Vietnamese":       "Ă ă Â â Đ đ Ê ê Ô ô Ơ ơ Ư ư Ạ ạ Ả ả Ấ ấ Ầ ầ Ẩ ẩ Ẫ ẫ Ậ ậ Ắ ắ Ằ ằ Ẳ ẳ Ẵ ẵ Ặ ặ Ẹ ẹ Ẻ ẻ Ẽ ẽ Ế ế Ề ề Ể ể Ễ ễ Ệ ệ Ỉ ỉ Ị ị Ọ ọ Ỏ ỏ Ố ố Ồ ồ Ổ ổ Ỗ ỗ Ộ ộ Ớ ớ Ờ ờ Ở ở Ỡ ỡ Ợ ợ Ụ ụ Ủ ủ Ứ ứ Ừ ừ Ử ử Ữ ữ Ự ự Ỳ ỳ Ỵ ỵ Ỷ ỷ Ỹ ỹ",
	"Hausa":            "Ɓ ɓ Ɗ ɗ Ƙ ƙ Ƴ ƴ",
	"Ewe, Akan":        "Ɖ ɖ Ɛ ɛ Ƒ ƒ Ɣ ɣ Ŋ ŋ Ɔ ɔ Ʋ ʋ",
	"Yoruba":           "ẹ́ ẹ̀ ọ́ ọ̀ Ọ̀ Ṣ ṣ ǹ Ń",
	"Lingala":          "ɛ́ ɛ̂ ɛ̌ ɔ́ ɔ̂ ɔ̌",
	"Welsh, Maltese":   "Ŵ ŵ Ẁ Ẃ Ẅ Ŷ ŷ Ỳ Ċ Ġ Ħ Ż",
	"Romanian, Livon":  "Ș ș Ț ț Ȫ ȫ Ȭ ȭ Ȱ ȱ Ḑ ḑ",
	"Greek, polytonic": "ἀ ἁ ἂ ἃ ἄ ἅ ἆ ἇ Ἀ Ἇ ἐ Ἕ ἠ Ἧ ἰ Ἷ ὀ Ὅ ὐ ὗ Ὗ ὠ Ὧ ὰ ά ὲ ὴ ὶ ὸ ὺ ὼ ᾀ ᾇ ᾈ ᾏ ᾐ ᾗ ᾠ ᾧ ᾯ ᾰ ᾱ ᾳ ᾶ ᾷ ᾼ ῃ ῆ ῇ ῌ ῒ ῖ Ῐ ῠ ῤ ῥ ῦ Ῥ ῳ ῶ ῷ ῼ",
	"Kazakh":           "Ә ә Ғ ғ Қ қ Ң ң Ө ө Ұ ұ Ү ү Һ һ І і",
	"Serbian":          "Ђ ђ Ј ј Љ љ Њ њ Ћ ћ Џ џ",
	"Tajik, Bashkir":   "Ҷ ҷ Ҳ ҳ Ӯ ӯ Ӣ ӣ Ҙ ҙ Ҡ ҡ Ҫ ҫ",
	"Cyrillic, old":    "Ѣ ѣ Ѳ ѳ Ѵ ѵ Ѫ ѫ Ѧ ѧ Ѡ ѡ Ѯ ѯ Ѱ ѱ",
}

func TestEveryAlphabetHasItsLetters(t *testing.T) {
	for name, letters := range alphabets {
		if got, missing := printable(letters); missing != nil || strings.ContainsRune(got, Replacement) {
			t.Errorf("%s lacks %q", name, string(missing))
		}
		for face, fonts := range faces {
			for _, r := range letters {
				if !fonts.usual.metrics().has(r) && !fonts.wide.metrics().has(r) {
					t.Errorf("%s: face %d lacks %q", name, face, r)
				}
			}
		}
	}
}

// Letters that join or run to the left would come out as another word.
func TestScriptsThatTakeShapingAreReplaced(t *testing.T) {
	for _, s := range []string{"مدرف", "מדף", "棚", "हिन्दी", "ชั้น"} {
		if got, missing := printable(s); strings.Trim(got, string(Replacement)) != "" || missing == nil {
			t.Errorf("%q comes out as %q", s, got)
		}
	}
}

func TestANameIsSetInOneFont(t *testing.T) {
	tests := []struct {
		text string
		want []string // runs; those in the wide font in brackets
	}{
		{"left side 27 1/2", []string{"left side 27 1/2"}},
		{"Gỗ dán bạch dương 18, full", []string{"[Gỗ dán bạch dương ]", "18, full"}},
		{"2 x A Tấm đỡ, 35 15/32 x 7", []string{"2 ", "[x A Tấm đỡ, ]", "35 15/32 x 7"}},
		{"ọ\u0300bo", []string{"[ọ]", "[\u0300]", "[bo]"}},
	}
	for _, tt := range tests {
		var got []string
		for _, r := range set(tt.text, Bold).runs {
			if r.font == faces[Bold].wide {
				r.text = "[" + r.text + "]"
			}
			got = append(got, r.text)
		}
		if strings.Join(got, "|") != strings.Join(tt.want, "|") {
			t.Errorf("%q is set as %q, want %q", tt.text, got, tt.want)
		}
	}
}

// A picture is set in the fonts that it was measured in, run by run, and its text
// stays whole.
func TestAPictureAsksForTheFontsItWasMeasuredIn(t *testing.T) {
	wide := func(s string) string {
		return `<tspan font-family="DejaVu Sans, Verdana, sans-serif">` + s + "</tspan>"
	}
	for text, want := range map[string]string{
		"left side 27 1/2":     "left side 27 1/2",
		"Gỗ & ván 18, full":    wide("Gỗ &amp; ván ") + "18, full",
		"2 x A Tấm đỡ, 35 x 7": "2 " + wide("x A Tấm đỡ, ") + "35 x 7",
		"ɔ\u0300bo":            wide("ɔ\u0300bo"),
	} {
		d := Drawing{Width: 90, Height: 20}
		d.Text(Text{At: Point{5, 10}, String: text, Size: 9})
		if got := string(d.SVG("")); !strings.Contains(got, ">"+want+"</text>") {
			t.Errorf("%q is written as %s, want %s", text, got, want)
		}
	}
}

// Where there is one character for a letter with its marks, either way of writing
// it gives the same.
func TestLettersAndTheirMarksAreComposed(t *testing.T) {
	if got, _ := printable("Ta\u0302\u0301m e\u0301"); got != "Tấm é" {
		t.Errorf("got %+q", got)
	}
}

// A mark without a character of its own stands over the middle of its letter, clear
// of it and of the marks that it has already.
func TestMarksStandClearOfTheirLetter(t *testing.T) {
	m := faces[Regular].wide.metrics()
	for _, text := range []string{"Ɛ\u0303", "ɔ\u0300", "ŋ\u0300\u0302", "ɔ\u0331", "Ŋ\u0323"} {
		l := set(text, Regular)
		base := m[[]rune(text)[0]]
		top, bottom := base.top, base.bottom
		for _, r := range l.runs[1:] {
			g := m[[]rune(r.text)[0]]
			if middle, want := r.x+(g.left+g.right)/2, (base.left+base.right)/2; middle < want-1e-9 || middle > want+1e-9 {
				t.Errorf("%q: mark at %v, middle of the letter %v", text, middle, want)
			}
			low, high := r.y-g.bottom, r.y+g.top
			if low < top && high > -bottom {
				t.Errorf("%q: mark from %v to %v over %v to %v", text, low, high, -bottom, top)
			}
			top, bottom = max(top, high), max(bottom, -low)
		}
		if l.top != top || l.bottom != bottom || l.width != base.advance {
			t.Errorf("%q: measured %v, %v, %v; drawn %v, %v, %v", text, l.top, l.bottom, l.width, top, bottom, base.advance)
		}
	}
}

// As TestWidthAgreesWithThePDFWriter, of the wide fonts.
func TestWidthOfWideFontsAgreesWithThePDFWriter(t *testing.T) {
	for face, fonts := range faces {
		f := gofpdf.New("P", "mm", "A4", "")
		f.AddUTF8FontFromBytes(fonts.wide.name, "", bytes.Clone(fonts.wide.ttf))
		f.SetFont(fonts.wide.name, "", 10)
		for _, s := range []string{"Tấm", "ἀνώτερον", "Қабырға", "Ѣ", "Ɓaƙin"} {
			got, want := Width(s, Face(face), 10), f.GetStringWidth(s)
			slack := 0.0005 * 10 * 25.4 / 72 * float64(len(s))
			if got < want-slack || got > want+slack {
				t.Errorf("%s %q: measured %.4f mm, written %.4f mm", fonts.wide.name, s, got, want)
			}
		}
	}
}

// Fonts that no text asks for are not embedded: the wide ones are large.
func TestOnlyFontsThatAreUsedAreEmbedded(t *testing.T) {
	plain, mixed := Drawing{Width: 50, Height: 50}, Drawing{Width: 50, Height: 50}
	plain.Text(Text{At: Point{5, 20}, String: "shelf", Size: 9})
	mixed.Text(Text{At: Point{5, 20}, String: "kệ", Size: 9})
	for _, tt := range []struct {
		page Drawing
		want bool
	}{{plain, false}, {mixed, true}} {
		data, err := PDF(Document{Pages: []Drawing{tt.page}})
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(data, []byte("BaseFont /SAWBIL+utf8dejavu")) != tt.want || bytes.Contains(data, []byte("BaseFont /SAWBIL+utf8gobold")) {
			t.Errorf("%q: fonts wanted %v", tt.page.Texts()[0].String, tt.want)
		}
		if tt.want && len(data) > 100_000 {
			t.Errorf("one word takes %d bytes", len(data))
		}
	}
}

// A bookmark leads to its place on the page, also where the last page lies the other
// way; its title may hold any character.
func TestBookmarksLeadToTheirPlace(t *testing.T) {
	upright, across := Drawing{Width: 210, Height: 297}, Drawing{Width: 297, Height: 210}
	data, err := PDF(Document{
		Title: "家 🪚", Subject: "plan H7KMQ", Keywords: []string{"cutting plan", "gỗ 🪚"}, Pages: []Drawing{upright, across, upright},
		Bookmarks: []Bookmark{{"Kệ 🪚", 0, 0, 20}, {"Layout 1", 1, 1, 30}, {"Layout 2", 1, 1, 40}, {"End", 0, 2, 0}},
	})
	if err != nil {
		t.Fatal(err)
	}
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	if info := r.Trailer().Key("Info"); info.Key("Title").Text() != "家 □" || info.Key("Subject").Text() != "plan H7KMQ" {
		t.Errorf("title %q, subject %q", info.Key("Title").Text(), info.Key("Subject").Text())
	}
	if got := r.Trailer().Key("Info").Key("Keywords").Text(); got != "cutting plan, gỗ □" {
		t.Errorf("keywords %q", got)
	}
	type entry struct {
		title  string
		level  int
		height float64 // of its place above the foot of the page, mm
	}
	var got []entry
	var walk func(first pdf.Value, level int)
	walk = func(e pdf.Value, level int) {
		for ; !e.IsNull(); e = e.Key("Next") {
			got = append(got, entry{e.Key("Title").Text(), level, e.Key("Dest").Index(3).Float64() * mmPerPoint})
			walk(e.Key("First"), level+1)
		}
	}
	walk(r.Trailer().Key("Root").Key("Outlines").Key("First"), 0)
	want := []entry{{"Kệ □", 0, 277}, {"Layout 1", 1, 180}, {"Layout 2", 1, 170}, {"End", 0, 297}}
	if len(got) != len(want) {
		t.Fatalf("got %v", got)
	}
	for i, w := range want {
		g := got[i]
		if off := g.height - w.height; g.title != w.title || g.level != w.level || off < -0.01 || off > 0.01 {
			t.Errorf("bookmark %v, want %v", g, w)
		}
	}
}

// What is set behind a turned text is set in its own font and size, though the turn
// restores what stood before.
func TestFontsHoldBehindATurnedText(t *testing.T) {
	page := Drawing{Width: 100, Height: 100}
	page.Text(Text{At: Point{10, 10}, String: "a", Size: 9})
	page.Text(Text{At: Point{10, 50}, String: "b 1 ệ", Size: 7, Face: Bold, Turned: true})
	page.Text(Text{At: Point{20, 20}, String: "ể", Size: 7, Face: Bold})
	page.Text(Text{At: Point{30, 30}, String: "c", Size: 7, Face: Bold})
	page.Text(Text{At: Point{40, 40}, String: "d", Size: 9})
	data, err := PDF(Document{Pages: []Drawing{page}})
	if err != nil {
		t.Fatal(err)
	}
	r, err := pdf.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, text := range r.Page(1).Content().Text {
		if text.S == "c" || text.S == "d" || text.S == string(rune('ể'&0xFF)) {
			got = append(got, fmt.Sprintf("%s %v", text.Font, math.Round(text.FontSize)))
		}
	}
	if want := "utf8dejavubold 7; utf8gobold 7; utf8go 9"; strings.Join(got, "; ") != want {
		t.Errorf("got %q, want %s", got, want)
	}
}
