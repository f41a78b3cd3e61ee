package deal

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// usualSales is how many closed sales a value usually takes (Fannie Mae Selling Guide,
// comparable selection).
const usualSales = 3

// nearlyAlone is the weight from which the other sales tell next to nothing.
const nearlyAlone = 0.95

// counts is the weight from which a sale far off is worth a word, by likeness too, since lying apart
// takes weight away; one far apart from all others is so with any.
const counts = 0.05

// doubtComps warns of comparables that say little, and of a plan that goes beyond them.
func (r *reader) doubtComps() {
	c := r.deal.Comps
	if c == nil || c.Value == nil {
		return
	}
	at := r.needed("comps")
	v := c.Value
	if n := len(v.Rows); n < usualSales {
		r.say("comps-few", at, "the value is drawn from only %d of the usual three sales, so its range is wide", n)("add houses that sold nearby in the last 12 months")
	}
	if top := slices.MaxFunc(v.Rows, func(x, y comps.Row) int { return cmp.Compare(x.Weight, y.Weight) }); len(v.Rows) >= usualSales && top.Weight > nearlyAlone {
		r.say("comps-few", c.Place(&top.Sold), "%s weighs over %.0f%%, so the value is drawn from it nearly alone", top.Name(), 100*nearlyAlone)("look what makes the other sales so unlike the house: a column of theirs may be read as what it is not")
	}
	if len(v.Untold) > 0 {
		why, or := "", ""
		if i := slices.IndexFunc(v.Disbelieved, func(d comps.Disbelief) bool { return slices.Contains(v.Untold, d.Line) }); i >= 0 {
			why = " (of " + v.Disbelieved[i].Line.String() + " " + v.Disbelieved[i].Why + ")"
			if sale := v.Disbelieved[i].Sale; sale != "" {
				or = ", or strike " + sale + " if it is quite another house"
			}
		}
		r.say("comps-not-adjusted", at, "sales differ from the house in %s, which is not adjusted: no amount is given and the sales tell none that can be so%s", comps.Names(v.Untold), why)("%s%s", SayUntold(v), or)
	}
	r.doubtNotCompared(c)
	if names := r.notTold(c); names != "" {
		tell := r.say("comps-not-told", r.needed("house", "comps"), "the house says %s, and none of the sales does, so that is not compared", names)
		if header, field := r.unreadFor(c); len(c.Unread) > 0 && field == "" {
			tell("see whether a column that is not read holds it (%s); if none does, add it to the sales, where you know it", strings.Join(c.Unread[:min(len(c.Unread), mostSaid)], ", "))
		} else if field != "" {
			tell("look whether one of the columns that are not read holds it, and say which, e.g.   columns: {%s: %s}", field, diag.Quote(header))
		} else {
			tell("add it to the sales, where you know it")
		}
	}
	r.doubtGaragesByArea(c)
	r.doubtGarageKind(c)
	r.doubtStoreys(c)
	r.doubtUnsaid(c)
	r.doubtOwnUntold(c)
	r.doubtOwnOfAll(c)
	if c.Conditions && r.statesValue() {
		moves := "moves its low value at most"
		if r.got["value.low"] != nil {
			moves = "changes nothing"
		}
		r.say("comps-condition-unused", r.where("comps.condition by option"), "the deal states what the house will be worth, so the condition that an option leaves it in %s", moves)("take the stated value away for a value by the comparables; or take condition by option away")
	} else if _, told := v.Linear[comps.Condition]; c.Conditions && !told && !slices.ContainsFunc(v.Rates, func(x comps.Rate) bool { return x.Line == comps.Condition }) {
		r.say("comps-condition-alike", r.where("comps.condition by option"), "nothing tells what condition is worth, so all options are valued alike")("add   amounts: {step of condition: $14,000}   , from what houses of either finish sold for")
	}
	r.doubtTrend(c)
	r.doubtPairs(c)
	r.doubtPriceless(c)
	r.doubtGivenAmounts(c)
	r.doubtGivenNoughts(c)
	r.doubtIdleAmounts(c)
	r.doubtAreas(c)
	if !slices.Contains(r.doubtHouse(c), "lot") {
		r.doubtBeyondLots(c)
	}
	r.doubtBuiltLately(c)
	r.doubtBeyondAges(c)
	r.doubtAsItStands(c)
	r.doubtBeyondConditions(c)
	r.doubtOddRooms(c)
	r.doubtLots(c)
	r.doubtTypes(c)
	r.doubtDistances(c)
	r.doubtBuilt(c)
	r.doubtGarages(c)
	r.doubtOldSales(c)
	r.doubtOwnSale(c)
	r.doubtSoldTwice(c)
	r.doubtCountedTwice(c)
	r.doubtTwoApart(c)
	amounts := ""
	if r.got["comps.amounts"] != nil {
		amounts = ", and at the amounts, each of which is for one unit"
	}
	for _, row := range v.Rows {
		if row.Apart || max(row.Weight, row.Alike) >= counts && (row.FarOff || row.Flags.Has(comps.Outlier)) {
			r.say("sale-far-off", c.Place(&row.Sold), "%s, adjusted to %s: %s %s", row.Name(), quantity.FormatDollars(row.Adjusted), row.OthersSay(), farBy(row.Off))("look at it again%s; strike it under comps if it was no open sale of such a house", amounts)
		}
	}
	for _, p := range c.Choice.Passed {
		r.say("sale-far-off", c.Place(&p.Sold), "%s is passed over: %s", p.Name(), p.Why)("name it under   add   in comps if it should count")
	}
	r.doubtBeyond()
	r.doubtConcessions(c)
}

// highConcessions is from what share of the price on concessions are hardly so: the customary
// limit of one adjustment.
var highConcessions = decimal.New(10, -2)

// doubtConcessions warns of concessions that are hardly so, and where they count twice: taken
// off the comparables and paid at the sale.
func (r *reader) doubtConcessions(c *Comparables) {
	for i := range c.Value.Rows {
		if s := &c.Value.Rows[i].Sold; r.farBeside(c.Members[i], "concessions", 0) {
			r.say("concessions-high", c.Place(s), "%s was sold for %s, and its seller gave back %s of that, more than the customary 10%%", c.Value.Rows[i].Name(), quantity.FormatDollars(s.Price), quantity.FormatDollars(s.Concessions))("look whether that is so, and no figure of another column; it is taken off the price")
		}
	}
	paid := slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return s.Concessions.IsPositive() })
	for _, m := range r.deal.Root.In("selling_fee") {
		if paid && holdsAny(strings.ToLower(m.Label), "concession") {
			r.say("concessions-twice", m.Pos, "%s is a selling cost, and the comparables are adjusted for concessions already", m.Label)("leave one of them out: either the line, or the concessions of the sales")
		}
	}
}
