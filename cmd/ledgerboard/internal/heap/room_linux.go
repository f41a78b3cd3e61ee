package heap

import (
	"runtime"
	"runtime/debug"
	"syscall"
	"unsafe"
)

// room is how many bytes of the heap are in large pages. None is used before it is needed.
const room = 64 << 20

// first is how much of the heap there is before it has to grow: what is in use already.
const first = 4 << 20

// Memory that is used for the first time costs a fault for each page, often a third of a
// run. A large page has the room of 512; where the system has none, nothing changes.
func init() {
	usual := debug.SetGCPercent(-1)
	_ = inLargePages(make([]byte, room))
	runtime.GC() // which gives the room back to the heap, and has nothing else to look at yet
	debug.SetGCPercent(usual)
}

// inLargePages asks for large pages for b and for what the heap holds before it, whose small
// pages are gathered at once.
func inLargePages(b []byte) error {
	at := uintptr(unsafe.Pointer(unsafe.SliceData(b)))
	from := (at - 1) &^ (first - 1)
	if err := advise(from, at-from+uintptr(len(b)), syscall.MADV_HUGEPAGE); err != nil {
		return err
	}
	const collapse = 25               // MADV_COLLAPSE
	_ = advise(from, first, collapse) // which Linux knows since 6.1
	return nil
}

func advise(at, length uintptr, advice int) error {
	if _, _, e := syscall.Syscall(syscall.SYS_MADVISE, at, length, uintptr(advice)); e != 0 {
		return e
	}
	return nil
}
