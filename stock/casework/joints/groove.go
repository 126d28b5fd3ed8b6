package joints

// groove is a channel along a panel that the edge of a back or of a drawer's bottom fills.
type groove struct{ housed }

var grooved = groove{housed{traits{name: "groove", keys: []string{"joint_depth"}, at: map[Site]Fit{
	BackEdge:     inHousings("", "the groove for the back"),
	DrawerBottom: {Reach: Housed},
}}}}
