package killed

import (
	"math/rand/v2"
	"os"
	"testing"
	"time"
)

// long reports whether SAWBILL_LONG=1 asks for the long counts.
func long() bool { return os.Getenv("SAWBILL_LONG") == "1" }

// kills is how many kills each test does.
func kills() int {
	if long() {
		return 1000
	}
	return 15
}

// played are the scenes to play: every third one unless all are asked for.
func played() (all []scene) {
	for i, s := range scenes {
		if long() || i%3 == 1 {
			all = append(all, s)
		}
	}
	return all
}

// place is where the turn of number n falls among so many places, when n turns of these
// are evenly spread over them.
func place(turn, n, places int) int {
	if n < places && turn < n {
		return turn * places / n
	}
	return turn % places
}

// The program is killed just before each system call that changes a file.
func TestKilledBetweenTwoSystemCalls(t *testing.T) {
	skipWithoutStrace(t)
	type at struct {
		*stage
		instant
	}
	var all []at
	th := theater{map[string]string{}}
	for _, s := range played() {
		st := th.stage(t, s)
		for _, i := range instantsOf(t, copied(t, st.folder), s.command) {
			all = append(all, at{st, i})
		}
	}
	n, struck, turn := kills(), 0, 0
	for ; struck < n && turn < 2*n; turn++ {
		i := place(turn, n, len(all))
		st, instant := all[i].stage, all[i].instant
		folder := copied(t, st.folder)
		r := killAt(t, folder, instant.in(folder), st.command)
		if r.killed {
			struck++
		}
		for _, fault := range st.faults(t, folder, r) {
			t.Errorf("%s, killed at %s: %s", st.name, instant, fault)
		}
	}
	t.Logf("%d kills between system calls, at %d instants of %d commands", struck, min(turn, len(all)), len(played()))
	if struck < n {
		t.Errorf("only %d of %d kills struck", struck, turn)
	}
}

// The program is killed at any instant. On a busy machine kills come earlier in a run:
// they find other instants then, all of which must do.
func TestKilledAtAnyInstant(t *testing.T) {
	random := rand.New(rand.NewPCG(20, 26))
	th := theater{map[string]string{}}
	stages, scenes := map[int]*stage{}, played()
	n, struck, turn := kills(), 0, 0
	for ; struck < n && turn < 10*n; turn++ {
		i := place(turn, n, len(scenes))
		if stages[i] == nil {
			stages[i] = th.stage(t, scenes[i])
		}
		st := stages[i]
		folder := copied(t, st.folder)
		delay := time.Duration(random.Int64N(int64(st.took)))
		r := runKilled(t, folder, delay, st.command...)
		if r.killed {
			struck++
		}
		for _, fault := range st.faults(t, folder, r) {
			t.Errorf("%s, killed after %v: %s", st.name, delay, fault)
		}
	}
	t.Logf("%d runs killed at random instants, %d had ended before", struck, turn-struck)
}
