package columns

// laborious reports whether pricing all stock takes much longer than the programme
// does: then a pricing gives more patterns than one.
func (g *Generator) laborious() bool {
	const muchMore = 100 // comparisons for each number in the programme's inverse
	rows := int64(len(g.values) + len(g.pricers))
	var work int64
	for _, p := range g.pricers {
		work += p.effort()
	}
	return !g.proving && work > muchMore*rows*rows
}

// slow reports whether pricing stock s with true counts took longer than filling it
// does: then it is filled first.
func (g *Generator) slow(s int) bool {
	return g.strict && g.pricers[s].effort() > fillSteps*fillWork
}

func (g *Generator) someSlow() bool {
	for s := range g.in.Stock {
		if g.slow(s) {
			return true
		}
	}
	return false
}

// trial is the work of a pricing that shows whether it is slow.
const trial = fillSteps*fillWork + 1

// patience is the work after which a pricing of stock s with true counts ends; its
// bound holds wherever that is. The first is a trial. So is each of
// stock of which the counts have none: its patterns are of no use within them, and they
// can be excluded whatever it is worth.
func (g *Generator) patience(s int) int64 {
	if !g.tried || g.counts != nil && g.counts[s] == 0 {
		return trial
	}
	return enough
}

// judge ends the trial, and reports whether some stock is to be filled before it is
// priced in earnest.
func (g *Generator) judge() (slow bool) {
	if !g.strict || g.tried {
		return false
	}
	g.tried = true
	for s, p := range g.pricers {
		if p, ok := p.(*strict); ok {
			slow = slow || g.slow(s) && p.Found() == 0
		}
	}
	return slow
}
