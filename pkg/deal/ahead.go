package deal

import (
	"sync"
	"sync/atomic"

	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// ofRooms is what is said of a room and of a trade before all that stands in it.
var ofRooms = []string{"cash_cost", "cost_a_foot", "floor_area", "trade_price", "own_hours", "crew_hours"}

// ahead works out in the background what doubtFigures asks for, for most of a short run is to do
// so and to look for doubts; then, while these are looked for, what is said of rooms and trades,
// and the deal's own lines. It returns what waits for the first. What fails, or is not reached,
// is worked out by whoever asks for it.
func (r *reader) ahead() (wait func()) {
	var figures sync.WaitGroup
	var enough atomic.Bool
	var known *walk.Known
	figures.Go(func() {
		known = r.deal.Known.Copy()
		work := func(m *model.Member, lines ...string) { _ = known.Work(r.deal.ownLines(m, lines...)...) }
		for _, p := range r.chosenPlans() {
			work(p.option, "trade_price")
		}
		for _, set := range []string{"room", "trade"} {
			for _, m := range r.deal.Root.In(set) {
				for _, line := range ofRooms {
					if enough.Load() {
						return
					}
					work(m, line)
				}
			}
		}
		for _, c := range r.deal.Model.Own() {
			if enough.Load() {
				return
			}
			_ = known.Work(c)
		}
	})
	return func() {
		enough.Store(true)
		figures.Wait()
		r.deal.Known = known
	}
}

// doubtFigures looks for what is doubtful by figures that were worked out meanwhile.
func (r *reader) doubtFigures() {
	r.doubtQuotes()
	r.doubtAddsFar()
	r.doubtUnaddedRooms()
}
