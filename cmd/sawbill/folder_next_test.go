package main

import (
	"path/filepath"
	"testing"
)

// From within the plan's folder its rest goes beside it.
func TestNextFolderFromWithin(t *testing.T) {
	within := filepath.Join(t.TempDir(), "shelf-plan")
	t.Chdir(filepath.Dir(within))
	for path, want := range map[string]string{"shelf-plan": "shelf-plan-2", ".": filepath.Dir(within) + "-2"} {
		if got := nextFolder(path); got != want {
			t.Errorf("the rest of %s goes to %s, want %s", path, got, want)
		}
	}
}
