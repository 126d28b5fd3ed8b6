package job_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// read reads a job called bench.toml, with part lists beside it as pairs of
// name and text.
func read(t *testing.T, text string, lists ...string) (*job.File, error) {
	t.Helper()
	fsys := fstest.MapFS{"bench.toml": {Data: []byte(text)}}
	for i := 0; i < len(lists); i += 2 {
		fsys[lists[i]] = &fstest.MapFile{Data: []byte(lists[i+1])}
	}
	return job.ReadFS(fsys, "bench.toml")
}

func mustRead(t *testing.T, text string, lists ...string) *job.File {
	t.Helper()
	file, err := read(t, text, lists...)
	if err != nil {
		t.Fatalf("the job is refused:\n%v", err)
	}
	return file
}

const (
	mm   = stock.Millimeter
	inch = stock.Inch
)

const sheet18 = `
[[sheet]]
name = "full sheet"
material = "birch ply 18"
thickness = 18
length = 2440
width = 1220
`

const oneShelf = `
[[part]]
name = "shelf"
material = "birch ply 18"
length = 900
width = 300
`

const whole = `
title = "Potting   bench"
units = "mm"
parts = ["lists/drawers.csv"]

[saw]
kerf = 2.4
rip_capacity = "760 mm"
crosscut_capacity = '48"'
narrowest_rip = "10 mm"
stages = 3
first_cut = "Rip"
board_first_cut = "rip"

[allowance]
edge = 0.8
face = 1.5
end  = 10

[offcut]
length = 250
width  = 60

[[board]]
name = "2x4 x 8 ft"
material = "spruce"
nominal = "2x4"
length = "8 ft"
trim = "15 mm"
price = 4.98

[[sheet]]
name = "birch 18, 8x4"
material = "birch ply 18"
thickness = 18
length = 2_440
width = 1220
grain = "width"
trim = 10
price = 74.5
count = 4

[[sheet]]
name = "leftover"
material = "birch ply 18"
thickness = 18
length = 900
width = 400.25
grain = "none"
price = 10
count = 1
on_hand = true

[[board]]
name = "measured 2x4"
material = "spruce"
nominal = "2x4"
thickness = 38
length = 2400
price = "4,50"

[[part]]
name = "shelf"
material = "birch ply 18"
length = 900
width = "11 3/4 in"
count = 3
grain = "any"
edges = 1
end = 0
note = "best face up"

[[part]]
name = "leg"
material = "spruce"
length = 800
width = 85
thickness = 34.5
grain = "length"
`

func TestReadGivesAllThatAJobSays(t *testing.T) {
	got := mustRead(t, whole, "lists/drawers.csv", "name,material,length,width,thickness\nbottom,birch ply 18,500,400.5,18\n")
	twoByFour := stock.Measure{Thickness: 2 * inch, Width: 4 * inch}
	want := &job.File{
		Job: stock.Job{
			Title: "Potting bench",
			Saw: stock.Saw{
				Kerf:             2*mm + 2*mm/5,
				ResawKerf:        8 * mm / 5,
				RipCapacity:      760 * mm,
				CrosscutCapacity: 48 * inch,
				NarrowestRip:     10 * mm,
				Stages:           3,
				FirstCut:         stock.FirstRip,
				BoardFirstCut:    stock.FirstRip,
			},
			Shortest: 12 * inch,
			Offcut:   stock.Offcut{Length: 250 * mm, Width: 60 * mm},
			Stock: []stock.Stock{
				// 2x4 dresses to 1-1/2 x 3-1/2 in: PS 20-20, dry.
				{Name: "2x4 x 8 ft", Kind: stock.Board, Material: "spruce", Length: 96 * inch, Width: 3*inch + inch/2,
					Thickness: inch + inch/2, Trim: 15 * mm, Price: 498, Measure: twoByFour},
				{Name: "birch 18, 8x4", Material: "birch ply 18", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm,
					Grain: stock.GrainWidth, Trim: 10 * mm, Price: 7450, Count: 4},
				{Name: "leftover", Material: "birch ply 18", Length: 900 * mm, Width: 400*mm + mm/4, Thickness: 18 * mm,
					Grain: stock.GrainAny, Count: 1, OnHand: true},
				{Name: "measured 2x4", Kind: stock.Board, Material: "spruce", Length: 2400 * mm, Width: 3*inch + inch/2,
					Thickness: 38 * mm, Price: 450, Measure: twoByFour},
			},
			Parts: []stock.Part{
				{Name: "shelf", Material: "birch ply 18", Length: 900 * mm, Width: 11*inch + 3*inch/4, Thickness: 18 * mm,
					Count: 3, Grain: stock.GrainAny, From: "bench.toml:62", Note: "best face up",
					Allowance: stock.Allowance{Edge: 4 * mm / 5, Face: 3 * mm / 2, Miter: 6 * mm / 5, Edges: 1, Faces: 2, Ends: 2}},
				{Name: "leg", Material: "spruce", Length: 800 * mm, Width: 85 * mm, Thickness: 34*mm + mm/2,
					Count: 1, From: "bench.toml:73",
					Allowance: stock.Allowance{Edge: 4 * mm / 5, Face: 3 * mm / 2, Miter: 6 * mm / 5, End: 10 * mm, Edges: 2, Faces: 2, Ends: 2}},
				{Name: "bottom", Material: "birch ply 18", Length: 500 * mm, Width: 400*mm + mm/2, Thickness: 18 * mm,
					Count: 1, From: "drawers.csv:2",
					Allowance: stock.Allowance{Edge: 4 * mm / 5, Face: 3 * mm / 2, Miter: 6 * mm / 5, End: 10 * mm, Edges: 2, Faces: 2, Ends: 2}},
			},
		},
		Lists: []string{"lists/drawers.csv"},
	}
	again, err := job.Reread(got.Sources, job.Changes{})
	if err != nil || len(again.Sources) != 2 {
		t.Errorf("read again: %+v, %v", again, err)
	} else if diff := cmp.Diff(got, again); diff != "" {
		t.Errorf("read again (-want +got):\n%s", diff)
	}
	got.Sources = nil
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("job (-want +got):\n%s", diff)
	}
}

