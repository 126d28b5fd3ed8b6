package nest

import (
	"runtime/debug"
	"runtime/metrics"
)

// muchMemory is what the program may keep for its next search.
const muchMemory = 64 << 20

// releaseMemory gives the memory of a search that has ended back to the system, if it is much.
// Otherwise Go keeps it for minutes, since nothing more is allocated. It takes some
// milliseconds, for which Solve does not wait.
func releaseMemory() {
	held := []metrics.Sample{
		{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/memory/classes/heap/unused:bytes"}, {Name: "/memory/classes/heap/free:bytes"},
	}
	metrics.Read(held)
	var sum uint64
	for _, s := range held {
		sum += s.Value.Uint64()
	}
	if sum > muchMemory {
		go debug.FreeOSMemory()
	}
}
