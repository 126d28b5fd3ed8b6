package killed

import (
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
	// edited says that the rack was edited by hand before the command. Its history may
	// then say so though the command was not carried out.
	edited bool
	// noted says that the record of the plan may name the rack though the plan is not booked:
	// the rack decides.
	noted bool
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

// on is the day of a command.
const on = " --date 2026-03-05"

const (
	piece = "rack add --length 800mm --width 300mm --thickness 18mm --note spare" + on + " --material" // and the material
	plan  = "plan --quiet --iterations 30 shelf.toml"
)

// bases are how things stand before several scenes. Each may go on from another.
var bases = map[string]scene{
	"rack":    {more: []step{writes("leftovers.csv", leftovers), does("rack import leftovers.csv" + on)}},
	"planned": {base: "rack", more: []step{writes("shelf.toml", shelf), does(plan)}},
	"cut":     {base: "planned", more: []step{does("progress shelf-plan --cut all" + on)}},
	"begun":   {base: "planned", more: []step{does("progress shelf-plan --cut all" + on), does("progress shelf-plan --lost side" + on)}},
	"rest":    {base: "begun", more: []step{does("recut --quiet --iterations 30 shelf-plan" + on)}},
}

// scenes are all that are played.
var scenes = []scene{
	{"the first piece of a rack", "", nil, words(piece, "oak"), false, false},
	{"one more piece", "rack", nil, words(piece, "oak"), false, false},
	{"a list of pieces", "rack", []step{writes("more.csv", leftovers)}, words("rack import more.csv" + on), false, false},
	{"a piece on a rack that was edited", "rack", []step{edits("rack.toml", "length = 1200", "length = 1100")}, words(piece, "oak"), true, false},
	{"a piece on a rack in inches", "", []step{writes("rack.toml", "units = \"in\"\r\n# mine\r\n")}, words(piece, "oak"), true, false},
	{"pieces taken", "rack", nil, words("rack take R1 R3" + on), false, false},
	{"an undo", "rack", nil, words("rack undo" + on), false, false},
	{"an undo of an edit", "rack", []step{edits("rack.toml", "length = 1200", "length = 1100")}, words("rack undo" + on), true, false},
	{"a first plan", "rack", []step{writes("shelf.toml", shelf)}, words(plan), false, false},
	{"a plan in place of another", "planned", []step{edits("shelf.toml", "764", "754")}, words(plan), false, false},
	{"a cut", "planned", nil, words("progress shelf-plan --cut 1" + on), false, false},
	{"one more cut", "begun", nil, words("progress shelf-plan --good side" + on), false, false},
	{"progress taken back", "begun", nil, words("progress shelf-plan --undo" + on), false, false},
	{"a rest", "begun", nil, words("recut --quiet --iterations 30 shelf-plan" + on), false, false},
	{"a rest of a rest", "rest", []step{does("progress shelf-plan-2 --cut all" + on), does("progress shelf-plan-2 --lost side" + on)}, words("recut --quiet --iterations 30 shelf-plan-2 -o third" + on), false, false},
	{"a rest taken back", "rest", nil, words("recut --withdraw shelf-plan-2" + on), false, false},
	{"a booking", "cut", nil, words("rack book shelf-plan" + on), false, true},
	{"a plan given up", "planned", []step{does("progress shelf-plan --cut 1:1" + on)}, words("rack book --give-up shelf-plan" + on), false, true},
	{"an undone booking", "cut", []step{does("rack book shelf-plan" + on)}, words("rack undo" + on), false, false},
	{"an earlier state", "rack", []step{does("rack take R2" + on), does("rack take R3" + on)}, words("rack restore 1" + on), false, false},
}

// words parts a line at its blanks; more words may have blanks of their own.
func words(line string, more ...string) []string {
	return append(strings.Fields(line), more...)
}

// looks are the readers, which see all that there is to see.
var looks = [][]string{{"rack", "list"}, {"rack", "history"}, {"parts", "shelf.toml"}, {"progress", "shelf-plan"}, {"progress", "shelf-plan-2"}, {"progress", "third"}}

// view is what the readers see.
func (s scene) view(t *testing.T, folder string) string {
	t.Helper()
	seen := ""
	for _, look := range looks {
		if s.edited && look[1] == "history" {
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

// check looks at a shop after the command was killed there. Readers see the old state or
// the new one, whole, and leave nothing of the killed run; what was acknowledged is there;
// and if nothing was done, the command can be run again.
func (st *stage) check(t *testing.T, folder string, r ran) {
	t.Helper()
	seen := st.view(t, folder)
	is := treeOf(t, folder)
	switch {
	case !r.killed && !r.ok:
		t.Errorf("failed: %s", r.all)
	case seen == st.newView:
		if d := differences(st.newTree, is); d != "" {
			t.Errorf("readers see the new state, but %s", d)
		}
	case seen != st.oldView:
		t.Errorf("readers see neither the old state (-) nor the new one:\n%s", cmp.Diff(strings.Split(st.oldView, "\n"), strings.Split(seen, "\n")))
	case r.ok || r.stdout != "":
		t.Errorf("it was acknowledged, and readers see the old state: %s", r.stdout)
	default:
		if st.edited {
			delete(st.oldTree, "rack.toml.history")
			delete(is, "rack.toml.history")
		}
		if st.noted {
			delete(st.oldTree, "shelf-plan/progress.jsonl")
			delete(is, "shelf-plan/progress.jsonl")
		}
		if d := differences(st.oldTree, is); d != "" {
			t.Errorf("readers see the old state, but %s", d)
		}
		if again := run(t, folder, st.command...); !again.ok {
			t.Errorf("run again: %s", again.all)
		}
		if d := differences(st.newTree, treeOf(t, folder)); d != "" {
			t.Errorf("run again: %s", d)
		}
	}
}
