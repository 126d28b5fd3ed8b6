package joints

// dado is a channel across a panel that the end of another fills. At the end of a panel it has one
// wall only; its sizes are those of a rabbet.
type dado struct{ housed }

func newDado() dado { return dado{housed{name: "dado"}} }

func (dado) Sites() map[Site]string {
	return map[Site]string{CarcassCorner: "sizes as for `\"rabbet\"`", DividerEnd: "", ShelfEnd: "the shelf is fixed"}
}
