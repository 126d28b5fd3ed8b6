package crew_test

import (
	"strings"
	"sync/atomic"
	"testing"

	"sawbill/nest/internal/crew"
)

func TestRunHandsAPanicToTheCaller(t *testing.T) {
	var ended atomic.Int32
	defer func() {
		p, ok := recover().(*crew.Panic)
		if !ok || p.Error() != "a leg too short" {
			t.Fatalf("recovered %v", p)
		}
		if !strings.Contains(string(p.Stack()), "shorten") {
			t.Errorf("the stack does not lead to the worker:\n%s", p.Stack())
		}
		if n := ended.Load(); n != 3 {
			t.Errorf("%d of 3 others had ended", n)
		}
	}()
	var number atomic.Int32
	crew.Run(4, func() {
		if number.Add(1) == 2 {
			shorten()
		}
		ended.Add(1)
	})
	t.Error("Run returned")
}

func shorten() { crew.Run(1, func() { panic("a leg too short") }) }
