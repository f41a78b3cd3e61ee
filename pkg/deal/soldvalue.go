package deal

import (
	"errors"
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// Comparables are the sold houses that a deal names, and what they say of its value.
type Comparables struct {
	Day     quantity.Date
	Subject comps.Subject
	Choice  *comps.Choice
	Value   *comps.Value    // nil where no sale can be used
	Members []*model.Member // of the model, one for each of Value.Rows
	Sales   int             // that there are, doubtful ones included
	Struck  int             // of them, left out because that was asked
	Lost    []string        // of each row of tables beside them that is left out, why
	Usable  int             // of the others, sold before the day and not doubtful
	LeftOld int             // left out, since they are years old and nearer ones suffice
	NotUsed []comps.Passed  // with why; of a file, those doubtful, passed over or struck
	Conditions,
	HasTable bool // the value follows the option taken; some sales are of a table
	InPlace string   // the table asked for where the file names no comps; "" where it does
	Unread  []string // headers of the columns of tables that were not read
	at      map[int]diag.Pos
}

// Place is where a sale stands in the deal file or in a table of sales.
func (c *Comparables) Place(s *comps.Sold) diag.Pos { return c.at[s.Line] }

// ID is what a sale can be struck or added by: its label, or its line in the table.
func (c *Comparables) ID(s *comps.Sold) string {
	if s.Label != "" {
		return s.Label
	}
	return fmt.Sprintf("line %d", c.Place(s).Line)
}

// A gridLine is what the deal file calls the amount of a line of the grid, the line of
// the model that takes it, that of an adjustment, and those of the figures compared.
type gridLine struct {
	line                            comps.Line
	key, rate, amount, theirs, ours string
	figure                          func(*comps.House) comps.Fact
}

// adjusted are the lines of the grid.
var adjusted = []gridLine{
	{comps.Time, "market a month", "market_rate", "time_adjustment", "", "", nil},
	{comps.Location, "", "", "location_adjustment", "", "", nil},
	{comps.Size, "square foot", "size_rate", "size_adjustment", "comp_area", "subject_area", func(h *comps.House) comps.Fact { return h.Area }},
	{comps.Lot, "square foot of lot", "lot_rate", "lot_adjustment", "comp_lot", "subject_lot", func(h *comps.House) comps.Fact { return h.Lot }},
	{comps.Rooms, "bedroom", "bedroom_rate", "bedroom_adjustment", "comp_bedrooms", "subject_bedrooms", func(h *comps.House) comps.Fact { return h.Bedrooms }},
	{comps.Baths, "bath", "bath_rate", "bath_adjustment", "comp_baths", "subject_baths", (*comps.House).Baths},
	{comps.Age, "year newer", "newer_rate", "age_adjustment", "comp_built", "subject_built", func(h *comps.House) comps.Fact { return h.Built }},
	{comps.Condition, "step of condition", "condition_rate", "condition_adjustment", "comp_condition", "subject_condition", func(h *comps.House) comps.Fact { return h.Condition }},
	{comps.Garage, "car of garage", "garage_rate", "garage_adjustment", "comp_garage", "subject_garage", (*comps.House).Cars},
	{comps.Style, "", "", "style_adjustment", "", "", nil},
}

// AdjustmentOf is the line of the model that holds an adjustment of the grid, or "".
func AdjustmentOf(l comps.Line) string {
	for _, row := range adjusted {
		if row.line == l {
			return row.amount
		}
	}
	return map[comps.Line]string{comps.Own: "extras_adjustment", comps.Concessions: "concessions"}[l]
}

// A Figure is what sold houses are compared by: the line of the grid, the lines of the
// model with the house's and a sold one's, and how it is found.
type Figure struct {
	Line         comps.Line
	Ours, Theirs string
	Figure       func(*comps.House) comps.Fact
}

// Compared are the figures that sold houses are compared by, in the order of the grid.
func Compared() (out []Figure) {
	for _, row := range adjusted {
		if row.figure != nil {
			out = append(out, Figure{row.line, row.ours, row.theirs, row.figure})
		}
	}
	return out
}

// valued reports whether sold houses say what the house is worth, or should and what
// stands against it is spoken of.
func (r *reader) valued() bool {
	if r.deal.Comps != nil && r.deal.Comps.Value != nil {
		return true
	}
	g := r.got["comps"]
	return g != nil && !g.ok || (g != nil || r.asked.From != "") && r.diags.HasErrors()
}

// statesValue reports whether the file says what the house will be worth.
func (r *reader) statesValue() bool {
	return r.got["value.after-repair value"] != nil || r.got["value.before work"] != nil
}

// comparables chooses and values the sold houses of the deal, and puts those that are
// used into the model with what the algorithm gives: which they are, their weights,
// what a unit of each thing is worth, and the ends of the range.
func (r *reader) comparables() {
	if r.good("comps") == nil && r.asked.From == "" {
		return
	}
	r.knownConditions()
	l := r.salesOf()
	subject := r.subject()
	r.doubtHalfPlace()
	if r.diags.HasErrors() {
		return
	}
	c := &Comparables{Subject: subject, Sales: len(l.sales), Lost: l.lost, at: l.at, Conditions: len(r.conditions) > 0, HasTable: l.file, Unread: l.unread}
	r.deal.Comps = c
	if r.good("comps") == nil {
		c.InPlace = r.asked.From
	}
	asked := r.askedSales(l)
	sales := r.filled(l, l.unstruck(asked))
	c.Struck, c.Day = c.Sales-len(sales), r.dayOfValue(sales)
	list, _ := comps.NewList(sales, c.Day.AddDays(-1))
	r.doubtDay(l, list)
	r.addedTooLate(l, asked, c.Day)
	r.doubtSales(l, list.Sales(), c.Day, asked.added())
	r.doubtOldList(l, list, c.Day)
	if r.diags.HasErrors() {
		return
	}
	wish := r.wish(asked)
	if wish.Count == 0 && !l.file {
		wish.Count = len(l.own)
	}
	if own := l.meantToBeUsed(list, c.Day); l.file {
		wish.Add = append(wish.Add, own...)
	} else {
		wish.Keep = own
	}
	market, passed, err := r.chosen(c, list.Before(c.Day), &wish)
	c.Usable, c.LeftOld = c.Choice.Market().Len(), c.Choice.Market().LeftOld()
	c.NotUsed = l.notUsed(passed, c.Choice, market.Aside(), asked, c.Day)
	switch {
	case errors.Is(err, comps.ErrNoSales):
		if r.statesValue() {
			r.say("comps-none", r.needed("comps"), "%s, so nothing tells the value", c.None())("name houses sold before %s, each with its day and price, or take comps away", c.Day)
		} // else it is said with the value that is missing
	case err != nil:
		at := r.needed("comps.amounts", "comps")
		if e, ok := errors.AsType[*comps.NoPriceError](err); ok {
			at = c.Place(&e.Sale)
		}
		r.say("comps-no-price", at, "%v", err)("look whether the sale was read right, or strike it; or check the amounts, each of which is for one unit, as one square foot")
	default:
		r.intoModel(c)
		r.followCondition(c, market, wish)
		r.lowNotBelow(c)
	}
}

// chosen chooses and values the sales; one that the list alone puts forward, or that is quite
// unlike the house, and that adjustments leave nothing of is left out and named, and the others
// stand. It returns the market that they are chosen from.
func (r *reader) chosen(c *Comparables, market *comps.Market, wish *comps.Wish) (from *comps.Market, passed []comps.Passed, err error) {
	for {
		c.Choice = market.Choose(c.Subject, *wish)
		c.Value, err = c.Choice.Value()
		e, none := errors.AsType[*comps.NoPriceError](err)
		if !none || e.Sale.Line >= fromTable && !e.Unlike || slices.Contains(wish.Add, e.Sale.Line) || len(c.Choice.Comps) == 1 {
			return market, passed, err
		}
		if wish.Strike = append(wish.Strike, e.Sale.Line); e.Unlike {
			market = market.Without(e.Sale.Line) // nor do its pairs tell anything
		}
		passed = append(passed, comps.Passed{Sold: e.Sale, Why: "adjusted to " + quantity.FormatDollars(e.Adjusted) + ", which is no price"})
		r.say("sale-far-off", c.Place(&e.Sale), "%v, so it is left out", e)("look whether the sale was read right, or check the amounts, each of which is for one unit, as one square foot")
	}
}

// byCondition reports whether the value goes by sold houses and follows the condition that
// the options taken leave the house in.
func (r *reader) byCondition() bool { return len(r.conditions) > 0 && !r.statesValue() }

// followCondition moves the values that the file states for its own scope as the sold houses
// move theirs, where another scope leaves the house in another condition.
func (r *reader) followCondition(c *Comparables, market *comps.Market, wish comps.Wish) {
	if !r.byCondition() || !r.planned.moved {
		return
	}
	own := c.Subject
	own.Condition = r.entry("house.").Sold().Condition
	if x, ok := r.conditionTaken(r.planned.takes, own.Condition); ok {
		own.Condition = x.Fact
	}
	was, err := market.Choose(own, wish).Value()
	if err != nil {
		return // another sale than those that say the value is to blame
	}
	by := c.Value.Likely.Sub(was.Likely)
	r.moved = by
	for _, key := range statedValues {
		g := r.good(key)
		if g == nil || by.IsZero() {
			continue
		}
		line := g.field.feeds()[0]
		v := r.deal.Root.Given.Of(line)
		v.Number, v.Text = v.Number.Add(by), fmt.Sprintf("%s stated, with other options", g.node.text)
		if !v.Number.IsPositive() {
			r.say("value-used-up", g.at(), "with the options asked for, the %s comes to %s: of the %s stated, the sold houses take %s for the condition that they leave the house in", g.field.Key(), quantity.FormatDollars(v.Number), g.node.text, quantity.FormatDollars(by.Neg()))("check the amount for a nought too few, and what a step of condition is worth")
			continue
		}
		r.deal.Root.Give(line, v)
	}
}

// lowNotBelow takes back a low value that is not below what the sold houses say the house
// is worth, where they alone say it: their own low end stands in for it everywhere. Beside a
// value of the file it is the file's own view as well, so it stays and is doubted.
func (r *reader) lowNotBelow(c *Comparables) {
	low := r.good("value.low")
	if low == nil {
		return
	}
	worth := c.Value.Likely.Sub(r.addsInComps()).Add(r.takenAdds())
	stated, text := r.deal.Root.Given.Of("low_value").Number, low.node.text
	if stated.LessThan(worth) {
		return
	}
	if !stated.Equal(low.number) {
		text += ", with the options asked for " + quantity.FormatDollars(stated)
	}
	if r.statesValue() {
		r.say("low-above-comps", low.at(), "the low value (%s) is not below %s, what the sold houses say the house is worth; it is used, since the deal states a value of its own, so odds and stress count on more than the sales do even where things go badly", text, quantity.FormatDollars(worth))("state a low value below that, or take it away: the low end of the sales then stands in for it")
		return
	}
	const line = "low_value"
	r.deal.Root.Withdraw(line)
	r.deal.StatedValues = slices.DeleteFunc(r.deal.StatedValues, func(key string) bool { return key == "low" })
	r.deal.Following = slices.DeleteFunc(r.deal.Following, func(name string) bool { return name == line })
	r.say("low-above-comps", low.at(), "the low value (%s) is not below %s, what the sold houses say the house is worth, so it is not used: their own low end stands in for it", text, quantity.FormatDollars(worth))("state a low value below that, or take it away; ledgerboard comps   shows the low end of the sales")
}

// None says that no sale can be used, in words.
func (c *Comparables) None() string {
	switch {
	case c.Sales == 0:
		return "comps names no sale"
	case c.Sales == 1 && c.Struck == 1:
		return "the one sale under comps is struck"
	case c.Sales == 1:
		return "the one sale under comps cannot be used"
	case c.Struck > 0:
		return fmt.Sprintf("none of the %d sales under comps can be used, %d of them struck", c.Sales, c.Struck)
	}
	return fmt.Sprintf("none of the %d sales under comps can be used", c.Sales)
}

func (r *reader) wish(asked salesAsked) comps.Wish {
	w := comps.Wish{Add: asked.added()}
	w.Given, w.Extras = r.given()
	if g := r.good("comps.take"); g != nil {
		w.Count = int(g.number.IntPart())
	}
	return w
}

// meantToBeUsed are the sales that are written out or pasted, unless they are doubtful. A
// file beside them is for choosing, they are not; without one all are as good as each other
// however old, and as many of them are taken as that is asked.
func (l *salesList) meantToBeUsed(list *comps.List, day quantity.Date) (out []int) {
	for _, s := range list.Sales() {
		if slices.Contains(l.own, s.Line) && s.Flags == 0 && s.Date.Compare(day) < 0 {
			out = append(out, s.Line)
		}
	}
	return out
}

// ByCondition reports whether the value of the deal is drawn from sold houses and
// follows the condition that the options taken leave the house in.
func (d *Deal) ByCondition() bool {
	_, stated := d.Root.Given.Look("after_repair_value")
	_, before := d.Root.Given.Look("value_before_work")
	return d.Comps != nil && d.Comps.Value != nil && d.Comps.Conditions && !stated && !before
}

// A ValueSpan is a value with where one in ten such houses sells below and one in ten above.
type ValueSpan struct{ Low, Likely, High decimal.Decimal }

// ValueRange is what the comparables say the house will sell for: likely, and the ends
// below and above which one in ten such houses sells. It is false where the deal has no
// comparables that can be used. It says nothing of a value that the file states.
func (d *Deal) ValueRange() (ValueSpan, bool) {
	var x ValueSpan
	if d.Comps == nil || d.Comps.Value == nil {
		return x, false
	}
	for line, to := range map[string]*decimal.Decimal{"comps_low": &x.Low, "value_by_comps": &x.Likely, "comps_high": &x.High} {
		c := d.Model.Find(d.Root, line)
		if c == nil || d.Known.Work(c.Index) != nil {
			return x, false
		}
		*to = d.Known.Values.Scalar[c.Index]
	}
	return x, true
}
