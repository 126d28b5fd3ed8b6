package cutplan

import "sawbill/stock"

// Guide is the device that guides a cut.
type Guide int

const (
	// Fence: the piece runs along the fence, and is at least as long there as it is wide.
	Fence Guide = iota
	// Stop: the piece lies across the saw, on a miter gauge or a sled.
	Stop
	// Marked cuts exceed the saw's capacity and break the piece down. The piece lies
	// still, and a guided saw follows a marked line.
	Marked
)

// String returns "fence", "stop" or "mark".
func (g Guide) String() string { return [...]string{"fence", "stop", "mark"}[g] }

// Breakdown reports whether s is beyond the saw's fence and crosscut.
func (s Step) Breakdown() bool { return s.Guide == Marked }

// guide chooses by the shape of the piece in hand and the saw's capacities. Along the
// fence, a piece must not be wider than it is long, or it turns and binds. At a stop, a
// piece must not exceed the crosscut capacity (common practice, no source). So a rip of a
// short, wide piece is cut like a crosscut. A crosscut too wide for the stop may still run
// along the fence.
func (w *work) guide(s Step) Guide {
	along := s.Piece.Width
	if s.Cut == Crosscut {
		along = s.Piece.Length
	}
	steady := s.Run >= along
	fence := steady && within(s.Setting, w.saw.RipCapacity)
	stop := within(s.Run, w.saw.CrosscutCapacity)
	switch {
	case s.Cut == Rip && fence:
		return Fence
	case stop && (s.Cut == Crosscut || !steady):
		return Stop
	case fence:
		return Fence
	}
	return Marked
}

// within reports whether size is within a capacity; 0 is no limit.
func within(size, capacity stock.Length) bool { return capacity == 0 || size <= capacity }
