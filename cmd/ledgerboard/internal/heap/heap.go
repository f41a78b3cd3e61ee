// Package heap suits the heap to a run that lasts milliseconds and holds little. It
// imports next to nothing, so it is ready before the packages that fill the heap.
package heap

import "runtime/debug"

// A heap may grow to nine times what is held, or 32 MB, before it is collected: for most
// runs never.
func init() { debug.SetGCPercent(800) }
