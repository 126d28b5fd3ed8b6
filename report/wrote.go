package report

import "sawbill/report/internal/drawing"

// WroteRackLabels reports whether a file holds labels that [RackLabels] made, of this or an
// earlier version.
func WroteRackLabels(data []byte) bool { return drawing.Wrote(data, rackLabelsTitle) }

// WroteComparison reports whether a file called compare.pdf was made by [ComparisonPDF], of
// this or an earlier version.
func WroteComparison(data []byte) bool { return drawing.Wrote(data, "") }
