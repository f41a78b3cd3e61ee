package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// checkTrades refuses trades that neither the work of the deal nor the price book has.
func (r *reader) checkTrades() {
	for _, s := range r.items["<trade>"] {
		name := s.member.Label
		if slices.Contains(r.deal.Trades, name) {
			continue
		}
		known := r.prices().Trades()
		if slices.Contains(known, name) || r.inLost(name) {
			continue
		}
		tell := r.say("unknown-trade", s.at, "the price book has no trade %s", diag.Quote(name))
		if near, ok := nearTrade(name, known); ok {
			tell("did you mean %q?", near)
		} else {
			tell("its trades are %s", strings.Join(known, ", "))
		}
	}
}

// nearTrade finds the trade that one who works in it, another word for it, or a slip stands for.
func nearTrade(name string, known []string) (string, bool) {
	if trade := pricebook.TradeOf(name); slices.Contains(known, trade) {
		return trade, true
	}
	others := func(trade string) bool { return !pricebook.OfTrade(name, trade) }
	if of := slices.DeleteFunc(slices.Clone(known), others); len(of) == 1 {
		return of[0], true
	}
	return diag.Nearest(name, known)
}

// doubtRates looks for rates that no work goes by in any option of the file: what another scope
// takes may go by a rate that this one does not need.
func (r *reader) doubtRates() {
	for _, s := range r.items["<trade>"] {
		if g := r.good(s.path + "rate"); g != nil && !r.hourly[s.member.Label] {
			r.say("rate-unused", g.at(), "no work goes by the hourly rate of %s", s.member.Label)("hired work is priced by the unit; where this trade charges its hours, write   by the hour: yes   at the work")
		}
	}
	g := r.good("renovation.own labour rate")
	if g == nil || len(r.hourly) > 0 {
		return
	}
	for _, m := range r.deal.Root.In("cost") {
		if m.Given.Of("own_hours").Number.IsPositive() {
			return
		}
	}
	r.say("rate-unused", g.at(), "no line of the renovation has own hours, so the own labour rate changes nothing")("own hours in rooms are worth what a trade charges for the work")
}
