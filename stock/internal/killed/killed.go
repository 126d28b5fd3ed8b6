// Package killed is for tests of what a program leaves behind that is killed at any
// instant.
package killed

import (
	"bufio"
	"io"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"testing"
	"time"
)

// Program starts the test binary itself, with told in the variable of the environment,
// waits for its first line, then for so many more, and kills it after the delay. It
// returns what the program said behind the first line. A program that says "failed" or
// panics fails the test.
func Program(t *testing.T, variable, told string, lines int, delay time.Duration) string {
	program, err := os.Executable()
	if err != nil {
		t.Error(err)
		return ""
	}
	c := exec.Command(program)
	c.Env = append(os.Environ(), variable+"="+told)
	out, err := c.StdoutPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		t.Error(err)
		return ""
	}
	in := bufio.NewReader(out)
	in.ReadString('\n') // ready
	said := ""
	for range lines {
		line, _ := in.ReadString('\n')
		said += line
	}
	time.AfterFunc(delay, func() { c.Process.Kill() })
	rest, _ := io.ReadAll(in)
	c.Wait()
	said += string(rest)
	if strings.Contains(said, "failed") || strings.Contains(said, "panic") {
		t.Errorf("a writer says: %s", said)
		return ""
	}
	return said
}

// Long reports whether the long counts are asked for: SAWBILL_LONG=1 in the environment.
func Long() bool { return os.Getenv("SAWBILL_LONG") == "1" }

// SkipWhereNoneCanBe skips the test where no program can be started and killed.
func SkipWhereNoneCanBe(t *testing.T) {
	if runtime.GOOS == "js" || runtime.GOOS == "wasip1" {
		t.Skip("no program can be started and killed on ", runtime.GOOS)
	}
}
