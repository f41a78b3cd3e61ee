package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubt warns of what is possible but probably not meant. Only what the file alone
// tells is looked at.
func (r *reader) doubt() {
	r.doubtPrices() // needs no figure, while those that there are are copied
	r.doubtPurchase()
	r.doubtLow()
	r.doubtSmallValues()
	r.doubtTime()
	r.doubtWorks()
	r.doubtOwnPace()
	r.doubtDayHours()
	r.doubtRooms()
	r.doubtOutOfPlace()
	r.doubtHolding()
	r.doubtSelling()
	r.doubtCharges()
	r.doubtAims()
	r.doubtSlips()
	r.doubtLongWork()
	r.doubtCredit()
	r.doubtLowTax()
	r.doubtLowBills()
	r.doubtLowAgents()
	r.doubtSmallCharges()
	r.doubtDiscount()
	for _, l := range r.loans() {
		r.doubtLoan(l)
		r.doubtLoanFees(l)
		r.doubtTerm(l)
	}
	r.doubtLoans()
	r.doubtDates()
	r.doubtHired()
	r.doubtNoRate()
	r.doubtRates()
	r.doubtTwice()
	r.doubtContingencyTwice()
	r.doubtComps()
	r.doubtBuiltForWork()
	r.doubtNotSeen()
	r.doubtEdges()
	r.doubtOutsideAlone()
	r.doubtSinks()
	r.doubtRails()
	r.doubtCounted()
	r.doubtOwnWithoutHours()
}

func (r *reader) doubtPurchase() {
	price, value, lender := r.good("purchase.price"), r.good("value.after-repair value"), r.good("value.lender's value")
	if value != nil && value.number.LessThanOrEqual(price.number) {
		r.say("value-below-price", value.at(), "the after-repair value (%s) is not above the price (%s)", value.dollars(), price.dollars())("check both; k is a thousand and m a million")
	}
	r.doubtFarValue(price, value)
	r.doubtBargain(price, value)
	r.doubtAsIs(price, value)
	if value != nil && lender != nil && lender.number.GreaterThan(value.number) {
		r.say("lender-value-above", lender.at(), "the lender's value (%s) is above yours (%s)", lender.dollars(), value.dollars())("check both; the loan is sized by the lender's, the sale by yours")
	}
	if len(r.deal.Root.In("purchase_fee")) == 0 {
		r.say("closing-costs-missing", r.where("purchase.closing", "purchase"), "the purchase has no closing costs")("ask a title company, and add   closing: {title and escrow: $1,850}   under purchase")
	}
}

// TimesThePrice is from how many times the price on, or how small a part of it, a value looks
// as if a digit of either was too many (common practice, no source).
var TimesThePrice = decimal.NewFromInt(10)

// doubtFarValue looks for an after-repair value of more than ten times the price, stated or worked
// out from the value before work or by comparables.
func (r *reader) doubtFarValue(price, stated *reading) {
	most := price.number.Mul(TimesThePrice)
	if stated != nil {
		if stated.number.GreaterThan(most) {
			r.say("value-far-above-price", stated.at(), "the after-repair value (%s) is more than ten times the price (%s)", stated.dollars(), price.dollars())("check both; k is a thousand and m a million")
		}
		return
	}
	worth, known := r.worked(r.deal.Root, "after_repair_value")
	if !known || !worth.GreaterThan(most) {
		return
	}
	says := "the after-repair value comes to " + quantity.FormatDollars(worth) + ", more than ten times the price (" + price.dollars() + ")"
	if before := r.good("value.before work"); before != nil {
		r.say("value-far-above-price", before.at(), "%s", says)("check the value before work (%s), what the options add, and the price; k is a thousand and m a million", before.dollars())
		return
	}
	r.say("value-far-above-price", r.where("comps", "value"), "%s", says)("check the prices of the sales, and the price; k is a thousand and m a million")
}

// doubtBargain looks for a house worth over twice its price as it is: the value after the work was
// written for that before it, or a digit slipped. It says nothing where doubtFarValue does.
func (r *reader) doubtBargain(price, stated *reading) {
	if worth, known := r.worked(r.deal.Root, "after_repair_value"); known && worth.GreaterThan(price.number.Mul(TimesThePrice)) {
		return
	}
	for _, key := range []string{"before work", "as-is value"} {
		g := r.good("value." + key)
		if g == nil || !g.number.GreaterThan(price.number.Mul(two)) || key == "before work" && stated != nil {
			continue // beside an after-repair value the one before work changes nothing
		}
		r.say("as-is-far-above-price", g.at(), "%s is %s, more than twice the price (%s) for the house as it stands", key, g.dollars(), price.dollars())("check both; if that is what the house is worth after the work, write   after-repair value: %s   ; it is used as it stands", strings.TrimSpace(g.node.text))
		return
	}
}

