package report

import (
	"encoding/json"
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/job"
)

// blankPlan is what another program would read of the blanks of a plan file.
type blankPlan struct {
	Blanks []struct {
		Part, Material string
		readSize
		Count, Holds, Spare int
		Finish              readSize
		Gang, Resaw         *struct {
			Parts int
			Kerf  json.Number
		}
		Milling []struct {
			From  json.Number
			Steps []struct {
				Do           string
				Setting, Off json.Number
				Pieces       int
			}
		}
	}
	Layouts []struct {
		Repeat int
		Root   readNode
	}
	Unplaced  []struct{ Count int }
	Estimates []struct {
		Blanks []struct {
			Part  string
			Count int
		}
	}
}

type readSize struct{ Length, Width, Thickness json.Number }

// The plan files of the examples, read without the types of this program and
// summed in exact fractions, against the parts that the jobs ask for.
func TestBlanksInThePlanFileAddUpToTheParts(t *testing.T) {
	const testdata = "../testdata"
	paths, err := filepath.Glob(filepath.Join(testdata, "golden", "*", "plan.json"))
	if err != nil || len(paths) == 0 {
		t.Fatal("no plans", err)
	}
	gangs, resawn := 0, 0
	for _, path := range paths {
		name := filepath.Base(filepath.Dir(path))
		t.Run(name, func(t *testing.T) {
			file, err := job.Read(filepath.Join(testdata, "jobs", name+".toml"))
			if err != nil {
				t.Fatal(err)
			}
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			var plan blankPlan
			if err := json.Unmarshal(data, &plan); err != nil {
				t.Fatal(err)
			}
			for _, b := range plan.Blanks {
				if b.Gang != nil {
					gangs++
				}
				if b.Resaw != nil {
					resawn++
				}
			}
			if err := addUp(plan, file.Job); err != nil {
				t.Error(err)
			}
		})
	}
	if gangs == 0 || resawn == 0 {
		t.Errorf("%d gangs and %d blanks to resaw: nothing is tested", gangs, resawn)
	}
}

func addUp(plan blankPlan, wanted stock.Job) error {
	kind := make(map[string]stock.Kind)
	for _, s := range wanted.Stock {
		kind[s.Material] = s.Kind
	}
	parts, held, blanks, cut := make(map[string]stock.Part), make(map[string]int), make(map[string]int), make(map[string]int)
	for _, p := range wanted.Parts {
		parts[p.Name] = p
	}
	for _, b := range plan.Blanks {
		p, gang, layers := parts[b.Part], 1, 1
		kerf, resawKerf := new(big.Rat), new(big.Rat)
		if b.Gang != nil {
			gang, kerf = b.Gang.Parts, rat(b.Gang.Kerf)
		}
		if b.Resaw != nil {
			layers, resawKerf = b.Resaw.Parts, rat(b.Resaw.Kerf)
		}
		if b.Holds != gang*layers-b.Spare || b.Holds < 1 {
			return fmt.Errorf("%s: holds %d", b.Part, b.Holds)
		}
		held[b.Part] += b.Count * b.Holds
		blanks[b.Part] += b.Count
		a := p.Allowance
		if kind[b.Material] == stock.Sheet {
			a.Faces = 0
		}
		each := func(count int, of stock.Length) *big.Rat { return times(count, rat(json.Number(of.Decimal()))) }
		length := sum(times(gang, rat(b.Finish.Length)), each(gang*a.Miters, a.Miter), times(gang-1, kerf), each(a.Ends, a.End))
		width := sum(rat(b.Finish.Width), each(a.Edges, a.Edge))
		thickness := sum(times(layers, rat(b.Finish.Thickness)), each(layers*a.Faces, a.Face), times(layers-1, resawKerf))
		if rat(b.Length).Cmp(length) < 0 || rat(b.Width).Cmp(width) != 0 || rat(b.Thickness).Cmp(thickness) != 0 {
			return fmt.Errorf("%s: blank %v, its parts and allowances %v x %v x %v", b.Part, b.readSize, length, width, thickness)
		}
		for _, m := range b.Milling {
			left := map[string]*big.Rat{"length": rat(b.Length), "width": rat(b.Width), "thickness": rat(m.From)}
			pieces := 1
			for _, s := range m.Steps {
				of := map[string]string{"plane": "thickness", "resaw": "thickness", "true edge": "width"}[s.Do]
				if of == "" {
					of = "length"
				}
				if left[of].Cmp(sum(times(s.Pieces, rat(s.Setting)), rat(s.Off))) != 0 {
					return fmt.Errorf("%s: %s at %s from %v", b.Part, s.Do, s.Setting, left[of])
				}
				left[of], pieces = rat(s.Setting), pieces*s.Pieces
			}
			if left["length"].Cmp(rat(b.Finish.Length)) != 0 || left["width"].Cmp(rat(b.Finish.Width)) != 0 ||
				left["thickness"].Cmp(rat(b.Finish.Thickness)) != 0 || pieces != gang*layers {
				return fmt.Errorf("%s: milled to %v, %d pieces", b.Part, left, pieces)
			}
		}
	}
	for name, p := range parts {
		if held[name] != p.Count {
			return fmt.Errorf("%s: the blanks hold %d, wanted are %d", name, held[name], p.Count)
		}
	}
	for _, l := range plan.Layouts {
		countParts(l.Root, l.Repeat, cut)
	}
	for _, e := range plan.Estimates {
		for _, b := range e.Blanks {
			cut[b.Part] += b.Count // not cut yet, but told of
		}
	}
	for name, n := range blanks {
		if cut[name] != n && len(plan.Unplaced) == 0 {
			return fmt.Errorf("%s: %d blanks are cut, %d are in the bill", name, cut[name], n)
		}
	}
	return nil
}

func countParts(n readNode, times int, into map[string]int) {
	if n.Use == "part" {
		into[n.Part] += times
	}
	for _, c := range n.Children {
		countParts(c, times, into)
	}
}

func rat(n json.Number) *big.Rat {
	r, ok := new(big.Rat).SetString(strings.TrimSpace(n.String()))
	if !ok {
		return new(big.Rat)
	}
	return r
}

func times(n int, r *big.Rat) *big.Rat { return new(big.Rat).Mul(big.NewRat(int64(n), 1), r) }

func sum(all ...*big.Rat) *big.Rat {
	total := new(big.Rat)
	for _, r := range all {
		total.Add(total, r)
	}
	return total
}
