package main

import (
	"fmt"

	"sawbill/report"
)

func schemaCommand() command {
	return command{
		name:  "schema",
		args:  "plan",
		about: "the keys of plan.json, for other programs",
		more: `Prints the JSON Schema (2020-12) of plan.json: every key, what it holds and which
words it allows.
`,
		run: printSchema,
	}
}

func printSchema(in *invocation) (int, error) {
	if len(in.operands) != 1 || in.operands[0] != "plan" {
		return 0, usage("schema needs the name of a file that it describes", "write \"sawbill schema plan\"")
	}
	_, err := fmt.Fprintf(in.stdout, "%s", report.PlanSchema())
	return exitDone, err
}
