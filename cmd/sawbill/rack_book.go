package main

import (
	"context"
	"fmt"

	"sawbill/nest/shop"
	"sawbill/stock"
	"sawbill/stock/rack"
)

// book books a plan that was carried out or is given up. The pieces that it cut leave the
// rack; its offcuts enter it, with stock that was bought and not cut.
func (c *rackCall) book() error {
	folder, err := c.openFolder()
	if err != nil {
		return err
	}
	if !c.set.Changed("rack") {
		if folder.RackPath() == "" {
			return usage(fmt.Sprintf("the job of plan %s names no rack", folder.Plan().Code), "name the rack's file with --rack")
		}
		c.rack = rack.At(folder.RackPath())
	}
	var done rack.Done
	err = c.patiently(func(ctx context.Context) error {
		done, err = folder.Book(ctx, shop.Booking{Rack: c.rack, GiveUp: c.giveUp, Date: c.date, Units: c.inUnits()})
		return err
	})
	c.tellOfEdit(done)
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
