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
