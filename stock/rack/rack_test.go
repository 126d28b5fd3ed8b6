package rack_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
	"sawbill/stock/job"
	"sawbill/stock/rack"
)

var (
	plank = stock.Piece{Kind: stock.Board, Material: "white oak", Length: 96 * stock.Inch, Width: 150 * stock.Millimeter, Thickness: stock.Inch}
	panel = stock.Piece{Name: "birch 18, 8x4", Material: "birch ply 18", Length: 2440 * stock.Millimeter, Width: 1220 * stock.Millimeter,
		Thickness: 18 * stock.Millimeter, Note: `corner crushed, "B" face`, From: `the yard \ shed`}
)

// byHand is a rack as its owner wrote it.
const byHand = `# the rack behind the door
units = "in"

# best pieces
[[piece]]
id = "A-1"   # on top
material = "walnut"
kind = "board"
length = "31 1/2"
width = 6
thickness = "13/16"

# under the bench
[[piece]]
id = "R4"
material = "MDF 12"
length = 24
width = "600 mm"
thickness = "12 mm"
grain = "none"
`

func written(t *testing.T, text string) (rack.Rack, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "rack.toml")
	if text != "" {
		if err := os.WriteFile(path, []byte(text), 0o640); err != nil {
			t.Fatal(err)
		}
	}
	return rack.At(path), path
}

func text(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func change(t *testing.T, r rack.Rack, c rack.Change) rack.Done {
	t.Helper()
	c.Date = today
	done, err := r.Change(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return done
}

func ids(t *testing.T, r rack.Rack) string {
	t.Helper()
	file, err := r.Read()
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, p := range file.Pieces {
		all = append(all, p.ID)
	}
	return strings.Join(all, " ")
}

func TestWhatIsPutIsReadBackExactly(t *testing.T) {
	for _, units := range []stock.Units{stock.Millimeters, stock.Inches} {
		r, _ := written(t, "")
		odd := panel
		odd.Length, odd.Grain, odd.Since = 1, stock.GrainWidth, "2025-12-31" // 25 nm
		loose := panel
		loose.Grain, loose.Note = stock.GrainAny, "# no remark"
		put := []stock.Piece{plank, panel, odd, loose}
		done, err := r.Change(t.Context(), rack.Change{Put: put, Date: today, Units: units})
		if err != nil {
			t.Fatal(err)
		}
		file, err := r.Read()
		if err != nil {
			t.Fatal(err)
		}
		for i := range put {
			put[i].ID = fmt.Sprintf("R%d", i+1)
			if put[i].Since == "" {
				put[i].Since = today
			}
		}
		if d := cmp.Diff(put, file.Pieces); d != "" || file.Units != units {
			t.Errorf("in %v (-put +read):\n%s", units, d)
		}
		if d := cmp.Diff(put, done.Put); d != "" {
			t.Errorf("told (-put +told):\n%s", d)
		}
	}
}

func TestWhatTheOwnerWroteStays(t *testing.T) {
	r, path := written(t, byHand)
	change(t, r, rack.Change{Take: []string{"a-1"}})
	want := strings.Replace(byHand, byHand[strings.Index(byHand, "[[piece]]"):strings.Index(byHand, "# under")], "", 1)
	if d := cmp.Diff(want, text(t, path)); d != "" {
		t.Errorf("after a piece was taken (-want +got):\n%s", d)
	}
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	want += "\n[[piece]]\nid = \"R5\"\nkind = \"board\"\nmaterial = \"white oak\"\nlength = 96\nwidth = \"150 mm\"\nthickness = 1\nsince = 2026-03-05\n"
	if d := cmp.Diff(want, text(t, path)); d != "" {
		t.Errorf("after a piece was put (-want +got):\n%s", d)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("its permissions are %v now", info.Mode())
	}
}

func TestLinesEndAsTheyDid(t *testing.T) {
	r, path := written(t, strings.ReplaceAll(byHand, "\n", "\r\n"))
	change(t, r, rack.Change{Take: []string{"R4"}, Put: []stock.Piece{panel}})
	if got := text(t, path); strings.Count(got, "\n") != strings.Count(got, "\r\n") {
		t.Errorf("line ends are mixed: %q", got)
	}
}

// The rack may be a link to a file elsewhere: the file is changed, the link stays.
func TestALinkStaysALink(t *testing.T) {
	_, path := written(t, byHand)
	link := filepath.Join(t.TempDir(), "rack.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no links here: ", err)
	}
	change(t, rack.At(link), rack.Change{Take: []string{"R4"}})
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is %v, %v", info.Mode(), err)
	}
	if strings.Contains(text(t, path), "R4") {
		t.Error("the file behind the link was not changed")
	}
}

