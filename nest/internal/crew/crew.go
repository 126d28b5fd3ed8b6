// Package crew runs one function on several goroutines and hands a panic in any of
// them to the caller.
//
// A panic in a goroutine ends the whole program, and no recover of the caller sees
// it. So whoever is to report a fault of the program needs it on the caller's side.
package crew

import (
	"fmt"
	"runtime/debug"
	"sync"
)

// Panic carries a panic of a worker to the caller of Run: the value, and the stack of
// the worker.
type Panic struct {
	Value any
	Trace []byte
}

// Error is the value as text.
func (p *Panic) Error() string { return fmt.Sprint(p.Value) }

// Stack is where the worker was.
func (p *Panic) Stack() []byte { return p.Trace }

// Run calls do on n goroutines and returns when all have ended. If some of them panic,
// Run panics with the [*Panic] of the first.
func Run(n int, do func()) {
	var all sync.WaitGroup
	var once sync.Once
	var first *Panic
	for range n {
		all.Go(func() {
			defer func() {
				if v := recover(); v != nil {
					once.Do(func() { first = caught(v) })
				}
			}()
			do()
		})
	}
	all.Wait()
	if first != nil {
		panic(first)
	}
}

// caught keeps the place of the first panic if one crew runs within another.
func caught(v any) *Panic {
	if p, ok := v.(*Panic); ok {
		return p
	}
	return &Panic{Value: v, Trace: debug.Stack()}
}
