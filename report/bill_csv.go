package report

import (
	"fmt"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// CuttingBill is the cutting bill as CSV, a row for each part. Its columns are
// the words of a part list, in exact millimeters whatever the job's units, so
// that it can be read back as one. What it tells of the blanks comes last, and a
// part list passes it over; where a part has several, a cell tells of each.
func CuttingBill(p *cutplan.Plan) []byte {
	var table csvTable
	table.row("name", "material", "length (mm)", "width (mm)", "thickness (mm)", "count", "grain",
		"edge (mm)", "face (mm)", "end (mm)", "miter (mm)", "edges", "faces", "ends", "miters", "gang", "resaw", "note",
		"mark", "blanks", "parts of each", "cut to length (mm)", "cut to width (mm)", "cut to thickness (mm)", afterDryFit, "layouts")
	mm, in := stock.Length.Decimal, layoutsOf(p)
	for i := 0; i < len(p.Bill); {
		part := p.Bill[i].Part
		a := part.Allowance
		if p.Job.KindOf(part.Material) == stock.Sheet {
			a.Face = 0 // no face of a sheet is planed, whatever the job's allowance
		}
		var mark, blanks, holds, length, width, thickness, layouts []string
		for ; i < len(p.Bill) && p.Bill[i].Part.Name == part.Name; i++ {
			l := p.Bill[i]
			mark, blanks, holds = append(mark, l.Mark), append(blanks, strconv.Itoa(l.Count)), append(holds, strconv.Itoa(l.Holds()))
			length, width, thickness = append(length, mm(l.Length)), append(width, mm(l.Width)), append(thickness, mm(l.Thickness))
			// A comma would make a decimal fraction of two layouts.
			layouts = append(layouts, strings.Trim(fmt.Sprint(in[i]), "[]"))
		}
		joined := func(of []string) string { return strings.Join(of, ", ") }
		table.row(part.Name, part.Material, mm(part.Length), mm(part.Width), mm(part.Thickness),
			strconv.Itoa(part.Count), part.Grain.String(),
			mm(a.Edge), mm(a.Face), mm(a.End), mm(a.Miter),
			strconv.Itoa(a.Edges), strconv.Itoa(a.Faces), strconv.Itoa(a.Ends), strconv.Itoa(a.Miters),
			strconv.FormatBool(!part.Alone), strconv.FormatBool(part.Resaw), part.Note,
			joined(mark), joined(blanks), joined(holds), joined(length), joined(width), joined(thickness),
			strconv.FormatBool(part.DryFit), joined(layouts))
	}
	return table.bytes()
}
