package recut_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
)

// long selects the full counts of .ci/long.
var long = os.Getenv("SAWBILL_LONG") == "1"

// In random stories of up to four rests no part lies across its grain. Every piece has the
// grain of its stock, for any losses and any reports about grain.
func TestGrainIsRightThroughWholeStories(t *testing.T) {
	stories := uint64(60)
	if long {
		stories = 2000
	}
	scraps, across := 0, 0
	for seed := range stories {
		random := rand.New(rand.NewPCG(seed, 31))
		f := &floor{t: t, random: random, story: fmt.Sprint("story ", seed), onHand: map[string][]stock.Grain{}, good: map[string][]stock.Grain{}}
		options := cutplan.Options{Iterations: 40}
		job := anyJob(random)
		for _, s := range job.Stock {
			if s.OnHand {
				f.onHand[s.Name] = []stock.Grain{s.Grain}
			}
		}
		p, err := cutplan.Make(t.Context(), job, options)
		if err != nil {
			t.Fatal(seed, err)
		}
		f.begin(p, "P0", nil)
		for round := range 1 + random.IntN(4) {
			f.happens(3 + random.IntN(14))
			scraps += len(f.spoiled)
			o := recut.Options{Code: f.code, Options: options}
			if random.IntN(4) == 0 {
				o.Was, o.Is = fewerParts(random, f.state)
			}
			made := f.rest(o)
			if t.Failed() {
				return
			}
			f.begin(made.Plan, fmt.Sprint("P", round+1), made.Made)
			for _, l := range made.Plan.Layouts {
				if strings.Contains(l.Stock.Name, "spoiled") {
					across++
				}
			}
		}
		if t.Failed() {
			return
		}
	}
	t.Logf("%d stories, %d pieces of spoiled blanks, %d cut again", stories, scraps, across)
	if across < 5 {
		t.Error("the test says little")
	}
}

// fewerParts returns the job as it is, and the job with one part dropped or reduced.
func fewerParts(random *rand.Rand, s *progress.State) (was, is *stock.Job) {
	before, after := s.Plan().Job, s.Plan().Job
	before.Parts, after.Parts = s.Parts(), s.Parts()
	if at := random.IntN(len(after.Parts)); len(after.Parts) > 1 && after.Parts[at].Count == 1 {
		after.Parts = slices.Delete(after.Parts, at, at+1)
	} else if after.Parts[at].Count > 1 {
		after.Parts[at].Count -= 1 + random.IntN(after.Parts[at].Count-1)
	}
	return &before, &after
}
