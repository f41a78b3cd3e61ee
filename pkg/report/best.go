package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/best"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/solve"
)

// A BestPage is what a search for the best options found.
type BestPage struct {
	Rooms           []deal.RoomChoice
	Settled         []deal.Settled // the rooms that leave no choice
	Limits          best.Limits
	Found           *best.Found
	Prices          []best.Price
	Best            *answer.Answer // nil if no choice keeps the limits
	Own             *answer.Answer // of the scope of the file
	Offer, OwnOffer solve.Offer
	Scope           string          // as the file says it
	Stated          []string        // the values that the file states, by their keys
	Instead         string          // of that, for whole plans
	Adds            bool            // some option says what it adds to the value
	Unsaid          []*model.Member // options passed over that do not say so, though others do
}

// Best writes the choice of options with the most profit.
func Best(w io.Writer, b *BestPage, s Style) error {
	p := bestPage{newPage(w, s), b}
	p.title(b.Own.Deal.Name + ": the best options")
	p.text("", p.answer())
	taken := b.Best
	if taken == nil {
		taken = b.Own
	}
	if before := taken.BeforeClosing(money); before != "" {
		p.text("", before)
	}
	p.short()
	if b.Best != nil {
		p.rooms()
		p.sideBySide()
		p.second()
	}
	p.prices()
	p.heading("How sure this is")
	p.text("", p.sure())
	if b.Best != nil {
		p.heading("To take it, write into the deal file")
		p.scope()
		p.values()
	}
	return p.flush()
}

type bestPage struct {
	*page
	*BestPage
}

func (p bestPage) answer() string {
	if p.Best == nil {
		none := "No choice of options keeps"
		if !p.Found.Proved {
			none = "No choice of options was found that keeps"
		}
		said := fmt.Sprintf("%s %s. The scope of the file needs %s in cash, %s with waiting, and %s.", none, p.limits(),
			money(p.Own.Line("cash_needed")), inWeeks(weeksOf(p.Own)), hours(p.Own.Line("own_hours")))
		lines := p.Own.Line("line_own_hours")
		if most := p.Limits.OwnHours; most != nil && lines.GreaterThan(*most) {
			said += fmt.Sprintf(" The lines beside the rooms alone take %s, whatever is chosen.", hours(lines))
		}
		return said + p.least()
	}
	more := p.Best.Line("owner_profit").Sub(p.Own.Line("owner_profit"))
	than := fmt.Sprintf("%s more than the scope of the file", money(more))
	switch {
	case more.IsZero():
		than = "as the scope of the file does"
	case more.IsNegative():
		than = fmt.Sprintf("%s less than the scope of the file, which does not keep the limits", money(more.Neg()))
	}
	if limits := p.limits(); limits != "" {
		return fmt.Sprintf("Within %s, these options %s, %s: %s.", limits, p.most(), money(p.Best.Line("owner_profit")), than) + p.missable()
	}
	return fmt.Sprintf("These options %s, %s: %s.", p.most(), money(p.Best.Line("owner_profit")), than) + p.missable()
}

// least says what cash would do, where none of the choices keeps the limit.
func (p bestPage) least() string {
	for _, x := range p.Prices {
		if x.Least != nil {
			return fmt.Sprintf(" The least cash that was found to do, room by room, is %s; it brings %s.", money(x.Least.Cash), money(x.Least.Profit))
		}
	}
	return ""
}

// missable says by how much a search that had to stop may have missed the best choice.
func (p bestPage) missable() string {
	switch {
	case p.Found.Proved:
		return ""
	case p.Found.Bounded:
		return fmt.Sprintf(" A better choice may have been missed, by no more than %s.", money(decimal.New(p.Found.Most, -2).Sub(p.Found.Best.Profit)))
	}
	return " A better choice may have been missed."
}

// most says what is most.
func (p bestPage) most() string {
	found := ""
	if !p.Found.Proved {
		found = " of all that were found"
	}
	if p.Own.Partnered() {
		return "make your profit highest" + found
	}
	return "bring the most profit" + found
}

// limits are the limits in words, or nothing.
func (p bestPage) limits() string {
	var said []string
	if x := p.Limits.Cash; x != nil {
		said = append(said, dollars(*x)+" of cash")
	}
	if x := p.Limits.Weeks; x != nil {
		said = append(said, exactly(*x)+" "+plural("week", *x)+" of work and waiting")
	}
	if x := p.Limits.OwnHours; x != nil {
		said = append(said, hours(*x)+" of own work")
	}
	return answer.Listed(said)
}

