// Package together runs independent questions side by side.
package together

import (
	"errors"
	"runtime"
	"sync"
)

// Run runs questions side by side, as many at a time as there are cores, and returns what
// went wrong with any. A question may run others in its turn.
func Run(questions ...func() error) error {
	errs := make([]error, len(questions))
	var wg sync.WaitGroup
	free := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, q := range questions {
		wg.Go(func() {
			free <- struct{}{}
			defer func() { <-free }()
			errs[i] = q()
		})
	}
	wg.Wait()
	return errors.Join(errs...)
}
