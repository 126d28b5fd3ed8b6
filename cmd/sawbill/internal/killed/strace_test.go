package killed

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
)

// changing are the system calls that change what is on the disk, as strace names them.
const changing = "?open,openat,?creat,write,pwrite64,writev,?rename,?renameat,renameat2,?link,?linkat,?symlink,?symlinkat," +
	"?unlink,unlinkat,?rmdir,?mkdir,mkdirat,fsync,fdatasync,ftruncate,?truncate,fchmod,?chmod,fchmodat,fallocate"

// instant is a place in a run: just before a system call that changes the disk. It is
// known by the call and the path, since the program's threads do not run in step.
type instant struct {
	call  string
	paths [2]string // as the call has it, and from the root; the same for an open file
	below string    // the path within the folder
	nth   int       // of the same call with the same path, from 1
}

func (i instant) String() string { return fmt.Sprintf("%s %s, time %d", i.call, i.below, i.nth) }

// in is the instant of a run in a copy of the folder, which has the same paths below.
func (i instant) in(folder string) instant {
	for k, path := range i.paths {
		if filepath.IsAbs(path) {
			i.paths[k] = filepath.Join(folder, i.below)
		}
	}
	return i
}

// skipWithoutStrace skips the test where strace is absent or may not trace.
var skipWithoutStrace = func() func(t *testing.T) {
	reason := sync.OnceValue(func() string {
		if _, err := exec.LookPath("strace"); err != nil {
			return "strace is not installed: no kill can be placed"
		}
		if out, err := exec.Command("strace", "-f", "-qq", "-o", os.DevNull, "-e", "trace=fsync", program, "help").CombinedOutput(); err != nil {
			return fmt.Sprintf("strace cannot trace here: no kill can be placed (%v: %s)", err, out)
		}
		return ""
	})
	return func(t *testing.T) {
		if why := reason(); why != "" {
			t.Skip(why)
		}
	}
}()

// strace runs the program in a folder under strace, with its options.
func strace(t *testing.T, folder, log string, options, args []string) ran {
	t.Helper()
	all := append([]string{"-f", "-qq", "-y", "-s", "0", "-o", log}, options...)
	return wait(t, start(t, exec.Command("strace", append(append(all, program), args...)...), folder))
}

// instantsOf runs the program to its end and returns the instants of that run at which
// something within the folder is about to change, in their order.
func instantsOf(t *testing.T, folder string, args []string) (all []instant) {
	t.Helper()
	log := filepath.Join(t.TempDir(), "trace")
	if r := strace(t, folder, log, []string{"-e", "trace=" + changing}, args); !r.ok {
		t.Fatalf("sawbill %s: %s", strings.Join(args, " "), r.all)
	}
	trace, err := os.ReadFile(log)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[instant]int{}
	for _, line := range strings.Split(string(trace), "\n") {
		i, ok := instantOf(folder, line)
		if !ok {
			continue
		}
		seen[i]++
		i.nth = seen[i]
		all = append(all, i)
	}
	if len(all) == 0 {
		t.Fatalf("sawbill %s changes nothing:\n%s", strings.Join(args, " "), trace)
	}
	return all
}

var (
	called   = regexp.MustCompile(`^\d+ +(\w+)\((.*)$`)
	openFile = regexp.MustCompile(`^\d+<([^>]*)>`)
	byName   = regexp.MustCompile(`^(?:AT_FDCWD(?:<[^>]*>)?, )?"([^"]*)"`)
)

// instantOf reads a line of strace; false if it changes nothing within the folder.
func instantOf(folder, line string) (instant, bool) {
	m := called.FindStringSubmatch(line)
	if m == nil {
		return instant{}, false
	}
	call, rest := m[1], m[2]
	var i instant
	if file := openFile.FindStringSubmatch(rest); file != nil {
		i = instant{call: call, paths: [2]string{file[1], file[1]}}
	} else if name := byName.FindStringSubmatch(rest); name != nil {
		if strings.HasPrefix(call, "open") && !strings.Contains(rest, "O_CREAT") && !strings.Contains(rest, "O_TRUNC") {
			return instant{}, false
		}
		i = instant{call: call, paths: [2]string{name[1], name[1]}}
		if !filepath.IsAbs(name[1]) {
			i.paths[1] = filepath.Join(folder, name[1])
		}
	}
	below, err := filepath.Rel(folder, i.paths[1])
	i.below = below
	return i, i.call != "" && err == nil && filepath.IsLocal(below)
}

// killAt runs the program in a folder and kills it at an instant, instead of the call.
func killAt(t *testing.T, folder string, i instant, args []string) ran {
	t.Helper()
	options := []string{"-e", "trace=" + i.call, "-e", fmt.Sprintf("inject=%s:signal=KILL:when=%d", i.call, i.nth)}
	for _, path := range i.paths {
		options = append(options, "-P", path)
	}
	return strace(t, folder, os.DevNull, options, args)
}
