package report

import (
	"testing"

	"sawbill/stock"
)

func TestWhereStockIsTrimmed(t *testing.T) {
	const mm = stock.Millimeter
	for _, tt := range []struct {
		kind stock.Kind
		trim stock.Length
		sawn stock.Trims
		want string
	}{
		{stock.Sheet, 4 * mm, stock.Trims{}, "off every edge"},
		{stock.Board, 4 * mm, stock.Trims{}, "off both ends"},
		{stock.Sheet, 0, stock.Trims{FarEnd: 2 * mm}, "off the far end"},
		{stock.Sheet, 0, stock.Trims{NearEnd: 2 * mm}, "off the near end"},
		{stock.Sheet, 0, stock.Trims{NearEnd: 2 * mm, FarEnd: 2 * mm, FarEdge: 2 * mm}, "off both ends and the far edge"},
		{stock.Sheet, 0, stock.Trims{NearEnd: 2 * mm, NearEdge: 4 * mm, FarEdge: 5 * mm}, "off the near end and both edges, but 4 off the near edge, but 5 off the far edge"},
		{stock.Sheet, 0, stock.Trims{NearEdge: 2 * mm, FarEdge: 2 * mm}, "off both edges"},
		{stock.Sheet, 4 * mm, stock.Trims{FarEnd: 2 * mm}, "off every edge"},
		{stock.Sheet, 4 * mm, stock.Trims{FarEnd: 6 * mm}, "off every edge, but 6 off the far end"},
		{stock.Sheet, 4 * mm, stock.Trims{NearEdge: 6 * mm, FarEdge: 6 * mm}, "off every edge, but 6 off both edges"},
		{stock.Board, 4 * mm, stock.Trims{FarEnd: 6 * mm}, "off both ends, but 6 off the far end"},
	} {
		if got := trimmedOff(stock.Stock{Kind: tt.kind, Trim: tt.trim, Sawn: tt.sawn}, stock.Ruler{}); got != tt.want {
			t.Errorf("%q, want %q", got, tt.want)
		}
	}
}
