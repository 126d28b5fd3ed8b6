package report

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// browsers are the names that the browser goes by, where it is installed.
var browsers = []string{"chromium", "chromium-browser", "google-chrome"}

// browser starts one. The test is skipped where none is installed; with
// SAWBILL_BROWSER=needed it fails there.
func browser(t *testing.T) context.Context {
	t.Helper()
	at := slices.IndexFunc(browsers, func(name string) bool { _, err := exec.LookPath(name); return err == nil })
	if at < 0 {
		if os.Getenv("SAWBILL_BROWSER") == "needed" {
			t.Fatal("no browser is installed: apt-get install chromium")
		}
		t.Skip("no browser is installed: apt-get install chromium")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 5*time.Minute)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewExecAllocator(ctx, chromedp.ExecPath(browsers[at]), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	return ctx
}

// show opens a page on a screen as wide as a phone, a tablet or a desk's, touched by fingers.
func show(t *testing.T, ctx context.Context, page []byte, width int64) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "plan.html")
	if err := os.WriteFile(file, page, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, screen(width), chromedp.Navigate("file://"+filepath.ToSlash(file))); err != nil {
		t.Fatal(err)
	}
	ask[bool](t, ctx, `localStorage.clear(), true`) // pages of one plan share their ticks
	if err := chromedp.Do(ctx, chromedp.Reload()); err != nil {
		t.Fatal(err)
	}
}

func screen(width int64) chromedp.Action[chromedp.Void] {
	return chromedp.EmulateViewport(width, 844, chromedp.EmulateMobile, chromedp.EmulateTouch)
}

// ask returns what an expression of the page's own language gives.
func ask[T any](t *testing.T, ctx context.Context, expression string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		t.Fatalf("%s: %v", expression, err)
	}
	return v
}

var inchRuler = stock.Ruler{Units: stock.Inches}

// kitchen is the plan of a run of cabinets, in inches, with more than 60 different parts.
func kitchen(t *testing.T) *cutplan.Plan {
	t.Helper()
	p := trial(t, "kitchen-run").plan
	if len(p.Bill) < 60 || len(p.Layouts) < 3 {
		t.Fatalf("%d blanks, %d layouts", len(p.Bill), len(p.Layouts))
	}
	return p
}

// What the page for a screen does in a browser.
func TestThePageInABrowser(t *testing.T) {
	ctx := browser(t)
	p := kitchen(t)
	run := HTML(p, Options{Ruler: inchRuler, Folder: "kitchen run-plan"})
	t.Run("it fits every screen", func(t *testing.T) { fitsEveryScreen(t, ctx, run) })
	t.Run("the cut to make now is lit", func(t *testing.T) { cutIsLit(t, ctx, run) })
	t.Run("ticks are shared and reported", func(t *testing.T) { ticksAreShared(t, ctx, run, p) })
	t.Run("its colors can be read", func(t *testing.T) { colorsCanBeRead(t, ctx, run) })
	t.Run("motion is reduced", func(t *testing.T) { motionIsReduced(t, ctx, run) })
	t.Run("it prints", func(t *testing.T) { itPrints(t, ctx, run) })
	t.Run("rows are tapped anywhere", func(t *testing.T) { rowsAreTapped(t, ctx, HTML(bench(), Options{})) })
}

