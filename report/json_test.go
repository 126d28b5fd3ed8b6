package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

// The structs below are written from the description of the plan file, not from
// the writer: they are what another program would have.
type readPlan struct {
	Format   string
	Title    string
	Complete *bool
	Cost     json.Number
	Bound    json.Number
	Proven   *bool
	Seconds  json.Number
	Blanks   []struct {
		Part                            string
		Length, Width, Thickness, Count json.Number
		Turnable                        *bool
		Material                        string
		Finish                          struct{ Length, Width, Thickness json.Number }
	}
	Buy []struct {
		Stock       string
		Count       int
		Price, Cost json.Number
	}
	Layouts []struct {
		Stock, Kind, Material                string
		OnHand                               *bool `json:"on_hand"`
		Repeat                               int
		Length, Width, Thickness, Kerf, Trim json.Number
		Root                                 readNode
	}
	Unplaced []struct {
		Part   string
		Count  int
		Reason string
	}
	Totals struct{ Yield, Waste, Offcut float64 }
	Cover  struct {
		Parts, Covered int
		Uncovered      []struct {
			Part  string
			Count int
		}
	}
}

type readNode struct {
	Length, Width json.Number
	Use, Cut      string
	Children      []readNode
	Part          string
	Turned        *bool
}

func TestJSONReadsBackAsThePlanFileDescribes(t *testing.T) {
	plans := []*cutplan.Plan{bench(), incomplete()}
	for seed := range uint64(10) {
		p := samples.Random(seed)
		plans = append(plans, &p)
	}
	for _, p := range plans {
		if err := checkJSON(JSON(p, Options{}), p); err != nil {
			t.Errorf("%s: %v", p.Job.Title, err)
		}
	}
}

// plain is a number without exponent, with at most six decimals.
var plain = regexp.MustCompile(`^\d+(\.\d{1,6})?$`)
var cents = regexp.MustCompile(`^\d+\.\d\d$`)

func checkJSON(data []byte, p *cutplan.Plan) error {
	var got readPlan
	if err := json.Unmarshal(data, &got); err != nil {
		return err
	}
	for _, key := range []string{`"unplaced": [`, `"buy": [`, `"blanks": [`, `"layouts": [`, `"uncovered": [`} {
		if !bytes.Contains(data, []byte(key)) {
			return fmt.Errorf("no list %s", key)
		}
	}
	if got.Format != "sawbill plan 2" || got.Complete == nil || *got.Complete != p.Complete() || got.Proven == nil {
		return fmt.Errorf("head %+v", got)
	}
	if !cents.MatchString(got.Cost.String()) || !cents.MatchString(got.Bound.String()) {
		return fmt.Errorf("money %s, %s", got.Cost, got.Bound)
	}
	for _, b := range got.Buy {
		for _, l := range p.Job.Stock {
			if l.OnHand && l.Name == b.Stock {
				return fmt.Errorf("%s is on hand and in buy", b.Stock)
			}
		}
	}
	if sum := got.Totals.Yield + got.Totals.Waste + got.Totals.Offcut; len(p.Layouts) > 0 && math.Abs(sum-1) > 1e-9 {
		return fmt.Errorf("totals sum to %v", sum)
	}
	uncovered := 0
	for i, u := range got.Cover.Uncovered {
		uncovered += u.Count
		if u.Part != p.Bill[p.Cover.Uncovered[i].Blank].Part.Name {
			return fmt.Errorf("cover %+v", got.Cover)
		}
	}
	if got.Cover.Parts != p.Cover.Parts || got.Cover.Covered+uncovered != got.Cover.Parts {
		return fmt.Errorf("cover %+v", got.Cover)
	}
	for i, l := range got.Layouts {
		if l.OnHand == nil || l.Kind != p.Layouts[i].Stock.Kind.String() || l.Repeat != p.Layouts[i].Repeat {
			return fmt.Errorf("layout %d: %+v", i, l)
		}
		if err := checkNode(l.Root, p.Layouts[i].Root, p); err != nil {
			return fmt.Errorf("layout %d: %w", i, err)
		}
	}
	return nil
}

func checkNode(got readNode, want cutplan.Node, p *cutplan.Plan) error {
	for _, n := range []struct {
		got  json.Number
		want stock.Length
	}{{got.Length, want.Length}, {got.Width, want.Width}} {
		v, err := n.got.Float64()
		if err != nil || !plain.MatchString(n.got.String()) || stock.Length(math.Round(v*float64(stock.Millimeter))) != n.want {
			return fmt.Errorf("length %s, want %s mm", n.got, n.want.Decimal())
		}
	}
	if (got.Turned != nil) != (got.Use == "part") || (got.Cut != "") != (got.Use == "split") || (got.Part != "") != (got.Use == "part") {
		return fmt.Errorf("keys of a %s: %+v", got.Use, got)
	}
	if got.Use == "part" && (got.Part != p.Bill[want.Blank].Part.Name || *got.Turned != want.Turned) {
		return fmt.Errorf("part %q, want %q", got.Part, p.Bill[want.Blank].Part.Name)
	}
	if len(got.Children) != len(want.Children) {
		return fmt.Errorf("%d children, want %d", len(got.Children), len(want.Children))
	}
	for i := range got.Children {
		if err := checkNode(got.Children[i], want.Children[i], p); err != nil {
			return err
		}
	}
	return nil
}
