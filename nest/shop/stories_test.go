package shop_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/nest/shop"
	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/rack"
)

// story is a job from its first plan to the rack. Areas are in squares of 25 nm.
type story struct {
	workshop
	random *rand.Rand
	name   string
	plans  int
	folder *shop.Folder
	marks  map[string]string // the part of each mark that was ever given
	told   []happened        // that counts, of the plan there is
}

// happened is a report, and what it took out of the shop.
type happened struct{ gone *big.Int }

func area(length, width stock.Length, count int) *big.Int {
	a := new(big.Int).Mul(big.NewInt(int64(length)), big.NewInt(int64(width)))
	return a.Mul(a, big.NewInt(int64(count)))
}

func sum(all ...*big.Int) *big.Int {
	total := new(big.Int)
	for _, a := range all {
		total.Add(total, a)
	}
	return total
}

func (s *story) say(format string, args ...any) {
	s.Helper()
	s.Errorf(s.name+": "+format, args...)
}

// randomJob is a job of sheets of two sizes and of boards, some on hand, with a rack.
func randomJob(random *rand.Rand) (jobText, rackText string) {
	size := func(least, most int) int { return least + random.IntN(most-least) }
	grain := func(of ...string) string { return of[random.IntN(len(of))] }
	var b strings.Builder
	fmt.Fprintf(&b, "rack = \"rack.toml\"\n[saw]\nkerf = %d\n[offcut]\nlength = %d\nwidth = %d\n[allowance]\nedge = 0\nface = 0\nend = 0\n", size(0, 5), size(100, 300), size(40, 100))
	for i := range 2 {
		fmt.Fprintf(&b, "[[sheet]]\nname = \"sheet %d\"\nmaterial = \"ply\"\nthickness = 18\nlength = %d\nwidth = %d\ngrain = %q\ntrim = %d\nprice = %d\n",
			i, size(700, 1300), size(640, 900), grain("length", "length", "none"), 5*random.IntN(3), size(10, 60))
	}
	if random.IntN(2) == 0 {
		fmt.Fprintf(&b, "[[sheet]]\nname = \"own\"\nmaterial = \"ply\"\nthickness = 18\nlength = %d\nwidth = %d\non_hand = true\ncount = %d\n", size(300, 900), size(200, 600), 1+random.IntN(2))
	}
	fmt.Fprintf(&b, "[[board]]\nname = \"board\"\nmaterial = \"oak\"\nthickness = 24\nwidth = %d\nlength = %d\nprice = %d\n", size(90, 160), size(1500, 2600), size(5, 20))
	for i := range 2 + random.IntN(4) {
		fmt.Fprintf(&b, "[[part]]\nname = \"part %d\"\ncount = %d\n", i, 1+random.IntN(4))
		if random.IntN(4) == 0 {
			fmt.Fprintf(&b, "material = \"oak\"\nthickness = 24\nlength = %d\nwidth = %d\ngang = false\n", size(200, 900), size(30, 80))
			continue
		}
		fmt.Fprintf(&b, "material = \"ply\"\nlength = %d\nwidth = %d\ngrain = %q\n", size(90, 560), size(60, 420), grain("length", "any"))
	}
	var r strings.Builder
	for i := range random.IntN(3) {
		fmt.Fprintf(&r, "[[piece]]\nid = \"R%d\"\nmaterial = \"ply\"\nlength = %d\nwidth = %d\nthickness = 18\n", i+1, size(200, 800), size(150, 500))
	}
	return b.String(), r.String()
}

// code is that of the next plan.
func (s *story) code() string {
	s.plans++
	return fmt.Sprintf("CODE%d", s.plans)
}

// begin is what there is when a plan begins: on hand, bought, and made before.
func begin(p *cutplan.Plan, made []progress.Made) *big.Int {
	all := onHandOf(p)
	for _, b := range p.Buy {
		all.Add(all, area(b.Stock.Length, b.Stock.Width, b.Count))
	}
	return all.Add(all, madeArea(made))
}

func onHandOf(p *cutplan.Plan) *big.Int {
	all := new(big.Int)
	for _, o := range p.Job.Stock {
		if o.OnHand {
			all.Add(all, area(o.Length, o.Width, o.Count))
		}
	}
	return all
}

func madeArea(made []progress.Made) *big.Int {
	all := new(big.Int)
	for _, m := range made {
		all.Add(all, area(m.Length, m.Width, m.Count))
	}
	return all
}

func lying(all []progress.Piece) *big.Int {
	there := new(big.Int)
	for _, p := range all {
		there.Add(there, area(p.Stock.Length, p.Stock.Width, p.Stock.Count))
	}
	return there
}

