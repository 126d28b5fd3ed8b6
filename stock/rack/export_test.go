package rack

import (
	"testing"

	"github.com/gofrs/flock"

	"sawbill/stock"
	"sawbill/stock/job"
)

// States are all states that the history of a rack tells of, the first of them
// before any change.
func States(path string) []string {
	p, err := At(path).readPast()
	if err != nil {
		return nil
	}
	states := []string{""}
	for n := range p.entries {
		states = append(states, p.state(n+1))
	}
	return states
}

// Hold takes the lock of a rack as another program would.
func Hold(t *testing.T, path string) (free func()) {
	lock := flock.New(At(path).lockFile())
	if err := lock.Lock(); err != nil {
		t.Fatal(err)
	}
	return func() { lock.Unlock() }
}

// Edited is the text of a rack after a change, and what is wrong with it.
func Edited(file *job.Rack, gone []int, put []stock.Piece) (string, error) {
	for i := range put {
		put[i].ID = "NEW"
	}
	after := edited(file, gone, put)
	return after, At("rack.toml").confirm(after, file, gone, put)
}
