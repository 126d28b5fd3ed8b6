// Package report shows a plan: as pages to take into the shop ([PDF]), as one
// page for a screen there ([HTML]), as pictures ([LayoutSVGs]), for other programs
// ([JSON]), as a spreadsheet ([CuttingBill]) and as text ([Summary],
// [PartList]).
//
// It computes no cut. Sizes, settings and the order of cuts come from package
// cutplan; what is here is wording, arrangement and drawing. Equal plans give
// equal bytes in every format.
//
// What is said on paper and on the screen is written to a document (document.go),
// which report/internal/paper and report/internal/webpage are. All that is drawn
// goes through one model, report/internal/drawing; a cutting diagram is built in
// report/internal/diagram.
package report

import (
	"sawbill/nest/choice"
	"sawbill/report/internal/paper"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Paper is a size of page.
type Paper int

const (
	A4     Paper = iota // 210 x 297 mm
	Letter              // 8 1/2 x 11 in
)

func (p Paper) size() paper.Size {
	if p == Letter {
		return paper.Letter
	}
	return paper.A4
}

// Options say how a plan is shown. The zero value prints millimeters on A4.
type Options struct {
	Paper Paper
	Ruler stock.Ruler
	Pages Pages // of the PDF; all else holds everything
	// Case is the case design that parts of the job came from; nil if there is
	// none.
	Case *casework.Case
	// Labels are the sheets that labels are printed on; the zero value is plain paper.
	Labels stock.LabelGrid
	// Rest tells that the plan is of the rest of another; nil if it is not. It shows
	// only what remains to be done.
	Rest *Rest
	// Instead tells what to buy where an offer of the plan is sold out.
	Instead []choice.Replacement
	// WhatIf lists in plain words how the job differs from its file; nil if it does
	// not. It is part of the plan's code.
	WhatIf []string
	// Code is the stored code of a plan that was read back. It is empty for a new plan:
	// then [Identity] computes it.
	Code string
	// Folder is the name of the plan's folder, without the way to it; the page for a screen
	// makes commands with it. Empty: it makes none.
	Folder string

	standIns bool // names that the fonts cannot write have others
}
