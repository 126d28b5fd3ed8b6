package store_test

import (
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

	"sawbill/stock/internal/killed"
	"sawbill/stock/store"
)

// writerOf in the environment makes the test binary a program that adds to a record until
// it is killed: the file, and a seed.
const writerOf = "SAWBILL_TEST_RECORD"

func TestMain(m *testing.M) {
	if told := os.Getenv(writerOf); told != "" {
		path, seed, _ := strings.Cut(told, "|")
		number, _ := strconv.ParseUint(seed, 10, 64)
		if err := addForEver(path, number); err != nil {
			fmt.Println("failed:", err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// addForEver adds entries, takes some back and sends some again. It prints the number and
// id of each once it is added.
func addForEver(path string, seed uint64) error {
	random := rand.New(rand.NewPCG(seed, 1))
	r, lock := store.RecordAt(path), filepath.Join(filepath.Dir(path), ".lock")
	fmt.Println("ready")
	for {
		err := store.Locked(context.Background(), lock, func() error {
			entries, err := r.Read()
			if err != nil {
				return err
			}
			next := store.Entry{Plan: "K7F2M", Did: []string{strings.Repeat("cut 2:1-5 ", 1+random.IntN(300))}}
			standing := store.Standing(entries)
			switch what := random.IntN(4); {
			case what == 0 && len(standing) > 0:
				next = store.Entry{Plan: "K7F2M", Undoes: standing[len(standing)-1].ID}
			case what == 1 && len(standing) > 0:
				next = standing[random.IntN(len(standing))]
			}
			added, err := r.Add(next)
			if err == nil {
				fmt.Println(added.Number, added.ID)
			}
			return err
		})
		if err != nil {
			return err
		}
	}
}

// A program may be killed at any instant, and two may write at once: every entry that was
// acknowledged is there, in its place, and none is half there.
func TestKilledAtAnyInstantNothingIsLostOrHalfWritten(t *testing.T) {
	kills, each := 100, 20
	if killed.Long() {
		kills = 1000
	}
	killed.SkipWhereNoneCanBe(t)
	random := rand.New(rand.NewPCG(20, 26))
	acknowledged, torn := 0, 0
	for done := 0; done < kills; {
		path := filepath.Join(t.TempDir(), "progress.jsonl")
		for range each {
			writers := 1 + random.IntN(2)
			heard := make(chan string)
			for range writers {
				// The first entries are waited for, so that a busy machine kills no later.
				seed, first, delay := random.Uint64()>>20, random.IntN(3), time.Duration(random.Int64N(int64(3*time.Millisecond)))
				go func() { heard <- killed.Program(t, writerOf, path+"|"+strconv.FormatUint(seed, 10), first, delay) }()
			}
			said := ""
			for range writers {
				said += <-heard
			}
			done += writers
			entries, err := store.RecordAt(path).Read()
			if err != nil {
				t.Fatal(err)
			}
			for _, line := range slices.Collect(strings.Lines(said)) {
				var number int
				var id string
				if !strings.HasSuffix(line, "\n") {
					continue // killed while it said so
				}
				acknowledged++
				if _, err := fmt.Sscan(line, &number, &id); err != nil || number > len(entries) || entries[number-1].ID != id {
					t.Fatalf("%q was acknowledged and is not there", line)
				}
			}
			if data := bytesOf(t, path); data != "" && !strings.HasSuffix(data, "\n") {
				torn++
			}
		}
		r := store.RecordAt(path)
		if err := store.Locked(t.Context(), filepath.Join(filepath.Dir(path), ".lock"), func() error {
			add(t, r, "cut 1")
			return nil
		}); err != nil {
			t.Fatal(err)
		}
		if left := names(t, filepath.Dir(path)); len(left) != 1 {
			t.Errorf("left behind: %v", left)
		}
	}
	t.Logf("%d entries acknowledged, %d times the last line was torn", acknowledged, torn)
	if acknowledged < kills/2 {
		t.Errorf("only %d entries were acknowledged: the test says little", acknowledged)
	}
}
