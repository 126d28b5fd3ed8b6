package checks

import (
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/marks"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/sample"
	"sawbill/stock/casework/sizes"
	"sawbill/stock/casework/solid"

	"github.com/google/go-cmp/cmp"
)

type (
	Design    = design.Design
	Carcass   = design.Carcass
	Back      = design.Back
	Drawer    = design.Drawer
	Door      = design.Door
	Edging    = design.Edging
	Coating   = design.Coating
	Bay       = design.Bay
	Opening   = design.Opening
	Contents  = design.Contents
	DrawerBox = design.DrawerBox
	Length    = design.Length
	Count     = design.Count
	Context   = design.Context
	Material  = design.Material
	Property  = design.Property
	Point     = solid.Point
	Solid     = solid.Solid
)

const (
	X = solid.X
	Y = solid.Y
	Z = solid.Z

	psi = 0.006894757 // in N/mm2
)

var (
	Wood  = design.Wood
	Woods = design.Woods

	metric         = sample.Metric
	imperial       = sample.Imperial
	word           = sample.Word
	count          = sample.Count
	workshop       = sample.Workshop
	weighed        = sample.Weighed
	plain          = sample.Plain
	framed         = sample.Framed
	measured       = sample.Measured
	made           = sample.Made
	edgedCase      = sample.Edged
	behindTwoDoors = sample.BehindTwoDoors
)

// derived is a case as far as it is needed here.
type derived struct {
	*pieces.Maker
	Found
	Finish   Finish
	Cautions []design.Caution
}

func (c *derived) TakeOff() Takeoff { return TakeOff(&c.Standing) }

// derive wants a case.
func derive(t testing.TB, d Design, from Context) *derived {
	t.Helper()
	in := design.Read(d, from, joints.WordsOf)
	c := pieces.Make(sizes.Settle(construction.Read(in)))
	if !in.Sound() {
		t.Fatalf("faults: %v", in.InOrder())
	}
	return &derived{Maker: c, Found: Case(c, marks.LayOut(c).Pegs), Finish: FinishOf(in), Cautions: in.Cautions}
}

func eachRandomCase(t *testing.T, check func(t *testing.T, d Design, c *derived)) {
	t.Helper()
	sample.Each(func(seed uint64, d Design) {
		check(t, d, derive(t, d, workshop(stock.Millimeters)))
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	})
}

func cautionOn(c *derived, subject string) string {
	for _, caution := range c.Cautions {
		if caution.Subject == subject {
			return caution.Text
		}
	}
	return ""
}

func sizeNamed(t *testing.T, c *derived, name string) stock.Length {
	t.Helper()
	for _, d := range c.Sizes.Derivations {
		if d.Dimension == name {
			return d.Sum.Total()
		}
	}
	t.Fatalf("no size %q", name)
	return 0
}

func wantLines(t *testing.T, want, got []string) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
