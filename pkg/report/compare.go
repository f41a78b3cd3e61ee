package report

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/solve"
)

const (
	compareName   = 24
	compareColumn = 14
)

// MostColumns is how many deals fit beside each other.
const MostColumns = (Width - compareName) / compareColumn

// Compare writes deals side by side: results first, then the cost by room and trade,
// and what each room's extra cost adds to the value. Next is the command that mixes
// options room by room, or nothing.
func Compare(w io.Writer, title, next string, all []answer.Column, s Style) error {
	p := newPage(w, s)
	p.title(title)
	comparison{p, all}.write(next)
	return p.flush()
}

type comparison struct {
	*page
	all []answer.Column
}

func (c comparison) write(next string) {
	c.text("", c.best())
	if next != "" {
		c.text("", "A mix, room by room, may bring more: "+next)
	}
	c.head("")
	if c.partnered() {
		c.row("profit of the deal", func(a answer.Column) string { return compared(a.Line("profit")) })
	}
	for _, r := range []struct {
		words, line string
		show        func(decimal.Decimal) string
	}{
		{c.ownProfit(), "owner_profit", compared}, {"return on cash (ROI)", "roi", percent}, {"cash needed", "cash_needed", compared},
		{"after-repair value", "after_repair_value", dollars}, {"renovation budget", "budget", compared},
		{"hold, months", "hold_months", hundredths}, {"renovation, months", "renovation", hundredths},
		{"own hours", "own_hours", count}, {"hired hours", "room_crew_hours", count},
	} {
		c.row(r.words, func(a answer.Column) string {
			if r.line == "roi" && a.Line("cash_needed").IsZero() {
				return "none"
			}
			return r.show(a.Line(r.line))
		})
	}
	c.row("maximum offer", func(a answer.Column) string { return offered(a.Offer) })
	if c.aside() {
		c.row("  cash aside", func(a answer.Column) string {
			if a.Aside == nil {
				return offered(a.Offer)
			}
			return offered(a.Aside.Offer)
		})
	}
	c.targets()
	c.legend()
	c.byRoom()
	c.gains()
	c.byTrade()
}

// compared is a sum in its column.
func compared(x decimal.Decimal) string { return within(x, compareColumn-1) }

// partnered reports whether some deal has a partner, so that profit is two rows.
func (c comparison) partnered() bool {
	return slices.ContainsFunc(c.all, func(a answer.Column) bool { return a.Partnered() })
}

// targets writes which targets each deal misses, and by how much.
func (c comparison) targets() {
	for _, t := range []struct{ line, words string }{
		{"profit_to_spare", "profit target"}, {"margin_to_spare", "margin target"}, {"roi_to_spare", "ROI target"}, {"cash_to_spare", "cash you have"},
	} {
		states := func(a answer.Column) bool { return slices.Contains(solve.Targets(a.Deal.Targets), t.line) }
		if !slices.ContainsFunc(c.all, states) {
			continue
		}
		c.row(t.words, func(a answer.Column) string {
			switch spare := a.Line(t.line); {
			case !states(a) && t.line == "cash_to_spare": // there is some all the same
				return "not stated"
			case !states(a):
				return "none"
			case spare.IsNegative():
				return compared(spare)
			}
			return "met"
		})
	}
}

// legend says what stands under targets that are missed, and what an offer is with cash aside.
func (c comparison) legend() {
	if slices.ContainsFunc(c.all, func(a answer.Column) bool { return len(a.Missed()) > 0 }) {
		c.text("", "The row of a target says met, or what is missing: for profit, margin and ROI in dollars of profit, for cash in dollars of cash.")
	}
	if c.aside() {
		c.text("", "Cash aside is the maximum offer if the cash that you have were no matter.")
	}
}

// aside reports whether cash holds the offer of some deal back.
func (c comparison) aside() bool {
	return slices.ContainsFunc(c.all, func(a answer.Column) bool { return a.Aside != nil })
}

// ownProfit is what the row of the owner's profit is called.
func (c comparison) ownProfit() string {
	if c.partnered() {
		return "your profit"
	}
	return "profit"
}

// best says in words which has the most profit for the owner.
func (c comparison) best() string {
	top := slices.MaxFunc(c.all, func(a, b answer.Column) int { return a.Line("owner_profit").Cmp(b.Line("owner_profit")) })
	profit := top.Line("owner_profit")
	said := fmt.Sprintf("The most profit is with %s, %s", top.Name, money(profit))
	switch even := c.alike("owner_profit"); {
	case even && len(c.all) > 1:
		return fmt.Sprintf("%s is %s with any of them.", capital(c.ownProfit()), money(profit))
	case profit.IsNegative() && len(c.all) > 1:
		said = fmt.Sprintf("All of them lose money, least %s", top.Name)
	case c.partnered():
		said = fmt.Sprintf("Your profit is highest with %s, %s", top.Name, money(profit))
	}
	if misses := top.Missed(); len(misses) > 0 {
		said += "; with it you " + top.Misses(misses...)
	}
	return said + "."
}

