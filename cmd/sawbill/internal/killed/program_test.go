package killed

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// program is the path of the program, built for these tests.
var program string

func TestMain(m *testing.M) {
	folder, err := os.MkdirTemp("", "sawbill-killed-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	program = filepath.Join(folder, "sawbill.exe") // a name that every system runs
	if out, err := exec.Command("go", "build", "-o", program, "sawbill/cmd/sawbill").CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "the program cannot be built: %v\n%s", err, out)
		os.Exit(1)
	}
	code := m.Run()
	os.RemoveAll(folder)
	os.Exit(code)
}

// ran is how a run of the program ended.
type ran struct {
	stdout, all string
	killed      bool
	ok          bool // status 0
}

// run runs the program in a folder to its end.
func run(t *testing.T, folder string, args ...string) ran {
	t.Helper()
	return wait(t, start(t, exec.Command(program, args...), folder))
}

// runKilled runs the program in a folder and kills it after the delay, if it has not ended.
func runKilled(t *testing.T, folder string, delay time.Duration, args ...string) ran {
	t.Helper()
	r := start(t, exec.Command(program, args...), folder)
	timer := time.AfterFunc(delay, func() { r.command.Process.Kill() })
	defer timer.Stop()
	return wait(t, r)
}

type running struct {
	command        *exec.Cmd
	stdout, stderr bytes.Buffer
}

func start(t *testing.T, c *exec.Cmd, folder string) *running {
	t.Helper()
	r := &running{command: c}
	c.Dir = folder
	c.Stdout, c.Stderr = &r.stdout, &r.stderr
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return r
}

func wait(t *testing.T, r *running) ran {
	t.Helper()
	err := r.command.Wait()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return ran{stdout: r.stdout.String(), all: r.stdout.String() + r.stderr.String(), killed: exit != nil && !exit.Exited(), ok: err == nil}
}
