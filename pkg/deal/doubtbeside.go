package deal

import (
	"regexp"
	"slices"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// farBeside reports whether an input of the file is doubted beside others, the way of so many.
func (r *reader) farBeside(m *model.Member, line string, way int) bool {
	c := r.deal.Model.Find(m, line)
	if c == nil || c.Given == nil {
		return false
	}
	all := r.deal.Beside(c)
	return way < len(all) && r.breaks(all[way])
}

// breaks reports whether figures are doubted in one way beside each other.
func (r *reader) breaks(x Beside) bool {
	return !x.Holds(r.comesTo)
}

// doubtLongWork doubts a stated renovation of far more than the rooms' hours take.
func (r *reader) doubtLongWork() {
	stated, c := r.good("time.renovation"), r.deal.Model.Find(r.deal.Root, "renovation")
	if stated == nil || beyondUsual(stated) || !slices.ContainsFunc(r.longWork(c), r.breaks) {
		return
	}
	takes, _ := r.worked(r.deal.Root, "scope_months")
	r.say("renovation-long", stated.at(), "the renovation is %s, over %s times what the hours of its work take, %s", stated.node.text, manyTimes, quantity.FormatMonths(takes, 1))("write %s weeks if weeks are meant, or leave it out for what the hours take; it is used as it stands", quantity.FormatCount(stated.number, 2))
}

// doubtSmallValues doubts a low value, and values of the lender, of which a digit was left out.
// Where a digit too many is in the owner's value, doubtFarValue tells.
func (r *reader) doubtSmallValues() {
	worth, known := r.worked(r.deal.Root, "after_repair_value")
	if price := r.good("purchase.price"); known && price != nil && worth.GreaterThan(price.number.Mul(TimesThePrice)) {
		return
	}
	for _, x := range []struct {
		key, line string
		way       int
		code, of  string
		whole     string
		words     string
		share     decimal.Decimal
	}{
		{"low", "low_value", 0, "low-far-below", "the low value", "after_repair_value", "the after-repair value", lowOfValue},
		{"lender's value", "lender_value", 0, "lender-value-far-below", "the lender's value", "after_repair_value", "the after-repair value", half},
		{"as-is value", "as_is_value", 1, "as-is-far-below-price", "the as-is value", "all_in_price", "what is paid for the house", half},
	} {
		g := r.good("value." + x.key)
		if g == nil || !r.farBeside(r.deal.Root, x.line, x.way) {
			continue
		}
		if v, _ := r.worked(r.deal.Root, x.line); !v.Equal(g.number) {
			continue // another scope than the one that it is stated for moves it
		}
		whole, _ := r.worked(r.deal.Root, x.whole)
		r.say(x.code, g.at(), "%s (%s) is under %s of %s (%s)", x.of, g.dollars(), quantity.FormatPercent(x.share, 0), x.words, quantity.FormatDollars(whole))("check both, for a digit left out; k is a thousand and m a million; it is used as it stands")
	}
}

// doubtCredit doubts a seller's credit beyond what lenders let a seller give.
func (r *reader) doubtCredit() {
	if g := r.good("purchase.seller credit"); g != nil && r.farBeside(r.deal.Root, "seller_credit", 0) {
		r.say("credit-high", g.at(), "the seller's credit (%s) is more than %s of the price", g.dollars(), quantity.FormatPercent(highCredit, 0))("check it with the contract, and ask the lender: most let a seller give 3%% to 9%%; it is used as it stands")
	}
}

// agentWords are in the names of what agents take of the sale; settlesWords in those of others who
// call themselves agents.
var agentWords, settlesWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(agents?|brokers?|brokerage|listing|realtors?|commissions?)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(title|escrow|closing|settlement|transaction)\b`)
})

// sells reports whether a charge is what an agent takes of the sale.
func sells(m *model.Member) bool {
	return m.Kind == "selling_fee" && agentWords().MatchString(m.Label) && !settlesWords().MatchString(m.Label)
}

// severalAgents are the names of what all agents take together.
var severalAgents = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?i)\b(agents|brokers|realtors|commissions)\b`) })

// bothAgents are names that say that two sides are paid by one charge, who hardly take less than lowBoth;
// common practice, no source.
var (
	bothAgents = pattern(`(?i)\bboth\b|\b(?:agent|broker|listing|seller'?s?)s? (?:and|&|\+) `)
	lowBoth    = decimal.New(3, -2)
)

// leastOf is the share of the sale that an agent hardly takes less than, or all of them together
// where one charge is for all.
func leastOf(agent *model.Member) decimal.Decimal {
	if bothAgents().MatchString(agent.Label) {
		return lowBoth
	}
	others := slices.ContainsFunc(agent.Parent.In("selling_fee"), func(m *model.Member) bool { return m != agent && sells(m) })
	if severalAgents().MatchString(agent.Label) || !others {
		return lowAgents
	}
	return lowAgent
}

// doubtLowAgents doubts agents who take next to nothing, where a point has slipped.
func (r *reader) doubtLowAgents() {
	for _, m := range r.deal.Root.In("selling_fee") {
		if v, ok := m.Given.Look("share"); ok && sells(m) && v.Number.IsPositive() && v.Number.LessThan(leastOf(m)) {
			r.say("agent-share-low", v.Pos, "%s takes %s, under %s of the sale", m.Label, v.Text, quantity.FormatPercent(leastOf(m), 1))("check it with the listing agreement, for a point that has slipped; it is used as it stands")
		}
	}
}
