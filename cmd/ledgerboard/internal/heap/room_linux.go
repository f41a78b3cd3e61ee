package heap

import (
	"runtime"
	"runtime/debug"
	"syscall"
)

// room is how many bytes of the heap are in large pages. None is used before it is needed.
const room = 128 << 20

// Memory that is used for the first time costs a fault for each page, often a third of a
// run. A large page has the room of 512; where the system has none, nothing changes.
func init() {
	usual := debug.SetGCPercent(-1)
	_ = inLargePages(make([]byte, room))
	runtime.GC() // which gives the room back to the heap, and has nothing else to look at yet
	debug.SetGCPercent(usual)
}

func inLargePages(b []byte) error { return syscall.Madvise(b, syscall.MADV_HUGEPAGE) }
