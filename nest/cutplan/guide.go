package cutplan

import "sawbill/stock"

// Guide is what leads a cut.
type Guide int

const (
	// Fence: the piece runs along it and is at least as long there as it is wide.
	Fence Guide = iota
	// Stop: the piece lies across the saw, on a miter gauge or a sled.
	Stop
	// Marked cuts are beyond the saw, and break the piece down: it lies still, and
	// a guided saw follows a line that is measured and marked.
	Marked
)

// String returns "fence", "stop" or "mark".
func (g Guide) String() string { return [...]string{"fence", "stop", "mark"}[g] }

// Breakdown reports whether s is beyond the saw's fence and crosscut.
func (s Step) Breakdown() bool { return s.Guide == Marked }

// guide decides by the shape of the piece in hand and the saw's capacities. What
// runs along the fence must not be wider than it is long there, or it turns and
// binds; what is cut at a stop must not be wider than the saw can cross (common
// practice, no source). So a rip of a piece that is wider than it is long is cut
// like a crosscut, and a crosscut that is too wide for its stop may still run
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

// within reports whether size is; a capacity that is not given is no limit.
func within(size, capacity stock.Length) bool { return capacity == 0 || size <= capacity }
