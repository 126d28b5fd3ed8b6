// Package kept is what a plan's folder keeps for the program itself, so that progress
// can be noted and the rest of the job be planned anew, long after the job file was
// changed or lost.
package kept

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
)

// Name is that of the file in the plan's folder.
const Name = "plan.sawbill"

const format = "sawbill kept plan 1"

// Kept is a plan with the job that it is of.
type Kept struct {
	Plan *cutplan.Plan
	// Identity is the plan's code.
	Identity string
	// Of are the codes of the plans whose rest it is, the first one first.
	Of []string
	// Made is what the plans before it made: blanks, each as often as its Count says.
	Made []progress.Made
	// Marks is how many marks were given so far.
	Marks int
	// File is the job, as it was read when it was planned first.
	File *job.File
	// Changes are what if.
	Changes job.Changes
	// Rack is the path of the rack that the job names, from the plan's folder or
	// absolute; empty where there is none.
	Rack string
	// OnRack are the pieces that were on the rack when this rest was planned; nil of a
	// plan that is no rest.
	OnRack []string
	// Begun are pieces of the rack that plans before cut, and that are still on it.
	Begun []string
}

// written is the file. Of the plan it leaves out what the job's files tell.
type written struct {
	Format    string       `json:"format"`
	Sum       string       `json:"sum"` // of the file without it
	About     string       `json:"about"`
	Identity  string       `json:"identity"`
	Of        []string     `json:"of,omitempty"`
	Made      []made       `json:"made,omitempty"`
	Marks     int          `json:"marks"`
	Rack      string       `json:"rack,omitempty"`
	Begun     []string     `json:"begun,omitempty"`
	OnRack    []string     `json:"on_rack,omitempty"`
	Changes   job.Changes  `json:"changes"`
	Sources   []job.Source `json:"sources"`
	Plan      cutplan.Plan `json:"plan"`
	Estimated []estimated  `json:"estimated,omitempty"`
}

// made is a blank that is there. What was written before origins were noted has none.
type made struct {
	cutplan.Blank
	From   *stock.Stock `json:"from,omitempty"`
	Turned bool         `json:"turned,omitempty"`
	Known  bool         `json:"known,omitempty"`
}

func (k Kept) made() []made {
	var all []made
	for _, m := range k.Made {
		w := made{m.Blank, nil, m.Turned, m.Known}
		if m.From != (stock.Stock{}) {
			w.From = &m.From
		}
		all = append(all, w)
	}
	return all
}

func (w written) made() []progress.Made {
	var all []progress.Made
	for _, m := range w.Made {
		k := progress.Made{Blank: m.Blank, Turned: m.Turned, Known: m.Known}
		if m.From != nil {
			k.From = *m.From
		}
		all = append(all, k)
	}
	return all
}

// estimated is an estimate: which lumber of the job, and of which blanks.
type estimated struct {
	Rough  int
	Blanks []cutplan.Wanted
}

const about = "what sawbill progress and sawbill recut go on from; lengths count 25 nm"

// Bytes is what the file holds. Equal plans give equal bytes.
func (k Kept) Bytes() []byte {
	w := written{Format: format, About: about, Identity: k.Identity, Of: k.Of, Made: k.made(), Marks: k.Marks, Rack: k.Rack, Begun: k.Begun, OnRack: k.OnRack,
		Changes: k.Changes, Sources: k.File.Sources, Plan: *k.Plan}
	for _, e := range k.Plan.Estimates {
		for i, r := range k.Plan.Job.Rough {
			if r == e.Rough {
				w.Estimated = append(w.Estimated, estimated{i, e.Blanks})
			}
		}
	}
	w.Plan.Job.Rough, w.Plan.Estimates = nil, nil
	w.Sum = w.sum()
	return w.bytes()
}

// bytes is the file as it is written.
func (w written) bytes() []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(w); err != nil {
		panic("kept: a plan that cannot be written: " + err.Error()) // only if a share is not a number
	}
	return b.Bytes()
}

// sum tells the file from one that was changed.
func (w written) sum() string {
	w.Sum = ""
	digest := sha256.Sum256(w.bytes())
	return hex.EncodeToString(digest[:8])
}

