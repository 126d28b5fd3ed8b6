package main

import (
	"bytes"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"
)

// interrupter sends interrupts to this process, as Ctrl-C does, until the program has
// said that one ended its search. The program writes its errors to it.
type interrupter struct {
	process *os.Process
	caught  chan os.Signal // keeps those that come before the search from ending the test

	mu   sync.Mutex
	errs bytes.Buffer
}

func (i *interrupter) Write(b []byte) (int, error) {
	i.mu.Lock()
	defer i.mu.Unlock()
	return i.errs.Write(b)
}

func (i *interrupter) said() string {
	i.mu.Lock()
	defer i.mu.Unlock()
	return i.errs.String()
}

// send returns when the interrupt has come, so that none is under way while the program
// goes on to write.
func (i *interrupter) send() error {
	i.mu.Lock()
	defer i.mu.Unlock()
	if strings.Contains(i.errs.String(), "interrupted") {
		return nil
	}
	if err := i.process.Signal(os.Interrupt); err != nil {
		return err
	}
	<-i.caught
	return nil
}

// An interrupt ends the search, not the program: the best plan is written.
func TestInterruptKeepsTheBestPlan(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("there is no interrupt to send to one process")
	}
	process, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	user := &interrupter{process: process, caught: make(chan os.Signal, 1)}
	signal.Notify(user.caught, os.Interrupt)
	defer signal.Stop(user.caught)

	dir := t.TempDir()
	path, folder := filepath.Join(dir, "long.toml"), filepath.Join(dir, "plan")
	if err := os.WriteFile(path, []byte(longJob()), 0o644); err != nil {
		t.Fatal(err)
	}
	ended := make(chan int)
	go func() {
		var out bytes.Buffer
		ended <- run([]string{"plan", path, "--limit", "10m", "-o", folder}, &out, user)
	}()
	// How often interrupts are sent decides nothing: the first one that finds the program
	// searching ends the search.
	often := time.NewTicker(10 * time.Millisecond)
	defer often.Stop()
	status, running := 0, true
	for running {
		select {
		case status = <-ended:
			running = false
		case <-often.C:
			if err := user.send(); err != nil {
				t.Fatal(err)
			}
		}
	}
	if status != exitDone || !strings.Contains(user.said(), "interrupted") {
		t.Errorf("status %d, standard error says %q", status, user.said())
	}
	for _, name := range []string{"plan.pdf", "plan.html"} {
		if _, err := os.Stat(filepath.Join(folder, name)); err != nil {
			t.Error(err)
		}
	}
}
