package joints

// dado is a channel across a panel that the end of another fills. At the end of a panel it has one
// wall only; its sizes equal a rabbet's.
type dado struct{ housed }

var dadoed = dado{housed{traits{name: "dado", keys: []string{"joint_depth"}, at: map[Site]Fit{
	CarcassCorner: inHousings("sizes as for `\"rabbet\"`", "dados"),
	DividerEnd:    inHousings("", "dados"),
	ShelfEnd:      inHousings("the shelf is fixed", "dados"),
}}}}