// sawn is the dust, the trim and the waste of the cuts that are made.
func sawn(state *progress.State) *big.Int {
	all := new(big.Int)
	size := func(of cutplan.Size) *big.Int { return area(of.Length, of.Width, 1) }
	waste := func(n *cutplan.Node) {
		if n != nil && n.Use == cutplan.Waste {
			all.Add(all, area(n.Length, n.Width, 1))
		}
	}
	for i, l := range state.Plan().Layouts {
		for copy := range l.Repeat {
			for _, st := range state.Steps(i + 1) {
				if !state.IsMade(i+1, copy+1, st.Number) {
					continue
				}
				all.Add(all, size(st.Piece))
				all.Sub(all, size(st.Off))
				if !st.Trim {
					all.Sub(all, size(st.Left))
				}
				waste(st.OffNode)
				waste(st.LeftNode)
			}
		}
	}
	return all
}

// balance checks that all that came in is there, or is known to be gone.
func (s *story) balance(state *progress.State, came *big.Int) {
	s.Helper()
	in, out := sum(came), sum(lying(state.Pieces("")), sawn(state))
	for _, h := range s.told {
		out.Add(out, h.gone)
	}
	for _, b := range state.Blanks() {
		out.Add(out, area(b.Length, b.Width, b.Good+b.Lost+b.Spoiled))
		in.Add(in, area(b.Length, b.Width, b.Good-(b.Cut-b.Spoiled-b.Lost))) // made by hand
	}
	for _, sp := range state.Spoiled {
		out.Sub(out, area(sp.Left.Length, sp.Left.Width, 1))
	}
	if in.Cmp(out) != 0 {
		s.say("%v came in, %v is there or gone", in, out)
	}
}

// happen reports something that may happen, or takes the last report back.
func (s *story) happen() {
	state := s.folder.State()
	plan := state.Plan()
	if s.random.IntN(8) == 0 && len(s.told) > 0 {
		if _, err := s.folder.Undo(s.Context(), shop.Sender{Date: "2026-03-06"}); err != nil {
			s.Fatal(s.name, err)
		}
		s.told = s.told[:len(s.told)-1]
		return
	}
	gone := new(big.Int)
	e := progress.Event{}
	blanks := state.Blanks()
	pieces := state.Pieces(state.Code)
	switch n := s.random.IntN(10); {
	case n < 4 && len(plan.Layouts) > 0:
		order := state.Order(progress.By(s.random.IntN(2)))
		if len(order) == 0 {
			return
		}
		c := order[s.random.IntN(len(order))]
		if c.From > 0 && s.random.IntN(2) == 0 {
			c.From, c.To = 1, len(state.Steps(c.Layout))
		}
		e = c.Event()
	case n < 6 && len(blanks) > 0:
		b := blanks[s.random.IntN(len(blanks))]
		e = progress.Event{Word: []string{"lost", "good", "spoiled"}[s.random.IntN(3)], Value: b.Mark}
		if e.Word == "spoiled" {
			e.Value += fmt.Sprintf("=%s x %s mm", (b.Length - stock.Length(s.random.Int64N(int64(b.Length)/2))).Decimal(), b.Width.Decimal())
		}
	case n < 7 && len(plan.Layouts) > 0:
		of := plan.Layouts[s.random.IntN(len(plan.Layouts))].Stock
		e, gone = progress.Event{Word: "missing", Value: of.Name}, area(of.Length, of.Width, 1)
	case n < 8 && len(pieces) > 0:
		p := pieces[s.random.IntN(len(pieces))]
		length := p.Stock.Length - stock.Length(s.random.Int64N(int64(p.Stock.Length)/2))
		e = progress.Event{Word: "measured", Value: fmt.Sprintf("%s=%s x %s mm", p.Stock.Name, length.Decimal(), p.Stock.Width.Decimal())}
		gone = area(p.Stock.Length-length, p.Stock.Width, 1)
		if p.Kind == progress.Scrap {
			gone = new(big.Int) // what is spoiled and not left is counted there
		}
	default:
		return
	}
	if _, err := s.folder.Report(s.Context(), shop.Report{Events: []progress.Event{e}, Sender: shop.Sender{Date: "2026-03-06"}}); err == nil {
		s.told = append(s.told, happened{gone})
	} else if _, refused := err.(shop.NotTaken); !refused {
		s.Fatal(s.name, e, err)
	}
}