func TestUndoRestoresTheBytes(t *testing.T) {
	for name, start := range map[string]string{"none": "", "by hand": byHand, "no line end": strings.TrimSpace(byHand), "mark first": "\ufeff" + byHand} {
		t.Run(name, func(t *testing.T) {
			r, path := written(t, start)
			states := []string{start}
			did := func(c rack.Change) {
				change(t, r, c)
				states = append(states, text(t, path))
			}
			did(rack.Change{Put: []stock.Piece{plank, panel}})
			did(rack.Change{Put: []stock.Piece{panel}})
			last := ids(t, r)
			did(rack.Change{Take: []string{last[strings.LastIndex(last, " ")+1:]}, Put: []stock.Piece{plank}})
			for i := len(states) - 2; i >= 0; i-- {
				if _, _, err := r.Undo(t.Context(), today); err != nil {
					t.Fatal(err)
				}
				if d := cmp.Diff(states[i], text(t, path)); d != "" {
					t.Fatalf("undo to state %d (-was +is):\n%s", i, d)
				}
			}
		})
	}
}

// Undo goes back step by step, beyond what was done and undone before.
func TestUndoPassesOverWhatWasUndone(t *testing.T) {
	r, _ := written(t, "")
	for range 3 {
		change(t, r, rack.Change{Put: []stock.Piece{plank}})
	}
	undo := func(change int, left string) {
		t.Helper()
		_, undone, err := r.Undo(t.Context(), today)
		if err != nil || undone.Number != change || ids(t, r) != left {
			t.Errorf("undo took back change %d and left %q (%v), want %d and %q", undone.Number, ids(t, r), err, change, left)
		}
	}
	undo(3, "R1 R2")                                            // 4
	change(t, r, rack.Change{Put: []stock.Piece{plank}})        // 5
	undo(5, "R1 R2")                                            // 6
	undo(2, "R1")                                               // 7
	if _, err := r.Restore(t.Context(), 3, today); err != nil { // 8
		t.Fatal(err)
	}
	if got := ids(t, r); got != "R1 R2 R3" {
		t.Errorf("restored to change 3 there are %s", got)
	}
	undo(8, "R1")
	undo(1, "")
	if _, _, err := r.Undo(t.Context(), today); err == nil {
		t.Error("there is nothing to take back, and no error")
	}
}

func TestEveryStateCanBeHadAgain(t *testing.T) {
	r, path := written(t, byHand)
	for i := range 12 {
		c := rack.Change{Put: []stock.Piece{plank, panel}[:1+i%2]}
		if i%3 == 2 {
			c.Take = strings.Fields(ids(t, r))[:2]
		}
		change(t, r, c)
		if i == 5 {
			if err := os.WriteFile(path, []byte(text(t, path)+"# \xff\xfe no text\n"), 0o644); err != nil {
				t.Fatal(err)
			}
			if _, err := r.Change(t.Context(), c); err == nil {
				t.Fatal("a file that is no text was changed")
			}
			if _, _, err := r.Undo(t.Context(), today); err != nil {
				t.Fatal(err)
			}
		}
	}
	for n, state := range rack.States(path) {
		if _, err := r.Restore(t.Context(), n, today); err != nil {
			t.Fatal(err)
		}
		if got := text(t, path); got != state {
			t.Errorf("restored to change %d:\n%s", n, cmp.Diff(state, got))
		}
	}
}

