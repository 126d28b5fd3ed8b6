package job_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A job in British words is the same as one in American words.
func TestBritishWordsAreUnderstood(t *testing.T) {
	american := `
[allowance]
miter = 2

[[board]]
name = "oak"
material = "oak"
thickness = 20
width = 60
length = 2400
price = 9.00
per = "meter"

[[sheet]]
name = "ply"
material = "ply"
thickness = 18
length = 2440
width = 1220
price = 30.00
per = "square meter"

[[part]]
name = "edging"
material = "oak"
length = 700
width = 50
thickness = 15
miters = 2

[case]
outside_width = 600
outside_height = 500
outside_depth = 300
[case.carcass]
material = "ply"
joint = "rabbet"
joint_depth = 6
[case.shelf]
held = "dado"
joint_depth = 6
[[case.bay]]
[[case.bay.opening]]
shelves = 1
doors = 1
[[case.edging]]
on = "fronts"
material = "oak"
thickness = 5
corner = "miter"
`
	british := strings.NewReplacer("miter", "mitre", "meter", "metre", `"rabbet"`, `"rebate"`, `"dado"`, `"housing"`).Replace(american)
	list := "name,material,length,width,thickness,miters\nrim,oak,300,50,15,1\n"
	want := mustRead(t, `parts = "list.csv"`+american, "list.csv", list)
	got := mustRead(t, `parts = "list.csv"`+british, "list.csv", strings.Replace(list, "miters", "mitres", 1))
	if diff := cmp.Diff(want.Parts, got.Parts); diff != "" || len(want.Parts) < 8 {
		t.Errorf("parts (-American +British):\n%s", diff)
	}
	if diff := cmp.Diff(want.Stock, got.Stock); diff != "" {
		t.Errorf("stock (-American +British):\n%s", diff)
	}
	if diff := cmp.Diff(want.Case.Marks, got.Case.Marks); diff != "" {
		t.Errorf("marks (-American +British):\n%s", diff)
	}
	if strings.Count(british, "mitre") != 3 {
		t.Fatal("the British job says nothing British")
	}
}

// A key given in both forms is given twice.
func TestAKeyInBothFormsIsGivenTwice(t *testing.T) {
	_, err := read(t, sheet18+"\n[allowance]\nmiter = 2\nmitre = 3\n"+oneShelf)
	if err == nil || !strings.Contains(err.Error(), "allowance.miter: is given twice") {
		t.Errorf("%v", err)
	}
}
