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

const onRack = `units = "in"
[[piece]]
id = "R1"
material = "birch ply 18"
length = 20
width = "12 1/2"
thickness = "18 mm"
[[piece]]
id = "R2"
kind = "board"
material = "walnut"
length = 30
width = 6
thickness = 1
since = 2026-03-05
`

func readWithRack(jobText, rackText string) (*job.File, error) {
	return job.ReadFS(fstest.MapFS{
		"jobs/bench.toml": {Data: []byte(jobText)},
		"jobs/rack.toml":  {Data: []byte(rackText)},
	}, "jobs/bench.toml")
}

const namesRack = "rack = \"rack.toml\"\n"

// The pieces are on hand, by their ids, in the rack's own units; those of which
// no part is are left out, without a warning.
func TestPiecesOfTheRackJoinTheStock(t *testing.T) {
	file, err := readWithRack(namesRack+sheet18+oneShelf, onRack)
	if err != nil {
		t.Fatal(err)
	}
	want := stock.Stock{Name: "R1", Material: "birch ply 18", Length: 20 * stock.Inch, Width: 25 * stock.Inch / 2,
		Thickness: 18 * stock.Millimeter, Count: 1, OnHand: true}
	if len(file.Stock) != 2 || len(file.Warnings) > 0 || file.Rack != "jobs/rack.toml" {
		t.Fatalf("stock %+v, warnings %v, rack %q", file.Stock, file.Warnings, file.Rack)
	}
	if d := cmp.Diff(want, file.Stock[1]); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func TestARackCanBeAllTheStock(t *testing.T) {
	if _, err := readWithRack(namesRack+strings.Replace(oneShelf, "length = 900", "length = 300", 1), onRack); err != nil {
		t.Error(err)
	}
}

// A leftover of another thickness must not make the thickness of the job's parts
// doubtful.
func TestARackDoesNotChangeTheUsualThickness(t *testing.T) {
	file, err := readWithRack(namesRack+sheet18+oneShelf, strings.Replace(onRack, `"18 mm"`, `"12 mm"`, 1))
	if err != nil {
		t.Fatal(err)
	}
	if file.Parts[0].Thickness != 18*stock.Millimeter {
		t.Errorf("the shelf is %v thick", file.Parts[0].Thickness)
	}
}

func TestFaultsOfARackAreToldWithItsOwnLines(t *testing.T) {
	tests := []struct {
		name, job, rack string
		want            []string
	}{
		{"all of them", namesRack + sheet18 + oneShelf + "\ncolor = 3\n", "unit = 3\n" + strings.Replace(onRack, "length = 20\n", "lenght = -1\n", 1) + "kind = 'bord'\n",
			[]string{`jobs/bench.toml:`, `unknown key "color"`, `jobs/rack.toml:1: unknown key "unit"; did you mean "units"?`,
				`jobs/rack.toml:6: piece "R1": unknown key "lenght"; did you mean "length"?`, `jobs/rack.toml:17: piece "R2": kind: is given twice, first in line 11`}},
		{"no file", "rack = \"shed.toml\"\n" + sheet18 + oneShelf, onRack, []string{"jobs/bench.toml:1: rack: shed.toml: there is no such file; check its name and folder"}},
		{"two racks", "rack = [\"rack.toml\", \"shed.toml\"]\n" + sheet18 + oneShelf, onRack, []string{"bench.toml:1: rack: a job has one rack; name the file of one"}},
		{"a key of jobs", namesRack + sheet18 + oneShelf, onRack + "kerf = 3\n", []string{`rack.toml:16: piece "R2": unknown key "kerf"; known here are id, kind,`}},
		{"sheet and board", namesRack + sheet18 + oneShelf, strings.Replace(onRack, "[[piece]]\nid = \"R1\"", "[[piece]]\nkind = \"board\"\nid = \"R1\"", 1),
			[]string{`rack.toml:5: piece "R1": material: "birch ply 18" is a sheet in line`, "bench.toml and a board here; give sheets and boards different materials"}},
		{"both in the rack", namesRack + sheet18 + oneShelf, strings.Replace(onRack, "walnut", "birch ply 18", 1),
			[]string{`rack.toml:10: piece "R2": "birch ply 18" is a sheet in line 2 and a board here`}},
		{"a name of the job's", namesRack + strings.Replace(sheet18, "name = \"", "name = \"r1\" #", 1) + oneShelf, onRack,
			[]string{`rack.toml:3: piece "R1": id: the sheet in line`, "has this name"}},
		{"one id twice", namesRack + sheet18 + oneShelf, strings.Replace(onRack, "R2", "r1", 1), []string{`rack.toml:9: piece "r1": id: the piece in line 2 has the same id`}},
		{"strange ids", namesRack + sheet18 + oneShelf, strings.NewReplacer(`"R1"`, `"left of the door"`, `"R2"`, "17").Replace(onRack),
			[]string{`"left of the door" is long to write on a piece`, `id: is a number (17); write it in quotes: "17"`}},
		{"no day", namesRack + sheet18 + oneShelf, strings.Replace(onRack, "2026-03-05", `"March"`, 1), []string{`since: "March" is no day; write it as year, month and day: 2026-03-05`}},
		{"one list", namesRack + sheet18 + oneShelf, "piece = [{id = 'R1', material = 'birch ply 18', length = 3, width = 3, thickness = 3}]", []string{"rack.toml:1: piece: the pieces stand in one list"}},
		{"a sheet of lumber", namesRack + "[[rough]]\nmaterial = 'walnut'\nquarter = '4/4'\ngrade = 'FAS'\n" + sheet18 + oneShelf, strings.Replace(onRack, `kind = "board"`, `kind = "sheet"`, 1),
			[]string{`rack.toml:11: piece "R2": material: "walnut" is lumber in line 2 of jobs/bench.toml and a sheet here`}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := readWithRack(test.job, test.rack)
			if err == nil {
				t.Fatal("no fault")
			}
			for _, want := range test.want {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%q is not told of:\n%v", want, err)
				}
			}
		})
	}
}

