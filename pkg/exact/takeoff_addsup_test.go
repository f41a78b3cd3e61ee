package exact_test

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

var takeoffProperties = []property{
	{"work adds up to options, rooms and the house", workAddsUp},
	{"work adds up to trades", tradesAddUp},
	{"a product is charged to what takes it", productsAddUp},
	{"what is left is less than a pack", lessThanAPack},
	{"contingency goes to rooms by cost", contingencyByRoom},
	{"what is not chosen or not called for costs nothing", onlyWhatIsDone},
	{"labour is paid or own", labourIsPaidOrOwn},
	{"the works are their parts", worksAddUp},
	{"containers hold the debris", containersHold},
	{"own work and trades take their time", timeOfWork},
	{"nothing is less than nothing", nothingNegative},
	{"money lines are in cents", takeoffCents},
}

// added are lines of work that add up from below to the room.
var added = []string{"cash_cost", "trade_price", "own_hours", "crew_hours", "waits", "debris", "weight"}

// onTop are what they come to in the deal; waiting days may be stated instead.
var onTop = map[string]string{
	"cash_cost": "rooms_cost", "trade_price": "rooms_at_trade_price", "own_hours": "room_own_hours", "crew_hours": "room_crew_hours",
	"debris": "all_debris", "weight": "all_weight",
}

func workAddsUp(w worked) error {
	var errs []error
	rooms := w.Deal.In("room")
	for _, line := range added {
		for _, r := range rooms {
			for _, o := range r.In("option") {
				errs = append(errs, same(o.Path()+" "+line, w.over(w.chosen(o.In("item")), line), w.at(o, line)))
			}
			errs = append(errs, same(r.Path()+" "+line, w.over(r.In("option"), line), w.at(r, line)))
		}
		if top := onTop[line]; top != "" {
			errs = append(errs, same(top, w.over(rooms, line), w.of(top)))
		}
	}
	if _, stated := w.Deal.Given.Look("waiting_days"); !stated {
		longest := decimal.Zero // rooms wait side by side
		for _, r := range rooms {
			longest = decimal.Max(longest, w.at(r, "waits"))
		}
		errs = append(errs, same("waiting", longest, w.of("waiting_days")))
	}
	for _, r := range rooms {
		errs = append(errs, same(r.Path()+" gain", w.at(r, "value_added").Sub(w.at(r, "cash_cost")), w.at(r, "gain")))
	}
	return errors.Join(append(errs, same("value added", w.over(w.all("option"), "added"), w.of("value_added")))...)
}

func tradesAddUp(w worked) error {
	var errs []error
	trades := w.Deal.In("trade")
	for line, top := range onTop {
		if line == "debris" || line == "weight" {
			continue
		}
		for _, x := range trades {
			errs = append(errs, same(x.Label+" "+line, w.over(w.chosen(x.In("item")), line), w.at(x, line)))
		}
		errs = append(errs, same("trades' "+line, w.of(top), w.over(trades, line)))
	}
	return errors.Join(errs...)
}

// productsAddUp: where nothing is bought, packs are none; sticks that the deal gives
// for a product which nothing takes are charged to nothing.
func productsAddUp(w worked) error {
	var errs []error
	for _, p := range w.Deal.In("product") {
		uses := p.In("use")
		charged := w.over(uses, "charged")
		if w.at(p, "total_bought").IsPositive() {
			errs = append(errs, same(p.Label+", charged", w.at(p, "product_cost"), charged))
		} else {
			errs = append(errs, same(p.Label+", charged without a use", decimal.Zero, charged))
		}
		for _, u := range uses {
			errs = append(errs, check(!w.at(u, "charged").IsNegative(), "%s: charged %s", u.Path(), w.at(u, "charged")))
			if w.at(u, "bought").IsZero() {
				errs = append(errs, check(w.at(u, "charged").IsZero(), "%s: nothing bought, %s charged", u.Path(), w.at(u, "charged")))
			}
			errs = append(errs, check(w.at(u, "ordered").GreaterThan(w.at(u, "net_use").Sub(dust)), "%s: less ordered than used", u.Path()))
		}
	}
	for _, x := range w.all("item") {
		fixed := w.at(x, "allowance").Mul(w.at(x, "done_here")).Mul(w.at(x.Parent, "chosen"))
		errs = append(errs, same(x.Path()+", materials", w.over(x.In("use"), "charged").Add(fixed), w.at(x, "materials")))
	}
	return errors.Join(errs...)
}

// lessThanAPack leaves sticks out, of which a cut list says how many are bought.
func lessThanAPack(w worked) error {
	var errs []error
	for _, p := range w.Deal.In("product") {
		over, packs := w.at(p, "left_over"), w.at(p, "packs")
		if !w.at(p, "by_the_stick").IsZero() {
			continue
		}
		errs = append(errs,
			check(packs.IsInteger(), "%s packs", packs),
			check(!over.IsNegative(), "%s: %s left", p.Label, over),
			check(over.LessThan(w.at(p, "holds")), "%s: %s left of packs of %s", p.Label, over, w.at(p, "holds")),
			alike(p.Label+", bought and left", packs.Mul(w.at(p, "holds")), w.at(p, "total_bought").Add(over)))
	}
	return errors.Join(errs...)
}

