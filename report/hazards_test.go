package report

import (
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

func TestStepsCarryTheirHazards(t *testing.T) {
	const mm = stock.Millimeter
	step := func(c cutplan.Cut, g cutplan.Guide, length, width, setting stock.Length) cutplan.Step {
		s := cutplan.Step{Cut: c, Guide: g, Piece: cutplan.Size{Length: length * mm, Width: width * mm}, Setting: setting * mm, Run: length * mm}
		if c == cutplan.Crosscut {
			s.Run = width * mm
		}
		return s
	}
	ply := stock.Stock{Grain: stock.GrainLength, Thickness: 18 * mm}
	along, none, board := ply, ply, ply
	along.Grain, none.Grain, board.Kind = stock.GrainWidth, stock.GrainAny, stock.Board
	trim := step(cutplan.Crosscut, cutplan.Stop, 600, 600, 590)
	trim.Trim = true
	tests := []struct {
		reason string
		stock  stock.Stock
		step   cutplan.Step
		want   []hazard
	}{
		{"a rip of 152 mm, just under 6 in", ply, step(cutplan.Rip, cutplan.Fence, 1000, 600, 152), []hazard{narrowStrip}},
		{"a rip of 153 mm", ply, step(cutplan.Rip, cutplan.Fence, 1000, 600, 153), nil},
		{"half a sheet of 4 x 8 ft", none, step(cutplan.Rip, cutplan.Fence, 1220, 1230, 400), []hazard{largePanel, acrossFence}},
		{"a little less", none, step(cutplan.Rip, cutplan.Fence, 1220, 1220, 400), []hazard{largePanel}}, // 20.1 kg
		{"thinner", stock.Stock{Grain: stock.GrainAny, Thickness: 12 * mm}, step(cutplan.Rip, cutplan.Fence, 1220, 1220, 400), nil},
		{"a crosscut of a panel", ply, step(cutplan.Crosscut, cutplan.Stop, 1000, 600, 500), []hazard{acrossGrain}},
		{"whose grain runs along its width", along, step(cutplan.Crosscut, cutplan.Stop, 1000, 600, 500), nil},
		{"a rip of that", along, step(cutplan.Rip, cutplan.Fence, 1000, 600, 500), []hazard{acrossGrain}},
		{"without grain", none, step(cutplan.Crosscut, cutplan.Stop, 1000, 600, 500), nil},
		{"of a board", board, step(cutplan.Crosscut, cutplan.Stop, 1000, 600, 500), nil},
		{"trim", ply, trim, nil},
		{"3 mm off, with a blade of 3.2", none, step(cutplan.Rip, cutplan.Fence, 1000, 600, 597), []hazard{skim}},
		{"4 mm off", none, step(cutplan.Rip, cutplan.Fence, 1000, 600, 596), nil},
		{"off the end of a board", board, step(cutplan.Crosscut, cutplan.Stop, 1000, 600, 999), []hazard{skim}},
		{"short along the fence", ply, step(cutplan.Rip, cutplan.Fence, 300, 290, 200), []hazard{shortOnFence}},
		{"wider than long", ply, step(cutplan.Rip, cutplan.Stop, 300, 600, 200), []hazard{acrossFence}},
	}
	for _, tt := range tests {
		got := hazardsOf(&cutplan.Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 32 * mm / 10}}}, cutplan.Layout{Stock: tt.stock}, tt.step)
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.reason, got, tt.want)
		}
	}
}

func TestCautionsNameTheirCuts(t *testing.T) {
	p := bench()
	said := strings.Join(stepCautions(p, p.Layouts[0], p.Steps(p.Layouts[0]), stock.Ruler{}), "\n")
	for _, want := range []string{
		"large panel, 2440 x 1220, 40.2 kg if it were MDF",
		": rip of 20: push stick.",
		": across the face grain",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is missing:\n%s", want, said)
		}
	}
}
