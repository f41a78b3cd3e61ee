package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A calendar is what the model makes of the phases alone. It is needed before the
// rest of the deal can be bound, and also where the rest holds mistakes.
type calendar struct {
	hold decimal.Decimal // months
	sale int             // days from the purchase to the sale
}

// calendar lays nothing but the phases over the document and works out its lines
// hold_months and sale_day; where the rooms say how long the work takes, all of the
// deal. It is false where a phase cannot be read.
func (r *reader) calendar() (calendar, bool) {
	if r.times != nil {
		return *r.times, r.timed
	}
	r.times = &calendar{}
	if g := r.got["time"]; g != nil && !g.ok {
		return *r.times, false
	}
	if r.got["time.renovation"] == nil && len(r.plans) > 0 {
		r.early, r.timed = r.times.read(r.deal.Root, model.Bind)
		return *r.times, r.timed
	}
	bare := model.NewDeal("")
	bare.GiveNumber("price", decimal.Decimal{})
	bare.GiveNumber("after_repair_value", decimal.Decimal{})
	for _, f := range fields()["time"] {
		switch g := r.got[f.Path]; {
		case g == nil:
		case !g.ok:
			return *r.times, false
		default:
			for _, line := range f.feeds() {
				bare.GiveNumber(line, g.number)
			}
		}
	}
	_, r.timed = r.times.read(bare, bindPhases)
	return *r.times, r.timed
}

// bindPhases is [model.Bind] for the lines of a calendar.
func bindPhases(doc *model.Document, bare *model.Member) (*model.Model, error) {
	return model.BindFor(doc, bare, func(l *model.Line) bool { return l.Name == "hold_months" || l.Name == "sale_day" })
}

// read works the phases out; it returns what is known of the deal if it can be bound.
func (c *calendar) read(bare *model.Member, bind func(*model.Document, *model.Member) (*model.Model, error)) (*walk.Known, bool) {
	doc, err := model.Standard()
	if err != nil {
		return nil, false
	}
	m, err := bind(doc, bare)
	if err != nil {
		return nil, false
	}
	hold, sale := m.Find(bare, "hold_months"), m.Find(bare, "sale_day")
	k := walk.NewKnown(m)
	// A hold too long to work out is known all the same, and is refused for it.
	if err := k.Work(hold.Index, sale.Index); err != nil && k.Values.Scalar[hold.Index].IsZero() {
		return k, false
	}
	c.hold, c.sale = k.Values.Scalar[hold.Index], int(k.Values.Scalar[sale.Index].IntPart())
	return k, true
}

// hold is how long the house is owned, in months.
func (r *reader) hold() (decimal.Decimal, bool) {
	c, ok := r.calendar()
	return c.hold, ok
}

// saleDay is the days from the purchase to the sale.
func (r *reader) saleDay() int {
	c, _ := r.calendar()
	return c.sale
}

// saleDate is the planned day of the sale; zero if the purchase has none.
func (r *reader) saleDate() quantity.Date {
	if r.deal.PurchaseDate.IsZero() {
		return quantity.Date{}
	}
	return r.deal.PurchaseDate.AddDays(r.saleDay())
}

func days(a, b quantity.Date) int { return quantity.DaysBetween(a, b) }

// where is the place of a key if the file has it, else of the first of the groups
// around it that it has, else the file as a whole.
func (r *reader) where(paths ...string) diag.Pos {
	for _, p := range paths {
		if g := r.got[p]; g != nil {
			return g.key.at
		}
	}
	return diag.Pos{File: r.name}
}

// needed is where, with the first line for the file as a whole.
func (r *reader) needed(paths ...string) diag.Pos {
	at := r.where(paths...)
	at.Line = max(1, at.Line)
	return at
}
