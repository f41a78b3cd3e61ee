package answer

import (
	"errors"
	"sync"
)

// together runs independent questions side by side.
func together(questions ...func() error) error {
	errs := make([]error, len(questions))
	var wg sync.WaitGroup
	for i, q := range questions {
		wg.Go(func() { errs[i] = q() })
	}
	wg.Wait()
	return errors.Join(errs...)
}
