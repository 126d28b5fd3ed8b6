package nest_test

import "sawbill/nest"

// Builders that let a test write a tree of cuts the way it looks.

func rip(length, width int64, children ...nest.Node) nest.Node {
	return nest.Node{Length: length, Width: width, Use: nest.Split, Cut: nest.Rip, Children: children}
}

func crosscut(length, width int64, children ...nest.Node) nest.Node {
	return nest.Node{Length: length, Width: width, Use: nest.Split, Cut: nest.Crosscut, Children: children}
}

func upright(blank int, length, width int64) nest.Node {
	return nest.Node{Length: length, Width: width, Use: nest.Part, Blank: blank}
}

func turned(blank int, length, width int64) nest.Node {
	return nest.Node{Length: length, Width: width, Use: nest.Part, Blank: blank, Turned: true}
}

func offcut(length, width int64) nest.Node {
	return nest.Node{Length: length, Width: width, Use: nest.Offcut}
}

func waste(length, width int64) nest.Node {
	return nest.Node{Length: length, Width: width, Use: nest.Waste}
}

// want is a blank that may lie upright in each of the stocks named.
func want(count int, length, width int64, stocks ...int) nest.Blank {
	b := nest.Blank{Length: length, Width: width, Count: count}
	for _, s := range stocks {
		b.From = append(b.From, nest.Source{Stock: s, Upright: true})
	}
	return b
}

// either lets a blank lie both ways.
func either(b nest.Blank) nest.Blank {
	for i := range b.From {
		b.From[i].Turned = true
	}
	return b
}

// task is a problem of one sheet, 100 x 60 and trimmed to 96 x 56 at 7 each,
// that is cut with a kerf of 2. Leftovers count from 10 x 10.
func task(blanks ...nest.Blank) nest.Problem {
	return nest.Problem{
		Stock:  []nest.Stock{{Length: 100, Width: 60, TrimLength: 2, TrimWidth: 2, Price: 7}},
		Blanks: blanks,
		Kerf:   2,
		Keep:   nest.Size{Length: 10, Width: 10},
	}
}

// once is a plan of one piece of stock 0.
func once(root nest.Node) nest.Plan {
	return nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: root}}, Cost: 7}
}

// with returns value changed. What value points to is changed in place.
func with[T any](value T, change func(*T)) T {
	change(&value)
	return value
}