// secondThoughts are a change of the job; none may be sensible.
func (s *story) secondThoughts(rest *shop.Rest) {
	part := rest.File().Parts[s.random.IntN(len(rest.File().Parts))]
	scrap := slices.ContainsFunc(rest.State().Pieces(""), func(p progress.Piece) bool { return p.Kind == progress.Scrap })
	var as job.Changes
	switch s.random.IntN(12) {
	case 0:
		as.Counts = []string{fmt.Sprintf("%s=%d", part.Name, 1+s.random.IntN(5))}
	case 1:
		if len(rest.File().Parts) > 1 {
			as.Without = []string{part.Name}
		}
	case 2:
		as.Added = []string{fmt.Sprintf("more %d: %d x %d, ply, %d", s.plans, 100+s.random.IntN(400), 60+s.random.IntN(200), 1+s.random.IntN(3))}
	case 3:
		if !scrap { // what is spoiled may be good by a smaller size
			as.Sizes = []string{fmt.Sprintf("%s=%s x %s mm", part.Name, (part.Length - 5*stock.Millimeter).Decimal(), (part.Width - 3*stock.Millimeter).Decimal())}
		}
	case 4:
		as.Sizes = []string{fmt.Sprintf("%s=%s x %s mm", part.Name, (part.Length + 7*stock.Millimeter).Decimal(), part.Width.Decimal())}
	case 5:
		as.Kerf = fmt.Sprint(1 + s.random.IntN(4))
	case 6:
		as.Thicknesses = []string{"ply=17.6"}
	}
	_, _ = rest.ChangeJob(as, false) // a part may not fit
}

// rest plans the rest of the plan, and checks that nothing is lost on the way.
func (s *story) rest() bool {
	before := s.folder
	rest, err := before.Rest(s.Context())
	if err != nil {
		s.Fatal(s.name, err)
	}
	if len(rest.Gone) > 0 {
		s.say("%v are not on the rack", rest.Gone)
	}
	if s.random.IntN(2) == 0 {
		s.secondThoughts(rest)
	}
	if rest.State().Done() && !rest.JobChanged() {
		return false
	}
	o := rest.Options()
	o.Iterations = 20
	made, err := recut.Make(s.Context(), rest.State(), o)
	if err != nil {
		s.Fatal(s.name, err)
	}
	where, number, err := rest.Folder(s.Context(), "")
	if err != nil {
		s.Fatal(s.name, err)
	}
	p := rest.Plan(made, where, number)
	p.Code = s.code()
	if err := rest.Write(s.Context(), where, p, pagesOf(p.Code), "2026-03-05"); err != nil {
		s.Fatal(s.name, err)
	}
	s.carried(before, rest, made, o)
	if s.folder, err = shop.Open(s.Context(), where); err != nil {
		s.Fatal(s.name, err)
	}
	s.told = nil
	s.given(made.Plan.Bill)
	return true
}

// carried checks that pieces and blanks are carried into the rest, each once.
func (s *story) carried(before *shop.Folder, rest *shop.Rest, made *recut.Result, o recut.Options) {
	state := rest.State()
	was, is := lying(state.Pieces("")), sum(onHandOf(made.Plan), madeArea(made.Made))
	for _, b := range state.Blanks() {
		was.Add(was, area(b.Length, b.Width, b.Good))
	}
	for _, p := range o.Rack { // that was laid there since
		if !slices.ContainsFunc(state.Plan().Job.Stock, func(had stock.Stock) bool { return had.Name == p.Name }) {
			was.Add(was, area(p.Length, p.Width, p.Count))
		}
	}
	bill := state.Bill()
	for _, m := range made.Made { // trimmed off
		i := slices.IndexFunc(bill, func(b cutplan.Blank) bool { return b.Mark == m.Mark })
		is.Add(is, area(bill[i].Length, bill[i].Width, m.Count)).Sub(is, area(m.Length, m.Width, m.Count))
	}
	if was.Cmp(is) != 0 {
		s.say("%v lie there, the rest has %v", was, is)
	}
	names := map[string]bool{}
	for _, o := range made.Plan.Job.Stock {
		if o.OnHand && names[o.Name] {
			s.say("two kinds of pieces are called %s", o.Name)
		}
		names[o.Name] = o.OnHand
	}
	done, open := map[string]int{}, map[string]int{}
	for _, m := range made.Made {
		done[m.Part.Name] += m.Count * m.Holds()
	}
	for _, p := range made.Plan.Job.Parts {
		open[p.Name] += p.Count
	}
	for _, p := range rest.File().Parts {
		if done[p.Name]+open[p.Name] != p.Count {
			s.say("%d of %s are done and %d open, the job wants %d", done[p.Name], p.Name, open[p.Name], p.Count)
		}
		delete(done, p.Name)
		delete(open, p.Name)
	}
	if len(done)+len(open) > 0 {
		s.say("%v are done and %v open, and the job does not want them", done, open)
	}
}

