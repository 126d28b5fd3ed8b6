package main

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/report"
	"sawbill/stock/job"
)

// manyParts is a job of n parts, no two alike.
func manyParts(n int) string {
	var text strings.Builder
	text.WriteString("[[sheet]]\nname = \"s\"\nmaterial = \"ply\"\nthickness = 18\nlength = 2440\nwidth = 1220\nprice = 70\n")
	for i := range n {
		fmt.Fprintf(&text, "[[part]]\nname = \"p%d\"\nmaterial = \"ply\"\nlength = %d\nwidth = %d\n", i, 300+i%977, 50+i%331)
	}
	return text.String()
}

// manyDrawers is a case with n drawers alike.
func manyDrawers(n int) string {
	return fmt.Sprintf(`
[[sheet]]
name = "s"
material = "ply"
thickness = 17.7
length = 20000
width = 20000
[case.carcass]
material = "ply"
[[case.bay]]
[[case.bay.opening]]
[[case.bay.opening.drawer]]
count = %d
width = 600
height = 12
depth = 450
`, n)
}

// planned is a plan and how it is written.
type planned struct {
	plan    *cutplan.Plan
	options report.Options
}

// hasty is a plan after one step.
func hasty(t testing.TB, text string) planned {
	t.Helper()
	file, err := job.ReadFS(fstest.MapFS{"j.toml": {Data: []byte(text)}}, "j.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := sellercuts.Make(t.Context(), file.Job, cutplan.Options{Iterations: 1})
	if err != nil {
		t.Fatal(err)
	}
	return planned{p, report.Options{Case: file.Case}}
}

// pages is the number of bytes of all that is written of a plan.
func pages(t testing.TB, p planned) (bytes int) {
	t.Helper()
	files, _, err := planPages(p.plan, p.options)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		bytes += len(f.Data)
	}
	return bytes
}

// Work after the search grows no faster than the job: neither allocations nor the bytes
// written are much more than twice as many for twice as many pieces.
func TestWorkAfterTheSearchGrowsWithTheJob(t *testing.T) {
	for _, of := range []struct {
		name string
		text func(n int) string
		n    int
	}{{"parts", manyParts, 150}, {"drawers", manyDrawers, 50}} {
		few, many := hasty(t, of.text(of.n)), hasty(t, of.text(2*of.n))
		allocations := func(p planned) float64 { return testing.AllocsPerRun(1, func() { pages(t, p) }) }
		if a, b := allocations(few), allocations(many); b > 2.4*a {
			t.Errorf("%d %s: %.0f allocations, and %.0f for twice as many", of.n, of.name, a, b)
		}
		if a, b := pages(t, few), pages(t, many); float64(b) > 2.4*float64(a) {
			t.Errorf("%d %s: %d bytes, and %d for twice as many", of.n, of.name, a, b)
		}
	}
}

// BenchmarkAfterSearch is the time to write the plan of the largest jobs.
func BenchmarkAfterSearch(b *testing.B) {
	for _, of := range []struct{ name, text string }{{"parts=10000", manyParts(10_000)}, {"drawers=1000", manyDrawers(1000)}} {
		b.Run(of.name, func(b *testing.B) {
			p := hasty(b, of.text)
			size := 0
			b.ReportAllocs()
			for b.Loop() {
				size = pages(b, p)
			}
			b.ReportMetric(float64(size), "file-bytes")
		})
	}
}
