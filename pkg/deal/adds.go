package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// half of the after-repair value is much for one option, and half of the price for one of a room;
// common practice, no source.
var half = decimal.New(5, -1)

// smallAdds is less than an option adds where it adds something; it could be thousands.
var smallAdds = decimal.NewFromInt(100)

// doubtAdds looks for options that add more than the house can well hold: one of a room over half
// of the price, one of the whole house over half of the after-repair value, or more than a house is
// worth of which only that is known.
func (r *reader) doubtAdds() {
	for _, o := range r.items["<option>"] {
		if g := r.good(o.path + "adds"); g != nil && g.number.IsPositive() && g.number.LessThan(smallAdds) {
			r.say("adds-small", g.at(), "%s: %s adds %s, little for an option", o.member.Parent.Label, o.member.Label, diag.Quote(g.node.text))("write %sk if thousands are meant; it is used as it stands", strings.TrimSpace(g.node.text))
		}
	}
	for _, o := range r.items["<option>"] {
		g := r.good(o.path + "adds")
		if words := r.overMostAdded(o.member, g); words != "" {
			r.say("adds-high", g.at(), "%s: %s adds %s, %s", o.member.Parent.Label, o.member.Label, g.dollars(), words)("check it for a nought too many; write what the house sells for more because of this option; it is used as it stands")
		}
	}
}

// An option of much work that adds under an eighth of what that costs may have lost a nought; common
// practice, no source.
var largeOption, lostNought = decimal.NewFromInt(20_000), eight

// What an option adds is rarely over so large a share of the price and so many times what its work costs;
// common practice, no source.
var farAdded = []struct{ share, times decimal.Decimal }{
	{decimal.New(15, -2), decimal.NewFromInt(5)},
	{decimal.New(10, -2), decimal.NewFromInt(8)},
}

// doubtAddsFar doubts an option taken that adds much of the price and many times what its work costs
// finished by trades, where doubtAdds and doubtIdleAdds say nothing.
func (r *reader) doubtAddsFar() {
	for _, p := range r.chosenPlans() {
		g := r.good(p.scope.path + "adds")
		if g == nil || len(p.works) == 0 || r.overMostAdded(p.option, g) != "" {
			continue
		}
		cost, known := r.worked(p.option, "trade_price")
		if !known {
			continue
		}
		if times := r.timesAdded(g.number, cost); times.IsPositive() {
			r.say("adds-far", g.at(), "%s: %s adds %s, over %s times what its work costs finished by trades (%s)", p.room.Label, p.option.Label, g.dollars(), times, quantity.FormatDollars(cost.Round(0)))("check it for a nought too many, and whether all of its work is named; write what the house sells for more because of this option; it is used as it stands")
			continue
		}
		r.doubtLittleAdded(p, g, cost)
	}
}

// timesAdded is over how many times what its work costs an option adds, where that is rare; or 0.
func (r *reader) timesAdded(adds, cost decimal.Decimal) decimal.Decimal {
	price := r.good("purchase.price").number
	for _, far := range farAdded {
		if adds.GreaterThan(price.Mul(far.share)) && adds.GreaterThan(cost.Mul(far.times)) {
			return far.times
		}
	}
	return decimal.Zero
}

// doubtLittleAdded doubts an option of the outside whose much work adds a small part of what it costs,
// and one inside that adds little beside another of its room. What mends the whole house often adds little.
func (r *reader) doubtLittleAdded(p *plan, g *reading, cost decimal.Decimal) {
	switch {
	case g.number.LessThan(smallAdds):
	case p.room.Kind != "outside":
		r.doubtAddsLittle(p, g, cost)
	case !cost.LessThan(largeOption) && g.number.Mul(lostNought).LessThan(cost):
		r.say("adds-far", g.at(), "%s: %s adds %s, under an eighth of what its work costs finished by trades (%s)", p.room.Label, p.option.Label, g.dollars(), quantity.FormatDollars(cost.Round(0)))("check it for a nought that was lost; write what the house sells for more because of this option; it is used as it stands")
	}
}

// overMostAdded says how what an option adds, if anything, is more than it plausibly can, or "".
func (r *reader) overMostAdded(option *model.Member, adds *reading) string {
	if adds == nil {
		return ""
	}
	most, words := r.mostAdded()
	price := r.good("purchase.price")
	if ofPrice := price.number.Mul(half); option.Parent.Kind != "whole_house" && (words == "" || ofPrice.LessThan(most)) {
		most, words = ofPrice, "over half of the price ("+price.dollars()+")"
	}
	if words == "" || !adds.number.GreaterThan(most) {
		return ""
	}
	return words
}

// mostAdded is what no option plausibly adds more than, with the words for more than that; "" where
// nothing tells.
func (r *reader) mostAdded() (most decimal.Decimal, more string) {
	if value := r.good(statedValues[0]); value != nil {
		return value.number.Mul(half), "over half of the after-repair value (" + value.dollars() + ")"
	}
	if value := r.good("value.before work"); value != nil {
		return value.number, "more than the value before work (" + value.dollars() + ")"
	}
	return decimal.Zero, ""
}

// saysAdds is the way out where an option does not say what it adds.
const saysAdds = "write what the house sells for more because of it, as   adds: $9,000   , or   adds: $0"

