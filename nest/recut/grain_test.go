package recut_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
	"sawbill/stock/job"
)

// Oak plywood with grain along 603 mm. The lid may lie any way and is cut upright, so its
// grain runs along its 600 mm; the flap wants its grain along its 295 mm.
const lidAndFlap = `
[saw]
kerf = 3

[[sheet]]
name = "oak ply"
material = "oak ply"
thickness = 18
length = 603
width = 900
price = 20

[[part]]
name = "lid"
material = "oak ply"
length = 600
width = 300
grain = "any"

[[part]]
name = "flap"
material = "oak ply"
length = 295
width = 580
`

// Fiberboard has no grain: a spoiled lid holds a flap, turned.
const fibreboard = `
[saw]
kerf = 3

[[sheet]]
name = "fibreboard"
material = "fibreboard"
thickness = 18
length = 603
width = 600
grain = "none"
price = 20

[[part]]
name = "lid"
material = "fibreboard"
length = 600
width = 300

[[part]]
name = "flap"
material = "fibreboard"
length = 295
width = 580
`

// story is a job in a shop: its plan, then the plans of its rests.
type story struct {
	t     *testing.T
	state *progress.State
}

func begin(t *testing.T, text string) *story {
	t.Helper()
	path := filepath.Join(t.TempDir(), "job.toml")
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	file, err := job.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := cutplan.Make(t.Context(), file.Job, cutplan.Options{Iterations: 300})
	if err != nil {
		t.Fatal(err)
	}
	return &story{t, progress.Begin(p)}
}

func (s *story) happens(all ...string) {
	s.t.Helper()
	for _, said := range all {
		e, err := progress.ParseEvent(said)
		if err == nil {
			err = s.state.Apply(e)
		}
		if err != nil {
			s.t.Fatal(said, err)
		}
	}
}

// cutAll cuts every layout.
func (s *story) cutAll() {
	for i, l := range s.state.Plan().Layouts {
		if l.Root.Use == cutplan.Split || l.Root.Use == cutplan.Part {
			s.happens(fmt.Sprint("cut ", i+1))
		}
	}
}

func (s *story) rest() *recut.Result {
	s.t.Helper()
	made, err := recut.Make(s.t.Context(), s.state, recut.Options{Code: "K7F2M", Options: cutplan.Options{Iterations: 300}})
	if err != nil {
		s.t.Fatal(err)
	}
	s.state = progress.Begin(made.Plan, made.Made...)
	return made
}

// A blank of an earlier plan keeps the grain of its stock. If it is spoiled, its usable
// part is neither cut across the grain nor ignored.
func TestASpoiledBlankOfAnEarlierPlanKeepsItsGrain(t *testing.T) {
	tests := []struct {
		reason, job string
		forgotten   bool
		spoiled     string
		cost        stock.Money
	}{
		{"its grain runs along its length, so a flap is not cut from it", lidAndFlap, false, "spoiled lid=598 x 300", 2000},
		{"without grain a flap may come from it", fibreboard, false, "spoiled lid=598 x 300", 0},
		{"its grain was not noted: nothing that has a direction is cut from it", lidAndFlap, true, "spoiled lid=598 x 300", 2000},
		{"its grain was not noted, and it can have none", fibreboard, true, "spoiled lid=598 x 300", 0},
		{"its grain was not noted, and somebody looked", lidAndFlap, true, "spoiled lid=598 x 300, grain length", 2000},
		{"its grain was not noted, and is seen to run across", lidAndFlap, true, "spoiled lid=598 x 300, grain width", 0},
	}
	for _, test := range tests {
		s := begin(t, test.job)
		s.cutAll()
		s.happens("lost flap")
		made := s.rest()
		if test.forgotten {
			for i, m := range made.Made {
				made.Made[i] = progress.OfUnknownOrigin(m.Blank, made.Plan.Job)
			}
			s.state = progress.Begin(made.Plan, made.Made...)
		}
		s.cutAll()
		s.happens(test.spoiled, "good lid", "lost flap")
		if made := s.rest(); made.Plan.Cost != test.cost {
			t.Errorf("%s: the rest costs %v, want %v", test.reason, made.Plan.Cost, test.cost)
		}
	}
}

// One of two lids lay turned. Until a report says which one is spoiled, neither lid's
// grain is certain; once a report gives the grain, both are.
func TestWhichOfTwoIsSpoiledIsNotGuessed(t *testing.T) {
	const two = `
[saw]
kerf = 3

[[sheet]]
name = "long"
material = "oak ply"
thickness = 18
length = 600
width = 300
on_hand = true
count = 1

[[sheet]]
name = "wide"
material = "oak ply"
thickness = 18
length = 300
width = 600
on_hand = true
count = 1

[[part]]
name = "lid"
material = "oak ply"
length = 600
width = 300
grain = "any"
count = 2
`
	tests := []struct {
		said        string
		scrap, kept stock.Grain // as the lids' length runs
		known       bool
	}{
		{"spoiled lid=598 x 300", stock.GrainUnknown, stock.GrainUnknown, false},
		{"spoiled lid=598 x 300, grain length", stock.GrainLength, stock.GrainWidth, true},
		{"spoiled lid=598 x 300, grain width", stock.GrainWidth, stock.GrainLength, true},
		{"lost lid, grain width", stock.GrainAny, stock.GrainLength, true},
	}
	for _, test := range tests {
		s := begin(t, two)
		s.cutAll()
		s.happens(test.said)
		if len(s.state.Spoiled) == 1 {
			if sp := s.state.Spoiled[0]; along(sp.From.Grain, sp.Turned) != test.scrap || sp.Known != test.known {
				t.Errorf("%s: what is left claims %v, known: %v", test.said, along(sp.From.Grain, sp.Turned), sp.Known)
			}
		}
		for _, m := range s.state.Good() {
			if along(m.From.Grain, m.Turned) != test.kept || m.Known != test.known || m.Count != 1 {
				t.Errorf("%s: the other claims %v, known: %v", test.said, along(m.From.Grain, m.Turned), m.Known)
			}
		}
	}
	s := begin(t, two)
	s.cutAll()
	if made := s.state.Good(); len(made) != 2 {
		t.Errorf("two lids of two origins are told as %d kinds", len(made))
	}
	e := progress.Event{Word: "spoiled", Value: "lid=598 x 300, grain none"}
	if err := s.state.Apply(e); err == nil {
		t.Error("a lid without grain is spoiled, and there is none")
	}
}

// along returns the grain of a blank along its own length.
func along(in stock.Grain, turned bool) stock.Grain {
	if turned {
		return in.Quarter()
	}
	return in
}
