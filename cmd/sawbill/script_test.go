package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A script is what somebody does at the keyboard, and what they then see. Its
// lines are
//
//	== a remark
//	$ sawbill rack list      the program is run; what it says follows
//	$ sawbill ... > FILE     the same, but what it says goes into a file
//	$ show FILE              what is in the file follows; ids, which are drawn at random,
//	                         are numbered as they come
//	$ change FILE OLD NEW    a text in the file is replaced, as in an editor
//	$ write FILE             a file is written, with its folder; its lines follow, each behind "> "
//
// Errors stand among the output as they come; a status other than 0 follows it.
// It runs in a folder of its own.
func TestScripts(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/scripts/*.txt")
	if err != nil || len(paths) == 0 {
		t.Fatal(paths, err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txt"), func(t *testing.T) {
			path, err := filepath.Abs(path)
			if err != nil {
				t.Fatal(err)
			}
			script, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			t.Chdir(t.TempDir())
			got := play(t, string(script))
			if *update {
				if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if d := cmp.Diff(strings.Split(string(script), "\n"), strings.Split(got, "\n")); d != "" {
				t.Errorf("%s (-want +got):\n%s", path, d)
			}
		})
	}
}

// Whatever these sections of README.md show is seen in one of the scripts.
func TestReadmeShowsWhatTheScriptsShow(t *testing.T) {
	for _, heading := range []string{"What if", "The rack", "In the shop, and what now"} {
		t.Run(heading, func(t *testing.T) { showsWhatScriptsShow(t, heading) })
	}
}

func showsWhatScriptsShow(t *testing.T, heading string) {
	_, section, _ := strings.Cut(fileText(t, "../../README.md"), "\n### "+heading+"\n")
	section, _, _ = strings.Cut(section, "\n### ")
	var scripts strings.Builder
	paths, _ := filepath.Glob("../../testdata/scripts/*.txt")
	for _, path := range paths {
		scripts.WriteString("\n" + fileText(t, path))
	}
	shown := 0
	for _, paragraph := range strings.Split(section, "\n\n") {
		if block, ok := strings.CutPrefix(strings.Trim(paragraph, "\n"), "    "); ok {
			shown++
			if block = strings.ReplaceAll(block, "\n    ", "\n"); !strings.Contains(scripts.String(), "\n"+block+"\n") {
				t.Errorf("no script shows\n%s", block)
			}
		}
	}
	if shown == 0 {
		t.Error("README.md shows nothing there")
	}
}

// drawnID is the id of an entry of a record.
var drawnID = regexp.MustCompile(`"[A-Za-z0-9_-]{22}"`)

// play runs a script and returns it with what was seen.
func play(t *testing.T, script string) string {
	t.Helper()
	var seen strings.Builder
	lines := strings.SplitAfter(script, "\n")
	for i := 0; i < len(lines); i++ {
		line := lines[i]
		words := shellWords(strings.TrimPrefix(line, "$ "))
		switch {
		case strings.HasPrefix(line, "== "):
			if seen.Len() > 0 {
				seen.WriteString("\n")
			}
			seen.WriteString(line)
			continue
		case !strings.HasPrefix(line, "$ "):
			continue // what was seen before
		}
		seen.WriteString(line)
		switch words[0] {
		case "sawbill":
			var said bytes.Buffer
			words, file := redirected(words)
			status := run(words[1:], &said, &said)
			if file == "" {
				seen.Write(said.Bytes())
			} else {
				writeText(t, file, said.String())
			}
			if status != exitDone {
				fmt.Fprintf(&seen, "(status %d)\n", status)
			}
		case "show":
			var ids []string
			seen.WriteString(drawnID.ReplaceAllStringFunc(fileText(t, words[1]), func(id string) string {
				if !slices.Contains(ids, id) {
					ids = append(ids, id)
				}
				return fmt.Sprintf(`"ID %d"`, slices.Index(ids, id)+1)
			}))
		case "change":
			was := fileText(t, words[1])
			if !strings.Contains(was, words[2]) {
				t.Fatalf("%s does not say %q", words[1], words[2])
			}
			writeText(t, words[1], strings.Replace(was, words[2], words[3], 1))
		case "write":
			var content strings.Builder
			for ; i+1 < len(lines) && strings.HasPrefix(lines[i+1], "> "); i++ {
				seen.WriteString(lines[i+1])
				content.WriteString(strings.TrimPrefix(lines[i+1], "> "))
			}
			writeText(t, words[1], content.String())
		default:
			t.Fatalf("a script cannot %s", words[0])
		}
	}
	return seen.String()
}

// redirected takes "> FILE" off the end of a command.
func redirected(words []string) (command []string, file string) {
	if n := len(words); n > 2 && words[n-2] == ">" {
		return words[:n-2], words[n-1]
	}
	return words, ""
}

func fileText(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func writeText(t *testing.T, name, content string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
}

// shellWords parts a command line at its blanks, but for those within quotes of
// either kind.
func shellWords(line string) []string {
	var words []string
	var word strings.Builder
	var quote rune
	begun := false
	for _, r := range strings.TrimSpace(line) + " " {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '"' || r == '\''):
			quote, begun = r, true
		case quote == 0 && r == ' ':
			if begun {
				words = append(words, word.String())
				word.Reset()
				begun = false
			}
		default:
			word.WriteRune(r)
			begun = true
		}
	}
	return words
}
