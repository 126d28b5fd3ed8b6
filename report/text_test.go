package report

import (
	"bytes"
	"errors"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"
)

func TestPartListTellsHowSizesCameAbout(t *testing.T) {
	const mm = stock.Millimeter
	inside := stock.Sum{{Times: 1, Value: 900 * mm, Label: "outside width"}, {Times: -2, Value: 18 * mm, Label: "side"}}
	j := stock.Job{
		Title: "Hall chest",
		Parts: []stock.Part{{
			Name: "bottom", Material: "birch ply 18", Length: inside.Total(), Width: 400 * mm, Thickness: 18 * mm,
			Count: 1, From: "case", How: []stock.Derivation{{Dimension: "length", Sum: inside}},
		}},
	}
	o := Options{Case: &casework.Case{
		Sizes:    []stock.Derivation{{Dimension: "inside width", Sum: inside}},
		Openings: []casework.Space{{Bay: 1, Number: 1, Width: 864 * mm, Height: 200 * mm, Depth: 400 * mm, Holds: "1 drawer"}},
		Cautions: []casework.Caution{{Subject: "tipping", Text: "Fix the chest to the wall."}},
	}}
	var b bytes.Buffer
	if err := PartList(&b, j, o); err != nil {
		t.Fatal(err)
	}
	golden(t, "parts.txt", b.Bytes())
}

// full is a writer with no room, such as a disk.
type full struct{}

var errFull = errors.New("no room")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestTextReportsTheWritersError(t *testing.T) {
	if err := Summary(full{}, bench(), Options{}); !errors.Is(err, errFull) {
		t.Errorf("Summary: %v", err)
	}
	if err := PartList(full{}, bench().Job, Options{}); !errors.Is(err, errFull) {
		t.Errorf("PartList: %v", err)
	}
}
