package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// hazard is what a step asks to be careful about. Here are the limits from which
// on it does, for the steps, the setups and the page of cautions alike.
type hazard int

const (
	largePanel  hazard = iota
	narrowStrip        // ripped along the fence
	shortOnFence
	acrossFence // wider than it is long
	acrossGrain // of a veneered panel
	wideAtStop  // wider than a sled takes, where the job gives no limit
	skim        // less comes off than the blade is wide
)

// hazards are all of them, in the order in which they are told.
var hazards = []hazard{largePanel, narrowStrip, shortOnFence, acrossFence, wideAtStop, acrossGrain, skim}

const (
	// narrowRip is below what a rip takes a push stick. Common practice, no source.
	narrowRip = 6 * stock.Inch
	// A usual crosscut sled takes pieces up to widestOnSled. Common practice, no source.
	widestOnSled = 24 * stock.Inch
	// A panel from so large or so heavy on takes a helper, or support all round.
	// Common practice, no source: half of a 4 x 8 ft sheet, and somewhat less than
	// the 25 kg that one person may lift close to the body (UK HSE, INDG143, from
	// memory).
	largeArea   = 1.5 // m2
	heavyWeight = stock.Grams(20_000)
)

// shortest is below what length along the fence a piece cannot be controlled.
func shortest(p *cutplan.Plan) stock.Length { return max(p.Job.Shortest, stock.ShortestMilled) }

// hazardsOf lists what is to be minded at step s of layout l.
func hazardsOf(p *cutplan.Plan, l cutplan.Layout, s cutplan.Step) []hazard {
	var all []hazard
	for _, h := range []struct {
		hazard
		is bool
	}{
		{largePanel, l.Stock.Kind == stock.Sheet && isLarge(s.Piece, l.Stock.Thickness)},
		{narrowStrip, s.Guide == cutplan.Fence && s.Setting < narrowRip},
		{shortOnFence, s.Guide == cutplan.Fence && s.Run < shortest(p)},
		{acrossFence, s.Cut == cutplan.Rip && !s.Trim && s.Piece.Width > s.Piece.Length},
		{wideAtStop, p.Job.Saw.CrosscutCapacity == 0 && s.Guide == cutplan.Stop && s.Run > widestOnSled},
		{acrossGrain, isAcrossGrain(l.Stock, s)},
		{skim, isSkim(s, p.Job.Saw.Kerf)},
	} {
		if h.is {
			all = append(all, h.hazard)
		}
	}
	return all
}

// isLarge assumes the density of the heaviest usual panel, whatever it is.
func isLarge(size cutplan.Size, thickness stock.Length) bool {
	return area(size) >= largeArea || weight(size, thickness) >= heavyWeight
}

func area(size cutplan.Size) float64 { return meters(size.Length) * meters(size.Width) }

func weight(size cutplan.Size, thickness stock.Length) stock.Grams {
	return stock.Grams(1000 * area(size) * meters(thickness) * casework.Wood("MDF").Density.Value)
}

func meters(l stock.Length) float64 { return float64(l) / float64(1000*stock.Millimeter) }

// isAcrossGrain reports whether s cuts across the face grain of a panel.
func isAcrossGrain(of stock.Stock, s cutplan.Step) bool {
	if of.Kind != stock.Sheet || s.Trim {
		return false
	}
	return of.Grain == stock.GrainUnknown || of.Grain == stock.GrainLength && s.Cut == cutplan.Crosscut || of.Grain == stock.GrainWidth && s.Cut == cutplan.Rip
}

// isSkim reports whether the blade runs along an edge, with a part of its width in the
// air.
func isSkim(s cutplan.Step, kerf stock.Length) bool {
	whole := s.Piece.Width
	if s.Cut == cutplan.Crosscut {
		whole = s.Piece.Length
	}
	return !s.Trim && whole-s.Setting < kerf
}

// brief is a reminder of a hazard for a row of a table; empty where the row says
// how to cut it anyway.
func (h hazard) brief() string {
	return [...]string{"large panel", "push stick", "short: sled or guided saw", "", "score first", "wide: sled or guided saw", "skim"}[h]
}

