package report

import (
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
)

// document is what a plan is written to, one thing below the other: pages of
// paper, or one page on a screen. What is said is said once, for all of them.
type document interface {
	// Page starts a new page, of a section.
	Page(section string)
	// Title is the name of the whole, with the note that the document was begun with.
	Title(string)
	// Heading stands over a part of the document, Subheading over a part of that.
	Heading(string)
	Subheading(string)
	Paragraph(string)
	// Strong is a paragraph that must not be missed.
	Strong(string)
	// Items are a numbered list of things to know, Work one of things to do.
	Items([]string)
	Work([]string)
	Table(paper.Table)
	// Natural reports whether a table fits the width with no cell wrapped.
	Natural(paper.Table) bool
	Picture(drawing.Drawing)
	// Space leaves room, in mm, where there is any measure.
	Space(height float64)
	// Width and Height are the room for a picture, in mm.
	Width() float64
	Height() float64
}

var _ document = (*paper.Book)(nil)