// alike reports whether a figure is the same of all.
func (c comparison) alike(line string) bool {
	return !slices.ContainsFunc(c.all, func(a answer.Column) bool { return !a.Line(line).Equal(c.all[0].Line(line)) })
}

func (c comparison) head(words string) {
	row := pad(words, compareName)
	for _, a := range c.all {
		row += right(cut(a.Name, compareColumn-1), compareColumn)
	}
	c.line("%s", c.paint(dim, row))
}

func (c comparison) row(words string, value func(answer.Column) string) {
	row := pad(cut(words, compareName-1), compareName)
	for _, a := range c.all {
		row += right(value(a), compareColumn)
	}
	c.line("%s", row)
}

// labels are the names of the members of a set over all columns, each once.
func (c comparison) labels(set string) []string {
	var out []string
	for _, a := range c.all {
		for _, m := range a.Model.Root.In(set) {
			if !slices.Contains(out, m.Label) {
				out = append(out, m.Label)
			}
		}
	}
	return out
}

// rooms are the names of the rooms over all columns, then of the outside and of the whole
// house, under which stands what is brought once.
func (c comparison) rooms() []string {
	all := c.labels("room")
	place := func(label string) int {
		for _, a := range c.all {
			if m := a.Named("room", label); m != nil {
				return slices.Index([]string{"inside", "outside", "whole_house"}, m.Kind)
			}
		}
		return 0
	}
	slices.SortStableFunc(all, func(x, y string) int { return cmp.Compare(place(x), place(y)) })
	return all
}

func (c comparison) byRoom() {
	rooms := c.rooms()
	if len(rooms) == 0 {
		c.heading("Cost in cash")
	} else {
		c.heading("Cost in cash by room")
	}
	c.head("")
	for _, label := range rooms {
		c.ofRoom(label, "cash_cost")
	}
	c.costs("  of that, brought once", func(a answer.Column) decimal.Decimal { return broughtOnce(a.Answer) })
	c.costs("containers", func(a answer.Column) decimal.Decimal { return a.Line("disposal") })
	c.costs("rented by the month", func(a answer.Column) decimal.Decimal { return a.Line("rents") })
	c.costs("not seen", func(a answer.Column) decimal.Decimal { return a.Line("not_seen") })
	c.costs("other lines", func(a answer.Column) decimal.Decimal { return a.Line("lines_cost") })
	c.costs("general lines", func(a answer.Column) decimal.Decimal { return a.Line("general_cost") })
	c.costs("contingency", func(a answer.Column) decimal.Decimal { return a.Line("contingency") })
	c.costs("renovation budget", func(a answer.Column) decimal.Decimal { return a.Line("budget") })
	note := ""
	if len(rooms) > 0 {
		note = answer.OfRooms
	}
	if note = strings.TrimSpace(note + " " + answer.NewPartsOf(c.all)); note != "" {
		c.text("", note)
	}
}

// broughtOnce is what of the cash of the whole house is for what options of rooms bring
// once for the house, such as permits.
func broughtOnce(a *answer.Answer) (sum decimal.Decimal) {
	for _, house := range a.Model.Root.In("whole_house") {
		for _, o := range house.In("option") {
			if o.Label == deal.BroughtAlong {
				sum = sum.Add(a.Of(o, "cash_cost"))
			}
		}
	}
	return sum
}

// ofRoom writes a row for a room, unless there is nothing in it: dollars, or that nothing
// is done to the room.
func (c comparison) ofRoom(label, line string) {
	if !slices.ContainsFunc(c.all, func(a answer.Column) bool { return !a.OfNamed("room", label, line).IsZero() }) {
		return
	}
	c.row(label, func(a answer.Column) string {
		if words := a.WithoutWork(label); words != "" {
			return words
		}
		return compared(a.OfNamed("room", label, line))
	})
}

func (c comparison) byTrade() {
	trades := c.labels("trade")
	if len(trades) == 0 {
		return
	}
	c.heading("Cost in cash by trade")
	c.head("")
	for _, label := range trades {
		c.costs(label, func(a answer.Column) decimal.Decimal { return a.OfNamed("trade", label, "cash_cost") })
	}
}

// costs writes a row of dollars, unless there is nothing in it.
func (c comparison) costs(words string, value func(answer.Column) decimal.Decimal) {
	if slices.ContainsFunc(c.all, func(a answer.Column) bool { return !value(a).IsZero() }) {
		c.row(words, func(a answer.Column) string { return compared(value(a)) })
	}
}