func weeksOf(a *answer.Answer) decimal.Decimal {
	c := best.Choice{Renovation: a.Line("renovation")}
	return c.Weeks()
}

const bestRow = "%-20s%-16s%15s%14s%15s"

// rooms writes the choice room by room; a room's cost is its part of whole packs.
func (p bestPage) rooms() {
	p.heading("Room by room")
	p.line("%s", p.paint(dim, fmt.Sprintf(bestRow, "room", "option", "cash", "adds", "gain")))
	for i, r := range p.Rooms {
		room := p.Best.Named("room", r.Room.Label)
		cash, adds, gain := decimal.Decimal{}, decimal.Decimal{}, decimal.Decimal{}
		if room != nil {
			cash, adds, gain = p.Best.Of(room, "cash_cost"), p.Best.Of(room, "value_added"), p.Best.Of(room, "gain")
		}
		p.line(bestRow, cut(r.Room.Label, 19), cut(named(r, p.Found.Best.Options[i]), 15), money(cash), dollars(adds), money(gain))
	}
	note := "Gain is what a room adds to the value less its own cash; contingency, containers, rents, parts not seen, selling and interest come off the whole."
	if once := broughtOnce(p.Best); once.IsPositive() {
		if slices.ContainsFunc(p.Rooms, func(r deal.RoomChoice) bool { return r.Room.Kind == "whole_house" }) {
			note += fmt.Sprintf(" Of the cash of the whole house, %s is for what work brings once for the house, such as permits; what rooms bring of it does not fall with the option of the whole house.", money(once))
		} else {
			note += fmt.Sprintf(" What work brings once for the house, such as permits, %s, is in no row.", money(once))
		}
	}
	if _, spared := p.Best.MadeNew(); spared.IsPositive() {
		note += " " + p.Best.NewParts() + " That spares " + money(spared) + " before contingency, which is in no row."
	}
	p.text("", note)
	p.settled()
}

// settled says which rooms leave no choice, and how they would.
func (p bestPage) settled() {
	var how []string
	for _, r := range p.Settled {
		how = append(how, r.Room.Label+map[bool]string{true: " is done", false: " is left as it is"}[r.Done])
	}
	if len(how) == 0 {
		return
	}
	p.text("", fmt.Sprintf("Work alone, without options, leaves no choice and stays as the scope of the file has it: %s. Under an option it is chosen or left:   options: {NAME: {work: ...}}", answer.Listed(how)))
}

// named is what an option of a room is called.
func named(r deal.RoomChoice, option int) string {
	if m := r.Options[option]; m != nil {
		return m.Label
	}
	return deal.AsItIs
}

const besideRow = "%-26s%18s%18s"

func (p bestPage) sideBySide() {
	p.heading("Beside the scope of the file")
	p.line("%s", p.paint(dim, fmt.Sprintf(besideRow, "", "best", "the file's")))
	row := func(words, line string, show func(decimal.Decimal) string) {
		p.line(besideRow, words, show(p.Best.Line(line)), show(p.Own.Line(line)))
	}
	row(p.Own.OwnProfit(), "owner_profit", money)
	row("cash needed", "cash_needed", money)
	p.line(besideRow, "weeks, with waiting", weeksOf(p.Best).Round(1), weeksOf(p.Own).Round(1))
	row("own hours", "own_hours", count)
	row("renovation budget", "budget", money)
	row("after-repair value", "after_repair_value", dollars)
	p.line(besideRow, p.offerWords(), offered(p.Offer), offered(p.OwnOffer))
}

// offerWords say whether the offers keep another limit of cash than the file's own.
func (p bestPage) offerWords() string {
	if x := p.Limits.Cash; x != nil && !x.Equal(p.Own.Line("cash_available").Sub(p.Own.Line("cash_reserve"))) {
		return "maximum offer in that cash"
	}
	return "maximum offer"
}

func offered(o solve.Offer) string {
	switch {
	case o.Endless:
		return "any"
	case !o.Found:
		return "none"
	}
	return dollars(o.Price)
}

// second writes the runner-up by what differs.
func (p bestPage) second() {
	c := p.Found.RunnerUp
	if c == nil {
		return
	}
	p.heading("The runner-up")
	var differs []string
	for i, r := range p.Rooms {
		if c.Options[i] != p.Found.Best.Options[i] {
			differs = append(differs, fmt.Sprintf("%s %s instead of %s", r.Room.Label, named(r, c.Options[i]), named(r, p.Found.Best.Options[i])))
		}
	}
	less := p.Found.Best.Profit.Sub(c.Profit)
	p.text("", fmt.Sprintf("With %s: %s is %s, %s less, with %s of cash, %s with waiting, and %s of own work.", strings.Join(differs, ", "), p.Own.OwnProfit(),
		money(c.Profit), money(less), money(c.Cash), inWeeks(c.Weeks()), hours(c.OwnHours)))
}

