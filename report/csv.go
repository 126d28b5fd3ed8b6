package report

import (
	"bytes"
	"encoding/csv"

	"sawbill/stock"
)

// csvTable is a CSV file row by row. None of its cells is a formula, whatever the names
// in it begin with.
type csvTable struct {
	b bytes.Buffer
}

func (t *csvTable) row(cells ...string) {
	guarded := make([]string, len(cells))
	for i, c := range cells {
		guarded[i] = stock.GuardCell(c)
	}
	w := csv.NewWriter(&t.b)
	_ = w.Write(guarded) // a buffer takes every write
	w.Flush()
}

// bytes is the file so far.
func (t *csvTable) bytes() []byte { return t.b.Bytes() }
