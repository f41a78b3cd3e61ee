package stress

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A Day is a bad day: what goes wrong, alone or together.
type Day struct {
	Name string // "sale", "late" and so on, or what the deal file calls it
	// By is how far it goes: of "sale" and "value" the share taken off, of "overrun" the
	// overrun over the bids, which is the scale of the break-evens, of "hands" and "hurt"
	// dollars, of all others months; 0 for those of the deal file.
	By     decimal.Decimal
	Title  string // in a few words
	What   string // in a sentence without its full stop
	Remedy string // what helps, in one line; "" where the deal file says nothing
	Own    bool   // of the deal file
	Usual  bool   // a bid tells of it; the others are much like one of these
	Aside  bool   // the contingency is another
	moves  []exact.Change
	sized  []exact.Change // what sizes the loans anew where it comes before they are closed
}

// How far each goes; common practice, no source.
var (
	saleDrop     = decimal.New(5, -2)  // the house sells 5% lower
	overPlan     = decimal.New(20, -2) // the overrun over the bids is 20 points above the planned one
	lateMonths   = decimal.NewFromInt(3)
	stallMonths  = decimal.NewFromInt(2)
	permitMonths = decimal.NewFromInt(2)
	valueDrop    = decimal.New(10, -2) // the lender's value comes in 10% low
	slowerMonths = decimal.NewFromInt(1)
	hurtPart     = decimal.New(5, -1) // own work stops half way
	hurtMonths   = decimal.NewFromInt(1)
	one          = decimal.NewFromInt(1)
)

// Days are the bad days that this deal can have: those of its file first.
func (p *Plan) Days() []Day {
	var list []Day
	titles := []string{"as planned"}
	for _, of := range []func() (Day, bool){
		p.soldLow, p.soldLate, p.overrun, p.stall, p.hands, p.lowValue, p.slowDraws, p.hurt, p.walkedAway, p.latePermits,
	} {
		if d, may := of(); may {
			list, titles = append(list, d), append(titles, d.Title)
		}
	}
	var own []Day
	for _, d := range p.Deal.BadDays {
		o := p.own(d)
		if slices.ContainsFunc(titles, func(t string) bool { return strings.EqualFold(t, o.Title) }) {
			o.Title += ", of the file"
		}
		own = append(own, o)
	}
	return append(own, list...)
}

// own is a bad day of the deal file.
func (p *Plan) own(d deal.BadDay) Day {
	out := Day{Name: d.Name, Title: d.Name, Remedy: d.Remedy, Own: true}
	var parts []string
	var inputs []deal.Input
	for _, c := range d.Changes {
		parts = append(parts, c.Path+" "+c.Said())
		if cell := p.input(c.Input); cell != nil {
			out.moves = append(out.moves, exact.Change{Cell: cell, Value: c.Value})
		}
		inputs = append(inputs, c.Input)
	}
	if slices.ContainsFunc(inputs, chance.Known) {
		out.sized = p.closed(inputs...)
	}
	out.Aside = slices.ContainsFunc(inputs, setsAside)
	out.What = strings.Join(parts, ", ")
	return out
}

func (p *Plan) to(line string, x decimal.Decimal) exact.Change {
	return exact.Change{Cell: p.cell(line), Value: x}
}

func (p *Plan) more(line string, x decimal.Decimal) exact.Change {
	return p.to(line, p.Line(line).Add(x))
}

func percent(x decimal.Decimal) string { return quantity.FormatPercent(x, 1) }
func months(x decimal.Decimal) string  { return quantity.FormatMonths(x, 1) }

func (p *Plan) soldLow() (Day, bool) {
	drop, of, limit := saleDrop, "", "state a low value, so that the don't-go-above price has this in it"
	if low, likely := p.Line("low_value"), p.Line("after_repair_value"); low.LessThan(likely) {
		drop, of, limit = formula.Divide(likely.Sub(low), likely), ", at your low value", "the don't-go-above price has this in it"
	}
	change := one.Add(p.Line("market_change")).Mul(one.Sub(drop)).Sub(one)
	return Day{Name: "sale", By: drop, Title: "sells " + percent(drop) + " low", What: "The house sells for " + percent(drop) + " less" + of, Usual: true,
		Remedy: "look at more sold houses before the bid; " + limit, moves: []exact.Change{p.to("market_change", change)}}, true
}

func (p *Plan) soldLate() (Day, bool) {
	return Day{Name: "late", By: lateMonths, Title: "sells " + months(lateMonths) + " late", What: "It sells " + months(lateMonths) + " later", Usual: true,
		Remedy: "price it by what sold last month, and keep the months' money aside", moves: []exact.Change{p.more("late_sale", lateMonths)}}, true
}