// prices writes what each limit costs.
func (p bestPage) prices() {
	if len(p.Prices) == 0 {
		return
	}
	p.heading("What each limit costs")
	for _, x := range p.Prices {
		var said string
		switch {
		case x.Without.Best == nil:
			said = "no choice would do without it either"
		case p.Best == nil:
			said = fmt.Sprintf("without it the best choice brings %s", money(x.Without.Best.Profit))
		case !x.Costs.IsPositive():
			said = "nothing: the best choice is the same without it"
		default:
			said = fmt.Sprintf("%s of %s: without it the best choice brings %s, with %s of cash, %s with waiting, and %s of own work", money(x.Costs), p.Own.OwnProfit(),
				money(x.Without.Best.Profit), money(x.Without.Best.Cash), inWeeks(x.Without.Best.Weeks()), hours(x.Without.Best.OwnHours))
		}
		p.text(pad("  "+x.Limit, 14), said+".")
	}
}

func (p bestPage) sure() string {
	f := p.Found
	all := quantity.FormatCount(decimal.NewFromFloat(f.Choices), 0)
	were := "were"
	if f.Worked == 1 {
		were = "was"
	}
	said := fmt.Sprintf("Of %s choices, %d %s worked out to the cent", all, f.Worked, were)
	if f.Proved && f.Worked == int(f.Choices) {
		return said + ": all of them. What an option adds is your estimate."
	}
	switch {
	case f.Proved && f.Best == nil:
		return said + ", and bounds show that none of the others keeps the limits."
	case f.Proved && f.SecondProved:
		return said + ", and bounds show that none of the others is better. What is proved is the arithmetic: what an option adds is your estimate."
	case f.Proved:
		return said + ", and bounds show that none of the others is better than the best; another may be better than the runner-up."
	}
	said += fmt.Sprintf("; the search stopped at its limit, after %s looks at a part of a choice.", quantity.FormatCount(decimal.NewFromInt(int64(f.Looked)), 0))
	if p.Best == nil {
		return said + " One that keeps the limits may have been missed."
	}
	return said + p.missable()
}

// scope writes the line for the deal file, in short lines.
func (p bestPage) scope() {
	p.line("scope:")
	for _, x := range strings.Split(strings.Trim(p.Scope, "{}"), ", ") {
		p.line("  %s", x)
	}
}

// values writes the values that go with the scope: those of the file are for its own.
func (p bestPage) values() {
	var rows []string
	for _, x := range []struct{ key, line string }{{"after-repair value", "after_repair_value"}, {"low", "low_value"}, {"lender's value", "lender_value"}} {
		here, own := p.Best.Line(x.line), p.Own.Line(x.line)
		if slices.Contains(p.Stated, x.key) && !here.Equal(own) {
			rows = append(rows, fmt.Sprintf("  %s: %s", x.key, money(here)))
		}
	}
	if len(rows) == 0 {
		return
	}
	p.text("", "and with it your values, which hold what the options of the file's own scope add:")
	p.line("value:")
	for _, r := range rows {
		p.line("%s", r)
	}
}

// toAdd is how options come to say what they add: by other words where there are only those of rooms
// that are counted.
func toAdd(d *deal.Deal, words string) string {
	if d.OnlyCounted {
		return capital(deal.ListToAdd)
	}
	return words
}

// short says which targets the choice misses, and where it is not said what work adds.
func (p bestPage) short() {
	if p.Best == nil {
		return
	}
	if misses := p.Best.Missed(); len(misses) > 0 {
		p.text("", "Even so, at the asking price you "+p.Best.Misses(misses...)+".")
	}
	for _, d := range p.Best.Warnings {
		if d.Code == "bad-not-planned" {
			p.text("", "Mind that "+d.Message+": nothing is set aside for it.")
		}
	}
	if !p.Adds {
		p.text("", "No option says what it adds to the value, so doing nothing looks best. "+toAdd(p.Own.Deal, "Write what you think under each:   adds: $9,000")+p.Instead)
	}
	if len(p.Unsaid) > 0 {
		var names []string
		for _, o := range p.Unsaid {
			names = append(names, fmt.Sprintf("%q of %s", o.Label, o.Parent.Label))
		}
		p.text("", "The choice hangs on what is not said: what is added by "+strings.Join(names, ", ")+". It counts as nothing. Write what you think under each:   adds: $9,000   , or   adds: $0")
	}
}
