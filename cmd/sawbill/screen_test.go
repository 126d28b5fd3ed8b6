package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// The line that plan.html gives to copy is read by a shell where the plan's folder lies, and
// the program takes it: what was ticked is noted, and nothing else.
func TestTheLineOfThePageIsTaken(t *testing.T) {
	names := []string{"chromium", "chromium-browser", "google-chrome"}
	at := slices.IndexFunc(names, func(name string) bool { _, err := exec.LookPath(name); return err == nil })
	if at < 0 && os.Getenv("SAWBILL_BROWSER") == "needed" {
		t.Fatal("no browser is installed: apt-get install chromium")
	} else if at < 0 {
		t.Skip("no browser is installed: apt-get install chromium")
	}
	dir := t.TempDir()
	const folder = `kitchen "north" $run's`
	said(t, "plan", "../../testdata/trials/kitchen-run.toml", "--iterations", "100", "--quiet", "-o", filepath.Join(dir, folder))

	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewExecAllocator(ctx, chromedp.ExecPath(names[at]), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	page, err := filepath.Abs(filepath.Join(dir, folder, "plan.html"))
	if err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.Navigate("file://"+strings.ReplaceAll(filepath.ToSlash(page), " ", "%20"))); err != nil {
		t.Fatal(err)
	}
	// A browser copies only for somebody who presses.
	pressed := func(p *runtime.EvaluateParams) { yes := true; p.UserGesture = &yes }
	copied, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`(() => {
		document.querySelectorAll("#layout-2 .work .tick").forEach(b => b.click());
		document.querySelectorAll("#layout-1 .work .tick")[0].click();
		let copied = "";
		document.addEventListener("copy", () => { const l = document.activeElement; copied = l.value.slice(l.selectionStart, l.selectionEnd); });
		Array.from(document.querySelectorAll("button")).filter(b => b.textContent === "Copy this line")[0].click();
		return [copied, document.querySelector("[role=status]").textContent, document.querySelector("#report").value];
	})()`, pressed))
	if err != nil {
		t.Fatal(err)
	}
	if copied[0] != copied[2] || copied[1] != "copied" {
		t.Fatalf("copied %q of %q, and the page says %q", copied[0], copied[2], copied[1])
	}
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no shell")
	}
	words, err := exec.Command(shell, "-c", `printf '%s\n' `+copied[0]).Output()
	if err != nil {
		t.Fatal(err)
	}
	args := strings.Split(strings.TrimSpace(string(words)), "\n")
	if args[0] != "sawbill" || args[2] != folder {
		t.Fatalf("the shell reads %q", args)
	}
	t.Chdir(dir)
	told := said(t, append(args[1:], "--date", "2026-03-05")...)
	noted, _, _ := strings.Cut(told, "\n")
	if !strings.Contains(noted, "cut 1/1:1-") || !strings.Contains(noted, "cut 2/1") || strings.Count(noted, "cut ") != 2 {
		t.Errorf("%s says\n%s", copied[0], noted)
	}
}