// On phones, a tablet and a screen: nothing makes the page scroll sideways, no cell is
// narrower than a word, and what is written in drawings is 11 pixels high at least.
func fitsEveryScreen(t *testing.T, ctx context.Context, page []byte) {
	show(t, ctx, page, 390)
	for _, width := range []int64{320, 390, 768, 1280} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			if err := chromedp.Do(ctx, screen(width)); err != nil {
				t.Fatal(err)
			}
			if n := ask[int](t, ctx, `document.documentElement.scrollWidth`); n > int(width) {
				t.Errorf("the page is %d pixels wide", n)
			}
			const cells = `Array.from(document.querySelectorAll("tbody :is(th, td)")).filter(c => c.textContent.trim() && !c.classList.contains("done") && c.offsetParent)`
			if n := ask[int](t, ctx, cells+`.length`); n < 500 {
				t.Fatalf("%d cells are seen", n)
			}
			// A cell that collapsed has far more lines than words.
			collapsed := ask[string](t, ctx, cells+`.filter(c => {
				const range = document.createRange();
				range.selectNodeContents(c);
				const lines = new Set(Array.from(range.getClientRects()).filter(r => r.width > 0).map(r => Math.round(r.top / 8)));
				return lines.size > c.textContent.trim().split(/\s+/).length + 1;
			}).map(c => c.textContent.trim()).slice(0, 3).join("; ")`)
			if collapsed != "" {
				t.Errorf("collapsed: %s", collapsed)
			}
			wrapped := ask[string](t, ctx, cells+`.filter(c => c.classList.contains("big") && c.scrollWidth > c.clientWidth + 1 && c.clientWidth > 0).map(c => c.textContent).slice(0, 3).join("; ")`)
			if wrapped != "" {
				t.Errorf("a setting has no room: %s", wrapped)
			}
			least := ask[float64](t, ctx, `Math.min(...Array.from(document.querySelectorAll("svg text")).filter(e => e.getClientRects().length).map(e =>
				parseFloat(e.getAttribute("font-size")) * e.closest("svg").getScreenCTM().a))`)
			if least < 10.999 {
				t.Errorf("writing of %.2f pixels", least)
			}
			if !ask[bool](t, ctx, `document.fonts.check("16px Go") && Array.from(document.fonts).some(f => f.family.includes("Go") && f.status === "loaded")`) {
				t.Error("the page's own font is not loaded")
			}
		})
	}
}

// Whoever taps anywhere in a row ticks it, and boxes are large enough for a finger.
func rowsAreTapped(t *testing.T, ctx context.Context, page []byte) {
	show(t, ctx, page, 390)
	small := ask[int](t, ctx, `Array.from(document.querySelectorAll("input.tick")).filter(b => { const r = b.getBoundingClientRect(); return r.width < 48 || r.height < 48; }).length`)
	rows := ask[int](t, ctx, `Array.from(document.querySelectorAll("table.work tbody tr:not(.total)")).filter(r => r.getBoundingClientRect().height < 48).length`)
	if small > 0 || rows > 0 {
		t.Errorf("%d boxes and %d rows are lower than 48 pixels", small, rows)
	}
	missed := ask[string](t, ctx, `Array.from(document.querySelectorAll("table.work tbody tr:not(.total)")).filter(row => {
		row.scrollIntoView({block: "center", behavior: "instant"});
		const at = row.getBoundingClientRect(), box = row.querySelector("input.tick");
		for (const x of [at.left + 8, at.left + at.width / 2]) {
			document.elementFromPoint(x, at.bottom - 8).click();
			if (!box.checked) { return true; }
			box.click();
		}
		return false;
	}).map(row => row.textContent).slice(0, 2).join("; ")`)
	if missed != "" {
		t.Errorf("a tap does not tick %s", missed)
	}
	if n := ask[int](t, ctx, `(() => { const names = Array.from(document.querySelectorAll("input.tick")).map(b => b.getAttribute("aria-label")); return names.length - new Set(names).size; })()`); n > 0 {
		t.Errorf("%d names of ticks are not unique", n)
	}
}

