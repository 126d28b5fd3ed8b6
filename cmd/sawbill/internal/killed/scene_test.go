package killed

import (
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// scene is a command that changes a shop's files, and how things stand before it.
type scene struct {
	name    string
	base    string // of [bases]: what leads there; empty for an empty folder
	more    []step // and what else
	command []string
	// ahead is a file that may have a line more although the command was not carried out:
	// the history of a rack that was edited by hand before, the record of a plan that is
	// about to be booked. The line is what the next run goes on from.
	ahead string
}

// step is a command, or an edit by hand.
type step func(t *testing.T, folder string)

// does is a command; its status must be 0.
func does(line string, more ...string) step {
	args := append(strings.Fields(line), more...)
	return func(t *testing.T, folder string) {
		t.Helper()
		if r := run(t, folder, args...); !r.ok {
			t.Fatalf("sawbill %s: %s", strings.Join(args, " "), r.all)
		}
	}
}

// writes writes a file, edits one: both as its owner does.
func writes(name, text string) step {
	return func(t *testing.T, folder string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func edits(name, old, new string) step {
	return func(t *testing.T, folder string) {
		t.Helper()
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil || !strings.Contains(string(text), old) {
			t.Fatalf("%s does not say %q, error %v", name, old, err)
		}
		writes(name, strings.Replace(string(text), old, new, 1))(t, folder)
	}
}

// lays lays a shop out as version 1 of the program left it, with a plan in shelf-plan that
// goes on in shelf-plan-2.
func lays(t *testing.T, folder string) {
	t.Helper()
	from := os.DirFS(filepath.FromSlash("../../../../testdata/plans/v1/shelf"))
	for name, path := range map[string]string{"hall-plan": "shelf-plan", "hall-plan-2": "shelf-plan-2"} {
		sub, err := fs.Sub(from, name)
		if err == nil {
			err = os.CopyFS(filepath.Join(folder, path), sub)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"shelf.toml", "rack.toml", "rack.toml.history"} {
		text, err := fs.ReadFile(from, name)
		if err != nil {
			t.Fatal(err)
		}
		writes(name, string(text))(t, folder)
	}
}

// removes removes a file, as its owner does.
func removes(name string) step {
	return func(t *testing.T, folder string) {
		t.Helper()
		if err := os.Remove(filepath.Join(folder, name)); err != nil {
			t.Fatal(err)
		}
	}
}

const shelf = `title = "Hall shelf"
rack = "rack.toml"
[[sheet]]
name = "birch 18"
material = "birch ply 18"
thickness = 18
length = 2440
width = 1220
price = 74.50
[[part]]
name = "side"
material = "birch ply 18"
length = 1150
width = 280
count = 2
[[part]]
name = "shelf"
material = "birch ply 18"
length = 764
width = 280
count = 4
`

const leftovers = "count,material,length,width,thickness\n2,birch ply 18,900,400,18\n1,birch ply 18,1200,600,18\n"

// Files that are ahead.
const (
	history = "rack.toml.history"
	record  = "shelf-plan/progress.jsonl"
	second  = "shelf-plan-2/progress.jsonl"
)

// on is the day of a command.
const on = " --date 2026-03-05"

const (
	piece = "rack add --length 800mm --width 300mm --thickness 18mm --note spare" + on + " --material" // and the material
	plan  = "plan --quiet --iterations 30 shelf.toml"
	recut = "recut --quiet --iterations 30" + on
)

// bases are how things stand before several scenes. Each may go on from another.
var bases = map[string]scene{
	"rack":    {more: []step{writes("leftovers.csv", leftovers), does("rack import leftovers.csv" + on)}},
	"planned": {base: "rack", more: []step{writes("shelf.toml", shelf), does(plan)}},
	"cut":     {base: "planned", more: []step{does("progress shelf-plan --cut all" + on)}},
	"spoiled": {base: "cut", more: []step{does("progress shelf-plan --spoiled side=1100x280 --lost shelf" + on)}},
	"recut":   {base: "spoiled", more: []step{does(recut + " shelf-plan")}},
	"1":       {more: []step{lays}},
	"lost":    {base: "recut", more: []step{does("progress shelf-plan-2 --cut all --lost shelf" + on)}},
}

// scenes are all that are played.
var scenes = []scene{
	{"the first piece of a rack", "", nil, words(piece, "oak"), ""},
	{"one more piece", "rack", nil, words(piece, "oak"), ""},
	{"a list of pieces", "rack", []step{writes("more.csv", leftovers)}, words("rack import more.csv" + on), ""},
	{"a piece on a rack that was edited", "rack", []step{edits("rack.toml", "length = 1200", "length = 1100")}, words(piece, "oak"), history},
	{"a piece on a rack in inches", "", []step{writes("rack.toml", "units = \"in\"\r\n# mine\r\n")}, words(piece, "oak"), history},
	{"pieces taken", "rack", nil, words("rack take R1 R3" + on), ""},
	{"an undo", "rack", nil, words("rack undo" + on), ""},
	{"an undo of an edit", "rack", []step{edits("rack.toml", "length = 1200", "length = 1100")}, words("rack undo" + on), history},
	{"an earlier state", "rack", []step{does("rack take R2" + on), does("rack take R3" + on)}, words("rack restore 1" + on), ""},
	{"the first cut", "planned", nil, words("progress shelf-plan --cut 1" + on), ""},
	{"a spoiled side", "cut", nil, words("progress shelf-plan --spoiled side=1100x280 --lost shelf" + on), ""},
	{"a cut taken back", "cut", []step{does("progress shelf-plan --lost shelf" + on)}, words("progress shelf-plan --undo" + on), ""},
	{"a plan in a folder of its own", "rack", []step{writes("shelf.toml", shelf)}, words(plan), ""},
	{"a plan with more layouts", "planned", []step{edits("shelf.toml", "count = 4", "count = 24")}, words(plan), ""},
	{"a plan with fewer layouts", "planned", []step{edits("shelf.toml", "count = 4", "count = 1")}, words(plan), ""},
	{"a what-if", "planned", nil, words(plan + " --count shelf=2 -o what-if"), ""},
	{"the rest of a plan", "spoiled", nil, words(recut + " shelf-plan"), ""},
	{"the rest of a rest", "lost", nil, words(recut + " shelf-plan-2"), ""},
	{"the rest of a rest in a folder named", "lost", nil, words(recut + " shelf-plan-2 -o third"), ""},
	{"a rest withdrawn", "recut", nil, words("recut shelf-plan-2 --withdraw" + on), ""},
	{"a rest in place of one withdrawn", "recut", []step{does("recut shelf-plan-2 --withdraw" + on)}, words(recut + " shelf-plan"), ""},
	{"a plan booked", "cut", nil, words("rack book shelf-plan" + on), record},
	{"a rest booked", "lost", []step{does("progress shelf-plan-2 --undo" + on), does("progress shelf-plan-2 --cut all" + on)}, words("rack book shelf-plan-2" + on), second},
	{"a plan given up", "planned", []step{does("progress shelf-plan --cut 1" + on)}, words("rack book shelf-plan --give-up" + on), record},
	{"a cut of version 1", "1", nil, words("progress shelf-plan-2 --cut all" + on), ""},
	{"a cut of version 1 taken back", "1", nil, words("progress shelf-plan-2 --undo" + on), ""},
	{"the rest of a plan of version 1", "1", []step{does("progress shelf-plan-2 --cut all" + on), does("progress shelf-plan-2 --lost cleat" + on)}, words(recut + " shelf-plan-2"), ""},
	{"a rest of version 1 withdrawn", "1", []step{does("progress shelf-plan-2 --undo" + on)}, words("recut shelf-plan-2 --withdraw" + on), record},
	{"a rest of version 1 booked", "1", []step{does("progress shelf-plan-2 --cut all" + on)}, words("rack book shelf-plan-2" + on), second},
	{"a plan in a folder without a list, as version 1 left it", "planned", []step{removes("shelf-plan/.sawbill-files"), edits("shelf.toml", "count = 4", "count = 1")}, words(plan), ""},
	{"a booking taken back", "cut", []step{does("rack book shelf-plan" + on)}, words("rack undo" + on), ""},
}

// words parts a line at its blanks; more words may have blanks of their own.
func words(line string, more ...string) []string {
	return append(strings.Fields(line), more...)
}

// looks are the readers. Some are commands that are refused, but for another reason once a
// plan goes on in another folder, is withdrawn or booked.
var looks = [][]string{
	{"rack", "list"}, {"rack", "history"}, {"parts", "shelf.toml"},
	words("progress shelf-plan"), words("progress shelf-plan --missing nothing"),
	words("progress shelf-plan-2"), words("progress shelf-plan-2 --missing nothing"),
	words("progress shelf-plan-3"), words("progress shelf-plan-3 --missing nothing"),
	words("progress what-if"), words("progress third"),
}

// view is what the readers see.
func (s scene) view(t *testing.T, folder string) string {
	t.Helper()
	seen := ""
	for _, look := range looks {
		if s.ahead == history && look[1] == "history" {
			continue
		}
		seen += "$ sawbill " + strings.Join(look, " ") + "\n" + run(t, folder, look...).all
	}
	return seen
}

// stage is a scene ready to be played: the shop before and after its command.
type stage struct {
	scene
	folder           string // before; it is copied for each play
	oldTree, newTree tree
	oldView, newView string
	took             time.Duration
}

// theater sets scenes up, each base once.
type theater struct{ bases map[string]string }

// set plays what leads to a scene, in a folder of its own.
func (th *theater) set(t *testing.T, s scene) (folder string) {
	t.Helper()
	switch {
	case s.base == "":
		folder = filepath.Join(t.TempDir(), "shop")
		if err := os.Mkdir(folder, 0o777); err != nil {
			t.Fatal(err)
		}
	default:
		if th.bases[s.base] == "" {
			th.bases[s.base] = th.set(t, bases[s.base])
		}
		folder = copied(t, th.bases[s.base])
	}
	for _, do := range s.more {
		do(t, folder)
	}
	return folder
}

func (th *theater) stage(t *testing.T, s scene) *stage {
	t.Helper()
	st := &stage{scene: s, folder: th.set(t, s)}
	st.oldTree, st.oldView = treeOf(t, st.folder), st.view(t, st.folder)
	if d := differences(st.oldTree, treeOf(t, st.folder)); d != "" {
		t.Fatalf("%s: readers change files: %s", s.name, d)
	}
	after := copied(t, st.folder)
	begin := time.Now()
	if r := run(t, after, s.command...); !r.ok {
		t.Fatalf("%s: sawbill %s: %s", s.name, strings.Join(s.command, " "), r.all)
	}
	st.took = time.Since(begin)
	st.newTree, st.newView = treeOf(t, after), st.view(t, after)
	if st.oldView == st.newView {
		t.Fatalf("%s: readers see no difference:\n%s", s.name, st.newView)
	}
	return st
}

// faults looks at a shop after the command was killed there. Readers see the old state or
// the new one, whole, and leave nothing of the killed run; what was acknowledged is there;
// and if nothing was done, the command can be run again.
func (st *stage) faults(t *testing.T, folder string, r ran) (faults []string) {
	t.Helper()
	wrong := func(format string, values ...any) { faults = append(faults, fmt.Sprintf(format, values...)) }
	same := func(when string, want, got tree) {
		if d := differences(want, got); d != "" {
			wrong("%s, but %s", when, d)
		}
	}
	seen := st.view(t, folder)
	is := treeOf(t, folder)
	switch {
	case !r.killed && !r.ok:
		wrong("failed: %s", r.all)
	case seen == st.newView:
		same("readers see the new state", st.newTree, is)
	case seen != st.oldView:
		wrong("readers see neither the old state (-) nor the new one:\n%s", cmp.Diff(strings.Split(st.oldView, "\n"), strings.Split(seen, "\n")))
	case r.ok || r.stdout != "":
		wrong("it was acknowledged, and readers see the old state: %s", r.stdout)
	default:
		same("readers see the old state", st.oldTree, st.lessAhead(is))
		if again := run(t, folder, st.command...); !again.ok {
			wrong("run again: %s", again.all)
		}
		same("the command was run again", st.newTree, treeOf(t, folder))
	}
	return faults
}

// lessAhead is a tree as if the file that may be ahead were not.
func (st *stage) lessAhead(is tree) tree {
	is = maps.Clone(is)
	before, had := st.oldTree[st.ahead]
	switch now, has := is[st.ahead]; {
	case !has || !strings.HasPrefix(now, before):
	case had:
		is[st.ahead] = before
	default:
		delete(is, st.ahead)
	}
	return is
}
