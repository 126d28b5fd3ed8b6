package job_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/pelletier/go-toml/v2"

	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// checkRead holds what is true of every reading: a job or faults, and a job
// that is read can be planned.
func checkRead(t *testing.T, file *job.File, err error) {
	t.Helper()
	if err != nil {
		if faults, ok := err.(fault.Faults); !ok || len(faults) == 0 || file != nil {
			t.Fatalf("error is %T with %v, want faults and no job", err, file)
		}
		return
	}
	if len(file.Parts) == 0 || len(file.Stock)+len(file.Rough) == 0 {
		t.Fatalf("%d parts, %d of stock and %d of rough lumber", len(file.Parts), len(file.Stock), len(file.Rough))
	}
	names := make(map[string]bool)
	for _, p := range file.Parts {
		if p.Length <= 0 || p.Width <= 0 || p.Thickness <= 0 || p.Count <= 0 || p.Name == "" || names[p.Name] {
			t.Fatalf("part cannot be meant: %+v", p)
		}
		names[p.Name] = true
	}
	for _, b := range file.Blanks() {
		p := b.Part
		rough, forSale := file.RoughFor(b)
		if !forSale && !cuttable(b, file.Stock) {
			t.Fatalf("blank %+v fits no stock", b)
		}
		if forSale {
			if e := rough.Estimate([]stock.Blank{b}); e.Least <= 0 || e.Usual < e.Least || e.Rough.Price.Times(e.Usual) < 0 {
				t.Fatalf("part %+v: estimate %+v", p, e)
			}
		}
	}
	for _, s := range file.Stock {
		if length, width := s.Usable(); length <= 0 || width <= 0 || s.Thickness <= 0 || s.Price < 0 || s.Count < 0 {
			t.Fatalf("stock cannot be meant: %+v", s)
		}
	}
}

func cuttable(b stock.Blank, from []stock.Stock) bool {
	for _, s := range from {
		length, width := s.Usable()
		upright, turned := b.Part.Grain.Lies(s.Grain)
		if s.Serves(b) && (upright && b.Length <= length && b.Width <= width || turned && b.Length <= width && b.Width <= length) {
			return true
		}
	}
	return false
}

func FuzzReadTOML(f *testing.F) {
	fsys := os.DirFS(badJobs)
	names, _ := fs.Glob(fsys, "*.toml")
	for _, name := range names {
		if text, err := fs.ReadFile(fsys, name); err == nil {
			f.Add(string(text))
		}
	}
	f.Add(whole)
	f.Add(sheet18 + oneShelf)
	f.Add("[[rough]]\nmaterial = \"oak\"\nquarter = \"4/4\"\ngrade = \"FAS\"\nprice = 9\nyield = 1" + oakRail)
	f.Add("[[board]]\nname = \"A\"\nmaterial = \"oak\"\nquarter = \"4/4\"\nsurfaced = \"S2S\"\nwidth = 90\nlength = 2400\n" +
		"on_hand = true\ndefects = [{from = 0, to = 1}, {from = 900, to = 910}]" + oakRail)
	f.Add("saw = {kerf = 3}\n[[case.bay]]\n[case]\n")
	f.Fuzz(func(t *testing.T, text string) {
		list := "name,material,length,width\nside,birch ply 18,500,200\n"
		file, err := job.ReadFS(fstest.MapFS{
			"bench.toml": {Data: []byte(text)},
			"list.csv":   {Data: []byte(list)},
		}, "bench.toml")
		checkRead(t, file, err)
		// What is no TOML for another reader is none here.
		var other map[string]any
		if strings.HasPrefix(text, "\ufeff") || strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
			return
		}
		if wrong := toml.Unmarshal([]byte(text), &other); wrong != nil && err == nil {
			t.Fatalf("accepted, but is no TOML: %v", wrong)
		}
	})
}

func FuzzReadCSV(f *testing.F) {
	f.Add("name,material,length,width\nside,birch ply 18,500,200\n")
	f.Add("\ufeffName;Material;Length (cm);Width\r\n\"a\r\nb\";birch ply 18;5,5;1.200\r\n")
	f.Add("sep=\t\nname\tmaterial\tlength\twidth\tcount\n\tbirch ply 18\t27 1/2\"\t2' 3\"\t3,00\n")
	f.Add("name,material,length,width\n\"side,birch ply 18,500,200\n")
	f.Add(string(utf16LE("name,material,length,width\nside,birch ply 18,500,200\n")))
	f.Fuzz(func(t *testing.T, list string) {
		file, err := job.ReadFS(fstest.MapFS{
			"bench.toml": {Data: []byte(`parts = "list.csv"` + sheet18)},
			"list.csv":   {Data: []byte(list)},
		}, "bench.toml")
		checkRead(t, file, err)
	})
}