func TestReadTakesWhatIsLeftOutAsUsual(t *testing.T) {
	inches := `units = "in"
[[sheet]]
name = "full sheet"
material = "birch ply 18"
thickness = "18 mm"
length = 96
width = 48
[[part]]
name = "shelf"
material = "birch ply 18"
length = 36
width = 12
`
	tests := []struct {
		name, text string
		kerf       stock.Length
		units      stock.Units
		offcut     stock.Offcut
	}{
		{"metric", sheet18 + oneShelf, 3*mm + mm/5, stock.Millimeters, stock.Offcut{Length: 300 * mm, Width: 80 * mm}},
		{"inches", inches, inch / 8, stock.Inches, stock.Offcut{Length: 300 * mm, Width: 80 * mm}},
		{"a kerf of nothing", "saw.kerf = 0\n" + sheet18 + oneShelf, 0, stock.Millimeters, stock.Offcut{Length: 300 * mm, Width: 80 * mm}},
		{"a wide narrowest rip raises the width of offcuts", "saw.narrowest_rip = 90\n" + sheet18 + oneShelf,
			3*mm + mm/5, stock.Millimeters, stock.Offcut{Length: 300 * mm, Width: 90 * mm}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := mustRead(t, tt.text)
			if got.Saw.Kerf != tt.kerf || got.Units != tt.units || got.Offcut != tt.offcut {
				t.Errorf("kerf %v, units %v, offcut %v; want %v, %v, %v",
					got.Saw.Kerf, got.Units, got.Offcut, tt.kerf, tt.units, tt.offcut)
			}
			if got.Saw.FirstCut != stock.FirstAny || got.Saw.BoardFirstCut != stock.FirstCrosscut || got.Saw.Stages != 0 || got.Case != nil || len(got.Warnings) > 0 {
				t.Errorf("first cut %v, stages %d, case %v, warnings %v; want none", got.Saw.FirstCut, got.Saw.Stages, got.Case, got.Warnings)
			}
			p := got.Parts[0]
			if p.Count != 1 || p.Grain != stock.GrainLength || p.Thickness != 18*mm {
				t.Errorf("shelf: count %d, grain %v, thickness %v; want 1, length, 18 mm", p.Count, p.Grain, p.Thickness)
			}
			if want := (stock.Allowance{Miter: tt.kerf / 2, Edges: 2, Faces: 2, Ends: 2}); p.Allowance != want {
				t.Errorf("shelf: allowance %v, want %v", p.Allowance, want)
			}
		})
	}
}

