package main

import (
	"slices"

	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/rack"
)

// goneFrom notes which pieces of the rack that the plan counts on, and has not begun to
// cut, are not on it any more.
func (f *planFolder) goneFrom(onRack []stock.Piece) []string {
	var gone []string
	for _, id := range f.RackIDs() {
		if slices.ContainsFunc(onRack, func(p stock.Piece) bool { return p.ID == id }) || f.state.Uncut(id) == 0 {
			continue
		}
		if f.state.Tell(progress.Event{Word: "missing", Value: id}) == nil {
			gone = append(gone, id)
		}
	}
	return gone
}

// rackNow is what is on the rack now; nothing where the job names none.
func (f *planFolder) rackNow() ([]stock.Piece, error) {
	path := f.rackPath()
	if path == "" {
		return nil, nil
	}
	if !rack.At(path).Exists() {
		return nil, job.Faults{{File: path, Cause: "the rack that the job names is not there", Remedy: "put it back where it was when the job was planned"}}
	}
	return f.onRack(rack.At(path))
}

func idsOf(pieces []stock.Piece) []string {
	var ids []string
	for _, p := range pieces {
		ids = append(ids, p.ID)
	}
	return ids
}

// begunOf are the ids of those pieces on the rack that the plan, or one before it, has
// begun to cut, or that have another size by now.
func (f *planFolder) begunOf(onRack []stock.Piece) []string {
	onIt := func(id string) bool {
		return slices.ContainsFunc(onRack, func(p stock.Piece) bool { return p.ID == id })
	}
	begun := slices.DeleteFunc(slices.Clone(f.Begun), func(id string) bool { return !onIt(id) }) // booked
	for i, l := range f.state.Layouts() {
		of := f.Plan.Layouts[i].Stock
		if of.OnHand && l.Whole+l.Gone < l.Pieces && onIt(of.Name) {
			begun = append(begun, of.Name)
		}
	}
	begun = append(begun, slices.DeleteFunc(slices.Clone(f.state.Remeasured()), func(name string) bool { return !onIt(name) })...)
	slices.Sort(begun)
	return slices.Compact(begun)
}

// onRack is what is on a rack; nothing where there is none yet.
func (f *planFolder) onRack(r rack.Rack) ([]stock.Piece, error) {
	if !r.Exists() {
		return nil, nil
	}
	read, err := r.Read()
	if err != nil {
		return nil, err
	}
	return read.Pieces, nil
}

// booked are the names of pieces that the plan kept and that are on its rack by now.
func (f *planFolder) booked(onRack []stock.Piece) ([]string, error) {
	if f.rackPath() == "" {
		return nil, nil
	}
	done, err := rack.At(f.rackPath()).Booked(f.Code)
	if err != nil || !done {
		return nil, err
	}
	var names []string
	for _, p := range f.toKeep(onRack) {
		names = append(names, p.Stock.Name)
	}
	return names, nil
}
