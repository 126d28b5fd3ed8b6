package lowerbound

import (
	"math"
	"math/bits"
	"slices"

	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// dffInequalities returns area bounds in transformed sizes. A part has area f of its length
// times g of its width, for dual feasible functions f and g. Every edge-to-edge cut preserves
// validity, so the transformed areas of the parts must come from those of the stock. A part
// with several orientations counts with its smallest area.
//
// They stay few with much stock: each then costs more, and functions are made for maxSizes of
// the stock only.
func dffInequalities(in *instance.Instance, stop halt.Signal) []Inequality {
	var cuts []Inequality
	all := groups(in)
	each := (len(in.Stock)-1)/maxSizes + 1
	sizes := (len(in.Stock)-1)/each + 1
	for _, g := range all {
		budget := maxMeasures / (len(all) * sizes * (len(g.kinds) + 1 + len(in.Stock) - sizes))
		for s := 0; s < len(in.Stock); s += each {
			if stop.On() {
				return cuts
			}
			if g.stock[s] {
				cuts = append(cuts, g.dffInequalities(in, s, budget)...)
			}
		}
	}
	return cuts
}

// maxMeasures limits the number of transformed areas, to some milliseconds.
const maxMeasures = 1 << 19

// maxSizes limits the sizes of stock that functions are made for.
const maxSizes = 64

// measures are the values of one function for the sides of kinds and stock.
type measures struct{ l, w, stock []int64 }

// dffInequalities uses about most pairs of functions made for the size of stock s.
func (g group) dffInequalities(in *instance.Instance, s, most int) []Inequality {
	side := 1
	for (side+1)*(side+1) <= most {
		side++
	}
	if side == 1 { // two identities alone
		return nil
	}
	var lengths, widths []int64
	orientations := make([]instance.Orientation, len(g.kinds)) // in any stock
	for n, k := range g.kinds {
		kd := in.Kinds[k]
		for s, ok := range g.stock {
			if ok {
				orientations[n] |= kd.Orientations[s]
			}
		}
		if orientations[n]&instance.Upright != 0 {
			lengths, widths = append(lengths, kd.L), append(widths, kd.W)
		}
		if orientations[n]&instance.Turned != 0 {
			lengths, widths = append(lengths, kd.W), append(widths, kd.L)
		}
	}
	along := g.measure(in, dffs(in.Stock[s].L, lengths, side), lengths, true)
	across := g.measure(in, dffs(in.Stock[s].W, widths, side), widths, false)
	var cuts []Inequality
	for i, f := range along {
		for j, h := range across {
			if i+j > 0 { // two identities give the area bound
				cuts = append(cuts, g.product(in, orientations, f, h))
			}
		}
	}
	return cuts
}

func (g group) measure(in *instance.Instance, fs []dff, sizes []int64, along bool) []measures {
	var all []measures
	for _, f := range fs {
		var m measures
		for _, k := range g.kinds {
			m.l = append(m.l, f.at(in.Kinds[k].L))
			m.w = append(m.w, f.at(in.Kinds[k].W))
		}
		for _, st := range in.Stock {
			if along {
				m.stock = append(m.stock, f.capacity(st.L, sizes))
			} else {
				m.stock = append(m.stock, f.capacity(st.W, sizes))
			}
		}
		all = append(all, m)
	}
	return all
}

// product returns the inequality for f along the stock and h across it.
func (g group) product(in *instance.Instance, orientations []instance.Orientation, f, h measures) Inequality {
	c := Inequality{Coef: make([]int64, len(in.Stock))}
	shift := 0 // brings every coefficient to about 30 bits
	for s, ok := range g.stock {
		if ok {
			c.Coef[s] = f.stock[s] * h.stock[s]
			shift = max(shift, bits.Len64(uint64(c.Coef[s]))-30)
		}
	}
	for s, w := range c.Coef {
		if w > 0 {
			c.Coef[s] = (w-1)>>shift + 1
		}
	}
	var high, low uint64
	for n, k := range g.kinds {
		var v int64
		switch upright, turned := f.l[n]*h.w[n], f.w[n]*h.l[n]; orientations[n] {
		case instance.Upright:
			v = upright
		case instance.Turned:
			v = turned
		default:
			v = min(upright, turned)
		}
		h, l := bits.Mul64(uint64(v), uint64(in.Kinds[k].Demand))
		var carry uint64
		low, carry = bits.Add64(low, l, 0)
		high += h + carry
	}
	need := high<<(64-shift) | low>>shift
	if high>>shift > 0 {
		need = math.MaxUint64
	}
	c.RHS = int64(min(need, math.MaxInt64/4)) // a smaller right side is valid too
	return c
}

// strengthen adds the inequality that counts violate most, as long as there is one.
func (b *Bound) strengthen(cuts []Inequality, stop halt.Signal) {
	for range maxStrengthen {
		if stop.On() {
			return
		}
		best, most := -1, int64(0)
		for n, c := range cuts {
			if b.counts == nil {
				return
			}
			// In millionths of the right side, which has some 30 bits more than a count.
			if missing := c.shortfall(b.counts); missing > 0 {
				if hi, lo := bits.Mul64(uint64(missing), 1_000_000); hi < uint64(c.RHS) {
					q, _ := bits.Div64(hi, lo, uint64(c.RHS))
					if excess := int64(q) + 1; excess > most {
						best, most = n, excess
					}
				}
			}
		}
		if best < 0 {
			return
		}
		b.Add(cuts[best])
		cuts = slices.Delete(cuts, best, best+1)
	}
}

// maxStrengthen limits the inequalities added: each slows the search for the cheapest counts.
const maxStrengthen = 32