func TestReadKeepsNumbersExact(t *testing.T) {
	// 0.1 and 300.3 have no exact binary fraction; 25 nm is 0.000025 mm.
	file := mustRead(t, "[saw]\nkerf = 0.1\n"+sheet18+strings.NewReplacer("900", "900.000025", "300", "300.3").Replace(oneShelf))
	if got, want := file.Saw.Kerf, mm/10; got != want {
		t.Errorf("kerf is %d, want %d", got, want)
	}
	if got, want := file.Parts[0].Length, 900*mm+1; got != want {
		t.Errorf("length is %d, want %d", got, want)
	}
	if got, want := file.Parts[0].Width, 300*mm+3*mm/10; got != want {
		t.Errorf("width is %d, want %d", got, want)
	}
}

func TestReadWarns(t *testing.T) {
	board := "\n[[board]]\nname = \"oak board\"\nmaterial = \"oak\"\nthickness = 27\nwidth = 200\nlength = 2400\n"
	leg := "\n[[part]]\nname = \"block\"\nmaterial = \"oak\"\nlength = 150\nwidth = 60\nthickness = 20\nface = 2\n"
	tests := []struct {
		name, text string
		want       []string
	}{
		{"of stock that no part is cut from", sheet18 + board + oneShelf,
			[]string{`bench.toml:9: board "oak board": no part is of oak; it will not be used`}},
		{"of names given twice", sheet18 + oneShelf + strings.Replace(oneShelf, "shelf", "shelf 2", 1) + oneShelf,
			[]string{`bench.toml:22: part "shelf": name: bench.toml:9 has the same name; this one is called "shelf 3"; give each part its own name`}},
		{"of stock without a price among stock with one", sheet18 + strings.Replace(sheet18, "full sheet", "other", 1) + "price = 50\n" + oneShelf,
			[]string{`bench.toml:2: sheet "full sheet": has no price, so the plan takes it as free; add price =`}},
		{"of stock on hand without a count", sheet18 + "on_hand = true\n" + oneShelf,
			[]string{`bench.toml:2: sheet "full sheet": is on hand without a count, so the plan may use any number; add count =`}},
		{"of planing sheets", sheet18 + oneShelf + "face = 1\n",
			[]string{`bench.toml:14: part "shelf": face: the faces of a sheet are not planed; it is left out of account`}},
		{"not of short pieces that are ganged", board + leg, nil},
		{"of pieces too short to mill that may not be ganged", board + leg + "gang = false\n",
			[]string{`bench.toml:12: part "block": 150 mm is too short to plane, joint or rip safely (milling.shortest is 304.8 mm); leave out gang = false, so that it is cut from a longer piece after milling; follow the machine's manual`}},
		{"of pieces too short to mill from boards that are short as well", strings.Replace(board, "2400", "280", 1) + leg,
			[]string{`bench.toml:12: part "block": 150 mm is too short to plane, joint or rip safely (milling.shortest is 304.8 mm), and no board of oak that it may come from is as long as that; add a longer board; follow the machine's manual`}},
		{"of such boards as well where the part may not be ganged", strings.Replace(board, "2400", "280", 1) + leg + "gang = false\n",
			[]string{`bench.toml:12: part "block": 150 mm is too short to plane, joint or rip safely (milling.shortest is 304.8 mm), and no board of oak that it may come from is as long as that; add a longer board; follow the machine's manual`}},
		{"of pieces with their grain across that are too short along it", board + strings.NewReplacer("150", "60", "60", "150").Replace(leg) + "grain = \"width\"\n",
			[]string{`bench.toml:12: part "block": 150 mm is too short to plane, joint or rip safely (milling.shortest is 304.8 mm); mill it as part of a longer piece and part that after; follow the machine's manual`}},
		{"of pieces that are only ripped", board + strings.NewReplacer("face = 2", "gang = false", "20", "27").Replace(leg),
			[]string{`bench.toml:12: part "block": 150 mm is too short to plane, joint or rip safely (milling.shortest is 304.8 mm); leave out gang = false, so that it is cut from a longer piece after milling; follow the machine's manual`}},
		{"not of pieces that are long enough", "[milling]\nshortest = 150\n" + board + leg + "gang = false\n", nil},
		{"of resawing sheets", sheet18 + oneShelf + "resaw = true\n",
			[]string{`bench.toml:14: part "shelf": resaw: sheets are not resawn; it is left out of account`}},
		{"of resawing what a thinner board gives with less waste", board + strings.NewReplacer("oak board", "thick", "27", "60").Replace(board) + leg + "count = 2\nresaw = true\n",
			[]string{`bench.toml:24: part "block": resaw: a board of oak that gives one piece wastes less than a thicker one resawn; it is planed down from one; leave out the thinner boards if it must be resawn`}},
		{"of resawing what of a thicker board there is too little", board + strings.NewReplacer("oak board", "thick", "27", "50").Replace(board) + "on_hand = true\ncount = 1\n" + leg + "count = 2\nresaw = true\n",
			[]string{`bench.toml:26: part "block": resaw: boards of oak that are thick enough for two pieces may be too few, and others are for sale without limit; it is planed down from one; leave out the thinner boards if it must be resawn`}},
		{"of resawing boards that are too thin", board + leg + "count = 2\nresaw = true\n",
			[]string{`bench.toml:17: part "block": resaw: no board of oak that is large enough is thick enough for two pieces of 24 mm with a kerf of 1.6 mm between; it is planed down from one; add a thicker board`}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, w := range mustRead(t, tt.text).Warnings {
				got = append(got, w.Error())
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("warnings (-want +got):\n%s", diff)
			}
		})
	}
}