// doubtUnadded doubts an option with work that does not say what it adds to the value,
// where another of its room does: nothing is assumed then, which decides between them.
func (r *reader) doubtUnadded() {
	with := map[*model.Member]string{}
	for _, o := range r.items["<option>"] {
		if g := r.good(o.path + "adds"); g != nil && g.number.IsPositive() && with[o.member.Parent] == "" {
			with[o.member.Parent] = o.member.Label
		}
	}
	for _, o := range r.items["<option>"] {
		other := with[o.member.Parent]
		if other == "" || r.got[o.path+"work"] == nil || r.got[o.path+"adds"] != nil {
			continue
		}
		r.say("adds-missing", o.at, "%s of %s does not say what it adds to the value, so nothing is assumed; %s does", diag.Quote(o.member.Label), o.member.Parent.Label, diag.Quote(other))(saysAdds)
	}
}

// An option is much work from a share of what all rooms cost and one of the price on; common practice,
// no source.
var muchOfRooms, muchOfPrice = decimal.New(5, -2), decimal.New(1, -2)

// doubtUnaddedRooms doubts an option taken of a room to live in, with much of the work, where no
// option of the room says what it adds and those of other rooms do. A repair, and work on what
// hardly sells a house, as a cellar or a closet, need not add.
func (r *reader) doubtUnaddedRooms() {
	says := map[*model.Member]bool{}
	for _, o := range r.items["<option>"] {
		if g := r.good(o.path + "adds"); g != nil && g.number.IsPositive() {
			says[o.member.Parent] = true
		}
	}
	if len(says) == 0 || r.byCondition() {
		return
	}
	var all decimal.Decimal
	costs := map[*plan]decimal.Decimal{}
	for _, p := range r.chosenPlans() {
		costs[p], _ = r.worked(p.option, "trade_price")
		all = all.Add(costs[p])
	}
	much := decimal.Max(all.Mul(muchOfRooms), r.good("purchase.price").number.Mul(muchOfPrice))
	for _, p := range r.chosenPlans() {
		o := p.scope
		if p.room.Kind != "inside" || p.option.Label == onlyOption || says[p.room] || r.got[o.path+"adds"] != nil || o.at.File == pricebook.QuickFile || !costs[p].GreaterThan(much) {
			continue
		}
		if r.lives(p.room) && r.roomKinds[p.room] != "closet" {
			r.say("adds-missing", o.at, "%s of %s does not say what it adds to the value, so nothing is assumed; options of other rooms do", diag.Quote(p.option.Label), p.room.Label)(saysAdds)
		}
	}
}

// doubtIdleAdds doubts an option that adds to the value without any work: forgotten work
// lets the house seem worth more for nothing.
func (r *reader) doubtIdleAdds() {
	for _, p := range r.plans {
		if g := r.good(p.scope.path + "adds"); g != nil && g.number.IsPositive() && len(p.works) == 0 {
			r.say("adds-without-work", g.at(), "%s of %s adds %s and has no work, so nothing is paid for it", diag.Quote(p.option.Label), p.room.Label, g.dollars())("write its work, as   work: {paint walls: hired}   , or leave out what it adds")
		}
	}
}

// doubtAddsApart doubts a value before work that does not come to the after-repair value stated
// beside it with what the options of the file's own scope add: the after-repair value counts.
func (r *reader) doubtAddsApart() {
	after, before, adds := r.good(statedValues[0]), r.good("value.before work"), r.planned.adds
	if after == nil || before == nil || adds.IsZero() {
		return
	}
	if sum := before.number.Add(adds); !sum.Equal(after.number) {
		r.say("adds-apart", before.at(), "the %s before work and the %s that the options taken add come to %s, but the after-repair value is stated as %s", before.dollars(), quantity.FormatDollars(adds), quantity.FormatDollars(sum), after.dollars())("the after-repair value counts, and the value before work changes nothing; leave out one of them, or check what the options add")
	}
}

// usedUp refuses a scope with which a value of the file comes to nothing or less,
// because what the planned options add is most of it; it reports whether it did.
func (r *reader) usedUp(g *reading, comes, planned decimal.Decimal) bool {
	if comes.IsPositive() {
		return false
	}
	scope := "with the options asked for"
	if r.allOptions {
		scope = "with every room as it is"
	}
	largest, line := decimal.Zero, 0
	for _, o := range r.items["<option>"] {
		if a := r.good(o.path + "adds"); a != nil && a.number.GreaterThan(largest) {
			largest, line = a.number, a.at().Line
		}
	}
	r.say("value-used-up", g.at(), "%s, the %s comes to %s: of the %s stated, the options of the file's own scope add %s", scope, g.field.Key(), quantity.FormatDollars(comes), g.dollars(), quantity.FormatDollars(planned))("check what each option adds (the most is %s, in line %d), for a nought too many", quantity.FormatDollars(largest), line)
	return true
}

// ListToAdd is how options come to say what they add where there are only those of rooms that are
// counted, which stand in no line of the file.
const ListToAdd = "a room that is only counted cannot say what it adds: list it under rooms with its size and options, as   kitchen: {size: 12' x 13', options: {cosmetic: {adds: $9,000, work: {paint walls: hired}}}}"

// doubtNothingAdded doubts a value from before the work to which no option adds anything: it
// is that of the house as it is, though the work costs money.
func (r *reader) doubtNothingAdded() {
	before := r.good("value.before work")
	if before == nil || r.good(statedValues[0]) != nil {
		return
	}
	for _, o := range r.items["<option>"] {
		if r.got[o.path+"adds"] != nil {
			return
		}
	}
	if spent, ok := r.worked(r.deal.Root, "budget"); ok && spent.IsPositive() {
		how := "write at the options what each adds, as   adds: $9,000   , or"
		if r.deal.OnlyCounted {
			how = ListToAdd + "   , or write"
		}
		r.say("adds-nothing", before.at(), "the value is that before work, %s, and nothing says what the work adds to it", before.dollars())("%s what the house is worth after the work, as   after-repair value: $285,000", how)
	}
}
