package cutplan

import (
	"slices"

	"sawbill/stock"
)

// Stops are the crosscuts of all boards of a material, gathered so that a stop
// block is set once for many: what lies ready is cut at the widest setting first,
// in all boards, and only then at the next.
type Stops struct {
	Material string
	// Round counts the levels of rips that come before: 0 is the boards as they
	// are bought, 1 the strips and pieces that the first rips give.
	Round int
	Stops []Stop // in the order in which they are set
}

// Stop is one setting of the stop block.
type Stop struct {
	Setting stock.Length
	Pieces  []StopPieces // what comes off there, in the order of the layouts
}

// StopPieces are alike: one blank, or leftovers or pieces of one size.
type StopPieces struct {
	Node    Node // the first of them
	Count   int
	Layouts []int // indices into Plan.Layouts, ascending
}

// Stops lists the stops for the boards of each material, round by round; trim
// has none. Crosscuts along one piece keep their order, and those of a round wait
// for the rips before it, in all boards. A setting is listed again where a piece
// needs it after a narrower one.
func (p *Plan) Stops() []Stops {
	var all []Stops
	for _, material := range p.boardMaterials() {
		var rounds [][]queue
		for i, l := range p.Layouts {
			if l.Stock.Kind == stock.Board && l.Stock.Material == material {
				rounds = queues(rounds, l.Root, i, 0)
			}
		}
		for round, ready := range rounds {
			if len(ready) > 0 {
				all = append(all, Stops{material, round, p.stops(ready)})
			}
		}
	}
	return all
}

func (p *Plan) boardMaterials() []string {
	var materials []string
	for _, l := range p.Layouts {
		if l.Stock.Kind == stock.Board && !slices.Contains(materials, l.Stock.Material) {
			materials = append(materials, l.Stock.Material)
		}
	}
	return materials
}

// queue is a piece that waits for its crosscuts.
type queue struct {
	splitting
	layout int
}

// queues adds the crosscuts of n, and of what is below it, to their rounds.
func queues(rounds [][]queue, n Node, layout, round int) [][]queue {
	if n.Use != Split {
		return rounds
	}
	for len(rounds) <= round {
		rounds = append(rounds, nil)
	}
	below := round
	if s := (splitting{node: n}); n.Cut == Rip {
		below++
	} else if s.cuttable() {
		rounds[round] = append(rounds[round], queue{s, layout})
	}
	for _, c := range n.Children {
		rounds = queues(rounds, c, layout, below)
	}
	return rounds
}

// stops empties the queues of one round.
func (p *Plan) stops(ready []queue) []Stop {
	var stops []Stop
	for {
		widest := -1
		for i := range ready {
			if ready[i].cuttable() && (widest < 0 || ready[i].setting() > ready[widest].setting()) {
				widest = i
			}
		}
		if widest < 0 {
			return stops
		}
		stop := Stop{Setting: ready[widest].setting()}
		for i := range ready {
			for q := &ready[i]; q.cuttable() && q.setting() == stop.Setting; q.next++ {
				stop.add(q.node.Children[q.next], q.layout, p.Layouts[q.layout].Repeat)
			}
		}
		stops = append(stops, stop)
	}
}

// add notes count pieces of one layout.
func (s *Stop) add(n Node, layout, count int) {
	at := slices.IndexFunc(s.Pieces, func(p StopPieces) bool {
		return p.Node.Use == n.Use && p.Node.Length == n.Length && p.Node.Width == n.Width &&
			(n.Use != Part || p.Node.Blank == n.Blank && p.Node.Turned == n.Turned)
	})
	if at < 0 {
		at = len(s.Pieces)
		s.Pieces = append(s.Pieces, StopPieces{Node: n})
	}
	of := &s.Pieces[at]
	of.Count += count
	if !slices.Contains(of.Layouts, layout) {
		of.Layouts = append(of.Layouts, layout)
	}
}
