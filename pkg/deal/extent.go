package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// extents are the measures of the rooms alone, known before any work is laid in them: what
// comes along depends on whether there is anything to do it to.
type extents struct {
	known *walk.Known                     // nil if the rooms cannot be bound
	of    map[*model.Member]*model.Member // the rooms by those of the deal
}

// extentSets are the sets that measures are made of.
var extentSets = []string{"room", "section", "leg", "opening", "fitting", "plane"}

// ofExtents reports whether a line is of rooms or is a measure of the whole house.
func ofExtents(l *model.Line) bool {
	return l.Set != model.Deal || slices.ContainsFunc(pricebook.Measures, func(m pricebook.Measure) bool { return m.Of == "house" && m.Line == l.Name })
}

// extents lays the rooms over the document without their work.
func (r *reader) extents() *extents {
	if r.measures != nil {
		return r.measures
	}
	e := &extents{of: map[*model.Member]*model.Member{}}
	r.measures = e
	bare := model.NewDeal("")
	for _, g := range r.deal.Root.Given {
		if g.Refers == "" {
			bare.Give(g.Line, *g.Value)
		}
	}
	bare.GiveNumber("price", decimal.Decimal{})
	bare.GiveNumber("after_repair_value", decimal.Decimal{})
	for _, room := range r.deal.Root.In("room") {
		e.of[room] = room.CopyTo(bare, func(m *model.Member) bool { return slices.Contains(extentSets, m.Set) })
	}
	doc, err := model.Standard()
	if err != nil {
		return e
	}
	if m, err := model.BindFor(doc, bare, ofExtents); err == nil {
		e.known = walk.NewKnown(m)
	}
	return e
}

// nothingOf reports whether there is nothing of a measure in a room; nil is the whole house.
func (r *reader) nothingOf(room *model.Member, m pricebook.Measure) bool {
	x, known := r.thereIs(room, m)
	return known && !x.IsPositive()
}

// thereIs is how much there is of a measure in a room, and whether that is known; nil is
// the whole house.
func (r *reader) thereIs(room *model.Member, m pricebook.Measure) (decimal.Decimal, bool) {
	switch {
	case m.Name == pricebook.Months:
		return decimal.Zero, false
	case m.Of == "":
		return one, true
	case m.Of != "house" && (room == nil || m.Of != room.Kind):
		return decimal.Zero, true
	}
	e := r.extents()
	if e.known == nil {
		return decimal.Zero, false // the file holds a mistake, and is told of it
	}
	at := e.of[room]
	if at == nil {
		at = e.known.Values.Model.Root
	}
	c := e.known.Values.Model.Find(at, m.Line)
	if e.known.Work(c.Index) != nil {
		return decimal.Zero, false
	}
	return e.known.Values.Scalar[c.Index], true
}
