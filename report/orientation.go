package report

import (
	"math"

	"sawbill/report/internal/diagram"
	"sawbill/report/internal/paper"
)

// Pages are upright but for two. A table lies across where that alone saves its words
// and sizes from being parted.

// orientFor turns the book for a table.
func orientFor(b *paper.Book, t paper.Table) {
	for _, across := range []bool{false, true} {
		if b.Lie(across); b.Fits(t) {
			return
		}
	}
	b.Lie(false)
}

// A page of a sheet lies across where that makes its diagram larger by a tenth at
// least and leaves its steps on the same page: a diagram without its steps is of no
// use at the saw.

// worthTurning is the scale across, in tenths of the one upright, up to which it pays
// to turn the page.
const worthTurning = 9

// slimDiagram is the share of a page's height that a diagram may shrink to where that
// keeps all of its steps on its page.
const slimDiagram = 0.28

// fit draws a layout for pages that lie upright or, of a sheet, across, whichever is
// better, and turns the book so. The steps and what is said around the diagram go with it.
func fit(b *paper.Book, v diagram.View, steps work, said []string, short func(diagram.Picture) paper.Table, board bool) (diagram.Picture, float64) {
	draw := func(across bool) (picture diagram.Picture, room float64, whole bool) {
		b.Lie(across)
		around := headingRoom + heightOf(b, said)
		most := diagramRoom(b, steps, around)
		for tries := 0; ; tries++ {
			smaller := diagram.New(v, b.Width(), most)
			high := around + smaller.Height + b.TableHeight(short(smaller))
			over := high + steps.least(b) - b.Height()
			if whole = over <= 0; whole || tries == 0 {
				picture, room = smaller, high
			}
			if most = smaller.Height - over; whole || board || tries == 2 || most < max(slimDiagram*b.Height(), legibleDiagram) {
				return picture, room, whole
			}
		}
	}
	upright, around, whole := draw(false)
	if board { // several to a page
		return upright, around
	}
	across, aroundAcross, wholeAcross := draw(true)
	if wholeAcross && 10*across.Scale <= worthTurning*upright.Scale || wholeAcross && !whole && across.Scale <= upright.Scale {
		return across, aroundAcross
	}
	b.Lie(false)
	if whole {
		return upright, around
	}
	return grown(b, v, upright, around, steps.least(b), func(picture diagram.Picture) float64 {
		return headingRoom + heightOf(b, said) + picture.Height + b.TableHeight(short(picture))
	})
}

// lostAtTurn is what the end of a page can cost a table that runs on, in mm: a row that
// no longer fits, and the table's head once more.
const lostAtTurn = 18.0

// grown draws the diagram of a sheet, whose steps run on to further pages anyhow, as
// large as can be without one page more. On the first page small takes around, in mm,
// with all that belongs to it, another picture aroundOf; the steps take so much.
func grown(b *paper.Book, v diagram.View, small diagram.Picture, around, steps float64, aroundOf func(diagram.Picture) float64) (diagram.Picture, float64) {
	next := (1-leastRepeated)*b.Height() - lostAtTurn // room below the diagram that is repeated
	turns := math.Ceil((around + steps - b.Height()) / next)
	for turn := 1.0; turn <= turns; turn++ {
		room := b.Height() + turn*next
		for most := mostDiagram * b.Height(); ; {
			larger := diagram.New(v, b.Width(), most)
			if larger.Scale >= small.Scale {
				break
			}
			high := aroundOf(larger)
			over := max(high+steps-room, high-b.Height())
			if over <= 0 {
				return larger, high
			}
			most = larger.Height - max(over, 1) // a millimeter at least, so that it ends
		}
	}
	return small, around
}
