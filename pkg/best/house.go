package best

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// totals are the lines through which alone a choice of options moves a deal.
var totals = []string{"rooms_cost", "rooms_at_trade_price", "shared_costs", "value_added", "scope_months", "room_own_hours"}

// The places of some of them.
const (
	cost = iota
	atTrade
	shared
	added
	time
	hours
)

// results are the lines that a choice is judged by.
var results = []string{"owner_profit", "cash_needed", "renovation", "own_hours", "budget"}

const (
	profit = iota
	cash
	renovation
	ownHours
	budget
)

// A House is a deal whose rooms leave a choice.
type House struct {
	Deal  *deal.Deal
	Rooms []deal.RoomChoice

	sizes   []int
	chosen  [][]*model.Cell // by room and option; nil for as it is
	sticks  []*stickProduct
	totals  []*model.Cell
	results []*model.Cell
	shifted []shift   // values that follow what is added
	last    int       // the last month of any choice
	later   []float64 // months by which what ends with the work or the sale does so later

	work  *exact.Scratch // from options to totals
	money *exact.Scratch // from totals to results
	near  *fast.Program  // from options to totals, nearly
	box   *bound.Box     // from totals to results, over ranges
	other *bound.Box     // the same, for questions side by side

	parts   *parts
	money64 *nearMoney
	full    map[int]decimal.Decimal // what is read for cut lists, with all options at once
	loose   []*model.Cell           // whether work is called for that may not be done although it is
	member  map[*model.Member]bool  // the options that there is a choice of
	always  map[*model.Member]bool  // work called for whatever is chosen
	known   map[string]*Choice
	sliced  map[[ways]span][]slice
	worked  int
}

// A shift is a value that moves with what the options add.
type shift struct {
	cell *model.Cell
	base decimal.Decimal // where nothing is added
}

func (h *House) find(name string) *model.Cell {
	return h.Deal.Model.Find(h.Deal.Root, name)
}

func (h *House) all(names []string) []*model.Cell {
	out := make([]*model.Cell, len(names))
	for i, n := range names {
		out[i] = h.find(n)
	}
	return out
}

// New prepares a deal that was read with all options.
func New(d *deal.Deal) (*House, error) {
	h := &House{Deal: d, Rooms: d.Choices(), known: map[string]*Choice{}, sliced: map[[ways]span][]slice{}}
	if err := h.check(); err != nil {
		return nil, err
	}
	for _, r := range h.Rooms {
		h.sizes = append(h.sizes, len(r.Options))
		cells := make([]*model.Cell, len(r.Options))
		for o, m := range r.Options[1:] {
			cells[o+1] = d.Model.Find(m, "chosen")
		}
		h.chosen = append(h.chosen, cells)
	}
	h.totals, h.results = h.all(totals), h.all(results)
	if err := h.findSticks(); err != nil {
		return nil, err
	}
	if err := h.prepareWork(); err != nil {
		return nil, err
	}
	return h, h.prepareMoney()
}

// axes are the cells that a choice sets: first the options, then the sticks.
func (h *House) axes() []*model.Cell {
	var out []*model.Cell
	for _, room := range h.chosen {
		out = append(out, room[1:]...)
	}
	for _, s := range h.sticks {
		out = append(out, s.cells...)
	}
	return out
}

// prepareWork gets the way from options to totals ready, and what each option takes.
func (h *House) prepareWork() error {
	h.findLoose()
	m, axes := h.Deal.Model, h.axes()
	seen, moved := h.seen(), model.Indexes(append(axes[:len(axes):len(axes)], h.loose...))
	want := model.Indexes(append(h.totals[:len(h.totals):len(h.totals)], seen...))
	p, err := walk.Prepare(m, m.NeededBeyond(moved, want...), moved, nil, -1)
	if err != nil {
		return err
	}
	if h.near, err = fast.New(p, axes, h.totals...); err != nil {
		return err
	}
	h.work = exact.NewScratch(p)
	if err := h.work.Evaluate(h.everything()...); err != nil {
		return err
	}
	h.full = map[int]decimal.Decimal{}
	for _, c := range seen {
		h.full[c.Index] = h.work.Of(c)
	}
	h.member, h.always = map[*model.Member]bool{}, map[*model.Member]bool{}
	for _, r := range h.Rooms {
		for _, m := range r.Options[1:] {
			h.member[m] = true
		}
	}
	h.parts = h.takeApart()
	for _, line := range h.Deal.Following {
		h.shifted = append(h.shifted, shift{cell: h.find(line)})
	}
	if err := h.work.Evaluate(append(h.taking(make([]int, len(h.Rooms))), h.calling(true)...)...); err != nil {
		return err
	}
	h.parts.shortest = h.shortestOf(h.work.Of(h.totals[time]).InexactFloat64())
	if len(h.shifted) > 0 {
		if err := h.work.Evaluate(h.taking(h.own())...); err != nil {
			return err
		}
		for i := range h.shifted {
			s := &h.shifted[i]
			s.base = s.cell.Given.Number.Sub(h.work.Of(h.totals[added]))
		}
	}
	return nil
}

// everything chooses all options at once, with all that they call for, and no sticks.
func (h *House) everything() []exact.Change {
	var out []exact.Change
	for i, c := range h.axes() {
		x := decimal.Decimal{}
		if i < h.options() {
			x = decimal.NewFromInt(1)
		}
		out = append(out, exact.Change{Cell: c, Value: x})
	}
	return append(out, h.calling(false)...)
}

// options is how many options there are, without those of doing nothing.
func (h *House) options() (n int) {
	for _, s := range h.sizes {
		n += s - 1
	}
	return n
}

// taking are the options of a choice.
func (h *House) taking(choice []int) []exact.Change {
	var out []exact.Change
	for i, room := range h.chosen {
		for o, c := range room[1:] {
			x := decimal.Decimal{}
			if choice[i] == o+1 {
				x = decimal.NewFromInt(1)
			}
			out = append(out, exact.Change{Cell: c, Value: x})
		}
	}
	return out
}

// prepareMoney gets the way from totals to results ready.
func (h *House) prepareMoney() error {
	m := h.Deal.Model
	if err := h.findEnds(); err != nil {
		return err
	}
	given := h.given()
	axes := model.Indexes(given)
	steps := m.NeededBeyond(axes, append(model.Indexes(h.results), m.Horizon)...)
	if c := hidden(m, steps, h.axes(), given); c != nil {
		return &HiddenError{c}
	}
	p, err := walk.Prepare(m, steps, axes, nil, h.last)
	if err != nil {
		return err
	}
	low := h.find("low_point")
	h.box, h.other = bound.NewBox(p, h.results[profit], low), bound.NewBox(p, h.results[profit], low)
	h.money64 = newNearMoney(p)
	h.money = exact.NewScratch(p)
	return nil
}

// given are the cells that are set where money is worked out from totals.
func (h *House) given() []*model.Cell {
	out := h.totals[:len(h.totals):len(h.totals)]
	for _, s := range h.shifted {
		out = append(out, s.cell)
	}
	return out
}

// hidden is a cell that a choice moves by another way than the totals, or nil.
func hidden(m *model.Model, steps []model.Step, axes, given []*model.Cell) *model.Cell {
	_, moved := m.Reached(steps, model.Indexes(axes), model.Indexes(given)...)
	if len(moved) == 0 {
		return nil
	}
	return m.Cells[moved[0].Cells[0]]
}
