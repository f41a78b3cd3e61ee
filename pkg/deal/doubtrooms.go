package deal

import (
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtRooms doubts what a deal with rooms leaves open.
func (r *reader) doubtRooms() {
	if len(r.plans) > 0 {
		r.doubtContingencyForAge()
	}
	r.doubtSizes()
	r.doubtCounts()
	r.doubtQuotes()
	r.doubtOwnPrices()
	r.doubtRoll()
	r.doubtApart()
	r.doubtInstead()
	r.doubtAllTheHouse()
	r.doubtLayers()
	r.doubtBetweenLayers()
	r.doubtLeftLayers()
	r.doubtBedrooms()
	r.doubtAdds()
	r.doubtUnadded()
	r.doubtNothingAdded()
	if len(r.deal.Root.In("check")) == 0 { // else the tables by age would be read for nothing
		return
	}
	for _, c := range pricebook.Checks() {
		r.doubtBad(c)
	}
}

// doubtBad doubts a part of the house that was seen bad while the chosen work holds
// nothing that mends it. Nothing is set aside for what was seen.
func (r *reader) doubtBad(c *pricebook.Check) {
	for _, m := range r.deal.Root.In("check") {
		seen := m.Given.Of("seen")
		if plainKey(m.Label) != plainKey(c.Name) || seen.Choice != "bad" || r.mends(c) {
			continue
		}
		r.say("bad-not-planned", seen.Pos, "%s was seen bad, and no work mends it", diag.Quote(m.Label))("add   %s: hired   under work of the whole house, or a quote; nothing is set aside for what was seen", c.Item)
	}
}

func (r *reader) doubtContingencyForAge() {
	usual := pricebook.Contingency(r.deal.YearBuilt, r.deal.UtilitiesOff)
	share, words, at := assumedContingency, "no contingency is stated, so 10% is assumed", r.where("renovation")
	if g := r.good("renovation.contingency"); g != nil {
		share, words, at = g.number, "the contingency is "+g.node.text, g.at()
	}
	if share.GreaterThanOrEqual(usual) {
		return
	}
	suggested := quantity.FormatPercent(usual, 1)
	r.say("contingency-for-age", at, "%s; %s is suggested for %s", words, suggested, r.age())("write   contingency: %s   under renovation: rooms price what is planned, and this is for what nobody thought of", suggested)
}
