package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// doubtRooms doubts what a deal with rooms leaves open.
func (r *reader) doubtRooms() {
	if len(r.plans) > 0 {
		r.doubtContingencyForAge()
	}
	r.doubtUnnamed()
	r.doubtQuick()
	r.doubtSizes()
	r.doubtCounts()
	r.doubtLargeWork()
	r.doubtLowest()
	r.doubtContainer()
	r.doubtPartUnsaid()
	r.doubtIslands()
	r.doubtOwnPrices()
	r.doubtWaiting()
	r.doubtRoll()
	r.doubtApart()
	r.doubtOwnTrades()
	r.doubtInstead()
	r.doubtNamedOnce()
	r.doubtNamedPart()
	r.doubtNamedForAll()
	r.doubtSharedDoors()
	r.doubtAllTheHouse()
	r.doubtOutsideToo()
	r.doubtPartMeasured()
	r.noteUnlayered()
	r.noteUnlisted()
	r.doubtLayers()
	r.doubtBetweenLayers()
	r.doubtLeftLayers()
	r.doubtBedrooms()
	r.doubtAdds()
	r.doubtAddsLess()
	r.doubtUnadded()
	r.doubtIdleAdds()
	r.doubtNothingAdded()
	r.doubtAddsApart()
	for _, m := range r.deal.Root.In("check") {
		r.doubtNearPart(m)
		r.doubtBad(m)
		r.doubtGood(m)
		r.doubtMendsGood(m)
		if made, _ := r.worked(m, "made_new"); made.IsZero() { // else its amounts count for nothing
			r.doubtSmallAside(m)
			r.doubtLessAside(m)
			r.doubtLargeAside(m)
		}
	}
}

// doubtNearPart doubts a part that the file alone knows and whose name stands for one of the price
// book's, for which something is set aside too.
func (r *reader) doubtNearPart(m *model.Member) {
	meant := partsMeant(plainKey(m.Label))
	if len(checkOf(m).Rows) > 0 || len(meant) == 0 {
		return
	}
	own, _ := r.worked(m, "set_aside")
	var aside decimal.Decimal
	var beside []string
	for _, x := range r.deal.Root.In("check") {
		if slices.Contains(meant, x.Label) {
			each, _ := r.worked(x, "set_aside")
			aside, beside = aside.Add(each), append(beside, x.Label)
		}
	}
	if len(beside) == 0 || aside.IsZero() && own.IsZero() {
		return
	}
	also := ""
	if aside.IsPositive() {
		also = ", for which " + quantity.FormatMoney(aside) + " is set aside"
	}
	r.say("seen-near", m.Pos, "%s is taken as a part of its own, beside %s%s", diag.Quote(m.Label), strings.Join(beside, " and "), also)("if it is that part, write   %s   in its place", strings.Join(beside, "   or   "))
}

// doubtBad doubts a part of the house that was seen bad while the chosen work holds
// nothing that mends it. Nothing is set aside for what was seen.
func (r *reader) doubtBad(m *model.Member) {
	c, seen := checkOf(m), m.Given.Of("seen")
	if seen.Choice != seenBad || r.mends(c) {
		return
	}
	hint := "add   " + c.Item + ": hired   under work of the whole house, or a quote"
	if c.Item == "" { // the price book knows no work for it
		hint = "add   renovation: {lines: [{work: new " + m.Label + ", amount: $4,900}]}   for its mend"
	}
	r.say("bad-not-planned", seen.Pos, "%s was seen bad, and no work mends it", diag.Quote(m.Label))("%s; nothing is set aside for what was seen", hint)
}

// doubtGood doubts amounts for a part that was seen good.
func (r *reader) doubtGood(m *model.Member) {
	if seen, likely := m.Given.Of("seen"), m.Given.Of("if_bad"); seen.Choice == "good" && likely.Number.IsPositive() && likely.Key != "" {
		r.say("good-with-amount", likely.Pos, "%s was seen good, so nothing of the %s is set aside for it", diag.Quote(m.Label), likely.Text)("leave the amounts out, or say   state: not seen")
	}
}

