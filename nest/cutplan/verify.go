package cutplan

import (
	"fmt"

	"sawbill/stock"
)

// verify checks a cutting bill against its job by sums of its own. The blanks hold each
// part as often as it is wanted. Each blank contains its parts with their allowances and
// the kerfs between. Milling it from any of its stock or rough lumber ends at the finished
// part. nest.Verify checks the cuts; this checks the rest.
func verify(job stock.Job, bill []Blank) error {
	at := 0
	for _, p := range job.Parts {
		held := 0
		for ; held < p.Count && at < len(bill); at++ {
			b := bill[at].Blank
			if err := contains(job, p, b); err != nil {
				return fmt.Errorf("blank %s of %q: %w", bill[at].Mark, p.Name, err)
			}
			held += b.Count * (b.Gang*b.Layers - b.Spare)
		}
		if held != p.Count {
			return fmt.Errorf("the blanks of %q hold %d, wanted are %d", p.Name, held, p.Count)
		}
	}
	if at != len(bill) {
		return fmt.Errorf("blank %s is of no part", bill[at].Mark)
	}
	return nil
}

func contains(job stock.Job, p stock.Part, b stock.Blank) error {
	a, n, m := p.Allowance, stock.Length(b.Gang), stock.Length(b.Layers)
	if job.KindOf(p.Material) == stock.Sheet {
		a.Faces = 0
	}
	length := n*p.Length + n*stock.Length(a.Miters)*a.Miter + (n-1)*job.Saw.Kerf + stock.Length(a.Ends)*a.End
	width := p.Width + stock.Length(a.Edges)*a.Edge
	thickness := m*p.Thickness + m*stock.Length(a.Faces)*a.Face + (m-1)*job.Saw.ResawKerf
	switch {
	case b.Part.Name != p.Name:
		return fmt.Errorf("it is of %q", b.Part.Name)
	case b.Count < 1 || n < 1 || m < 1 || b.Spare < 0 || b.Spare >= b.Layers:
		return fmt.Errorf("%d of %d x %d less %d make no sense", b.Count, n, m, b.Spare)
	case b.Length < length || b.Width != width || b.Thickness != thickness:
		return fmt.Errorf("%d x %d x %d, needed are %d x %d x %d", b.Length, b.Width, b.Thickness, length, width, thickness)
	}
	for _, s := range job.Boards(b) {
		if s.Thickness < b.Thickness || s.Kind == stock.Sheet && s.Thickness != b.Thickness {
			return fmt.Errorf("stock %q is %d thick, the blank %d", s.Name, s.Thickness, b.Thickness)
		}
		if err := mill(job.Saw, p, b, s.Thickness); err != nil {
			return fmt.Errorf("milled from %q: %w", s.Name, err)
		}
	}
	return nil
}

// mill follows the milling steps of a blank on stock of a given thickness, and checks the
// result.
func mill(saw stock.Saw, p stock.Part, b stock.Blank, from stock.Length) error {
	length, width, thickness, pieces := b.Length, b.Width, from, 1
	for _, step := range b.Milling(from) {
		size, kerf := &length, saw.Kerf
		switch step.Operation {
		case stock.TrueEdge:
			size = &width
		case stock.Plane:
			size = &thickness
		case stock.Resaw:
			size, kerf = &thickness, saw.ResawKerf
		}
		of := stock.Length(step.Pieces)
		if step.Rest > 0 && step.Off != of*kerf+step.Rest {
			return fmt.Errorf("%v: %d off is not %d kerfs and %d kept", step.Operation, step.Off, of, step.Rest)
		}
		if step.Setting <= 0 || of < 1 || step.Off < (of-1)*kerf || *size != of*step.Setting+step.Off {
			return fmt.Errorf("%v: %d is not %d of %d and %d off", step.Operation, *size, of, step.Setting, step.Off)
		}
		*size, pieces = step.Setting, pieces*step.Pieces
	}
	if length != p.Length || width != p.Width || thickness != p.Thickness || pieces != b.Gang*b.Layers {
		return fmt.Errorf("%d pieces of %d x %d x %d come out", pieces, length, width, thickness)
	}
	return nil
}
