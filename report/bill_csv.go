package report

import (
	"bytes"
	"encoding/csv"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// CuttingBill is the cutting bill as CSV. Its columns are the words of a part
// list, in exact millimetres whatever the job's units, so that it can be read
// back as one; mark and blank sizes come last, and a part list passes them over.
func CuttingBill(p *cutplan.Plan) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	write := func(cells ...string) { _ = w.Write(cells) } // a buffer takes every write
	write("name", "material", "length (mm)", "width (mm)", "thickness (mm)", "count", "grain",
		"edge (mm)", "face (mm)", "end (mm)", "edges", "faces", "ends", "note",
		"mark", "cut to length (mm)", "cut to width (mm)", "cut to thickness (mm)")
	mm := stock.Length.Decimal
	for _, l := range p.Bill {
		a := l.Part.Allowance
		if p.Job.KindOf(l.Part.Material) == stock.Sheet {
			a.Face = 0 // no face of a sheet is planed, whatever the job's allowance
		}
		write(l.Part.Name, l.Part.Material, mm(l.Part.Length), mm(l.Part.Width), mm(l.Part.Thickness),
			strconv.Itoa(l.Part.Count), l.Part.Grain.String(),
			mm(a.Edge), mm(a.Face), mm(a.End), strconv.Itoa(a.Edges), strconv.Itoa(a.Faces), strconv.Itoa(a.Ends), l.Part.Note,
			l.Mark, mm(l.Length), mm(l.Width), mm(l.Thickness))
	}
	w.Flush()
	return b.Bytes()
}