// doubtMendsGood asks whether a part that was seen good takes what other work brings to mend it. What
// makes a part new, such as a panel for more current, comes whatever was seen.
func (r *reader) doubtMendsGood(m *model.Member) {
	c := checkOf(m)
	if m.Given.Of("seen").Choice != "good" || c.New {
		return
	}
	for _, w := range r.chosenWorks() {
		if w.by != "" && slices.Contains(c.Mends(), w.item.Name) {
			r.say("good-but-mended", w.at, "%s was seen good, and %s brings %s for it", diag.Quote(m.Label), w.by, diag.Quote(w.item.Name))("if whoever does the work says that it is not needed, or there is no %s, write   without: [%s]   beside the work; if it is wanted, name it there:   %[2]s: hired", m.Label, w.item.Name)
			return
		}
	}
}

// doubtSmallAside doubts a few dollars for the mend of a part, which could be thousands; the least of
// it may be little.
func (r *reader) doubtSmallAside(m *model.Member) {
	likely, most := m.Given.Of("if_bad"), m.Given.Of("if_bad_most")
	for _, v := range []model.Value{likely, most} {
		if v.Key == "" || !v.Number.IsPositive() || !v.Number.LessThan(smallAdds) {
			continue
		}
		hint := "write " + strings.TrimSpace(v.Text) + "k if thousands are meant"
		if x := v.Number.Shift(3); v.Key == "likely" && !most.Number.LessThan(smallAdds) && x.GreaterThan(most.Number) {
			hint = "check it beside the most, " + most.Text + ", for a point and a k that have slipped, as in $1.8k"
		}
		r.say("seen-small", v.Pos, "%s: %s is %s, little for a mend", m.Label, v.Key, diag.Quote(v.Text))("%s; it is used as it stands", hint)
	}
}

// littleOfBook is under which share of what the price book sets aside an amount has likely lost a digit;
// common practice, no source.
var littleOfBook = decimal.New(125, -3)

// doubtLessAside doubts what is likely for the mend of a part that was not seen, where it is nothing or far
// less than the price book sets aside.
func (r *reader) doubtLessAside(m *model.Member) {
	likely, seen, c := m.Given.Of("if_bad"), m.Given.Of("seen").Choice, checkOf(m)
	if likely.Key == "" || seen == "good" || seen == seenBad || len(c.Rows) == 0 {
		return
	}
	book := c.For(r.yearBuilt()).Likely
	switch {
	case likely.Number.IsZero():
		r.say("seen-small", likely.Pos, "%s: likely is %s, so nothing is set aside for it, and it was not seen", m.Label, diag.Quote(likely.Text))("write what a mend would likely take, or, once it is seen,   %s: good", m.Label)
	case likely.Number.GreaterThanOrEqual(smallAdds) && likely.Number.LessThan(book.Mul(littleOfBook)):
		r.say("seen-small", likely.Pos, "%s: likely is %s, and the price book sets %s aside for it", m.Label, diag.Quote(likely.Text), quantity.FormatDollars(book))("check it, for a digit left out; it is used as it stands")
	}
}

// wellOver is from how many times the most of the price book on an amount is well over it; common
// practice, no source.
var wellOver = decimal.New(14, -1)

// doubtLargeAside doubts what is likely for the mend of a part that was not seen, where it is well
// over the most of the price book and the file says no most.
func (r *reader) doubtLargeAside(m *model.Member) {
	likely, seen, c := m.Given.Of("if_bad"), m.Given.Of("seen").Choice, checkOf(m)
	if m.Given.Of("if_bad_most").Key != "" || likely.Key == "" || seen == "good" || seen == seenBad || len(c.Rows) == 0 {
		return
	}
	if most := c.For(r.yearBuilt()).Most; most.IsPositive() && likely.Number.GreaterThan(most.Mul(wellOver)) {
		r.say("seen-large", likely.Pos, "%s: likely is %s, well over the most that the price book takes for it (%s)", m.Label, diag.Quote(likely.Text), quantity.FormatDollars(most))("check it, for a nought too many; if it is right, say the most too, as   most: %s   ; it is used as it stands", likely.Text)
	}
}

func (r *reader) doubtContingencyForAge() {
	usual := r.deal.customaryContingency(true)
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