// gains writes what each room adds to the value less what it costs, so that the best
// option of each can be seen.
func (c comparison) gains() {
	if c.byCondition() {
		c.text("", "The values come from sold houses, by the condition that each option leaves the house in; ledgerboard comps shows them.")
		c.conditionsAbout()
	}
	if c.conditionUnused() {
		moves := "moves the low value at most"
		if c.all[0].StatesLow() {
			moves = "changes nothing"
		}
		c.text("", "Condition by option "+moves+", since the deal states what the house will be worth. Take that value away, and each option is valued by sold houses.")
	}
	if c.byCondition() { // the values above do not go by what options add
		return
	}
	if !slices.ContainsFunc(c.all, func(a answer.Column) bool { return !a.Line("value_added").IsZero() }) {
		said := "No option says what it adds. "
		if c.alike("after_repair_value") {
			said = "No option says what it adds, so all have the same value. "
		}
		if len(c.rooms()) > 0 {
			said += toAdd(c.all[0].Deal, "Add   adds: $6,500   to the options, from what houses with that finish sold for")
			if by := c.all[0].Deal.ConditionsFor(); by != "" {
				said += "; or under comps, for values by the condition that each leaves the house in,   " + by
			}
			c.text("", said+".")
		}
		return
	}
	c.heading("What a room adds to the value, less its cost in cash")
	c.head("")
	for _, label := range c.rooms() {
		c.ofRoom(label, "gain")
	}
	note := "Before what selling, contingency, parts not seen and the months take."
	if slices.ContainsFunc(c.all, func(a answer.Column) bool { return broughtOnce(a.Answer).IsPositive() }) {
		note += " The cash of the whole house holds what work brings once for the house."
	}
	for _, a := range c.all {
		cost := func(room string) bool { return a.OfNamed("room", room, "gain").IsNegative() }
		if a.Line("value_added").IsZero() && slices.ContainsFunc(c.rooms(), cost) {
			note += " No option of " + a.Name + " is said to add anything, so its rooms show their cost alone."
		}
	}
	c.text("", note)
}

// muchDearer is from what share of a budget on another plan is dearer by more than how it is done
// (common practice, no source).
var muchDearer = decimal.New(5, -2)

// conditionsAbout doubts that the dearer of two plans leaves the house in a worse condition: the
// two may be changed about.
func (c comparison) conditionsAbout() {
	for _, a := range c.all {
		for _, b := range c.all {
			more, ours, theirs := a.Line("budget").Sub(b.Line("budget")), a.Line("subject_condition"), b.Line("subject_condition")
			if !a.Deal.ByCondition() || !b.Deal.ByCondition() || more.LessThanOrEqual(b.Line("budget").Mul(muchDearer)) || !ours.IsPositive() || ours.GreaterThanOrEqual(theirs) {
				continue
			}
			c.text("", fmt.Sprintf("Mind that %s costs %s more than %s, and is said to leave the house in a worse condition. Were the two changed about under   condition by option?", a.Name, money(more), b.Name))
			return
		}
	}
}

// conditionUnused reports whether conditions by option stand beside a stated value.
func (c comparison) conditionUnused() bool {
	return slices.ContainsFunc(c.all, func(a answer.Column) bool {
		d := a.Deal
		return d.Comps != nil && d.Comps.Conditions && !d.ByCondition()
	})
}

// byCondition reports whether the values are drawn from sold houses and follow the
// condition that each option leaves the house in.
func (c comparison) byCondition() bool {
	return slices.ContainsFunc(c.all, func(a answer.Column) bool { return a.Deal.ByCondition() })
}

// CompareObject is the JSON of deals side by side.
type CompareObject struct {
	Schema  int             `json:"schema"`
	Columns []CompareColumn `json:"columns"`
}

// CompareColumn is one of them.
type CompareColumn struct {
	Name     string                                `json:"name"`
	Figures  map[string]decimal.Decimal            `json:"figures"`
	MaxOffer any                                   `json:"max_offer"`
	Misses   []string                              `json:"misses"`
	Rooms    map[string]map[string]decimal.Decimal `json:"rooms"`
	Trades   map[string]map[string]decimal.Decimal `json:"trades"`
}

// CompareJSON writes deals side by side as one object.
func CompareJSON(w io.Writer, all []answer.Column) error {
	o := CompareObject{Schema: Schema}
	for _, a := range all {
		x := CompareColumn{Name: a.Name, Misses: []string{}, Rooms: map[string]map[string]decimal.Decimal{}, Trades: map[string]map[string]decimal.Decimal{},
			Figures: lines(a.Answer, a.Model.Root, []string{"profit", "owner_profit", "roi", "cash_needed", "after_repair_value", "budget", "hold_months", "renovation", "own_hours", "room_crew_hours"})}
		if a.Offer.Found {
			x.MaxOffer = a.Offer.Price
		}
		for _, m := range a.Missed() {
			x.Misses = append(x.Misses, m.Target)
		}
		for _, m := range a.Model.Root.In("room") {
			x.Rooms[m.Label] = lines(a.Answer, m, []string{"cash_cost", "trade_price", "own_hours", "crew_hours", "value_added"})
		}
		for _, m := range a.Model.Root.In("trade") {
			x.Trades[m.Label] = lines(a.Answer, m, []string{"cash_cost", "trade_price", "own_hours", "crew_hours"})
		}
		o.Columns = append(o.Columns, x)
	}
	return writeJSON(w, o)
}