// given checks that a mark is always of the same part.
func (s *story) given(bill []cutplan.Blank) {
	for _, b := range bill {
		if of, there := s.marks[b.Mark]; there && of != b.Part.Name {
			s.say("mark %s is of %s and of %s", b.Mark, of, b.Part.Name)
		}
		s.marks[b.Mark] = b.Part.Name
	}
}

func (s *story) onRack() []stock.Piece {
	read, err := rack.At(s.at("rack.toml")).Read()
	if err != nil {
		s.Fatal(s.name, err)
	}
	return read.Pieces
}

// lay puts a piece on the rack.
func (s *story) lay() {
	p := stock.Piece{Material: "ply", Length: stock.Length(200+s.random.IntN(300)) * stock.Millimeter, Width: 250 * stock.Millimeter, Thickness: 18 * stock.Millimeter}
	if _, err := rack.At(s.at("rack.toml")).Change(s.Context(), rack.Change{Put: []stock.Piece{p}, What: "found", Date: "2026-03-06"}); err != nil {
		s.Fatal(s.name, err)
	}
}

// book ends the plan: what is worth keeping and was not on the rack is laid on it, what
// was cut of it is taken off, and each piece is there once.
func (s *story) book() {
	before, state := s.onRack(), s.folder.State()
	want := map[string]int{}
	of := func(kind stock.Kind, material string, length, width, thickness stock.Length, grain stock.Grain) string {
		return fmt.Sprint(kind, material, length, width, thickness, grain)
	}
	begun := s.folder.Plan().Begun
	for _, p := range before {
		cut := slices.Contains(begun, p.ID) || slices.Contains(state.Remeasured(), p.ID)
		for i, l := range state.Plan().Layouts {
			cut = cut || l.Stock.Name == p.ID && state.IsMade(i+1, 1, 0)
		}
		if !cut {
			want[of(p.Kind, p.Material, p.Length, p.Width, p.Thickness, p.Grain)]++
		}
	}
	for _, p := range state.Pieces(state.Code) {
		theirs := p.Stock.Name == "own" || slices.ContainsFunc(before, func(q stock.Piece) bool { return q.ID == p.Stock.Name })
		if !theirs && state.Plan().Job.Offcut.Keeps(p.Stock.Length, p.Stock.Width) {
			want[of(p.Stock.Kind, p.Stock.Material, p.Stock.Length, p.Stock.Width, p.Stock.Thickness, p.Stock.Grain)] += p.Stock.Count
		}
	}
	if _, err := s.folder.Book(s.Context(), shop.Booking{Rack: rack.At(s.at("rack.toml")), GiveUp: true, Date: "2026-03-07"}); err != nil {
		s.Fatal(s.name, err)
	}
	ids := map[string]bool{}
	for _, p := range s.onRack() {
		if ids[p.ID] {
			s.say("%s is on the rack twice", p.ID)
		}
		ids[p.ID] = true
		want[of(p.Kind, p.Material, p.Length, p.Width, p.Thickness, p.Grain)]--
	}
	for what, n := range want {
		if n != 0 {
			s.say("%d more of %s should be on the rack", n, what)
		}
	}
	if _, err := s.folder.Book(s.Context(), shop.Booking{Rack: rack.At(s.at("rack.toml")), GiveUp: true}); err == nil {
		s.say("it is booked twice")
	}
}

// Whatever happens to a job from its purchase to the rack, with undo, second thoughts and
// up to four rests: nothing is lost and nothing is there twice, to the last square of 25 nm.
func TestNothingIsLostThroughWholeStories(t *testing.T) {
	stories, rests := uint64(40), 0
	if os.Getenv("SAWBILL_LONG") == "1" {
		stories = 500
	}
	for seed := range stories {
		random := rand.New(rand.NewPCG(seed, 41))
		w := workshop{t, t.TempDir()}
		jobText, rackText := randomJob(random)
		w.write("job.toml", jobText)
		w.write("rack.toml", rackText)
		s := &story{workshop: w, random: random, name: fmt.Sprint("story ", seed), marks: map[string]string{}}
		if err := w.plan("job.toml", "plan", s.code()); err != nil {
			t.Fatal(s.name, err, jobText)
		}
		s.folder = w.open("plan")
		s.given(s.folder.Plan().Plan.Bill)
		for round := range 5 {
			came := begin(s.folder.Plan().Plan, s.folder.Plan().Made)
			for range random.IntN(12) {
				s.happen()
				s.balance(s.folder.State(), came)
			}
			if random.IntN(4) == 0 {
				s.lay()
			}
			if round == 4 || random.IntN(5) == 0 || !s.rest() {
				break
			}
			rests++
		}
		s.book()
		if t.Failed() {
			return
		}
	}
	t.Logf("%d stories, %d rests", stories, rests)
	if rests < int(stories) {
		t.Error("the test says little")
	}
}
