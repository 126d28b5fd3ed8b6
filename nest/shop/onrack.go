package shop

import (
	"slices"

	"sawbill/nest/progress"
	"sawbill/nest/shop/planfile"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/rack"
)

// goneFrom notes which pieces of the rack that the plan counts on, and has not begun to
// cut, are not on it any more.
func (r *Rest) goneFrom(onRack []stock.Piece) []string {
	var gone []string
	for _, id := range r.of.plan.RackIDs() {
		if onIt(onRack, id) || r.state.Uncut(id) == 0 {
			continue
		}
		if r.state.Apply(progress.Event{Word: "missing", Value: id}) == nil {
			gone = append(gone, id)
		}
	}
	return gone
}

// rackNow lists the pieces that are on the rack now; none if the job names no rack.
func (f *Folder) rackNow() ([]stock.Piece, error) {
	where := f.RackPath()
	if where == "" {
		return nil, nil
	}
	if !rack.At(where).Exists() {
		return nil, fault.Faults{{File: where, Cause: "the rack that the job names is not there", Remedy: "put it back where it was when the job was planned"}}
	}
	return onRack(rack.At(where))
}

func onIt(pieces []stock.Piece, id string) bool {
	return slices.ContainsFunc(pieces, func(p stock.Piece) bool { return p.ID == id })
}

// onRack lists the pieces on a rack; none where there is no rack yet.
func onRack(r rack.Rack) ([]stock.Piece, error) {
	if !r.Exists() {
		return nil, nil
	}
	read, err := r.Read()
	if err != nil {
		return nil, err
	}
	return read.Pieces, nil
}

func (r *Rest) begunOf(onRack []stock.Piece) []string { return begunOf(r.of.plan, r.state, onRack) }

// begunOf are the ids of those pieces on the rack that the plan, or one before it, has
// begun to cut, or that have another size by now.
func begunOf(p *planfile.Plan, state *progress.State, onRack []stock.Piece) []string {
	begun := slices.DeleteFunc(slices.Clone(p.Begun), func(id string) bool { return !onIt(onRack, id) }) // booked
	for i, l := range state.Layouts() {
		of := p.Plan.Layouts[i].Stock
		if of.OnHand && l.Uncut+l.Missing < l.Pieces && onIt(onRack, of.Name) {
			begun = append(begun, of.Name)
		}
	}
	begun = append(begun, slices.DeleteFunc(slices.Clone(state.Remeasured()), func(name string) bool { return !onIt(onRack, name) })...)
	slices.Sort(begun)
	return slices.Compact(begun)
}
