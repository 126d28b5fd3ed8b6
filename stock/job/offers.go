package job

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// offer is a piece of stock and where it is written.
type offer struct {
	stock.Stock
	record
	// sections lists the clear pieces of a board with defects.
	sections []stock.Stock
}

// pieces returns the stock that the parts can be cut from.
func (o offer) pieces() []stock.Stock {
	if o.sections == nil {
		return []stock.Stock{o.Stock}
	}
	return o.sections
}

// offers reads every [[sheet]] and [[board]], in the order of the file.
func (r *reader) offers(root *table, at place, kerf stock.Length) []offer {
	var all []offer
	for _, rec := range r.each(root, "sheet", at) {
		all = append(all, r.sheet(rec))
	}
	for _, rec := range r.each(root, "board", at) {
		all = append(all, r.board(rec, kerf))
	}
	slices.SortStableFunc(all, func(a, b offer) int { return a.line - b.line })
	return all
}

// together checks all offers of a job against one another.
func (r *reader) together(all []offer) {
	for i := range all {
		all[i].sound = r.agrees(all[i], all[:i]) && all[i].sound
	}
	r.weigh(all)
}

// priced turns the price of a meter, of a foot or the like into that of a piece.
func (r *reader) priced(o offer) offer {
	if per := slices.Index(stock.Pers, o.text("per")); o.sound && per > 0 && o.Price > 0 {
		o.Price = o.PriceOf(o.Price, stock.Per(per))
		if o.Price == 0 {
			r.refuse(&o.record, "price", fault.New("comes to less than half a cent for one piece", "check what the price is for"))
		}
	}
	return o
}

// each reads every table of a [[name]].
func (r *reader) each(root *table, name string, at place) []record {
	var all []record
	keys := keysOf(name, r.layout)
	if beyond, n, most := r.tooMany(root, name); n > most {
		r.fault(at.at(beyond).of(name), fault.New(fmt.Sprintf("the file has %d tables [[%s]], and at most %d are read", n, name, most), fewer(name)))
		return nil
	}
	for _, e := range root.entries {
		if e.key != name || e.value.kind == broken {
			continue
		}
		found, wrong := tables(name, e.value)
		if wrong.Found() {
			r.fault(at.at(e.line).of(name), wrong)
		}
		for _, t := range found {
			all = append(all, r.read(t, keys, at.of(called(name, t, len(all), keys))))
		}
	}
	return all
}

// called is how a table is spoken of: by its id or name, or where it has none by
// its number.
func called(word string, t *table, index int, keys []key) string {
	by := "name"
	if keys[0].holds == anID {
		by = keys[0].name
	}
	if v, there := t.last(by); there {
		if name, found := words(*v); !found.Found() {
			return fmt.Sprintf("%s %q", word, name)
		}
	}
	return fmt.Sprintf("%s %d", word, index+1)
}

func (r *reader) sheet(rec record) offer {
	s := stockOf(rec, stock.Sheet)
	s.Grain = map[string]stock.Grain{"width": stock.GrainWidth, "none": stock.GrainAny}[rec.text("grain")]
	return r.priced(r.trimmed(offer{Stock: s, record: rec}))
}

// board reads a board.
func (r *reader) board(rec record, kerf stock.Length) offer {
	measure := r.bySize(&rec)
	s := stockOf(rec, stock.Board)
	s.Measure = measure
	switch {
	case !rec.sound:
	case s.Thickness == 0 && s.Width == 0:
		r.refuse(&rec, "", fault.New("its thickness and width are missing",
			`add nominal = "2x4" or the like, or measure: thickness = and width =`))
	case s.Thickness == 0:
		r.refuse(&rec, "", fault.New("its thickness is missing", `measure: thickness =, or of hardwood add quarter = "4/4" or the like`))
	case s.Width == 0:
		r.refuse(&rec, "", fault.New("its width is missing", "measure: width ="))
	}
	return r.cleared(r.priced(r.trimmed(offer{Stock: s, record: rec})), kerf)
}

// fill gives a length that was not written.
func (rec record) fill(name string, l stock.Length) {
	if !rec.given(name) {
		rec.fields[name] = field{length: l}
	}
}

func stockOf(rec record, kind stock.Kind) stock.Stock {
	s := stock.Stock{
		Name:      rec.text("name"),
		Kind:      kind,
		Material:  rec.text("material"),
		Length:    rec.length("length"),
		Width:     rec.length("width"),
		Thickness: rec.length("thickness"),
		Trim:      rec.length("trim"),
		Price:     rec.fields["price"].price,
		Count:     rec.count("count"),
		OnHand:    rec.fields["on_hand"].truth,
	}
	s.Seller = rec.text("seller")
	if s.OnHand {
		s.Price = 0
	}
	return s
}

// trimmed makes sure that trimming leaves something.
func (r *reader) trimmed(o offer) offer {
	if !o.sound {
		return o
	}
	if length, width := o.Usable(); length <= 0 || width <= 0 {
		r.refuse(&o.record, "trim", fault.New(
			fmt.Sprintf("%s off every edge leaves nothing of %s x %s", r.ruler.PrintUnit(o.Trim),
				r.ruler.PrintUnit(o.Length), r.ruler.PrintUnit(o.Width)),
			"give what is cut off one edge",
		))
	}
	return o
}

// agrees checks an offer against those before it: each has a name of its own,
// and a material is sold as sheets or as boards.
func (r *reader) agrees(o offer, before []offer) bool {
	for _, b := range before {
		if o.Name != "" && o.Name == b.Name {
			r.fault(o.where("name").of("name"), fault.New(
				fmt.Sprintf("the %s in line %d has the same name", b.Kind, b.line), "give each its own name"))
			return false
		}
	}
	for _, b := range before {
		if o.Material != "" && o.Material == b.Material && o.Kind != b.Kind {
			r.fault(o.where("material").of("material"), fault.New(
				fmt.Sprintf("%q is a %s in line %d and a %s here", o.Material, b.Kind, b.line, o.Kind),
				"give sheets and boards different materials"))
			return false
		}
	}
	return true
}

// weigh warns of offers whose price or count would mislead the plan.
func (r *reader) weigh(all []offer) {
	priced := slices.ContainsFunc(all, func(o offer) bool { return o.given("price") && !o.OnHand })
	for _, o := range all {
		switch {
		case !o.sound:
		case o.OnHand && !o.given("count") && !o.given("defects"):
			r.warn(o.place, fault.New("is on hand without a count, so the plan may use any number", "add count ="))
		case !o.OnHand && priced && !o.given("price"):
			r.warn(o.place, fault.New("has no price, so the plan takes it as free", "add price ="))
		}
	}
}
