package pool

import (
	"encoding/binary"

	"sawbill/nest/internal/instance"
)

// Code is a divided piece without its sizes, which follow from its parts. Every split comes
// before its children; leftovers are left out. It takes a byte or two for each part.
type Code []byte

// Part appends a part.
func (c Code) Part(kind int, turned bool) Code {
	n := uint64(kind) << 2
	if turned {
		n |= 2
	}
	return binary.AppendUvarint(c, n)
}

// Split appends a split; its children must follow.
func (c Code) Split(dir instance.Dir, children int) Code {
	n := uint64(children)<<2 | 1
	if dir == instance.Crosscut {
		n |= 2
	}
	return binary.AppendUvarint(c, n)
}

// appendPiece appends a divided piece.
func (c Code) appendPiece(p instance.Piece) Code {
	if len(p.Children) == 0 {
		if p.Kind == instance.Leftover {
			return c
		}
		return c.Part(p.Kind, p.Turned)
	}
	children := 0
	for _, q := range p.Children {
		if len(q.Children) > 0 || q.Kind != instance.Leftover {
			children++
		}
	}
	c = c.Split(p.Dir, children)
	for _, q := range p.Children {
		c = c.appendPiece(q)
	}
	return c
}

// decode reads the first piece of c and returns the rest of c. Sizes are those of the parts
// alone.
func (c Code) decode(in *instance.Instance) (p instance.Piece, rest Code) {
	n, size := binary.Uvarint(c)
	c = c[size:]
	flag := n&2 != 0
	if n&1 == 0 {
		kd := &in.Kinds[n>>2]
		p = instance.Piece{L: kd.L, W: kd.W, Kind: int(n >> 2), Turned: flag}
		if flag {
			p.L, p.W = kd.W, kd.L
		}
		return p, c
	}
	p = instance.Piece{Dir: instance.Rip, Kind: instance.Leftover}
	if flag {
		p.Dir = instance.Crosscut
	}
	for range n >> 2 {
		var child instance.Piece
		child, c = c.decode(in)
		p.Children = append(p.Children, child)
	}
	return p, c
}

// countParts adds the parts of c to counts.
func (c Code) countParts(counts []int) {
	for len(c) > 0 {
		n, size := binary.Uvarint(c)
		c = c[size:]
		if n&1 == 0 {
			counts[n>>2]++
		}
	}
}
