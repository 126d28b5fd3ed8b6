package joints

// groove is a channel along a panel that the edge of a back or of a drawer's bottom fills.
type groove struct{ housed }

func newGroove() groove { return groove{housed{name: "groove"}} }

func (groove) Sites() map[Site]string { return map[Site]string{BackEdge: "", DrawerBottom: ""} }
