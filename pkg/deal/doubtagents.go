package deal

import (
	"regexp"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A charge of the sale that takes so much of it, and whose name tells of nothing else, may well be what
// agents take, or hold it; closing costs hold it from the second share on. Common practice, no source.
var (
	mayBeAgents   = decimal.New(2, -2)
	mayHoldAgents = decimal.New(5, -2)
)

// noAgents are in the names of charges of the sale that are none of agents, however much they take.
var noAgents = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(tax(es)?|stamps?|duty|excise|deed|concessions?|credits?|warranty)\b`)
})

// paysAgents reports whether a charge of the sale is or holds what agents take of it, as far as its name and
// amount tell; one of nothing says that there are none.
func (r *reader) paysAgents(m *model.Member) bool {
	if sells(m) {
		return true
	}
	if noAgents().MatchString(m.Label) && !agentWords().MatchString(m.Label) {
		return false
	}
	least := mayBeAgents
	if settlesWords().MatchString(m.Label) && !agentWords().MatchString(m.Label) {
		least = mayHoldAgents
	}
	value, known := r.worked(r.deal.Root, "after_repair_value")
	if v, is := m.Given.Look("fixed"); is && known && value.IsPositive() && !v.Number.LessThan(least.Mul(value)) {
		return true
	}
	for _, x := range charging(m) {
		if _, share, is := shareCharged(x); is && !share.LessThan(least) {
			return true
		}
	}
	return false
}

// highAgents is what several agents take of the sale together at most, and highAgent one line for all of
// them, which may hold what the closing costs; common practice, no source.
var highAgents, highAgent = decimal.New(8, -2), decimal.New(1, -1)

// doubtAgentsTogether doubts shares of agents that are more together than is usual: what all of them take
// may be written for each, or a point has slipped.
func (r *reader) doubtAgentsTogether(selling []*model.Member) {
	var sum decimal.Decimal
	var last model.Value
	var names []string
	for _, m := range selling {
		if v, is := m.Given.Look("share"); is && sells(m) && v.Number.IsPositive() && !v.Number.GreaterThan(highCharge) {
			sum, last = sum.Add(v.Number), v
			names = append(names, m.Label)
		}
	}
	switch n := len(names); {
	case n == 1 && (sum.GreaterThan(highAgent) || sum.GreaterThan(highAgents) && !settlesWords().MatchString(names[0]) && !noAgents().MatchString(names[0])):
		r.say("share-high", last.Pos, "%s takes %s of the sale", names[0], quantity.FormatPercent(sum, 2))("check it with the listing agreement, for a digit too many or a point that has slipped; over %s is unusual", quantity.FormatPercent(highAgents, 0))
	case n > 1 && sum.GreaterThan(highAgents):
		r.say("share-high", last.Pos, "the agents take %s of the sale together", quantity.FormatPercent(sum, 2))("check it with the listing agreement: what both take may be written for each; over %s is unusual", quantity.FormatPercent(highAgents, 0))
	}
}

// oneSide are the names of an agent of the owner alone, who hardly takes oneSideMost of the sale; common
// practice, no source.
var (
	oneSide     = pattern(`(?i)^(the |my |our )?(listing|list|lister|seller'?s?|sellers')( side)?('?s)?( agent| broker| realtor| commission)?( fee)?$`)
	oneSideMost = decimal.New(4, -2)
)

// doubtOneAgent asks for the agent of the buyer where the owner's alone is paid by what is usual for one.
func (r *reader) doubtOneAgent(selling []*model.Member) {
	var paid *model.Member
	for _, m := range selling {
		if r.paysAgents(m) && paid != nil {
			return
		} else if r.paysAgents(m) {
			paid = m
		}
	}
	if paid == nil || !oneSide().MatchString(paid.Label) {
		return
	}
	if v, is := paid.Given.Look("share"); is && v.Number.IsPositive() && v.Number.LessThan(oneSideMost) {
		r.say("buyers-agent-missing", v.Pos, "%s takes %s of the sale, and no agent of the buyer takes any", paid.Label, quantity.FormatPercent(v.Number, 2))("many sellers pay both, and both together take 4%% to 6%%: ask yours, and add   buyer's agent: 2.5%%   , or   buyer's agent: 0%%   if you will pay none")
	}
}