func TestAnIdIsNeverGivenTwice(t *testing.T) {
	r, path := written(t, strings.Replace(byHand, "R4", "r40", 1))
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	change(t, r, rack.Change{Take: []string{"R41", "R40"}})
	if err := os.WriteFile(path, []byte(byHand), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Restore(t.Context(), 0, today); err != nil {
		t.Fatal(err)
	}
	if done := change(t, r, rack.Change{Put: []stock.Piece{plank}}); done.Put[0].ID != "R42" {
		t.Errorf("the next id is %s", done.Put[0].ID)
	}
}

func TestEditsByHandAreRemembered(t *testing.T) {
	r, path := written(t, byHand)
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	edit := strings.Replace(text(t, path), `"31 1/2"`, `"29 3/4"`, 1)
	if err := os.WriteFile(path, []byte(edit), 0o644); err != nil {
		t.Fatal(err)
	}
	if done := change(t, r, rack.Change{Take: []string{"R5"}}); !done.ByHand || done.Number != 4 {
		t.Errorf("change %d tells of the edit: %v", done.Number, done.ByHand)
	}
	entries, err := r.History()
	if err != nil {
		t.Fatal(err)
	}
	var what []string
	for _, e := range entries {
		what = append(what, e.What)
	}
	if d := cmp.Diff([]string{"as it was found", "added", "edited by hand", "taken"}, what); d != "" {
		t.Error(d)
	}
	if rack.States(path)[3] != edit {
		t.Error("the edit cannot be had again")
	}
}

func TestAPlanIsCarriedOutOnce(t *testing.T) {
	r, _ := written(t, byHand)
	carry := rack.Change{Take: []string{"R4"}, Put: []stock.Piece{panel}, Plan: "K7F2", What: "plan K7F2 carried out", Date: today}
	change(t, r, carry)
	again := carry
	again.Take = nil // even if nothing else would stop it
	if _, err := r.Change(t.Context(), again); err == nil || !strings.Contains(err.Error(), "plan K7F2 was carried out already (change 2 of "+today+")") {
		t.Errorf("the second time: %v", err)
	}
	other := again
	other.Plan = "K7F3"
	change(t, r, other)
	if _, err := r.Restore(t.Context(), 1, today); err != nil {
		t.Fatal(err)
	}
	change(t, r, carry) // it was taken back
}

// What is refused changes nothing: neither the file nor the history.
func TestRefusedChangesWriteNothing(t *testing.T) {
	tests := []struct {
		name, start string
		change      rack.Change
		want        string
	}{
		{"not there", byHand, rack.Change{Take: []string{"R4", "R5", "R6"}}, `piece "R6": is not on the rack`},
		{"named twice", byHand, rack.Change{Take: []string{"R4", "r4"}}, "is named twice"},
		{"wrong file", strings.Replace(byHand, "kind", "kynd", 1), rack.Change{Put: []stock.Piece{plank}}, `rack.toml:8: piece "A-1": unknown key "kynd"; did you mean "kind"?`},
		{"sheet and board", byHand, rack.Change{Put: []stock.Piece{{Material: "walnut", Length: 1, Width: 1, Thickness: 1}}}, `material "walnut": is on the rack as a board (A-1), and as a sheet here; say that it is a board`},
		{"half readable", "\xff\xfe" + byHand, rack.Change{Put: []stock.Piece{plank}}, "rack.toml"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			r, path := written(t, test.start)
			if _, err := r.Change(t.Context(), test.change); err == nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("error %v, want %q", err, test.want)
			}
			if got := text(t, path); got != test.start {
				t.Errorf("the file was changed:\n%s", got)
			}
			if left, _ := filepath.Glob(path + ".*"); len(left) > 0 {
				t.Errorf("%q were written", left)
			}
		})
	}
}

func TestAFileThatIsGoneIsNotBegunAnew(t *testing.T) {
	r, path := written(t, byHand)
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
	was := text(t, path)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Change(t.Context(), rack.Change{Put: []stock.Piece{plank}}); err == nil || !strings.Contains(err.Error(), "the file is gone") {
		t.Errorf("error %v", err)
	}
	if _, _, err := r.Undo(t.Context(), today); err != nil || text(t, path) != was {
		t.Errorf("undo does not bring it back: %v", err)
	}
}