func (p *Plan) overrun() (Day, bool) {
	over := p.Line("overrun").Add(overPlan)
	return Day{Name: "overrun", By: over, Title: percent(over) + " over the bids", Usual: true,
		What:   "The work comes to " + percent(over) + " over the bids (planned " + percent(p.Line("overrun")) + ")",
		Remedy: "get firm bids for the dearest lines, and open a wall before the price is fixed", moves: []exact.Change{p.to("overrun", over)}}, p.Line("base_cost").IsPositive()
}

func (p *Plan) stall() (Day, bool) {
	return Day{Name: "stall", By: stallMonths, Title: "works stand still " + months(stallMonths), What: "The work stands still for " + months(stallMonths), Usual: true,
		Remedy: "book the trades by date, and order what takes long before the closing", moves: []exact.Change{p.more("standstill", stallMonths)}}, p.Line("renovation").IsPositive()
}

// dearer is so many dollars more of work.
func (p *Plan) dearer(dollars decimal.Decimal) exact.Change { return p.more("extra_work", dollars) }

func (p *Plan) hands() (Day, bool) {
	own := p.Line("own_labour")
	if !own.IsPositive() {
		return Day{}, false
	}
	return Day{Name: "hands", By: own, Title: "trades do your work", What: "You cannot do your own work and trades finish it", Usual: true,
		Remedy: "get a trade's price for your own hours now, and bid with it if they are not sure", moves: []exact.Change{p.dearer(own)}}, true
}

func (p *Plan) hurt() (Day, bool) {
	own := p.Line("own_labour").Mul(hurtPart)
	if !own.IsPositive() || !p.Line("renovation").IsPositive() {
		return Day{}, false
	}
	return Day{Name: "hurt", By: own, Title: "you are hurt",
		What:   "You are hurt half way through your own work: it stands still for " + months(hurtMonths) + ", then trades finish it",
		Remedy: "have the number of a trade who would step in, and insure yourself as well as the house",
		moves:  []exact.Change{p.dearer(own), p.more("standstill", hurtMonths)}}, true
}

func (p *Plan) walkedAway() (Day, bool) {
	escrow := p.Line("escrow")
	again := p.Line("marketing").Add(escrow)
	return Day{Name: "contract", By: again, Title: "buyer walks away", What: "The buyer walks away before closing: marketing and escrow start again, " + months(again),
		Remedy: "ask for the buyer's lender letter and a deposit, and keep a second offer warm",
		moves:  []exact.Change{p.more("late_sale", p.Line("marketing")), p.more("escrow", escrow)}}, again.IsPositive()
}

func (p *Plan) latePermits() (Day, bool) {
	return Day{Name: "permits", By: permitMonths, Title: "permits " + months(permitMonths) + " late", What: "Permits come " + months(permitMonths) + " late",
		Remedy: "ask the permit desk how long it takes now; apply before the closing where they let you", moves: []exact.Change{p.more("lead_in", permitMonths)}}, p.Line("base_cost").IsPositive() && p.Line("renovation").IsPositive()
}

func (p *Plan) lowValue() (Day, bool) {
	for _, l := range p.loans() {
		if p.of(l, "value_cap").IsPositive() {
			return Day{Name: "value", By: valueDrop, Title: "lender's value " + percent(valueDrop) + " low", What: "The lender's value comes in " + percent(valueDrop) + " low", Usual: true, sized: p.sizedBy("lender_value"),
				Remedy: "hand the appraiser your sold houses and list of work, and know where the rest would come from",
				moves:  []exact.Change{p.to("lender_value", p.Line("lender_value").Mul(one.Sub(valueDrop)))}}, true
		}
	}
	return Day{}, false
}

func (p *Plan) slowDraws() (Day, bool) {
	d := Day{Name: "draws", By: slowerMonths, Title: "draws " + months(slowerMonths) + " slower", What: "Draws come " + months(slowerMonths) + " later", Usual: true,
		Remedy: "ask what each draw takes and how soon it is inspected; keep a month of trades' bills in cash"}
	for _, l := range p.loans() {
		if p.of(l, "holdback").IsPositive() {
			d.moves = append(d.moves, exact.Change{Cell: p.Model.Find(p.members[l], "lag"), Value: p.of(l, "lag").Add(slowerMonths)})
		}
	}
	return d, d.moves != nil
}

func (p *Plan) loans() []*model.Member { return p.Deal.Root.In("loan") }
