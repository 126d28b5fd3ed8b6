package report

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/marksheet"
	"sawbill/report/internal/paper"
)

// aboutSticks says how the strips are used.
const aboutSticks = "Print at 100 %, not fitted to the page. Cut the strips out, lay those with the same joining number over one another at their lines, " +
	"and stand the stick on the end that it names."

// stickPages are story sticks at full size, where there are slides or rows of pins.
func stickPages(b *paper.Book, bill []cutplan.Blank, o Options) {
	s := marksheet.Subject{Case: o.Case, Letters: billMarks(o.Case, bill), Ruler: o.Ruler}
	const above = 26.0 // mm for the heading, the words and the line to measure
	sticks := s.Sticks(b.Width(), b.Height()-above)
	for i, page := range sticks.Pages {
		b.Page("story sticks")
		if i == 0 {
			b.Heading("Story sticks")
		}
		b.Paragraph(aboutSticks)
		b.Picture(sticks.Scale)
		b.Space(1)
		b.Picture(page)
	}
}