func TestADamagedHistoryIsToldWithItsLine(t *testing.T) {
	r, path := written(t, byHand)
	for range 3 {
		change(t, r, rack.Change{Put: []stock.Piece{plank}})
	}
	history, was := text(t, path+".history"), text(t, path)
	for cause, damaged := range map[string]string{
		"history:2: the line is not as it was written":    strings.Replace(history, `"n":2`, `"m":2`, 1),
		"history:2: the change does not follow":           strings.Replace(history, "walnut", "pear", 1),
		"history:3: the line is not as it was written":    strings.Join(append(strings.SplitAfter(history, "\n")[:2], strings.SplitAfter(history, "\n")[3:]...), ""),
		"history:4: the changes do not lead to the state": strings.Replace(history, "thickness = 1\\n", "thickness = 2\\n", 3),
	} {
		if err := os.WriteFile(path+".history", []byte(damaged), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := r.Change(t.Context(), rack.Change{Put: []stock.Piece{plank}}); err == nil || !strings.Contains(err.Error(), cause) {
			t.Errorf("error %v, want %q", err, cause)
		}
		if text(t, path) != was || text(t, path+".history") != damaged {
			t.Error("something was written all the same")
		}
	}
}

// Two programs at once: each change is there, none twice, and they take turns.
func TestTwoWritersLoseNothing(t *testing.T) {
	r, path := written(t, "")
	const writers, each = 4, 15
	var all sync.WaitGroup
	for w := range writers {
		all.Go(func() {
			p := plank
			for i := range each {
				p.Note = fmt.Sprintf("writer %d, piece %d", w, i)
				if _, err := rack.At(path).Change(t.Context(), rack.Change{Put: []stock.Piece{p}, Date: today}); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	file, err := r.Read()
	if err != nil {
		t.Fatal(err)
	}
	seen := make(map[string]bool)
	for i, p := range file.Pieces {
		if seen[p.Note] || p.ID != fmt.Sprintf("R%d", i+1) {
			t.Errorf("%s, %q", p.ID, p.Note)
		}
		seen[p.Note] = true
	}
	if len(seen) != writers*each {
		t.Errorf("%d pieces are there of %d", len(seen), writers*each)
	}
}

func TestWaitingForAnotherProgramEnds(t *testing.T) {
	r, path := written(t, byHand)
	free := rack.Hold(t, path)
	ctx, end := context.WithCancel(t.Context())
	end()
	if _, err := r.Change(ctx, rack.Change{Put: []stock.Piece{plank}}); err == nil || !strings.Contains(err.Error(), "another program is changing the rack") {
		t.Errorf("error %v", err)
	}
	free()
	change(t, r, rack.Change{Put: []stock.Piece{plank}})
}

// A file that can be read can be changed: what is taken is gone, what is put is
// there, and the rest is as it was.
func FuzzEdit(f *testing.F) {
	f.Add(byHand)
	f.Add("[[piece]]\nid='X'\nmaterial=\"a\\\"b\"\nlength=1\nwidth=1\nthickness=1\nnote='''\n# [[piece]]\n\n'''\n# end")
	f.Add("units='in'\r\npiece.id = 'A'\r\n")
	f.Add("[[piece]]\n[[piece]]\nid = 'R9999999'\nmaterial='m'\nlength=1\nwidth=1\nthickness=1\n")
	f.Fuzz(func(t *testing.T, source string) {
		before, err := job.ParseRack("rack.toml", []byte(source))
		if err != nil {
			return
		}
		for i, p := range before.Pieces {
			if p.Material == panel.Material || strings.EqualFold(p.ID, "new") {
				return // it cannot be put beside these
			}
			after, err := rack.Edited(before, []int{i}, []stock.Piece{panel})
			if err != nil {
				t.Fatalf("%v\n%s", err, after)
			}
		}
	})
}

// A change to a rack of 300 pieces with so many changes behind it.
func BenchmarkChange(b *testing.B) {
	for _, behind := range []int{10, 1000} {
		b.Run(fmt.Sprint(behind), func(b *testing.B) {
			r := rack.At(filepath.Join(b.TempDir(), "rack.toml"))
			do := func(c rack.Change) rack.Done {
				c.Date = today
				done, err := r.Change(b.Context(), c)
				if err != nil {
					b.Fatal(err)
				}
				return done
			}
			do(rack.Change{Put: slices.Repeat([]stock.Piece{panel}, 300)})
			exchange := func() {
				put := do(rack.Change{Put: []stock.Piece{plank}}).Put
				do(rack.Change{Take: []string{put[0].ID}})
			}
			for range behind / 2 {
				exchange()
			}
			for b.Loop() {
				exchange()
			}
		})
	}
}

// Nothing can be taken of a rack that is not there, and nothing is left of the attempt.
func TestWhereThereIsNoRackNothingIsLeftBehind(t *testing.T) {
	folder := t.TempDir()
	r := rack.At(filepath.Join(folder, "rack.toml"))
	if _, err := r.Change(t.Context(), rack.Change{Take: []string{"R1"}, Date: today}); err == nil || !strings.Contains(err.Error(), "no such rack") {
		t.Error(err)
	}
	if _, _, err := r.Undo(t.Context(), today); err == nil || !strings.Contains(err.Error(), "no such rack") {
		t.Error(err)
	}
	if _, err := r.Restore(t.Context(), 0, today); err == nil || !strings.Contains(err.Error(), "no such rack") {
		t.Error(err)
	}
	if there, err := os.ReadDir(folder); err != nil || len(there) > 0 {
		t.Error(there, err)
	}
}
