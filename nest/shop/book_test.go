package shop_test

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/shop"
	"sawbill/stock"
	"sawbill/stock/rack"
)

// onRack are the pieces on the rack, by what is said of them.
func (w workshop) onRack() []string {
	w.Helper()
	read, err := rack.At(w.at("rack.toml")).Read()
	w.must(err)
	var all []string
	for _, p := range read.Pieces {
		all = append(all, p.Name+p.Note)
	}
	slices.Sort(all)
	return all
}

// A plan is booked at the end of its chain, once, with what every plan of it kept.
func TestAChainIsBookedOnce(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.must(w.report("p", "cut 1", "lost shelf"))
	_, err := w.recut("p", "", "H4XYZ")
	w.must(err)
	_, err = w.book("p-2", false)
	w.refused(err, "p-2: plan H4XYZ is not carried out yet", "sawbill progress", "sawbill recut", "--give-up")
	open := w.open("p-2").Plan().Plan
	for i := range open.Layouts {
		w.must(w.report("p-2", "cut "+string(rune('1'+i))))
	}
	_, err = w.book("p", false)
	w.refused(err, "plan K7F2M goes on as plan H4XYZ")
	done, err := w.book("p-2", false)
	w.must(err)
	if done.Plan != "H4XYZ" || len(done.Put) == 0 || len(w.onRack()) != len(done.Put) {
		t.Error(done, w.onRack())
	}
	if all := w.onRack(); len(slices.Compact(slices.Clone(all))) != len(all) {
		t.Error("a piece is on the rack twice:", all)
	}
	if e, booked, err := rack.At(w.at("rack.toml")).BookedBy("K7F2M"); err != nil || !booked || e.Number != done.Number {
		t.Error("the rack does not know that the plan before is carried out too", e, err)
	}
	before := w.files()
	_, err = w.book("p-2", false)
	w.refused(err, "plan H4XYZ is booked on the rack")
	if !same(before, w.files()) {
		t.Error("a refused booking changed something")
	}

	// With the rack's undo the plan is open again, and can be booked again.
	_, _, err = rack.At(w.at("rack.toml")).Undo(t.Context(), "2026-03-06")
	w.must(err)
	w.must(w.report("p-2", "lost shelf"))
	w.must(w.undo("p-2"))
	again, err := w.book("p-2", false)
	w.must(err)
	if len(again.Put) != len(done.Put) {
		t.Error(again.Put, done.Put)
	}
	if n := strings.Count(w.files()["p-2/progress.jsonl"], "booked ../rack.toml"); n != 1 {
		t.Errorf("the record says %d times that the plan is booked", n)
	}
}

// What is left of a plan that is given up goes to the rack: whole stock that was bought,
// pieces that were begun, and leftovers.
func TestAPlanIsGivenUp(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.must(w.report("p", "cut 1:1"))
	done, err := w.book("p", true)
	w.must(err)
	all := strings.Join(w.onRack(), ", ")
	if !strings.Contains(all, "birch 18") || !strings.Contains(all, "marked K7F2M layout 1") || done.What != "plan K7F2M given up" {
		t.Error(all, done.What)
	}
	w.refused(w.report("p", "cut 1"), "is booked on the rack")
}

// What the rack refuses leaves nothing in the record either.
func TestABookingThatTheRackRefuses(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	w.write("rack.toml", "[[piece]]\nid = \"R1\"\nkind = \"board\"\nmaterial = \"birch ply 18\"\nlength = 800\nwidth = 100\nthickness = 18\n")
	before := w.files()
	_, err := w.book("p", true)
	w.refused(err, "is on the rack as a board (R1), and as a sheet here")
	if !same(before, w.files()) {
		t.Error("something was written")
	}
	w.must(w.report("p", "cut 1"))
}

// The program may be stopped between the record and the rack: the plan is then not booked,
// goes on, and can be booked.
func TestABookingOfWhichTheRackDoesNotKnow(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	_, err := w.book("p", true)
	w.must(err)
	os.Remove(w.at("rack.toml.history"))
	w.write("rack.toml", "")
	w.must(w.report("p", "cut 1"))
	if _, err := w.book("p", true); err != nil {
		t.Error(err)
	}
	os.Remove(w.at("rack.toml.history"))
	os.Remove(w.at("rack.toml"))
	w.refused(w.report("p", "cut 2"), "rack.toml: plan K7F2M is booked on this rack, and it is not there; put the rack back with its history")
	w.write("rack.toml", "") // a new one, as the remedy says
	w.must(w.report("p", "cut 2"))
}

// A rack that begins with a booking is there before the record names it: a program that is
// stopped then leaves a plan that goes on.
func TestARackBeginsWithABooking(t *testing.T) {
	w := in(t)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	os.Remove(w.at("rack.toml"))
	f := w.open("p")
	stopped := errors.New("stopped")
	_, err := rack.At(w.at("rack.toml")).Change(w.Context(), rack.Change{Put: []stock.Piece{{Kind: stock.Sheet, Material: "birch", Length: 1e6, Width: 1e6, Thickness: 1e5}},
		Sure: func() error {
			if _, there := w.files()["rack.toml"]; !there {
				t.Error("there is no rack yet")
			}
			return stopped
		}})
	if _, there := w.files()["rack.toml"]; there || !errors.Is(err, stopped) {
		t.Error(err, "an empty rack is left")
	}
	_, err = f.Book(w.Context(), shop.Booking{Rack: rack.At(w.at("rack.toml")), GiveUp: true})
	w.must(err)
	w.must(w.open("p").Refresh(w.Context()))
}

// The ids of a plan's own rack are other pieces on another rack.
func TestAPlanIsBookedOnAnotherRack(t *testing.T) {
	w := in(t)
	piece := "[[piece]]\nid = \"R1\"\nmaterial = \"birch ply 18\"\nlength = 1200\nwidth = 900\nthickness = 18\n"
	w.write("rack.toml", piece)
	w.write("other.toml", piece)
	w.must(w.plan("bench.toml", "p", "K7F2M"))
	book := func() (rack.Done, error) {
		return w.open("p").Book(w.Context(), shop.Booking{Rack: rack.At(w.at("other.toml")), GiveUp: true})
	}
	done, err := book()
	w.must(err)
	if len(done.Took) > 0 || len(done.Put) == 0 || slices.ContainsFunc(done.Put, func(p stock.Piece) bool { return p.Name == "R1" }) {
		t.Error(done.Took, done.Put)
	}
	_, _, err = rack.At(w.at("other.toml")).Undo(w.Context(), "")
	w.must(err)
	for i, l := range w.open("p").Plan().Plan.Layouts {
		if l.Stock.Name == "R1" {
			w.must(w.report("p", fmt.Sprintf("cut %d", i+1)))
		}
	}
	before := w.files()
	_, err = book()
	w.refused(err, "p: plan K7F2M cut R1 of the rack", "name the rack of the job: --rack ")
	if !same(before, w.files()) {
		t.Error("a refused booking changed something")
	}
	w.must(os.Remove(w.at("rack.toml"))) // it was moved to where the other is
	done, err = book()
	w.must(err)
	if len(done.Took) != 1 {
		t.Error(done.Took)
	}
}
