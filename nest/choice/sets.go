package choice

import (
	"slices"

	"sawbill/stock"
)

// fewOffers limits how many offers are compared in every combination. More offers are
// compared alone, by seller, by size, all but one, and all together.
const fewOffers = 4

// set lists the stock that one choice may use, by index into the job's stock.
type set struct {
	offers []int
	onHand bool
	all    bool
}

// everything is the set of all the job's stock.
func everything(j stock.Job) set {
	s := set{onHand: true, all: true}
	for i := range j.Stock {
		s.offers = append(s.offers, i)
	}
	return s
}

// sets lists the choices of a material, each once, with the full set first.
func sets(j stock.Job, material string) []set {
	var offers []int
	rack := false
	for i, s := range j.Stock {
		switch {
		case s.Material != material:
		case s.OnHand:
			rack = true
		default:
			offers = append(offers, i)
		}
	}
	if len(offers) == 0 {
		return []set{{onHand: rack, all: true}}
	}
	var all []set
	for _, of := range combinations(j, offers) {
		complete := len(all) == 0
		of = cheapest(j, of)
		if slices.ContainsFunc(all, func(s set) bool { return slices.Equal(s.offers, of) }) {
			continue
		}
		all = append(all, set{of, rack, complete})
	}
	if rack {
		for _, s := range slices.Clone(all) {
			all = append(all, set{offers: s.offers})
		}
	}
	return all
}

func combinations(j stock.Job, offers []int) [][]int {
	all := [][]int{offers}
	if len(offers) <= fewOffers {
		for chosen := 1; chosen < 1<<len(offers)-1; chosen++ {
			var of []int
			for k, i := range offers {
				if chosen>>k&1 == 1 {
					of = append(of, i)
				}
			}
			all = append(all, of)
		}
		return all
	}
	for _, i := range offers {
		all = append(all, []int{i})
	}
	for _, alike := range []func(a, b stock.Stock) bool{
		func(a, b stock.Stock) bool { return a.Seller == b.Seller || b.Seller == "" },
		func(a, b stock.Stock) bool { return shape(a) == shape(b) },
	} {
		for _, i := range offers {
			var of []int
			for _, k := range offers {
				if alike(j.Stock[i], j.Stock[k]) {
					of = append(of, k)
				}
			}
			all = append(all, of)
		}
	}
	for k := range offers { // in case that one is sold out
		all = append(all, slices.Delete(slices.Clone(offers), k, k+1))
	}
	return all
}

// cheapest drops offers that an equal piece makes useless: it costs no more and its number
// is not limited. At equal prices the first offer stays.
func cheapest(j stock.Job, offers []int) []int {
	var left []int
	for _, i := range offers {
		s := j.Stock[i]
		useless := slices.ContainsFunc(offers, func(k int) bool {
			o := j.Stock[k]
			return k != i && o.Count == 0 && o.Price > 0 && shape(o) == shape(s) &&
				(o.Price < s.Price || o.Price == s.Price && (s.Count > 0 || k < i))
		})
		if !useless {
			left = append(left, i)
		}
	}
	return left
}

// shape strips s of everything that the saw does not see: name, seller, price, count.
func shape(s stock.Stock) stock.Stock {
	s.Name, s.Seller, s.Price, s.Count, s.Measure = "", "", 0, 0, stock.Measure{}
	return s
}

// job returns the part of j with one material and the stock of s.
func (s set) job(j stock.Job, material string) stock.Job {
	of := j
	of.Stock, of.Rough, of.Parts = nil, nil, nil
	for i, k := range j.Stock {
		if k.Material == material && (k.OnHand && s.onHand || slices.Contains(s.offers, i)) {
			of.Stock = append(of.Stock, k)
		}
	}
	for _, r := range j.Rough {
		if r.Material == material {
			of.Rough = append(of.Rough, r)
		}
	}
	for _, p := range j.Parts {
		if p.Material == material {
			of.Parts = append(of.Parts, p)
		}
	}
	return of
}
