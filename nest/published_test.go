package nest

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// The published instances are read from the folder that SAWBILL_BENCH names,
// or ../shared/bench beside the repository. Each file names its source.
type published struct {
	Set       string
	Source    string
	Instances []publishedInstance
}

type publishedInstance struct {
	Name  string
	Kind  string
	Stock []struct{ Length, Width, Cost, Count int64 }
	Parts []struct{ Length, Width, Count, Value int64 }
	Known struct {
		Best, Lower int64
		Rotated     struct{ Best, Lower int64 }
	}
}

// publishedFolder is where the published instances are.
func publishedFolder() string {
	if dir := os.Getenv("SAWBILL_BENCH"); dir != "" {
		return dir
	}
	return filepath.Join("..", "..", "shared", "bench")
}

// Kinds of published instances that ask for stock to cut all parts from.
const (
	publishedSheets = "bins2d"
	publishedBoards = "boards1d"
)

// publishedSets reads, of every file in the folder of published instances,
// those of a kind; a file of something else has none. It returns nothing where
// the folder is absent.
func publishedSets(t testing.TB, kind string) []published {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(publishedFolder(), "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	var sets []published
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var p published
		if json.Unmarshal(data, &p) != nil {
			continue
		}
		p.Instances = slices.DeleteFunc(p.Instances, func(in publishedInstance) bool { return in.Kind != kind })
		if len(p.Instances) > 0 {
			sets = append(sets, p)
		}
	}
	return sets
}

func readPublished(t testing.TB, set string) published {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(publishedFolder(), set+".json"))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skipf("published instances are not here: set SAWBILL_BENCH to the folder with %s.json", set)
	}
	if err != nil {
		t.Fatal(err)
	}
	var p published
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	return p
}

func (in publishedInstance) problem(turnable bool) Problem {
	var p Problem
	var from []Source
	for i, s := range in.Stock {
		p.Stock = append(p.Stock, Stock{Length: s.Length, Width: s.Width, Price: s.Cost, Count: int(s.Count)})
		from = append(from, Source{Stock: i, Upright: true, Turned: turnable})
	}
	for _, b := range in.Parts {
		p.Blanks = append(p.Blanks, Blank{Length: b.Length, Width: b.Width, Count: int(b.Count), From: from})
	}
	return p
}

func (in publishedInstance) lower(turnable bool) int64 {
	if turnable {
		return in.Known.Rotated.Lower
	}
	return in.Known.Lower
}

// best is what somebody reached, 0 if that is not known. What is reached with
// no part turned is reached with turning allowed.
func (in publishedInstance) best(turnable bool) int64 {
	if turnable && in.Known.Rotated.Best > 0 {
		return in.Known.Rotated.Best
	}
	return in.Known.Best
}

// TestPublishedSheets plans published instances briefly: every plan must pass
// Verify, none may cost less than is possible, no bound may be above what
// somebody reached.
func TestPublishedSheets(t *testing.T) {
	for _, set := range []string{"class", "assort"} {
		pub := readPublished(t, set)
		for i, in := range pub.Instances {
			if i%5 != 0 {
				continue
			}
			for _, turnable := range []bool{false, true} {
				t.Run(fmt.Sprintf("%s/turned=%v", in.Name, turnable), func(t *testing.T) {
					p := in.problem(turnable)
					plan, err := Solve(context.Background(), p, Options{Iterations: 300, Walks: 1})
					if err != nil {
						t.Fatal(err)
					}
					if err := Verify(p, plan); err != nil {
						t.Fatal(err)
					}
					if lower := in.lower(turnable); plan.Cost < lower {
						t.Errorf("cost %d is below the proven %d", plan.Cost, lower)
					}
					if best := in.best(turnable); best > 0 && plan.Bound > best {
						t.Errorf("bound %d is above the %d that somebody reached", plan.Bound, best)
					}
				})
			}
		}
	}
}
