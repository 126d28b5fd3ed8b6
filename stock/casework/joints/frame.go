package joints

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// Frame is the front frame of a framed case; the back frame is its like.
type Frame struct {
	design.Panel
	Stile, Rail, MidStile stock.Length // face widths
	MidRail               stock.Length // likewise; 0 where there are none
	Corner                Joint
	Tenon                 stock.Length // length of one
	Inset                 stock.Length // of the panels, from the outer edges
}
