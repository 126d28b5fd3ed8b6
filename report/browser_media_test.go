package report

import (
	"context"
	"math"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// media sets what the page is shown on, and what its reader prefers: pairs of a feature and
// its value. All else is as it comes.
func media(t *testing.T, ctx context.Context, on string, features ...string) {
	t.Helper()
	p := emulation.SetEmulatedMediaParams{Media: on}
	for _, name := range []string{"prefers-color-scheme", "prefers-contrast", "forced-colors", "prefers-reduced-motion"} {
		f := &emulation.MediaFeature{Name: name} // without a value it is no longer set
		for i := 0; i < len(features); i += 2 {
			if features[i] == name {
				f.Value = features[i+1]
			}
		}
		p.Features = append(p.Features, f)
	}
	err := chromedp.Do(ctx, chromedp.Func(func(ctx context.Context, to *chromedp.Target) error {
		_, err := cdp.Call(ctx, to, emulation.SetEmulatedMedia, p)
		return err
	}))
	if err != nil {
		t.Fatal(err)
	}
}

// leastContrast is the least contrast of writing outside drawings to what lies below it, with
// an example (WCAG 2.2, relative luminance and contrast ratio).
const leastContrast = `(() => {
	const lum = c => { const [r, g, b] = c.map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
	const rgb = s => s.match(/[\d.]+/g).map(Number);
	const below = e => { for (; e; e = e.parentElement) { const c = rgb(getComputedStyle(e).backgroundColor); if (c.length < 4 || c[3] > 0) { return c; } } return [0, 0, 0]; };
	let least = {ratio: 99, said: ""};
	for (const e of document.querySelectorAll("body *:not(svg, svg *, script)")) {
		if (!e.getClientRects().length || !Array.from(e.childNodes).some(n => n.nodeType === 3 && n.textContent.trim())) { continue; }
		const a = lum(rgb(getComputedStyle(e).color).slice(0, 3)), b = lum(below(e).slice(0, 3));
		const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		if (ratio < least.ratio) { least = {ratio, said: e.tagName + " " + e.className + ": " + e.textContent.slice(0, 40)}; }
	}
	return least;
})()`

type contrast struct {
	Ratio float64
	Said  string
}

// Whatever its reader asks of colors, writing has a contrast of 7 to 1 (WCAG 2.2, 1.4.6), boxes
// and ticks are seen, and drawings are of the page's own scheme.
func colorsCanBeRead(t *testing.T, ctx context.Context, page []byte) {
	show(t, ctx, page, 390)
	defer media(t, ctx, "")
	ask[bool](t, ctx, `document.querySelector(".work .tick").click(), true`)
	for _, c := range []struct {
		reason   string
		features []string
		dark     bool
	}{
		{"as it comes", nil, false},
		{"light", []string{"prefers-color-scheme", "light"}, false},
		{"dark", []string{"prefers-color-scheme", "dark"}, true},
		{"more contrast", []string{"prefers-contrast", "more"}, false},
		{"more contrast, dark", []string{"prefers-contrast", "more", "prefers-color-scheme", "dark"}, true},
		{"forced colors", []string{"forced-colors", "active", "prefers-color-scheme", "light"}, false},
		{"forced colors, dark", []string{"forced-colors", "active", "prefers-color-scheme", "dark"}, true},
	} {
		media(t, ctx, "", c.features...)
		if got := ask[contrast](t, ctx, leastContrast); got.Ratio < 7 {
			t.Errorf("%s: a contrast of %.1f to 1 at %q", c.reason, got.Ratio, got.Said)
		}
		paper := ask[string](t, ctx, `getComputedStyle(document.body).backgroundColor`)
		if isDark := paper != "rgb(255, 255, 255)"; isDark != c.dark {
			t.Errorf("%s: the paper is %s", c.reason, paper)
		}
		if turned := ask[string](t, ctx, `getComputedStyle(document.querySelector(".picture svg")).filter`) == "invert(1)"; turned != c.dark {
			t.Errorf("%s: drawings are turned over: %v", c.reason, turned)
		}
		box := ask[[]string](t, ctx, `(s => [s.borderTopColor, s.backgroundColor, s.backgroundImage])(getComputedStyle(document.querySelector(".work .tick:checked")))`)
		if box[0] == box[1] || box[2] == "none" {
			t.Errorf("%s: a box that is ticked has the border %s on %s, and the cross %s", c.reason, box[0], box[1], box[2])
		}
		if ask[string](t, ctx, `getComputedStyle(document.querySelector("tr.now")).boxShadow + getComputedStyle(document.querySelector("tr.now")).outlineStyle`) == "nonenone" {
			t.Errorf("%s: the step to do now is not lit", c.reason)
		}
	}
}

// A page that must not move does not: it jumps to what is asked for.
func motionIsReduced(t *testing.T, ctx context.Context, page []byte) {
	show(t, ctx, page, 390)
	defer media(t, ctx, "")
	for value, want := range map[string]string{"no-preference": "smooth", "reduce": "auto"} {
		media(t, ctx, "", "prefers-reduced-motion", value)
		if got := ask[string](t, ctx, `getComputedStyle(document.documentElement).scrollBehavior`); got != want {
			t.Errorf("%s: the page scrolls %s", value, got)
		}
		if moves := ask[int](t, ctx, `Array.from(document.querySelectorAll("*")).filter(e => getComputedStyle(e).animationName !== "none" || getComputedStyle(e).transitionDuration !== "0s").length`); moves > 0 {
			t.Errorf("%s: %d things move", value, moves)
		}
	}
}

// Printed from a dark screen, the page is black on white, without what serves the screen alone;
// drawings have their true scale and fit the paper, and each has a row's ticks beside it.
func itPrints(t *testing.T, ctx context.Context, page []byte) {
	show(t, ctx, page, 390)
	defer media(t, ctx, "")
	const width = 703 // pixels: A4 within its margins, 210 - 2 x 12 mm at 96 to the inch
	if err := chromedp.Do(ctx, screen(width)); err != nil {
		t.Fatal(err)
	}
	media(t, ctx, "print", "prefers-color-scheme", "dark")
	if got := ask[contrast](t, ctx, leastContrast); got.Ratio < 7 {
		t.Errorf("a contrast of %.1f to 1 at %q", got.Ratio, got.Said)
	}
	if turned := ask[string](t, ctx, `getComputedStyle(document.querySelector(".picture svg")).filter`); turned != "none" {
		t.Errorf("drawings are printed with the filter %s", turned)
	}
	if seen := ask[string](t, ctx, `Array.from(document.querySelectorAll("nav, .zoom, .two .drawn + .drawn")).filter(e => e.getClientRects().length).map(e => e.className).join()`); seen != "" {
		t.Errorf("printed: %s", seen)
	}
	type drawn struct{ Shown, Drawn, Right float64 }
	all := ask[[]drawn](t, ctx, `Array.from(document.querySelectorAll(".picture svg")).filter(e => e.getClientRects().length).map(e => (r => ({Shown: r.width, Drawn: e.viewBox.baseVal.width, Right: r.right}))(e.getBoundingClientRect()))`)
	if len(all) < 3 {
		t.Fatalf("%d drawings", len(all))
	}
	for i, d := range all {
		if math.Abs(d.Shown-d.Drawn*96/25.4) > 1 || d.Right > width+1 {
			t.Errorf("drawing %d of %.0f mm is %.0f pixels wide, up to %.0f", i+1, d.Drawn, d.Shown, d.Right)
		}
	}
	media(t, ctx, "")
	if data, err := chromedp.Run(ctx, chromedp.PrintToPDF()); err != nil || len(data) < 10000 {
		t.Errorf("%d bytes printed: %v", len(data), err)
	}
}