func (r *reader) doubtTime() {
	for _, p := range []struct{ key, code, what string }{
		{"marketing", "marketing-missing", "no time from the listing to an accepted offer"},
		{"escrow", "escrow-missing", "no time from the accepted offer to the closing of the sale"},
	} {
		if g := r.good("time." + p.key); g == nil || g.number.IsZero() {
			r.say(p.code, r.where("time."+p.key, "time"), "the plan has %s", p.what)("write   %s   under time, or what is usual where the house is", fieldNamed("time", p.key).example())
		}
	}
}

// muchStated is how much of what the renovation takes its months add up to at most; common practice, no source.
var muchStated = decimal.New(15, -1)

func (r *reader) doubtWorks() {
	root := r.deal.Root
	works := len(root.In("cost"))+len(root.In("general_fee"))+len(r.plans) > 0
	time := r.good("time.renovation")
	own, _ := r.worked(root, "line_own_hours")
	idle := time == nil && len(r.plans) == 0 && own.IsZero() || time != nil && time.number.IsZero() // own work and rooms take their own time
	switch {
	case works && idle:
		r.say("works-without-time", r.where("time.renovation", "time"), "the renovation costs money but takes no time")("add   renovation: 3.75 months   under time")
	case !works && !idle && len(r.plans) == 0:
		r.say("works-missing", r.where("renovation", "time"), "the renovation takes time but costs nothing")("add its lines, e.g.   renovation: {lines: [{trade: roof, work: new shingles, amount: $9,800}]}")
	}
	if works && len(r.plans) == 0 { // rooms have a doubt of their own
		r.doubtContingency()
	}
	if n := len(root.In("stage")); time != nil && decimal.NewFromInt(int64(n)).GreaterThan(time.number.Ceil()) {
		r.say("spending-beyond", r.where("renovation.spending"), "spending is stated for %d months, but the renovation takes %s", n, time.node.text)("what lies beyond the renovation is not counted; the rest is scaled to the budget")
	}
	stated, _ := r.worked(root, "stated_spending")
	if spend, known := r.worked(root, "spend"); known && spend.IsPositive() && stated.GreaterThan(spend.Mul(muchStated)) {
		r.say("spending-sum", r.where("renovation.spending"), "the months of spending add up to %s, and the renovation takes %s", quantity.FormatDollars(stated), quantity.FormatDollars(spend))("check them, for a nought too many in one: only how they stand to each other counts, as they are scaled to what the renovation takes")
	}
	for _, l := range r.lines() {
		hours := r.good(l.path + "own hours")
		if hours != nil && hours.number.IsPositive() && r.of(l, "hired rate") == nil && r.got["renovation.own labour rate"] == nil {
			r.say("own-hours-unpriced", hours.key.at, "the own hours have no rate, so the work finished by trades looks too cheap")("add   hired rate: $55/hour   here, or   own labour rate: $45/hour   under renovation")
		}
	}
}

func (r *reader) doubtContingency() {
	usual := r.deal.customaryContingency(false)
	words := quantity.FormatPercent(usual, 1)
	age := r.age()
	g := r.good("renovation.contingency")
	switch {
	case g == nil && assumedContingency.LessThan(usual):
		r.say("contingency-assumed", r.where("renovation"), "no contingency is stated; 10%% is assumed, and %s is customary for %s", words, age)("add   contingency: %s   under renovation", words)
	case g == nil:
	case g.number.IsZero():
		r.say("contingency-none", g.at(), "the plan has no contingency; %s is customary for %s", words, age)("write   contingency: %s   unless every wall has been opened", words)
	case g.number.LessThan(usual):
		r.say("contingency-low", g.at(), "a contingency of %s is under the %s that is customary for %s", g.node.text, words, age)("write   contingency: %s   unless there is a reason for less", words)
	}
}

// assumedContingency is what the model assumes where the file states none.
var assumedContingency = decimal.New(1, -1)

// age says how old the house is, as far as that asks for contingency.
func (r *reader) age() string {
	age := "a house of unknown age"
	if r.deal.YearBuilt > 0 {
		age = "a house built in " + r.got["house.year built"].node.text
	}
	if r.deal.UtilitiesOff {
		age += " with its utilities off"
	}
	return age
}