// What is ticked in the steps is ticked in the setups and the other way round, stays when
// the page is opened again, and is in the command, which progress understands.
func ticksAreShared(t *testing.T, ctx context.Context, page []byte, p *cutplan.Plan) {
	show(t, ctx, page, 390)
	const box = `Array.from(document.querySelectorAll("input.tick")).filter(b => /^(setups)/.test(b.getAttribute("aria-label")) === %v && b.dataset.keys.split(" ").some(k => k === "%s"))[0]`
	inSteps, inSetups := fmt.Sprintf(box, false, "1/1:1"), fmt.Sprintf(box, true, "1/1:1")
	ask[bool](t, ctx, inSteps+`.click(), true`)
	if !ask[bool](t, ctx, inSetups+`.checked || `+inSetups+`.indeterminate`) {
		t.Error("what is ticked in a layout is not ticked in the setups")
	}
	ask[bool](t, ctx, inSetups+`.checked || `+inSetups+`.click(), true`)
	if !ask[bool](t, ctx, inSteps+`.checked`) {
		t.Error("what is ticked in the setups is not ticked in the layout")
	}
	// All of layout 2, and two cuts of layout 3 that do not follow one another.
	ask[bool](t, ctx, `document.querySelectorAll("#layout-2 input.tick").forEach(b => b.checked || b.click()), true`)
	for _, key := range []string{"3/1:1", fmt.Sprintf("3/1:%d", len(p.Steps(p.Layouts[2])))} {
		ask[bool](t, ctx, fmt.Sprintf(box, false, key)+`.click(), true`)
	}
	command := ask[string](t, ctx, `document.querySelector("#report").value`)
	cuts, ok := strings.CutPrefix(command, `sawbill progress "kitchen run-plan" --cut `)
	if !ok || !strings.Contains(command, " --cut 2/1 ") {
		t.Fatalf("the command is %s", command)
	}
	state := progress.Begin(p)
	for _, cut := range strings.Split(cuts, " --cut ") {
		if err := state.Apply(progress.Event{Word: "cut", Value: cut}); err != nil {
			t.Errorf("progress refuses %s: %v", cut, err)
		}
	}
	ticked := ask[[]string](t, ctx, `Array.from(new Set(Array.from(document.querySelectorAll("input.tick:checked")).flatMap(b => b.dataset.keys.split(" ")))).filter(k => k.includes("/"))`)
	for _, key := range ticked {
		var layout, copy, cut int
		if _, err := fmt.Sscanf(key, "%d/%d:%d", &layout, &copy, &cut); err != nil || !state.IsMade(layout, copy, cut) {
			t.Errorf("%s is ticked and not reported: %v", key, err)
		}
	}
	if len(ticked) < 10 {
		t.Errorf("%d cuts are ticked", len(ticked))
	}
	if err := chromedp.Do(ctx, chromedp.Reload()); err != nil {
		t.Fatal(err)
	}
	if again := ask[string](t, ctx, `document.querySelector("#report").value`); again != command {
		t.Errorf("opened again, the page says %s", again)
	}
}

// The drawing of a layout stays in sight while its steps scroll; its lit lines are those of
// the first row that is not ticked, and pieces that came off are veiled.
func cutIsLit(t *testing.T, ctx context.Context, page []byte) {
	show(t, ctx, page, 390)
	layout := ask[string](t, ctx, `Array.from(document.querySelectorAll("section")).filter(s => s.querySelector(".stays")).sort((a, b) => b.querySelectorAll("tr").length - a.querySelectorAll("tr").length)[0].id`)
	in := func(expression string) string { return strings.ReplaceAll(expression, "#layout-1", "#"+layout) }
	for step := range 4 {
		now := ask[string](t, ctx, in(`document.querySelector("#layout-1 tr.now input.tick").dataset.keys`))
		first := ask[string](t, ctx, in(`document.querySelector("#layout-1 .work input.tick:not(:checked)").dataset.keys`))
		lit := ask[string](t, ctx, in(`Array.from(document.querySelectorAll("#layout-1 .drawn:last-child .line.now")).map(e => e.dataset.keys).join(" ")`))
		if now != first || lit != now {
			t.Fatalf("step %d: the row of %s is lit, the lines of %s, and %s is next", step, now, lit, first)
		}
		ask[bool](t, ctx, in(`document.querySelector("#layout-1 tr.now input.tick").click(), true`))
	}
	if n := ask[int](t, ctx, in(`document.querySelectorAll("#layout-1 tr.past").length`)); n != 4 {
		t.Errorf("%d rows are gray", n)
	}
	ask[bool](t, ctx, in(`document.querySelectorAll("#layout-1 .work input.tick").forEach(b => b.checked || b.click()), true`))
	left := ask[int](t, ctx, in(`document.querySelectorAll("#layout-1 .piece:not(.past)").length`))
	gone := ask[int](t, ctx, in(`document.querySelectorAll("#layout-1 .piece.past").length`))
	if left > 0 || gone == 0 {
		t.Errorf("%d pieces are veiled, %d are not", gone, left)
	}
	out := ask[float64](t, ctx, in(`(() => {
		const rows = document.querySelectorAll("#layout-1 .work tbody tr");
		rows[rows.length - 1].scrollIntoView({block: "end", behavior: "instant"});
		return document.querySelector("#layout-1 .stays").getBoundingClientRect().top;
	})()`))
	if out < -1 || out > 1 {
		t.Errorf("the drawing is %v pixels away from the top", out)
	}
}
