package shop_test

import (
	"fmt"
	"slices"
	"sync"
	"testing"

	"sawbill/nest/recut"
	"sawbill/nest/shop"
	"sawbill/stock/rack"
	"sawbill/stock/store"
)

// Planning, reporting, recutting and booking at once: whatever comes first, all that was
// accepted is there afterwards, belongs to the plan that is there, and is read back.
func TestAllAtOnce(t *testing.T) {
	for round := range 5 {
		w := in(t)
		w.must(w.plan("bench.toml", "p", "AAAAA"))
		plan := w.planned("bench.toml", "p", "")
		var accepted sync.Map // ids of reports
		var wait sync.WaitGroup
		work := func(times int, do func(f *shop.Folder, n int)) {
			wait.Go(func() {
				for n := range times {
					f, err := shop.Open(t.Context(), w.at("p"))
					if err != nil {
						t.Error(err)
						return
					}
					do(f, n)
				}
			})
		}
		for who := range 2 {
			work(6, func(f *shop.Folder, n int) {
				r := shop.Report{Events: events(t, fmt.Sprintf("cut 1:%d", n+1)), Sender: shop.Sender{ID: store.NewID(), By: fmt.Sprint(who), Plan: f.Plan().Code}}
				if e, err := f.Report(t.Context(), r); err == nil {
					accepted.Store(e.ID, e)
				}
				if n == 3 {
					if e, err := f.Undo(t.Context(), shop.Sender{}); err == nil {
						accepted.Delete(e.ID)
					}
				}
			})
		}
		work(4, func(_ *shop.Folder, n int) {
			p := *plan
			p.Code = fmt.Sprintf("P%dLAN", n+2)
			shop.Place(t.Context(), w.at("p"), &p, pagesOf(p.Code))
		})
		var recuts sync.Map
		for who := range 2 {
			work(1+round, func(f *shop.Folder, n int) {
				rest, err := f.Rest(t.Context())
				if err != nil {
					return
				}
				folder, number, err := rest.Folder(t.Context(), w.at(fmt.Sprintf("rest-%d-%d", who, n)))
				if err != nil {
					return
				}
				o := rest.Options()
				o.Iterations = 5
				made, err := recut.Make(t.Context(), rest.State(), o)
				if err != nil {
					t.Error(err)
					return
				}
				next := rest.Plan(made, folder, number)
				next.Code = fmt.Sprintf("R%d%dST", who, n)
				if rest.Write(t.Context(), folder, next, pagesOf(next.Code), "") == nil {
					recuts.Store(next.Code, folder)
				}
			})
		}
		booked := make(chan string, 10)
		if round%2 == 1 {
			work(2, func(f *shop.Folder, n int) {
				if _, err := f.Book(t.Context(), shop.Booking{Rack: rack.At(w.at("rack.toml")), GiveUp: true}); err == nil {
					booked <- f.Plan().Code
				}
			})
		}
		wait.Wait()
		close(booked)

		f := w.open("p")
		entries, err := store.RecordAt(w.at("p/progress.jsonl")).Read()
		w.must(err)
		standing := store.Standing(entries)
		accepted.Range(func(id, e any) bool {
			at := slices.IndexFunc(standing, func(s store.Entry) bool { return s.ID == id })
			if at < 0 || standing[at].Plan != f.Plan().Code {
				t.Errorf("%v was accepted, the folder holds plan %s and %v", e, f.Plan().Code, standing)
			}
			return true
		})
		if got := w.files()["p/plan.pdf"]; got != "pages of "+f.Plan().Code {
			t.Errorf("%q beside plan %s", got, f.Plan().Code)
		}
		fate, err := f.Fate()
		w.must(err)
		rests := 0
		recuts.Range(func(code, folder any) bool {
			rests++
			if fate.Next == nil || fate.Next.Code != code {
				t.Errorf("plan %v was written, the plan goes on as %v", code, fate.Next)
			}
			if g, err := shop.Open(t.Context(), folder.(string)); err != nil || g.Plan().Code != code {
				t.Error(err)
			}
			return true
		})
		times := 0
		for code := range booked {
			times++
			if code != f.Plan().Code || fate.Booked == nil {
				t.Errorf("plan %s was booked, the folder holds plan %s: %v", code, f.Plan().Code, fate)
			}
		}
		if rests+times > 1 {
			t.Errorf("%d rests and %d bookings of one plan", rests, times)
		}
	}
}