// inPlan is what to do about a hazard that is somewhere in a plan.
func (h hazard) inPlan() string {
	switch h {
	case largePanel: // common practice, no source
		return fmt.Sprintf("large panels, of %v m2 (16 sq ft) or %.0f kg (%.0f lb, if they were MDF) and more. Support them all round, or get help or a carrier; take a guided saw where yours does not reach.",
			largeArea, float64(heavyWeight)/1000, heavyWeight.Pounds())
	case narrowStrip: // 29 CFR 1910.213(s), from memory; Cal. Code Regs. title 8 s. 4296(a)
		return "rips below 6 in (152 mm). Use a push stick or block, and feather boards or a jig where the guard cannot be used."
	case shortOnFence: // common practice, no source
		return "pieces too short to run along a fence. Cut them with a sled or a guided saw, clamped."
	case acrossFence: // common practice, no source
		return "pieces wider than long, which never go along the fence. Use a miter gauge, a sled or a guided saw."
	case wideAtStop:
		return "" // limitsUnsaid tells it
	case acrossGrain: // common practice, no source
		return "cuts across the face grain, where veneer chips. Score or tape the line where the blade comes out."
	}
	// Common practice, no source.
	return "skims, where less comes off than the blade is wide. Hold the piece firmly and do not force the cut."
}

// stepCautions says what to mind at the steps of a layout, each with its cuts.
func stepCautions(p *cutplan.Plan, l cutplan.Layout, steps []cutplan.Step, r stock.Ruler) []string {
	of := map[hazard][]cutplan.Step{}
	for _, s := range steps {
		for _, h := range hazardsOf(p, l, s) {
			of[h] = append(of[h], s)
		}
	}
	var said []string
	for _, h := range hazards {
		if of[h] == nil {
			continue
		}
		if mind := h.caution(of[h], l.Stock.Thickness, r); mind != "" {
			said = append(said, cutsOf(of[h])+": "+mind+".")
		}
	}
	return said
}

// cutsOf names steps: "Cut 7", "Cuts 7, 9–12".
func cutsOf(steps []cutplan.Step) string {
	numbers := make([]int, len(steps))
	for i, s := range steps {
		numbers[i] = s.Number
	}
	if len(numbers) == 1 {
		return "Cut " + ranges(numbers)
	}
	return "Cuts " + ranges(numbers)
}

func (h hazard) caution(steps []cutplan.Step, thickness stock.Length, r stock.Ruler) string {
	switch h {
	case largePanel:
		most := slices.MaxFunc(steps, func(a, b cutplan.Step) int { return cmp.Compare(area(a.Piece), area(b.Piece)) }).Piece
		return fmt.Sprintf("large panel, %s, %s if it were MDF: support it all round, or get help",
			r.Size(most.Length, most.Width), weight(most, thickness).PrintUnit(r.Units))
	case narrowStrip:
		return "rip of " + settings(steps, r) + ": push stick"
	case shortOnFence:
		return "too short to run along a fence (" + lengths(steps, r) + "): use a sled or a guided saw, with the piece clamped"
	case acrossFence:
		return "wider than it is long, so not along the fence: miter gauge, sled or guided saw"
	case wideAtStop:
		return "" // its rows tell it
	case skim: // common practice, no source
		return "a skim: less comes off than the blade is wide, so it may wander; the piece against fence or stop is held firmly, and the cut is not forced"
	}
	// Common practice, no source.
	return "across the face grain, where the veneer chips: score or tape the line where the blade comes out"
}

// settings lists those of steps, each once: "43, 25".
func settings(steps []cutplan.Step, r stock.Ruler) string {
	return each(steps, func(s cutplan.Step) string { return r.Print(s.Setting) })
}

func lengths(steps []cutplan.Step, r stock.Ruler) string {
	return each(steps, func(s cutplan.Step) string { return r.Print(s.Run) })
}

func each(steps []cutplan.Step, say func(cutplan.Step) string) string {
	var all []string
	for _, s := range steps {
		if said := say(s); !slices.Contains(all, said) {
			all = append(all, said)
		}
	}
	return strings.Join(all, ", ")
}
