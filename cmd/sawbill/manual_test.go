package main

import (
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"sawbill/stock/casework"

	"github.com/google/go-cmp/cmp"
)

// The manual has a row for every key of a case, under the header of its table,
// with every word that the key allows and the default before the meaning.
func TestReadmeNamesEveryKeyOfACase(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, found := strings.Cut(string(readme), "\n### A case design\n")
	section, _, ended := strings.Cut(section, "\n### ")
	if !found || !ended {
		t.Fatal("README.md has no section on a case design")
	}
	named := manualRows(section)
	known := make(map[string]string) // the words of each key
	collectKeys(reflect.TypeFor[casework.Design](), "case", known)
	if d := cmp.Diff(keysOf(known), keysOf(named)); d != "" {
		t.Errorf("keys that README.md names (-of a case +named):\n%s", d)
	}
	for key, words := range known {
		for i, word := range strings.Fields(words) {
			word = "`\"" + word + "\"`"
			byDefault, meaning, _ := strings.Cut(named[key], "|")
			if !strings.Contains(meaning, word) || i == 0 && strings.TrimSpace(byDefault) != word {
				t.Errorf("README.md on %s does not tell of %s as it is: %s", key, word, named[key])
			}
		}
	}
}

// collectKeys adds the keys of a table and of the tables below it.
func collectKeys(table reflect.Type, path string, into map[string]string) {
	for i := range table.NumField() {
		field := table.Field(i)
		name, holds := field.Tag.Get("toml"), field.Type
		if name == "-" {
			continue
		}
		if holds.Kind() == reflect.Slice {
			holds = holds.Elem()
		}
		key := path + "." + name
		if _, isValue := holds.FieldByName("Set"); isValue {
			into[key] = field.Tag.Get("words")
		} else {
			collectKeys(holds, key, into)
		}
	}
}

// manualRows is what the tables of a section say of each key: all of its row
// but the first cell. That names keys, or the tables that the rows below
// belong to.
func manualRows(section string) map[string]string {
	quoted := regexp.MustCompile("`([^`]+)`")
	rows := make(map[string]string)
	var tables []string
	for line := range strings.Lines(section) {
		row, isRow := strings.CutPrefix(line, "| ")
		first, rest, _ := strings.Cut(row, " | ")
		names := quoted.FindAllStringSubmatch(first, -1)
		if !isRow || names == nil {
			continue
		}
		if strings.HasPrefix(first, "**") {
			tables = nil
		}
		for _, name := range names {
			if strings.HasPrefix(first, "**") {
				tables = append(tables, strings.Trim(name[1], "[]"))
				continue
			}
			for _, table := range tables {
				rows[table+"."+name[1]] = rest
			}
		}
	}
	return rows
}

func keysOf(rows map[string]string) map[string]bool {
	keys := make(map[string]bool)
	for key := range rows {
		keys[key] = true
	}
	return keys
}