func TestReadFindsListsBesideTheJob(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"jobs/bench.toml":   `parts = "../lists/shelves.csv"` + sheet18,
		"lists/shelves.csv": "name,material,length,width\nshelf,birch ply 18,900,300\n",
	} {
		full := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	file, err := job.Read(filepath.Join(dir, "jobs", "bench.toml"))
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{filepath.Join(dir, "lists", "shelves.csv")}; !cmp.Equal(file.Lists, want) {
		t.Errorf("lists are %v, want %v", file.Lists, want)
	}
	if got, want := file.Parts[0].From, "shelves.csv:2"; got != want {
		t.Errorf("the shelf is from %q, want %q", got, want)
	}
}

func TestReadSaysWhyAFileCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	for path, want := range map[string]string{
		filepath.Join(dir, "none.toml"): "none.toml: there is no such file; check its name and folder",
		dir:                             "is a folder; name a file in it",
	} {
		_, err := job.Read(path)
		if err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("Read(%q): %v, want ... %s", path, err, want)
		}
	}
}

func TestFaultsAreToldInFileOrder(t *testing.T) {
	_, err := read(t, "parts = [\"b.csv\", \"a.csv\"]\n"+strings.Replace(oneShelf, "900", "-1", 1)+strings.Replace(sheet18, "18\n", "600\n", 1),
		"a.csv", "name,material,length,width\nx,birch ply 18,1,q\ny,birch ply 18,1,q\n",
		"b.csv", "name,material,length,width\nz,birch ply 18,1,q\n")
	faults, ok := err.(fault.Faults)
	if !ok {
		t.Fatalf("error is %T, want fault.Faults", err)
	}
	type at struct {
		File string
		Line int
	}
	var got []at
	for _, f := range faults {
		got = append(got, at{f.File, f.Line})
	}
	want := []at{{"bench.toml", 6}, {"bench.toml", 12}, {"b.csv", 2}, {"a.csv", 2}, {"a.csv", 3}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("places (-want +got):\n%s", diff)
	}
}

func TestReadTitlesAJobWithoutTitleByItsFile(t *testing.T) {
	if got := mustRead(t, sheet18+oneShelf).Title; got != "bench" {
		t.Errorf("title is %q, want %q", got, "bench")
	}
}

// Lengths with a unit do not depend on the units of the job.
func TestReadGivesTheSameSizesInEitherUnits(t *testing.T) {
	const withUnits = `
[saw]
kerf = "3/32 in"
resaw_kerf = "1/16 in"
[[sheet]]
name = "full sheet"
material = "birch ply 18"
thickness = "18 mm"
length = "8 ft"
width = "4'"
[[part]]
name = "shelf"
material = "birch ply 18"
length = "90 cm"
width = '11 3/4"'
`
	metric, inches := mustRead(t, `units = "mm"`+withUnits), mustRead(t, `units = "in"`+withUnits)
	inches.Units = metric.Units
	if diff := cmp.Diff(metric.Job, inches.Job); diff != "" {
		t.Errorf("job (-mm +in):\n%s", diff)
	}
}

// More offers than are compared are refused at once, whatever else the job holds.
func TestMoreOffersThanAreComparedAreRefused(t *testing.T) {
	list := "kind,name,material,thickness,length,width\n" + strings.Repeat("sheet,s,m,18,2440,1220\n", 5001)
	_, err := read(t, `offers = "list.csv"`+oneShelf, "list.csv", list)
	const want = "bench.toml: the job has 5001 offers, and at most 5000 are compared; leave out what no part is cut from"
	if err == nil || err.Error() != want {
		t.Errorf("error is %v, want %s", err, want)
	}
}