var cent = decimal.New(1, -2)

// contingencyByRoom: the rest is the part of all that is no room.
func contingencyByRoom(w worked) error {
	rooms := w.Deal.In("room")
	share, sum := w.of("contingency_share"), w.over(rooms, "contingency")
	rest := w.of("contingency").Sub(sum)
	errs := []error{
		same("contingency of rooms", share.Mul(w.of("rooms_cost")).Round(2), sum),
		check(rest.Sub(share.Mul(w.of("base_cost").Sub(w.of("rooms_cost")))).Abs().LessThanOrEqual(cent), "the rest of the contingency is %s", rest),
	}
	for _, r := range rooms {
		exact := share.Mul(w.at(r, "cash_cost"))
		errs = append(errs, check(w.at(r, "contingency").Sub(exact).Abs().LessThanOrEqual(cent), "%s: %s for %s", r.Label, w.at(r, "contingency"), exact))
	}
	return errors.Join(errs...)
}

// chosen are the pieces of work whose option is chosen.
func (w worked) chosen(items []*model.Member) (out []*model.Member) {
	for _, x := range items {
		if !w.at(x.Parent, "chosen").IsZero() {
			out = append(out, x)
		}
	}
	return out
}

// done reports whether work is done, if its option is chosen: without being called for, or
// because an option that is chosen calls for it, or work that is done, and none of them has
// it done otherwise.
func (w worked) done(x *model.Member) bool {
	if w.at(x, "called_for").IsZero() {
		return true
	}
	done, instead := false, false
	for _, c := range x.In("caller") {
		calls, yields := !w.at(c.Parent, "chosen").IsZero(), !w.at(c, "yields").IsZero()
		if c.Parent.Set == "bringer" {
			calls = calls && w.done(c.Parent.Parent)
		}
		done, instead = done || calls && !yields, instead || calls && yields
	}
	return done && !instead
}

func onlyWhatIsDone(w worked) error {
	var errs []error
	for _, x := range w.all("item") {
		if w.done(x) {
			errs = append(errs, same(x.Path()+", done", decimal.NewFromInt(1), w.at(x, "done_here")))
		} else {
			for _, line := range append([]string{"quantity", "trade_hours", "materials", "labour", "labour_at_trade"}, added...) {
				errs = append(errs, same(x.Path()+", not called for, "+line, decimal.Zero, w.at(x, line)))
			}
			errs = append(errs, same(x.Path()+", not called for", decimal.Zero, w.over(x.In("use"), "ordered")))
		}
		if w.at(x.Parent, "chosen").IsZero() {
			for _, line := range []string{"materials", "cash_cost", "trade_price"} {
				errs = append(errs, same(x.Path()+", not chosen, "+line, decimal.Zero, w.at(x, line)))
			}
			errs = append(errs, same(x.Path()+", not chosen", decimal.Zero, w.over(x.In("use"), "bought")))
		}
	}
	for _, o := range w.all("option") {
		if w.at(o, "chosen").IsZero() {
			errs = append(errs, same(o.Path()+", value", decimal.Zero, w.at(o, "added")))
		}
	}
	return errors.Join(errs...)
}

func labourIsPaidOrOwn(w worked) error {
	var errs []error
	for _, x := range w.all("item") {
		own := w.choice(x, "who") == "own" && w.choice(x, "quote_covers") == "nothing"
		at := func(line string) decimal.Decimal { return w.at(x, line) }
		errs = append(errs, same(x.Path()+", labour", at("labour_at_trade"), at("labour").Add(at("own_labour"))))
		if own {
			errs = append(errs, check(at("labour").IsZero() && at("crew_hours").IsZero(), "%s: own work is paid", x.Path()))
			errs = append(errs, alike("own hours", at("trade_hours").Mul(w.of("own_pace")).Mul(decimal.NewFromInt(1).Add(w.of("errands"))), at("own_hours")))
		} else {
			errs = append(errs, check(at("own_labour").IsZero() && at("own_hours").IsZero(), "%s: hired work is own", x.Path()))
			errs = append(errs, alike("crew hours", at("trade_hours"), at("crew_hours")))
		}
		if !at("done_here").IsZero() && w.choice(x, "quote_covers") != "nothing" {
			errs = append(errs, same(x.Path()+", quote", at("quote"), at("labour")))
		}
		if w.choice(x, "quote_covers") == "all" {
			errs = append(errs, same(x.Path()+", quote for all", at("allowance").Mul(at("done_here")).Mul(w.at(x.Parent, "chosen")), at("materials")))
		}
	}
	return errors.Join(errs...)
}