// Read reads the file at path and checks that the plan holds. The error is of type
// [job.Faults].
func Read(path string) (*Kept, error) {
	fault := func(cause, remedy string) (*Kept, error) {
		return nil, job.Faults{{File: path, Cause: cause, Remedy: remedy}}
	}
	data, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fault("there is no such file", "name the folder that sawbill plan wrote")
	case err != nil:
		return fault(fmt.Sprintf("the file cannot be read (%v)", err), "check its permissions")
	}
	k, err := parse(data)
	if err != nil {
		return fault(err.Error(), "plan the job again")
	}
	return k, nil
}

func parse(data []byte) (*Kept, error) {
	var w written
	if err := json.Unmarshal(data, &w); err != nil {
		return nil, errors.New("the file is not as it was written")
	}
	if w.Format != format {
		return nil, fmt.Errorf("the file is of another version of the program (%q, not %q)", w.Format, format)
	}
	sum := w.sum()
	file, err := job.Reread(w.Sources, w.Changes)
	if err != nil {
		return nil, fmt.Errorf("the job in it cannot be read any more: %w", err)
	}
	k := &Kept{Plan: &w.Plan, Identity: w.Identity, Of: w.Of, Made: w.made(), Marks: w.Marks, File: file, Changes: w.Changes, Rack: w.Rack, Begun: w.Begun, OnRack: w.OnRack}
	k.Plan.Job.Rough = file.Rough
	for _, e := range w.Estimated {
		if e.Rough < 0 || e.Rough >= len(file.Rough) {
			return nil, errors.New("the lumber in it is none of the job's")
		}
		k.Plan.Estimates = append(k.Plan.Estimates, k.Plan.EstimateOf(file.Rough[e.Rough], e.Blanks))
	}
	if err := sound(k.Plan); err != nil {
		return nil, err
	}
	if err := k.Plan.Check(); err != nil {
		return nil, fmt.Errorf("the plan in it does not hold (%w)", err)
	}
	if sum != w.Sum {
		return nil, errors.New("the file is not as it was written")
	}
	return k, nil
}

// sound checks the indexes that all else rests on.
func sound(p *cutplan.Plan) error {
	bad := errors.New("the plan in it speaks of blanks that it does not have")
	within := func(i int) bool { return i >= 0 && i < len(p.Bill) }
	for _, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == cutplan.Part && !within(n.Blank) || l.Repeat < 1 || l.Repeat > most {
				return bad
			}
		}
	}
	for _, u := range p.Unplaced {
		if !within(u.Blank) {
			return bad
		}
	}
	for _, u := range p.Cover.Uncovered {
		if !within(u.Blank) {
			return bad
		}
	}
	return nil
}

// most pieces of stock are more than any plan cuts alike.
const most = 1 << 20

// RackIDs are those of the pieces that were on the rack when the plan was made.
func (k *Kept) RackIDs() []string {
	ids := slices.Clone(k.OnRack)
	if len(k.Of) > 0 {
		return ids
	}
	for _, s := range k.File.Sources {
		if s.Name != k.File.Rack {
			continue
		}
		if read, err := job.ParseRack(s.Name, []byte(s.Text)); err == nil {
			for _, p := range read.Pieces {
				ids = append(ids, p.ID)
			}
		}
	}
	return ids
}

// RackStock is what of the pieces on a rack can be cut for parts, but for those that were
// begun.
func (k *Kept) RackStock(on []stock.Piece, parts []stock.Part) []stock.Stock {
	begun := map[string]bool{}
	for _, id := range k.Begun {
		begun[id] = true
	}
	var all []stock.Stock
	for _, p := range on {
		for _, part := range parts {
			if part.Material == p.Material && !begun[p.ID] {
				all = append(all, p.Stock())
				break
			}
		}
	}
	return all
}

// Smaller is the job as it would be with sizes less, each "height=6 mm", besides what is
// changed already.
func (k *Kept) Smaller(sizes ...string) (*job.File, job.Changes, error) {
	as := k.Changes
	as.Smaller = slices.Concat(as.Smaller, sizes)
	file, err := job.Reread(k.File.Sources, as)
	return file, as, err
}
