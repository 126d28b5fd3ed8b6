package casework

import (
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/joints"
)

// sampleOf is a case that has a joint at a site, and a joint of the same kind nowhere else.
func sampleOf(t *testing.T, s joints.Site, word string, keys []string) Design {
	d := plain()
	d.Bays = []Bay{{}}
	switch s {
	case joints.DividerEnd:
		d.Bays = []Bay{{Openings: []Opening{{}, {}}}, {}}
	case joints.ShelfEnd:
		d.Bays = []Bay{{Openings: []Opening{{Shelves: count(1)}}}}
	case joints.BackEdge:
		d.Back.Material = Word{Value: "back", Set: word != "none"}
	case joints.FrameCorner:
		d = twoDoors()
		d.Bays = append(d.Bays, Bay{Openings: []Opening{{}, {}}})
	case joints.DrawerCorner:
		made(&d, "none", DrawerBox{})
	}
	tables := []reflect.Value{reflect.ValueOf(&d).Elem()}
	found := false
	for len(tables) > 0 {
		table := tables[0]
		tables = tables[1:]
		for i := range table.NumField() {
			switch tag := table.Type().Field(i).Tag.Get("joint"); {
			case tag != "" && tag == s.Keys().Tag:
				found = true
				table.Field(i).Set(reflect.ValueOf(Word{Value: word, Set: true}))
				for _, key := range keys {
					setKey(t, table, s, key)
				}
			case table.Field(i).Kind() == reflect.Struct && tag == "":
				tables = append(tables, table.Field(i))
			}
		}
	}
	if !found {
		t.Fatalf("no field of the design has the tag joint:%q", s.Keys().Tag)
	}
	return d
}

// setKey gives a key that a joint uses a length that will do.
func setKey(t *testing.T, table reflect.Value, s joints.Site, key string) {
	size := metric("10")
	if key == "joint_depth" {
		key, size = s.Keys().Depth, metric("6")
	}
	for i := range table.NumField() {
		if table.Type().Field(i).Tag.Get("toml") == key {
			table.Field(i).Set(reflect.ValueOf(size))
			return
		}
	}
	t.Fatalf("%s has no key %s", table.Type(), key)
}

// rolesOf are the pieces that a joint of a site is cut in: those that reach into the others, and
// the others.
var rolesOf = map[joints.Site][2][]Role{
	joints.CarcassCorner: {{"top", "bottom"}, {"side"}},
	joints.DividerEnd:    {{"partition", "divider"}, {"side", "top", "bottom", "partition"}},
	joints.ShelfEnd:      {{"shelf"}, {"side"}},
	joints.BackEdge:      {{"back"}, {"side", "top", "bottom"}},
	joints.FrameCorner:   {{"rail"}, {"stile"}},
	joints.DrawerCorner:  {{"drawer front and back"}, {"drawer side"}},
}

// marksOn are the kinds of marks on each role.
func marksOn(c *Case) map[Role][]string {
	on := make(map[Role][]string)
	for _, k := range c.Marks {
		for _, spot := range k.Spots {
			role := c.Solids[spot.Solid].Role
			on[role] = append(on[role], k.What)
		}
	}
	return on
}

// Every joint can be made at every site that it names. It marks the pieces that it is cut in, which
// a joint without a cut leaves bare, and says what is done at assembly.
func TestEveryJointHasMarksAndSteps(t *testing.T) {
	for _, s := range joints.Sites {
		for _, j := range s.Joints() {
			d := sampleOf(t, s, j.Name(), j.Keys())
			if joints.IsLoose(j) {
				d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("40")}
			}
			c := derive(t, d, workshop(stock.Millimeters))
			if s != joints.ShelfEnd && s != joints.DividerEnd && s != joints.BackEdge && !slices.ContainsFunc(c.Assembly, func(step Step) bool { return strings.Contains(step.Text, joints.FitOf(j, s).Close) }) {
				t.Errorf("%s in %s: no step says %q", j.Name(), s.Keys().Tag, joints.FitOf(j, s).Close)
			}
			if j.Name() == joints.Butted.Name() {
				continue
			}
			bare := "butt"
			if s == joints.BackEdge {
				bare = "none"
			}
			with, without := marksOn(c), marksOn(derive(t, sampleOf(t, s, bare, nil), workshop(stock.Millimeters)))
			for n, roles := range rolesOf[s] {
				if n == 0 && joints.FitOf(j, s).Reach == joints.Housed {
					continue // what enters a housing is not cut itself
				}
				for _, role := range roles {
					if !slices.ContainsFunc(with[role], func(what string) bool { return !slices.Contains(without[role], what) }) {
						t.Errorf("%s in %s: a %s has no mark of it, but %q", j.Name(), s.Keys().Tag, role, with[role])
					}
				}
			}
		}
	}
}

// Every joint is at some site, under a name of its own, and is refused where it is not.
func TestWordsOfJoints(t *testing.T) {
	var names []string
	for _, j := range joints.All {
		if !slices.ContainsFunc(append(joints.Sites, joints.DrawerBottom), func(s joints.Site) bool { _, may := j.At(s); return may }) || slices.Contains(names, j.Name()) {
			t.Errorf("%s is at no site, or twice in the list", j.Name())
		}
		names = append(names, j.Name())
	}
	for _, s := range joints.Sites {
		for _, name := range names {
			if slices.Contains(s.Words(), name) {
				continue
			}
			_, faults := Derive(sampleOf(t, s, name, nil), workshop(stock.Millimeters))
			if len(faults) == 0 || !strings.Contains(faults[0].Cause, "is not a word for this") || !strings.Contains(faults[0].Remedy, `"`) {
				t.Errorf("%s in %s: %q", name, s.Keys().Tag, spelled(faults))
			}
		}
	}
}

// The manual lists the words of every site as the joints tell them.
func TestTheManualListsTheJoints(t *testing.T) {
	manual, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range joints.Sites {
		row := "| `" + s.Keys().Word + "` | `\"" + s.Words()[0] + "\"` | " + s.Manual() + " |"
		if !strings.Contains(string(manual), "\n"+row+"\n") {
			t.Errorf("README.md lacks this row:\n%s", row)
		}
	}
}
