package rack_test

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"sawbill/stock"
	"sawbill/stock/internal/killed"
	"sawbill/stock/rack"
)

// writerOf in the environment makes the test binary a program that changes a
// rack until it is killed: the rack's file, and a seed.
const writerOf = "SAWBILL_TEST_RACK"

func TestMain(m *testing.M) {
	if told := os.Getenv(writerOf); told != "" {
		path, seed, _ := strings.Cut(told, "|")
		number, _ := strconv.ParseUint(seed, 10, 64)
		if err := changeForEver(path, number); err != nil {
			fmt.Println("failed:", err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// changeForEver changes a rack at random and says so of each change that has
// been made: its number and the sum of the file.
func changeForEver(path string, seed uint64) error {
	random := rand.New(rand.NewPCG(seed, 1))
	r, ctx := rack.At(path), context.Background()
	fmt.Println("ready")
	for n := 0; ; n++ {
		var ids []string
		if file, err := r.Read(); err == nil {
			for _, p := range file.Pieces {
				ids = append(ids, p.ID)
			}
		}
		var done rack.Done
		var err error
		switch what := random.IntN(10); {
		case what == 0 && n > 0:
			done, _, err = r.Undo(ctx, today)
		case what == 1:
			var entries []rack.Entry
			if entries, err = r.History(); err == nil && len(entries) > 0 {
				done, err = r.Restore(ctx, entries[random.IntN(len(entries))].Number, today)
			}
		case what < 5 && len(ids) > 2 || len(ids) > 12:
			c := rack.Change{Take: []string{ids[0]}, Date: today}
			if what == 4 {
				c.Put, c.Plan = []stock.Piece{offcut(random)}, fmt.Sprint("plan ", seed, n)
			}
			done, err = r.Change(ctx, c)
		default:
			var put []stock.Piece
			for range 1 + random.IntN(4) {
				put = append(put, offcut(random))
			}
			done, err = r.Change(ctx, rack.Change{Put: put, Date: today})
		}
		if err != nil && !refused(err) {
			return err
		}
		if err == nil && done.Number > 0 {
			fmt.Println(done.Number, done.Sum)
		}
	}
}

// refused tells of changes that another writer had made void.
func refused(err error) bool {
	return strings.Contains(err.Error(), "is not on the rack") || strings.Contains(err.Error(), "no change to take back") ||
		strings.Contains(err.Error(), "there is no such rack") // yet
}

const today = "2026-03-05"

func offcut(random *rand.Rand) stock.Piece {
	mm := func(least, most int) stock.Length {
		return stock.Length(least+random.IntN(most-least)) * stock.Millimeter
	}
	return stock.Piece{Material: "birch ply 18", Length: mm(200, 2440), Width: mm(80, 1220), Thickness: 18 * stock.Millimeter,
		Note: strings.Repeat("knot ", random.IntN(200))}
}

// acknowledged is a change of which a writer said that it was made.
type acknowledged struct {
	number int
	sum    string
}

// killedWriters lets writers change the rack and kills each at a random instant, of its
// first change or a later one. It returns what they said. The first changes are waited
// for, so that a busy machine kills no later.
func killedWriters(t *testing.T, path string, random *rand.Rand, writers int) []acknowledged {
	t.Helper()
	heard := make(chan []acknowledged)
	for range writers {
		seed, changes, delay := random.Uint64(), random.IntN(3), time.Duration(random.Int64N(int64(10*time.Millisecond)))
		go func() {
			heard <- told(t, killed.Program(t, writerOf, path+"|"+strconv.FormatUint(seed, 10), changes, delay))
		}()
	}
	var all []acknowledged
	for range writers {
		all = append(all, <-heard...)
	}
	return all
}

// told reads what a writer said; a last line that was torn says nothing.
func told(t *testing.T, said string) []acknowledged {
	var all []acknowledged
	lines := strings.SplitAfter(said, "\n")
	for _, line := range lines[:len(lines)-1] {
		var a acknowledged
		if _, err := fmt.Sscan(line, &a.number, &a.sum); err != nil {
			t.Errorf("a writer says: %q", line)
		}
		all = append(all, a)
	}
	return all
}

// checkAfterKill looks at the rack as a killed writer left it: it can be read, and is the
// last state of the history unless it was edited by hand; all that was acknowledged is
// there. It returns how many changes there are.
func checkAfterKill(t *testing.T, path string, said []acknowledged, byHand string, before int) int {
	t.Helper()
	r, now := rack.At(path), ""
	if r.Exists() {
		file, err := r.Read()
		if err != nil {
			t.Fatal(err)
		}
		now = file.Text
	}
	entries, err := r.History()
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) < before {
		t.Fatalf("the history had %d changes and has %d", before, len(entries))
	}
	for _, a := range said {
		if a.number > len(entries) || entries[a.number-1].Sum != a.sum {
			t.Fatalf("change %d was acknowledged and is not in the history", a.number)
		}
	}
	states := rack.States(path)
	if now != states[len(states)-1] && (byHand == "" || now != byHand) {
		t.Fatalf("readers do not see the last state of the history, of %d", len(entries))
	}
	for _, left := range names(t, filepath.Dir(path)) {
		if strings.HasPrefix(left, ".") {
			t.Errorf("left behind: %s", left)
		}
	}
	return len(entries)
}

// A program may be killed at any instant: each change that it acknowledged is made, the
// next one is made or not, and none is half made.
func TestKilledAtAnyInstantNothingIsLostOrHalfDone(t *testing.T) {
	kills, each := 100, 20
	if killed.Long() {
		kills, each = 1000, 40
	}
	killed.SkipWhereNoneCanBe(t)
	random := rand.New(rand.NewPCG(20, 26))
	made, stopped, edits := 0, 0, 0
	for done := 0; done < kills; {
		path := filepath.Join(t.TempDir(), "rack.toml")
		entries, byHand := 0, ""
		var said []acknowledged // since the rack was begun
		for range each {
			writers := 1 + random.IntN(2)
			before := entries
			fresh := killedWriters(t, path, random, writers)
			said = append(said, fresh...)
			if _, err := os.Stat(hidden(path, "new")); err == nil {
				stopped++
			}
			entries = checkAfterKill(t, path, said, byHand, before)
			text, err := os.ReadFile(path)
			if byHand != "" && string(text) != byHand {
				if !slices.Contains(rack.States(path), byHand) {
					t.Fatal("what was edited by hand is not in the history")
				}
				byHand = ""
			}
			done += writers
			made += len(fresh)
			if err == nil && random.IntN(8) == 0 && len(bytes.TrimSpace(text)) > 0 {
				byHand = string(text) + fmt.Sprintf("# looked through, %d\n", done)
				if err := os.WriteFile(path, []byte(byHand), 0o644); err != nil {
					t.Fatal(err)
				}
				edits++
			}
			if t.Failed() {
				t.FailNow()
			}
		}
		finish(t, path)
	}
	t.Logf("%d changes acknowledged, %d writers were stopped within one, %d edits by hand between", made, stopped, edits)
	if made < kills/2 {
		t.Errorf("only %d changes were made: the test says little", made)
	}
}

// finish makes one more change, after which nothing may be left over.
func finish(t *testing.T, path string) {
	t.Helper()
	r := rack.At(path)
	if _, err := r.Change(t.Context(), rack.Change{Put: []stock.Piece{plank}, Date: today}); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(filepath.Dir(path), ".rack.toml.new")); err == nil {
		t.Error("a new file is left over")
	}
	seen := make(map[string]bool)
	entries, err := r.History()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.Back != nil || e.What == "edited by hand" {
			continue
		}
		for _, id := range e.In {
			if seen[id] {
				t.Errorf("id %s was given twice", id)
			}
			seen[id] = true
		}
	}
}