func (r *reader) doubtHolding() {
	at := r.where("holding")
	if !r.deal.Insured {
		r.say("insurance-missing", at, "no line names insurance")("a house under work usually needs vacant-house or builder's-risk cover from the closing on; ask an insurer, and add it under holding")
	}
	holding := r.deal.Root.In("holding_fee")
	if !slices.ContainsFunc(holding, taxes) {
		r.say("property-tax-missing", at, "no holding line names property tax")("add   property tax: $4,120/year   from a bill without the seller's exemptions; theirs may be far lower than yours")
	}
	for _, m := range holding {
		r.doubtIncome(m)
		r.doubtOnce(m)
		r.doubtStaging(m)
	}
	for _, m := range slices.Concat(holding, r.deal.Root.In("general_fee")) {
		r.doubtPhase(m)
	}
}

// doubtPhase looks for a charge by time in a phase of no length: it costs nothing. Works and
// a marketing without time are doubted by themselves.
func (r *reader) doubtPhase(m *model.Member) {
	v, said := m.Given.Look("during")
	months, ok := r.worked(m, "months")
	rate, too := r.worked(m, "monthly_rate")
	if !said || v.Choice == "renovation" || v.Choice == "marketing" || !ok || !too || !months.IsZero() || !rate.IsPositive() {
		return
	}
	key := strings.ReplaceAll(v.Choice, "-", " ")
	r.say("phase-empty", v.Pos, "%s costs nothing: it runs during %s, which takes no time", m.Label, v.Choice)("say how long that takes, e.g.   time: {%s: 1 month}   or when else it is paid, e.g.   during: hold", key)
}

// income are words in the name of a charge that is rather money that comes in.
var income = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)^rent$|\b(income|tenants?|lodgers?)\b`) })

// doubtIncome doubts a holding cost whose name is that of money that comes in.
func (r *reader) doubtIncome(m *model.Member) {
	if !income().MatchString(m.Label) || !m.Given.Of("credit").Number.IsZero() {
		return
	}
	for _, form := range []string{"a_month", "a_quarter", "a_year", "fixed"} {
		if v, is := m.Given.Look(form); is {
			r.say("income-as-cost", v.Pos, "%s is counted as a cost, %s", m.Label, v.Text)("if it is paid to you write   %s: {amount: %s, credit: yes}", m.Label, v.Text)
			return
		}
	}
}

// Permits are hardly over a share of the work, nor in dollars where that is little: one of a small job costs
// some hundreds; common practice, no source.
var highPermits, largePermits = decimal.New(5, -2), decimal.NewFromInt(2500)

// permits reports whether a charge is what the building department takes of the work.
func permits(m *model.Member) bool {
	return m.Kind == "general_fee" && pricebook.IsPermit(plainKey(m.Label))
}

func (r *reader) doubtSelling() {
	selling := r.deal.Root.In("selling_fee")
	if len(selling) == 0 {
		r.say("selling-costs-missing", r.where("selling"), "the sale costs nothing")("add the commissions, the closing and the transfer tax, e.g.   selling: {listing agent: 2.5%%, buyer's agent: 2.5%%, settlement: $1,200}")
	}
	if len(selling) > 0 && !slices.ContainsFunc(selling, r.paysAgents) {
		r.say("agents-missing", r.where("selling"), "no charge of the sale is an agent's commission, so nothing is counted for one")("add what agents take, e.g.   listing agent: 2.5%%   and   buyer's agent: 2.5%%   ; if you sell without any, write   agents: 0%%")
	}
	r.doubtAgentsTogether(selling)
	r.doubtOneAgent(selling)
	for _, m := range selling {
		if v, ok := m.Given.Look("base"); ok && v.Refers == "price" && strings.TrimPrefix(plainKey(v.Text), "the ") == "price" {
			r.say("selling-of-price", v.Pos, "%s is of the price that you pay for the house, not of what it sells for", m.Label)("write   of: sale price   if it is of that, or   of: purchase price   if this is meant")
		}
	}
}

func (r *reader) doubtAims() {
	if !r.deal.HasCash {
		r.say("cash-missing", r.where("cash"), "the file does not say what cash you have, so the verdict can't say if it is enough")("add   cash: {available: $95,000}")
	}
	stated := slices.ContainsFunc(r.deal.Targets, func(t string) bool { return t != "cash_to_spare" })
	if !stated {
		r.say("target-missing", r.where("targets"), "no target is stated; a profit of $0 or more is taken as enough")("add   targets: {profit: $30,000}")
	}
}
