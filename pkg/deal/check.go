package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

var (
	one     = decimal.NewFromInt(1)
	longest = decimal.NewFromInt(120) // months of a hold
)

// check refuses what each key allows but not all of them together.
func (r *reader) check() {
	r.checkRequired()
	r.checkHold()
	r.checkPurchase()
	r.checkLines()
	r.checkSpending()
	r.checkLoans()
	r.checkPartner()
	r.checkTax()
	r.checkTrades()
}

func (r *reader) checkRequired() {
	for _, must := range []struct{ path, group, code, what string }{
		{"purchase.price", "purchase", "missing-price", "the price of the house"},
		{"value.after-repair value", "value", "missing-after-repair-value", "the after-repair value"},
	} {
		if must.path == "value.after-repair value" && (r.got["value.before work"] != nil || r.valued()) {
			continue
		}
		if g := r.got[must.group]; r.got[must.path] != nil || r.meant[must.path] || r.meant[must.group] || g != nil && !g.ok {
			continue
		}
		f := fieldNamed(must.group, plainKey(must.path[len(must.group)+1:]))
		if c := r.deal.Comps; c != nil && must.path == "value.after-repair value" {
			r.say(must.code, r.needed("comps"), "the after-repair value is not given, and %s", c.None())("name houses sold before %s, each with its day and price, or add   value: {%s}", c.Day, f.example())
			continue
		}
		or := ""
		if must.group == "value" {
			or = ", or sold houses under   comps"
		}
		tell := r.say(must.code, r.needed(must.group), "%s is not given", must.what)
		if r.got[must.group] != nil {
			tell("add   %s   under %s%s", f.example(), must.group, or)
			continue
		}
		tell("add   %s: {%s}%s", must.group, f.example(), or)
	}
}

func (r *reader) checkHold() {
	hold, known := r.hold()
	switch {
	case !known || r.odd["time."] || r.meant["time"] || r.astray["time"]:
	case hold.IsZero():
		r.say("missing-hold", r.needed("time"), "the deal takes no time")("add the phases, e.g.   time: {renovation: 3 months, marketing: 5 weeks, escrow: 1 month}")
	case hold.GreaterThan(longest):
		at, most := r.needed("time"), ""
		if w, hours := r.longestWork(); w != nil {
			at, most = w.at, "; the most hours are those of "+diag.Quote(w.label)+", "+short(hours)
		}
		r.say("hold-too-long", at, "the phases are %s years together", hold.DivRound(decimal.NewFromInt(12), 1))("at most 10 years are reckoned%s", most)
	}
}

// longestWork is the work in rooms of the most hours where the renovation takes what they say;
// else nil.
func (r *reader) longestWork() (most *work, hours decimal.Decimal) {
	if r.early == nil {
		return nil, hours
	}
	for _, w := range r.chosenWorks() {
		c := r.early.Values.Model.Find(w.member, "trade_hours")
		if c == nil {
			continue
		}
		if x := r.early.Values.Scalar[c.Index]; x.GreaterThan(hours) { // worked out for the phases
			most, hours = w, x
		}
	}
	return most, hours
}

func (r *reader) checkPurchase() {
	until, bought := r.good("purchase.earnest deposit.refundable until"), r.good("purchase.date")
	if until != nil && bought != nil && until.date.Compare(bought.date) > 0 {
		r.say("deposit-after-purchase", until.at(), "the deposit is refundable until %s, which is after the purchase (%s)", until.date, bought.date)("write the last day on which backing out costs nothing, from the contract")
	}
	if built := r.good("house.year built"); built != nil && bought != nil && built.number.GreaterThan(decimal.NewFromInt(int64(bought.date.Year))) {
		r.say("built-after-purchase", built.at(), "the house is built in %s, after it is bought (%s)", built.node.text, bought.date)("write the year it was built, e.g. 1962; much depends on it, such as lead and asbestos")
	}
	r.atMost("purchase.earnest deposit.amount", "purchase.price", "deposit-above-price", "the earnest deposit")
	r.atMost("purchase.seller credit", "purchase.price", "credit-above-price", "the seller's credit")
	r.atMost("value.low", "value.after-repair value", "low-above-value", "the low value")
	r.atMost("cash.keep back", "cash.available", "keep-back-above", "the cash kept back")
	if keep := r.got["cash.keep back"]; keep != nil && r.got["cash.available"] == nil {
		r.say("keep-back-alone", keep.key.at, "cash is kept back, but not said how much there is")("add   available: $95,000   under cash")
	}
}

// atMost refuses a value above another.
func (r *reader) atMost(path, limit, code, name string) {
	a, b := r.good(path), r.good(limit)
	if a != nil && b != nil && a.number.GreaterThan(b.number) {
		most := b.node.text
		if !strings.Contains(most, "$") {
			most = strings.TrimSuffix(quantity.FormatMoney(b.number), ".00")
		}
		r.say(code, a.at(), "%s is %s, more than the %s (%s)", name, a.node.text, b.field.Key(), most)("accepted is at most %s", most)
	}
}

func (r *reader) checkLines() {
	for _, l := range r.lines() {
		amount := r.of(l, "amount")
		for _, part := range []string{"materials", "labour"} {
			if g := r.of(l, part); g != nil && amount != nil {
				r.say("cost-two-ways", g.key.at, "%s stands beside an amount for the whole line", diag.Quote(g.key.text))("keep the amount, or split it into materials and labour")
				break
			}
		}
		if !r.odd[l.path] && amount == nil && r.of(l, "materials") == nil && r.of(l, "labour") == nil && r.of(l, "own hours") == nil {
			r.say("line-empty", l.at, "the line says no cost")("add   amount: $9,800   or materials, labour, own hours")
		}
	}
}

// checkSpending refuses stated amounts of which nothing falls into the renovation.
func (r *reader) checkSpending() {
	stages, length := r.deal.Root.In("stage"), r.good("time.renovation")
	g := r.good("renovation.spending")
	if g == nil || g.node.shape != list {
		return
	}
	sum := decimal.Zero
	for i, m := range stages {
		if length == nil || decimal.NewFromInt(int64(i)).LessThan(length.number) {
			sum = sum.Add(m.Given.Of("amount").Number)
		}
	}
	if sum.IsZero() {
		r.say("spending-zero", g.key.at, "the stated spending is nothing inside the renovation")("write the amount of each month of the renovation, e.g.   spending: [$10k, $20k, $5k]")
	}
}

func (r *reader) checkPartner() {
	if g := r.got["partner"]; g != nil && g.ok && r.got["partner.share"] == nil && !r.odd["partner."] {
		r.say("partner-incomplete", g.key.at, "the partner has no share")("add   share: 40%%   (of every shortfall that is paid in)")
	}
}
