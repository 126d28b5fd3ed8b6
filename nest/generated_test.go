package nest

import (
	"context"
	"reflect"
	"testing"
)

// checkGenerated checks that a generated problem is the same each time and can
// be planned whole.
func checkGenerated(t *testing.T, name string, p, again Problem) {
	t.Helper()
	if !reflect.DeepEqual(p, again) {
		t.Fatalf("%s: another problem the second time", name)
	}
	plan, err := Solve(context.Background(), p, Options{Iterations: 1, Walks: 1})
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if err := Verify(p, plan); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if !plan.Complete() {
		t.Fatalf("%s: %v", name, plan.Unplaced)
	}
}