// A case takes its thickness from what the job offers, not from a leftover.
func TestARackDoesNotChangeACase(t *testing.T) {
	source, err := os.ReadFile("../../testdata/jobs/bookcase.toml")
	if err != nil {
		t.Fatal(err)
	}
	plain, err := job.Read("../../testdata/jobs/bookcase.toml")
	if err != nil {
		t.Fatal(err)
	}
	leftover := plain.Stock[0]
	with, err := readWithRack(namesRack+string(source), "[[piece]]\nid = 'R1'\nkind = '"+leftover.Kind.String()+"'\nmaterial = '"+leftover.Material+"'\nlength = 500\nwidth = 300\nthickness = 9.7\n")
	if err != nil {
		t.Fatal(err)
	}
	for i := range with.Parts {
		with.Parts[i].From = plain.Parts[i].From // its line is one further down
	}
	if d := cmp.Diff(plain.Parts, with.Parts); d != "" {
		t.Errorf("(-without +with the rack):\n%s", d)
	}
}

func TestAListOfPieces(t *testing.T) {
	path := filepath.Join(t.TempDir(), "list.csv")
	write := func(list string) {
		if err := os.WriteFile(path, []byte(list), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("Material;Length (mm);Width;Thickness (mm);Pcs;Color;Kind\n")
	if _, _, err := job.ReadPieces(path, stock.Inches); err == nil || !strings.Contains(err.Error(), `unknown column "Pcs"; did you mean "count"?`) {
		t.Errorf("error %v", err)
	}
	write("Material;Length (mm);Width;Thickness (mm);Count;Color;Kind;Since\nwalnut;800,5;6;25;2;dark;board;2026-01-31\n\n")
	got, warnings, err := job.ReadPieces(path, stock.Inches)
	if err != nil || len(warnings) != 1 || !strings.Contains(warnings[0].Error(), `not read: the column "Color"`) {
		t.Fatal(err, warnings)
	}
	one := stock.Piece{Kind: stock.Board, Material: "walnut", Length: 8005 * stock.Millimeter / 10, Width: 6 * stock.Inch, Thickness: 25 * stock.Millimeter, Since: "2026-01-31"}
	if d := cmp.Diff([]stock.Piece{one, one}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	write("material,length,width,thickness,count\noak,1,1,1,1\noak,,x,1,0\n")
	_, _, err = job.ReadPieces(path, stock.Millimeters)
	for _, want := range []string{"list.csv:3: piece 2: length is missing; fill in its cell", `list.csv:3: piece 2: width: "x"`, "count: 0 is no count"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not told of: %v", want, err)
		}
	}
}

func FuzzReadRack(f *testing.F) {
	f.Add(onRack)
	f.Add("units = \"mm\"\n[[piece]]\nid = \"R1\"\nmaterial = \"m\"\nlength = \"27½\"\nwidth = 1e3\nthickness = 0x10\ngrain = \"none\"\nsince = \"2026-02-30\"\n")
	f.Add("piece = [{}]\n[piece.a]\n[[piece]]\n")
	f.Fuzz(func(t *testing.T, source string) {
		read, err := job.ParseRack("rack.toml", []byte(source))
		if err != nil {
			if faults, ok := err.(fault.Faults); !ok || len(faults) == 0 || read != nil {
				t.Fatalf("error is %T with %v, want faults and no rack", err, read)
			}
			for _, wrong := range err.(fault.Faults) {
				if wrong.Cause == "" || wrong.Remedy == "" {
					t.Errorf("a fault without cause or remedy: %v", wrong)
				}
			}
			return
		}
		seen, lines := make(map[string]bool), strings.Count(read.Text, "\n")+1
		for i, p := range read.Pieces {
			if p.ID == "" || seen[strings.ToUpper(p.ID)] || p.Material == "" || p.Length <= 0 || p.Width <= 0 || p.Thickness <= 0 {
				t.Fatalf("piece cannot be meant: %+v", p)
			}
			if n := read.Lines[i]; n < 1 || n > lines || i > 0 && n <= read.Lines[i-1] {
				t.Fatalf("piece %d is said to begin in line %d", i, n)
			}
			seen[strings.ToUpper(p.ID)] = true
		}
	})
}

// A rack whose change is pending counts as it is about to be; one that is settled is read
// from its file. Only the rack is settled, by the path that the job names.
func TestARackIsSettledBeforeItIsRead(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"shelf.toml":     "rack = \"shop/rack.toml\"\nparts = \"parts.csv\"\n" + sheet18,
		"parts.csv":      "name,material,length,width\nshelf,birch ply 18,700,300\n",
		"shop/rack.toml": onePiece("R1"),
	} {
		name = filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for want, pending := range map[string]bool{"R1": false, "R2": true} {
		file, err := job.ReadSettled(filepath.Join(folder, "shelf.toml"), job.Changes{}, func(rack string) (string, bool) {
			if rack != filepath.Join(folder, "shop", "rack.toml") {
				t.Errorf("settled %s", rack)
			}
			return onePiece("R2"), pending
		})
		if err != nil {
			t.Fatal(err)
		}
		names := ""
		for _, s := range file.Stock {
			if s.OnHand {
				names += s.Name
			}
		}
		if names != want {
			t.Errorf("pending %v: on hand is %q, want %q", pending, names, want)
		}
		again, err := job.Reread(file.Sources, job.Changes{})
		if err != nil || !cmp.Equal(file.Stock, again.Stock) {
			t.Errorf("read again: error %v, %v", err, again)
		}
	}
}

func onePiece(id string) string {
	return "units = \"mm\"\n[[piece]]\nid = \"" + id + "\"\nmaterial = \"birch ply 18\"\nlength = 800\nwidth = 400\nthickness = 18\n"
}

// A heading of a rack's file that is not closed is mended by the remedy, as in any file.
func TestAHeadingOfARackIsClosed(t *testing.T) {
	for broken, remedy := range map[string]string{
		"[[piece]":     "write [[piece]]",
		"[[piece  # R": "write [[piece]]",
		"[piece":       "or [[piece]] where there can be several",
	} {
		text := strings.Replace(onePiece("R1"), "[[piece]]", broken, 1)
		_, err := job.ParseRack("rack.toml", []byte(text))
		if err == nil || !strings.Contains(err.Error(), "rack.toml:2: ") || !strings.Contains(err.Error(), remedy) {
			t.Errorf("%s: %v", broken, err)
		}
	}
}
