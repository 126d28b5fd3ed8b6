package main

import (
	"fmt"
	"slices"

	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/rack"
)

// book enters a plan that was carried out: its pieces leave the rack, and the offcuts
// that it keeps enter it, with what was bought for it and not cut.
func (c *rackCall) book() error {
	f, err := folderAt(c.operands[0])
	if err != nil {
		return err
	}
	if !c.set.Changed("rack") {
		if f.rackPath() == "" {
			return usageError{fmt.Sprintf("the job of plan %s names no rack", f.Code), "name the rack's file with --rack"}
		}
		c.rack = rack.At(f.rackPath())
	}
	if !f.state.Done() {
		return job.Faults{{File: f.path, Cause: fmt.Sprintf("plan %s is not carried out yet: blanks are still open", f.Code),
			Remedy: "tell first what is cut with sawbill progress, or plan the rest with sawbill recut and book that"}}
	}
	onRack, err := f.onRack(c.rack)
	if err != nil {
		return err
	}
	done, err := c.change(rack.Change{Take: f.begunOf(onRack), Put: f.keeps(onRack), Plan: f.Code, What: "plan " + f.Code + " carried out"})
	if err != nil {
		return err
	}
	for _, p := range done.Took {
		fmt.Fprintf(c.stdout, "%s has left the rack: %s.\n", p.ID, c.told(p))
	}
	for _, p := range done.Put {
		fmt.Fprintf(c.stdout, "%s is on the rack: %s%s.\n", p.ID, c.told(p), wasCalled(p))
	}
	if len(done.Took)+len(done.Put) == 0 {
		fmt.Fprintln(c.stdout, "Nothing has left the rack, and nothing is kept.")
	}
	return nil
}

func wasCalled(p stock.Piece) string {
	if p.Note == "" {
		return ""
	}
	return ", " + p.Note
}

// keeps are the pieces to lay on the rack.
func (f *planFolder) keeps(onRack []stock.Piece) []stock.Piece {
	var all []stock.Piece
	for _, p := range f.toKeep(onRack) {
		s := p.Stock
		piece := stock.Piece{
			Kind: s.Kind, Material: s.Material, Length: s.Length, Width: s.Width, Thickness: s.Thickness, Grain: s.Grain,
			From: f.title() + ", plan " + f.Code,
		}
		if name, whole := progress.OfferOf(s.Name); whole {
			piece.Name = name
		} else {
			piece.Note = "marked " + s.Name
		}
		for range s.Count {
			all = append(all, piece)
		}
	}
	return all
}

// toKeep are offcuts, whole stock that was bought, and what is worth keeping of spoiled
// blanks.
func (f *planFolder) toKeep(onRack []stock.Piece) []progress.Piece {
	return slices.DeleteFunc(f.state.Pieces(f.Code), func(p progress.Piece) bool {
		name := p.Stock.Name
		theirs := slices.ContainsFunc(onRack, func(q stock.Piece) bool { return q.ID == name }) ||
			slices.ContainsFunc(f.File.Stock, func(own stock.Stock) bool { return own.OnHand && own.Name == name })
		return theirs || p.Kind == progress.Unfinished || !f.Plan.Job.Offcut.Keeps(p.Stock.Length, p.Stock.Width)
	})
}

func (f *planFolder) title() string {
	if f.Plan.Job.Title == "" {
		return "a job"
	}
	return f.Plan.Job.Title
}
