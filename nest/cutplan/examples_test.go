package cutplan_test

import (
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock/job"
)

// BenchmarkExamples plans each of the example jobs within two seconds, as the
// program does, and reports cost and bound in cents, and 1 for each job whose
// plan is complete and proven.
func BenchmarkExamples(b *testing.B) {
	paths, err := filepath.Glob(filepath.Join("..", "..", "testdata", "jobs", "*.toml"))
	if err != nil || len(paths) == 0 {
		b.Fatal("no example jobs", err)
	}
	for _, path := range paths {
		b.Run(strings.TrimSuffix(filepath.Base(path), ".toml"), func(b *testing.B) {
			file, err := job.Read(path)
			if err != nil {
				b.Fatal(err)
			}
			var plan *cutplan.Plan
			for b.Loop() {
				ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
				plan, err = sellercuts.Make(ctx, file.Job, cutplan.Options{})
				cancel()
				if err != nil {
					b.Fatal(err)
				}
			}
			proven := 0.0
			if plan.Proven() {
				proven = 1
			}
			b.ReportMetric(float64(plan.Cost), "cost")
			b.ReportMetric(float64(plan.Bound), "bound")
			b.ReportMetric(proven, "proven")
		})
	}
}
