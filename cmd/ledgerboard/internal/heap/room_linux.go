package heap

import (
	"syscall"
	"unsafe"
)

// room is how many bytes of the heap are in large pages. None is used before it is needed.
const room = 32 << 20

// first is how much of the heap there is before it has to grow: what is in use already.
const first = 4 << 20

// Memory that is used for the first time costs a fault for each page, often a third of a
// run. A large page has the room of 512; where the system has none, nothing changes. The
// heap takes the room for a stack, and has it back for any use as soon as that has ended.
func init() {
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		spread(false)
		_ = inLargePages()
	}()
	<-ended
}

// spread has the stack grow to the room, without a touch of it: what full would give would
// fill most of it, if it were ever asked.
//
//go:noinline
func spread(ask bool) {
	if ask {
		_ = full()
	}
}

//go:noinline
func full() (most [room / 4 * 3]byte) { return most }

// inLargePages asks for large pages for the stack of room that ends here, and for what the
// heap holds before it, whose small pages are gathered at once.
func inLargePages() error {
	var here byte
	from := (uintptr(unsafe.Pointer(&here)) - room) &^ (first - 1)
	if err := advise(from, first+room, syscall.MADV_HUGEPAGE); err != nil {
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
