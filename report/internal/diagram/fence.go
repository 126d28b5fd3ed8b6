package diagram

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// fence is rips that follow one another at one setting.
type fence struct {
	guide   cutplan.Guide // of the first
	setting stock.Length
	rips    []cutplan.Step // their first copies, from the reference edge
	numbers []int
	edge    bool
}

func fences(splits [][]parting) []fence {
	var all []fence
	for _, split := range splits {
		if split[0].step.Cut != cutplan.Rip {
			continue
		}
		for i, p := range split {
			if i == 0 || split[i-1].step.Setting != p.step.Setting {
				all = append(all, fence{guide: p.step.Guide, setting: p.step.Setting, edge: p.edge})
			}
			f := &all[len(all)-1]
			f.rips = append(f.rips, p.step)
			f.numbers = append(f.numbers, p.numbers...)
		}
	}
	return all
}

// joined puts rips together that are made at one setting in neighboring pieces,
// at one place across the board, and follow one another.
func joined(all []fence) []fence {
	var out []fence
	for _, f := range all {
		last := len(out) - 1
		if last >= 0 && out[last].setting == f.setting && out[last].rips[0].Y == f.rips[0].Y &&
			slices.Max(out[last].numbers)+1 == slices.Min(f.numbers) {
			out[last].rips = append(out[last].rips, f.rips...)
			out[last].numbers = append(out[last].numbers, f.numbers...)
			continue
		}
		out = append(out, f)
	}
	return out
}
