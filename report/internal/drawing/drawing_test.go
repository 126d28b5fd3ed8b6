package drawing

import (
	"bytes"
	"flag"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/jung-kurt/gofpdf"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// sample holds one of everything.
func sample() Drawing {
	d := Drawing{Width: 120, Height: 80}
	d.Box(Rect{20, 10, 80, 40}, Outline, NoFill)
	d.Line(Point{20, 30}, Point{100, 30}, Cut)
	d.Hatch(Rect{80, 30, 20, 20})
	d.LevelDimension(20, 100, 50, 60, "1200", 9)
	d.UprightDimension(10, 50, 20, 12, "600", 9)
	d.Leader(Point{90, 20}, Point{108, 15})
	d.Number(Point{17, 30}, "12")
	d.Text(Text{At: Point{22, 24}, String: "A <shelf> & \"côté\"", Size: 12, Face: Bold})
	d.Text(Text{At: Point{78, 48}, String: "turned", Size: 7, Turned: true, Ground: true})
	d.Box(Rect{30, 35, 20, 10}, TwoDots, White)
	d.Box(Rect{55, 35, 20, 10}, NoPen, Gray)
	return d
}

func TestSVGOfEveryMark(t *testing.T) {
	d := sample()
	got := string(d.SVG("sample"))
	const golden = "testdata/sample.svg"
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// The writer keeps fonts in maps; a run whose order differs would show here.
// A picture within a page is the one that a file holds, with a name of its own.
func TestInlineSVGDrawsTheSame(t *testing.T) {
	d := sample()
	inline := d.InlineSVG("p1", "a & b", "<c>")
	_, file, _ := bytes.Cut(d.SVG("a"), []byte("</title>\n"))
	file = regexp.MustCompile(` textLength="[^"]*" lengthAdjust="[^"]*"`).ReplaceAll(file, nil) // a page brings the fonts
	_, drawn, _ := bytes.Cut(inline, []byte("</desc>\n"))
	if !bytes.Equal(file, drawn) {
		t.Error("a picture within a page differs from the file")
	}
	for _, want := range []string{`aria-labelledby="p1-t"`, `<title id="p1-t">a &amp; b</title>`, `aria-describedby="p1-d"`, `<desc id="p1-d">&lt;c&gt;</desc>`} {
		if !bytes.Contains(inline, []byte(want)) {
			t.Errorf("the picture lacks %s", want)
		}
	}
}

func TestEqualDrawingsGiveEqualPDFs(t *testing.T) {
	var first []byte
	for range 5 {
		got, err := PDF(Document{Title: "sample", Pages: []Drawing{sample(), sample()}})
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = got
		}
		if !bytes.Equal(first, got) {
			t.Fatal("two PDFs of the same pages differ")
		}
	}
}

func TestCharactersThatTheFontLacksAreReplacedAndNamed(t *testing.T) {
	var d Drawing
	d.Text(Text{String: "家具 🪚 shelf\n½ × 家", Size: 9})
	if got, want := d.Texts()[0].String, "□□ □ shelf ½ × □"; got != want {
		t.Errorf("text %q, want %q", got, want)
	}
	if got, want := string(d.Missing), "具家🪚"; got != want {
		t.Errorf("missing %q, want %q", got, want)
	}
	if _, err := PDF(Document{Title: "家", Pages: []Drawing{d}}); err != nil {
		t.Errorf("PDF: %v", err)
	}
}

func TestBoxOfATextFollowsAlignmentAndTurn(t *testing.T) {
	text := Text{At: Point{50, 50}, String: "HHHH", Size: 10}
	w := text.Width()
	rise, height := Rise(10), HeightOf("HHHH", Regular, 10)
	tests := []struct {
		align  Align
		turned bool
		want   Rect
	}{
		{Left, false, Rect{50, 50 - rise, w, height}},
		{Center, false, Rect{50 - w/2, 50 - rise, w, height}},
		{Right, false, Rect{50 - w, 50 - rise, w, height}},
		{Left, true, Rect{50 - rise, 50 - w, height, w}},
		{Center, true, Rect{50 - rise, 50 - w/2, height, w}},
		{Right, true, Rect{50 - rise, 50, height, w}},
	}
	for _, tt := range tests {
		text.Align, text.Turned = tt.align, tt.turned
		got := text.Box()
		near := func(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
		if !near(got.X, tt.want.X) || !near(got.Y, tt.want.Y) || !near(got.W, tt.want.W) || !near(got.H, tt.want.H) {
			t.Errorf("align %v turned %v: box %v, want %v", tt.align, tt.turned, got, tt.want)
		}
	}
}

// The PDF writer reads the font's tables with code of its own, in whole
// thousandths of the size: texts must come out as wide as they were measured.
func TestWidthAgreesWithThePDFWriter(t *testing.T) {
	for face, fonts := range faces {
		name := fonts.usual.name
		f := gofpdf.New("P", "mm", "A4", "")
		f.AddUTF8FontFromBytes(name, "", bytes.Clone(fonts.usual.ttf))
		f.SetFont(name, "", 10)
		for _, s := range []string{"H", "left side 27 1/2", "ÉÜß ½ × ≈ 698.5", "WWWiii"} {
			got, want := Width(s, Face(face), 10), f.GetStringWidth(s)
			slack := 0.0005 * 10 * 25.4 / 72 * float64(len(s))
			if got < want-slack || got > want+slack {
				t.Errorf("%s %q: measured %.4f mm, written %.4f mm", name, s, got, want)
			}
		}
	}
}

func TestWrapKeepsEveryCharacterAndTheWidth(t *testing.T) {
	for _, s := range []string{
		"", "shelf", "left side of the upper case, with dadoes",
		"a/very-long_name.without.spaces/" + strings.Repeat("x", 60), "ééé ÉÉÉ " + strings.Repeat("ü", 40),
	} {
		for _, width := range []float64{1, 8, 20, 60} {
			lines := Wrap(s, Regular, 9, width)
			joined := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
			if want := strings.ReplaceAll(s, " ", ""); joined != want {
				t.Errorf("Wrap(%q, %v) lost characters: %q", s, width, lines)
			}
			for _, l := range lines {
				if len([]rune(l)) > 1 && Width(l, Regular, 9) > width {
					t.Errorf("Wrap(%q, %v): line %q is too wide", s, width, l)
				}
			}
		}
	}
}

func TestShortenFits(t *testing.T) {
	if got := Shorten("shelf", Regular, 9, 100); got != "shelf" {
		t.Errorf("got %q", got)
	}
	got := Shorten("a long name for a shelf", Regular, 9, 20)
	if !strings.HasSuffix(got, "…") || Width(got, Regular, 9) > 20 {
		t.Errorf("got %q", got)
	}
}

func TestHatchStaysInItsArea(t *testing.T) {
	for _, r := range []Rect{{10, 10, 30, 2}, {3, 7, 1, 50}, {0, 0, 12.5, 12.5}} {
		for _, h := range []Hatch{{Area: r}, {Area: r, Falls: true}, {Area: r, Falls: true, Pitch: 0.9}} {
			lines := h.Lines()
			if len(lines) == 0 {
				t.Errorf("%v: no lines", h)
			}
			grown := r.Inset(-1e-9)
			for _, l := range lines {
				for _, p := range []Point{l.From, l.To} {
					if !grown.Contains(Rect{p.X, p.Y, 0, 0}) {
						t.Errorf("%v: line end %v outside", h, p)
					}
				}
				if rises := l.To.Y < l.From.Y; rises == h.Falls {
					t.Errorf("%v: line %v slants the wrong way", h, l)
				}
			}
		}
	}
}
