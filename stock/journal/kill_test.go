package journal_test

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
	"sawbill/stock/journal"
)

// writerOf in the environment makes the test binary a program that writes to a
// journal until it is killed: the file, and a seed.
const writerOf = "SAWBILL_TEST_JOURNAL"

func TestMain(m *testing.M) {
	if told := os.Getenv(writerOf); told != "" {
		path, seed, _ := strings.Cut(told, "|")
		number, _ := strconv.ParseUint(seed, 10, 64)
		if err := writeForEver(path, number); err != nil {
			fmt.Println("failed:", err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// writeForEver adds entries and takes some back. It says of each what it is about to do
// where that may lose one, and what it has done.
func writeForEver(path string, seed uint64) error {
	random := rand.New(rand.NewPCG(seed, 1))
	j, ctx := journal.At(path), context.Background()
	fmt.Println("ready")
	for n := 0; ; n++ {
		if n > 2 && random.IntN(4) == 0 {
			fmt.Println("undoing")
			e, err := j.Undo(ctx)
			if err != nil && !strings.Contains(err.Error(), "nothing to take back") {
				return err
			}
			if err == nil {
				fmt.Println("undone", e.Did[0])
			} else {
				fmt.Println("undone nothing")
			}
			continue
		}
		token := fmt.Sprintf("%d-%d", seed, n)
		_, err := j.Add(ctx, func([]journal.Entry) (journal.Entry, error) {
			return journal.Entry{Plan: "K7F2M", Did: []string{token, strings.Repeat("cut 2:1-5 ", random.IntN(300))}}, nil
		})
		if err != nil {
			return err
		}
		fmt.Println("added", token)
	}
}

// A program may be killed at any instant, and two may write at once: what was
// acknowledged is there, and nothing is half there.
func TestKilledAtAnyInstantNothingIsLostOrHalfWritten(t *testing.T) {
	kills, each := 1000, 40
	if testing.Short() {
		kills = 100
	}
	killed.SkipWhereNoneCanBe(t)
	random := rand.New(rand.NewPCG(20, 26))
	acknowledged, undone, torn := 0, 0, 0
	for done := 0; done < kills; {
		path := filepath.Join(t.TempDir(), "progress.jsonl")
		there := map[string]bool{}   // acknowledged, and not taken back
		missing := map[string]bool{} // taken back, perhaps by one who could not say so any more
		for range each {
			writers := 1 + random.IntN(2)
			heard, doubt := make(chan string), 0
			for range writers {
				seed, delay := random.Uint64()>>20, time.Duration(random.Int64N(int64(6*time.Millisecond)))
				go func() { heard <- killed.Program(t, writerOf, path+"|"+strconv.FormatUint(seed, 10), 0, delay) }()
			}
			added, back := []string{}, []string{}
			for range writers {
				lines := strings.Split(<-heard, "\n")
				for i, line := range lines[:len(lines)-1] {
					word, token, _ := strings.Cut(line, " ")
					switch {
					case word == "added":
						added = append(added, token)
					case word == "undone" && token != "nothing":
						back = append(back, token)
					case word == "undoing" && i == len(lines)-2:
						doubt++
					}
				}
			}
			done += writers
			acknowledged, undone = acknowledged+len(added), undone+len(back)
			for _, token := range added {
				there[token] = true
			}
			for _, token := range back {
				delete(there, token)
			}
			entries, err := journal.At(path).Read()
			if err != nil {
				t.Fatal(err)
			}
			data, _ := os.ReadFile(path)
			if len(data) > 0 && data[len(data)-1] != '\n' {
				torn++
			}
			for token := range there {
				if !slices.ContainsFunc(entries, func(e journal.Entry) bool { return e.Did[0] == token }) {
					if doubt--; doubt < 0 {
						t.Fatalf("%s was acknowledged and is not there", token)
					}
					delete(there, token)
					missing[token] = true
				}
			}
			for _, e := range entries {
				if len(e.Did) != 2 || missing[e.Did[0]] || slices.Contains(back, e.Did[0]) {
					t.Fatalf("%v is there", e.Did[0])
				}
			}
		}
	}
	t.Logf("%d entries acknowledged, %d taken back, %d times the last line was torn", acknowledged, undone, torn)
	if acknowledged < kills/4 {
		t.Errorf("only %d entries were made: the test says little", acknowledged)
	}
}