func worksAddUp(w worked) error {
	var notSeen decimal.Decimal
	for _, c := range w.Deal.In("check") {
		var renewed, called, quoted decimal.Decimal
		for _, x := range c.In("renewal") {
			if it := x.Parent; !w.at(it.Parent, "chosen").IsZero() && w.at(it, "quantity").IsPositive() {
				share := w.at(x, "of_it")
				if _, said := x.Given.Look("of_it"); !said {
					share = w.at(it, "part").Mul(w.at(it, "counted_share"))
				}
				if least := w.at(x, "at_least"); least.IsPositive() {
					share = decimal.Min(share, formula.Divide(w.at(it, "quantity"), least))
				}
				renewed = renewed.Add(share)
				if !w.at(it, "called_for").IsZero() {
					called = called.Add(share)
				}
				if !w.at(x, "in_quote").IsZero() {
					quoted = quoted.Add(share)
				}
			}
		}
		if called.IsPositive() {
			renewed = renewed.Sub(quoted)
		}
		if w.choice(c, "seen") == "not seen" && renewed.LessThan(decimal.New(999, -3)) {
			notSeen = notSeen.Add(w.at(c, "if_bad"))
		}
	}
	costs := w.Deal.In("cost")
	own := w.over(costs, "own_labour").Add(w.over(w.chosen(w.all("item")), "own_labour"))
	return errors.Join(
		same("not seen", notSeen, w.of("not_seen")),
		same("works", w.of("works_cost"), total(w.over(costs, "cash_cost"), w.of("rooms_cost"), w.of("disposal"), w.rented(), notSeen)),
		same("works by trades", w.of("works_at_trade_price"), w.of("works_cost").Add(own)),
		same("budget", w.of("budget"), total(w.of("works_cost"), w.of("general_cost"), w.of("contingency"))),
	)
}

func containersHold(w worked) error {
	n, debris, weight := w.of("containers"), w.of("all_debris"), w.of("all_weight")
	holds, limit := w.of("container_holds"), w.of("container_limit")
	fewer := decimal.Max(decimal.Zero, n.Sub(decimal.NewFromInt(1)))
	near := decimal.New(1, -5) // a whole number is one within 9 decimals
	return errors.Join(
		check(debris.LessThanOrEqual(n.Mul(holds).Add(near)) && weight.LessThanOrEqual(n.Mul(limit).Add(near)), "%s containers for %s cu ft, %s lb", n, debris, weight),
		check(n.IsZero() || debris.GreaterThan(fewer.Mul(holds)) || weight.GreaterThan(fewer.Mul(limit)), "%s containers are too many for %s cu ft, %s lb", n, debris, weight),
		same("disposal", n.Mul(w.of("container_price")).Round(2), w.of("disposal")),
	)
}

func timeOfWork(w worked) error {
	own, crew, all := w.of("own_weeks"), w.of("crew_weeks"), w.of("work_weeks")
	longer, sum := decimal.Max(own, crew), own.Add(crew)
	errs := []error{check(all.GreaterThanOrEqual(longer) && all.LessThanOrEqual(sum.Add(dust)), "%s weeks of %s and %s", all, own, crew)}
	days := all.Mul(decimal.NewFromInt(7)).Add(w.of("waiting_days"))
	return errors.Join(append(errs, alike("days", days, w.of("scope_months").Mul(decimal.NewFromInt(365)).DivRound(decimal.NewFromInt(12), 40)))...)
}

// below are lines of this part that may fall below nothing, with the reason.
var below = map[string]string{
	"leg.walk_east": way, "leg.walk_north": way, "leg.at_east": way, "leg.at_north": way, "leg.swept": way,
	"room.gain":       "a room may add less than it costs",
	"item.quote_over": "a quote may lie under the price book",
}

const way = "a way to the west or the south"

func nothingNegative(w worked) error {
	var errs []error
	for _, c := range w.m.Cells {
		if ofTakeoff(c.Line) && below[c.Line.ID()] == "" && w.Of(c).IsNegative() {
			errs = append(errs, fmt.Errorf("%s (%s): %s", c.Name(), c.Line.ID(), w.Of(c)))
		}
	}
	return errors.Join(errs...)
}

func takeoffCents(w worked) error {
	var errs []error
	for _, c := range w.m.Cells {
		if x := w.Of(c); ofTakeoff(c.Line) && c.Line.Unit == "$" && !x.Equal(x.Round(2)) {
			errs = append(errs, fmt.Errorf("%s (%s): %s", c.Name(), c.Line.ID(), x))
		}
	}
	return errors.Join(errs...)
}

// rented is what the chosen options rent by the month, over whole months and one at least.
func (w worked) rented() decimal.Decimal {
	months := decimal.Max(decimal.NewFromInt(1), w.of("renovation").Add(w.of("standstill")).Ceil())
	sum := decimal.Zero
	for _, m := range w.chosen(w.all("rental")) {
		item := m.Links[0]
		if w.choice(item, "quote_covers") != "nothing" {
			continue // the quote stands for all months
		}
		factor := w.of("labour_factor")
		if w.at(item, "own_labour_price").IsPositive() {
			factor = decimal.NewFromInt(1)
		}
		if w.at(item, "labour_taxed").IsPositive() {
			factor = factor.Mul(w.of("sales_tax").Add(decimal.NewFromInt(1)))
		}
		sum = sum.Add(total(w.at(m, "a_month")).Mul(factor).Mul(w.at(item, "part")).Mul(w.at(item, "done_here")).Round(2).Mul(months))
	}
	return sum
}
