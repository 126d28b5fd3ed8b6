package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"time"

	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/rack"
)

// patience is how long another program may be at the rack.
const patience = 10 * time.Second

// waiting is the time for a change, which Ctrl-C ends. A change that was begun
// is not parted by either.
func waiting() (context.Context, func()) {
	interrupted, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	limited, cancel := context.WithTimeout(interrupted, patience)
	return limited, func() { cancel(); stop() }
}

func (c *rackCall) change(what rack.Change) (rack.Done, error) {
	ctx, end := waiting()
	defer end()
	what.Date, what.Units = c.date, c.inUnits()
	done, err := c.rack.Change(ctx, what)
	c.tellOfEdit(done)
	return done, err
}

func (c *rackCall) tellOfEdit(done rack.Done) {
	if done.ByHand && done.Number > 1 && !c.quiet {
		fmt.Fprintf(c.stderr, "%s was edited by hand; the history has that as change %d.\n", c.rack.Path(), done.Number-1)
	}
}

// add enters the piece that the flags tell of.
func (c *rackCall) add() error {
	pieces, err := job.PiecesFromFlags("rack add", c.flags("kind", "name", "material", "length", "width", "thickness", "grain", "count", "from", "note"), c.inUnits())
	if err != nil {
		return err
	}
	done, err := c.change(rack.Change{Put: pieces})
	if err != nil {
		return err
	}
	c.tellOfNew(done.Put)
	return nil
}

// importList enters the pieces of a list.
func (c *rackCall) importList() error {
	name := c.operands[0]
	pieces, warnings, err := job.ReadPieces(name, c.inUnits())
	if err != nil {
		return err
	}
	warn(c.invocation, warnings)
	done, err := c.change(rack.Change{Put: pieces, What: "added from " + filepath.Base(name)})
	if err != nil {
		return err
	}
	c.tellOfNew(done.Put)
	return nil
}

func (c *rackCall) tellOfNew(pieces []stock.Piece) {
	var ids []string
	for _, p := range pieces {
		ids = append(ids, p.ID)
	}
	if len(ids) == 1 {
		fmt.Fprintf(c.stdout, "%s is on the rack: %s. Write its id on it.\n", ids[0], c.told(pieces[0]))
		return
	}
	fmt.Fprintf(c.stdout, "%s are on the rack. Write the ids on them.\n", rack.List(ids))
}

// told describes a piece in one line.
func (c *rackCall) told(p stock.Piece) string {
	ruler := stock.Ruler{Units: c.inUnits()}
	return fmt.Sprintf("%s %s, %s x %s", p.Kind, p.Material, ruler.Size(p.Length, p.Width), ruler.PrintUnit(p.Thickness))
}

// take takes pieces off the rack.
func (c *rackCall) take() error {
	what := "taken"
	if c.note != "" {
		what += ": " + c.note
	}
	done, err := c.change(rack.Change{Take: c.operands, What: what})
	if err != nil {
		return err
	}
	for _, p := range done.Took {
		fmt.Fprintf(c.stdout, "%s has left the rack: %s.\n", p.ID, c.told(p))
	}
	return nil
}

// undo takes the last change back.
func (c *rackCall) undo() error {
	ctx, end := waiting()
	defer end()
	done, undone, err := c.rack.Undo(ctx, c.date)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "Change %d is taken back (%s).\n", undone.Number, undone.What)
	c.tellOfBack(done)
	return nil
}

// restore goes back to an earlier state.
func (c *rackCall) restore() error {
	number, err := strconv.Atoi(c.operands[0])
	if err != nil {
		return usage(fmt.Sprintf("%q is no number of a change", c.operands[0]), "see \"sawbill rack history\"")
	}
	ctx, end := waiting()
	defer end()
	done, err := c.rack.Restore(ctx, number, c.date)
	c.tellOfEdit(done)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "The rack is as change %d left it.\n", number)
	c.tellOfBack(done)
	return nil
}

func (c *rackCall) tellOfBack(done rack.Done) {
	if len(done.In) > 0 {
		fmt.Fprintf(c.stdout, "Back on it: %s.\n", rack.List(done.In))
	}
	if len(done.Out) > 0 {
		fmt.Fprintf(c.stdout, "Off it: %s.\n", rack.List(done.Out))
	}
}
