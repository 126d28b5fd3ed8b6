package casework

import (
	"testing"

	"sawbill/stock"
)

func faultsOf(t *testing.T, d Design, from Context) []string {
	t.Helper()
	var said []string
	_, faults := Derive(d, from)
	for _, f := range faults {
		said = append(said, f.Key+": "+f.Cause+"; "+f.Remedy)
	}
	return said
}

// A partition of 18 is bored 20 up its end, 9 from its faces, and for a divider
// 12 deep into its left face. Over an opening 14 high the divider's holes of 8 lie at
// 14 + 9 = 23, from 19 on: 1 below 20. Over one of 15 they begin where the others end.
func TestDowelHolesThatMeetAreRefused(t *testing.T) {
	low := func(height string) Design {
		d := plain()
		d.Partition.Joint, d.Divider.Joint = word("dowel"), word("dowel")
		d.Bays = []Bay{{Openings: []Opening{{}, {Height: metric(height)}}}, {}}
		return d
	}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"case.divider.joint: holes meet inside a partition: 12 mm into the face for a divider, 20 mm into the end for a bottom; " +
		"move the divider and the bottom 1 mm farther apart, or use another joint for one of them"}, faultsOf(t, low("14"), from))
	derive(t, low("15"), from)
	narrow := plain() // likewise a bay, beside the end of the bottom
	narrow.Carcass.Joint, narrow.Partition.Joint = word("dowel"), word("dowel")
	narrow.Bays = []Bay{{Width: metric("12")}, {}}
	wantLines(t, []string{
		"case.partition.joint: holes meet inside a top: 12 mm into the face for a partition, 20 mm into the end for a side; " +
			"move the partition and the side 3 mm farther apart, or use another joint for one of them",
		"case.partition.joint: holes meet inside a bottom: 12 mm into the face for a partition, 20 mm into the end for a side; " +
			"move the partition and the side 3 mm farther apart, or use another joint for one of them",
	}, faultsOf(t, narrow, from))
	narrow.Bays[0].Width = metric("15")
	derive(t, narrow, from)
}

// The divider of the first case in dados 6 deep: from 19.9 up they open the holes, which
// begin 9 - 4 = 5 in. Dados of 5 do not.
func TestDowelHolesThatOpenIntoADadoAreRefused(t *testing.T) {
	low := func(height, depth string) Design {
		d := plain()
		d.Partition.Joint = word("dowel")
		d.Divider.Joint, d.Divider.JointDepth = word("dado"), metric(depth)
		d.Bays = []Bay{{Openings: []Opening{{}, {Height: metric(height)}}}, {}}
		return d
	}
	from := workshop(stock.Millimeters)
	wantLines(t, []string{"case.partition.joint: a hole 20 mm into the end of a partition, for a bottom, opens into what is cut there for a divider; " +
		"move the bottom and the divider 0.1 mm farther apart, or use another joint for one of them"}, faultsOf(t, low("19.9", "6"), from))
	derive(t, low("20", "6"), from)
	derive(t, low("19.9", "5"), from)
}
