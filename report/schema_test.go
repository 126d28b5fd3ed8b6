package report

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/samples"
)

// planSchema is the published schema, made strict: a key that it does not describe is a
// fault here, though a reader may ignore it.
func planSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	var doc map[string]any
	if err := json.Unmarshal(PlanSchema(), &doc); err != nil {
		t.Fatal(err)
	}
	forbidOthers(doc)
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func forbidOthers(schema map[string]any) {
	if schema["type"] == "object" {
		schema["additionalProperties"] = false
	}
	defs, _ := schema["$defs"].(map[string]any)
	for _, of := range defs {
		forbidOthers(of.(map[string]any))
	}
}

func valid(s *jsonschema.Schema, plan []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(plan))
	if err != nil {
		return err
	}
	return s.Validate(v)
}

func TestEveryExampleKeepsToTheSchema(t *testing.T) {
	s := planSchema(t)
	paths, err := filepath.Glob("../testdata/golden/*/plan.json")
	if err != nil || len(paths) < 10 {
		t.Fatal(len(paths), "examples", err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := valid(s, data); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	plans := []*cutplan.Plan{bench(), incomplete(), {}}
	for seed := range uint64(40) {
		p := samples.Random(seed)
		plans = append(plans, &p)
	}
	for i, p := range plans {
		for _, o := range []Options{{}, {Case: chest(), WhatIf: []string{"without shelf"}}} {
			if err := valid(s, JSON(p, o)); err != nil {
				t.Errorf("plan %d: %v", i, err)
			}
		}
	}
}

// A schema that refuses nothing would pass the test above.
func TestTheSchemaRefusesWhatIsNoPlan(t *testing.T) {
	s := planSchema(t)
	plan := string(JSON(bench(), Options{}))
	for _, change := range [][2]string{
		{planFormat, "sawbill plan 1"},
		{`"use": "part"`, `"use": "shelf"`},
		{`"use": "part"`, `"use": "offcut"`},
		{`"cut": "rip"`, `"cut": "tear"`},
		{`"kerf": 3`, `"kerf": -3`},
		{`"kerf": 3`, `"kerf": "3"`},
		{`"blanks": [`, `"blanks": ["shelf",`},
		{`"mark": "A",`, ``},
		{`"title"`, `"titel"`},
		{`"measure": "`, `"measure": "square `},
	} {
		bad := strings.Replace(plan, change[0], change[1], 1)
		if bad == plan {
			t.Errorf("the plan does not have %s", change[0])
		} else if valid(s, []byte(bad)) == nil {
			t.Errorf("%s instead of %s is allowed", change[1], change[0])
		}
	}
}

func TestPlanSchemaIsAsPublished(t *testing.T) {
	golden(t, "plan.schema.json", PlanSchema())
}
