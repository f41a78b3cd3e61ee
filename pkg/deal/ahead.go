package deal

import "sync"

// ahead works the deal's own lines out in the background, for most of a short run is to do
// so and to look for doubts, and returns what waits for them. What fails is found again by
// whoever asks for it.
func (r *reader) ahead() (wait func()) {
	var figures sync.WaitGroup
	known := r.deal.Known.Copy()
	figures.Go(func() { _ = known.Work(r.deal.Model.Own()...) })
	return func() {
		figures.Wait()
		r.deal.Known = known
	}
}
